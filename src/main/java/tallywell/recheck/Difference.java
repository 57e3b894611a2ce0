package tallywell.recheck;

/**
 * One thing in which a workbook differs from what it should be.
 *
 * @param kind what sort of thing
 * @param text where, what should stand there, and what does
 */
public record Difference(Kind kind, String text) {
    /** What differs, what matters most first. */
    public enum Kind {
        /** A file that the workbook carries, or that lies in a folder, is not the one that was read. */
        INPUT("input"),
        /** A sheet is missing or has been added. */
        SHEET("sheet"),
        /** A reading was changed. */
        READING("reading"),
        /** A number or text stands where a formula was. */
        OVERWRITTEN("formula overwritten"),
        /** Another formula stands there. */
        FORMULA("formula changed"),
        /** A number or text that is no formula was changed. */
        VALUE("value"),
        /** A formula stands, but shows another result. */
        RESULT("result of a formula"),
        /** What stands there is the same, but something shows it as something else, or hides it. */
        SHOWN("shown");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** In the words of a message. */
        public String word() {
            return word;
        }
    }
}
