package tallywell.report;

/**
 * A line of the bench sheet.
 *
 * @param kind how it looks
 * @param text what
 * @param value how much, or empty
 */
record BenchLine(Kind kind, String text, String value) {
    /** How a line looks. */
    enum Kind {
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
        return new BenchLine(Kind.SECTION, text, "");
    }

    static BenchLine item(String text, String value) {
        return new BenchLine(Kind.ITEM, text, value);
    }

    static BenchLine total(String text, String value) {
        return new BenchLine(Kind.TOTAL, text, value);
    }

    static BenchLine note(String text) {
        return new BenchLine(Kind.NOTE, text, "");
    }
}
