package tallywell.report;

/**
 * A line of the bench sheet.
 *
 * @param kind how it looks
 * @param text what
 * @param value how much, or when, or empty
 * @param expected net ΔA expected, or empty
 */
public record BenchLine(Kind kind, String text, String value, String expected) {
    /** How a line looks. */
    public enum Kind {
        /** A heading. */
        SECTION,
        /** Something to do, with a box to tick. */
        ITEM,
        /** Something to do at a time, with a box to tick and room for the time. */
        STEP,
        /** A sum, with a box to tick. */
        TOTAL,
        /** Something to know. */
        NOTE
    }

    static BenchLine section(String text) {
        return new BenchLine(Kind.SECTION, text, "", "");
    }

    static BenchLine item(String text, String value) {
        return new BenchLine(Kind.ITEM, text, value, "");
    }

    static BenchLine total(String text, String value) {
        return new BenchLine(Kind.TOTAL, text, value, "");
    }

    static BenchLine note(String text) {
        return new BenchLine(Kind.NOTE, text, "", "");
    }
}
