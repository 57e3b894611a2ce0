package tallywell.readings;

/** What a cell looks like on its own. */
enum Look {
    /** Nothing. */
    EMPTY,
    /** Words, or anything else. */
    TEXT,
    /** A well, such as B7. */
    WELL,
    /** Letters that name a row of a plate, such as B. */
    ROW,
    /** A time with colons. */
    CLOCK,
    /** Says that a reading was out of range. */
    OVER,
    /** Says that there is no reading. */
    MISSING,
    /** A number that a workbook holds as such. */
    STORED,
    /** See {@link NumberForm#WHOLE}. */
    WHOLE,
    /** See {@link NumberForm#POINT}. */
    POINT,
    /** See {@link NumberForm#COMMA}. */
    COMMA,
    /** See {@link NumberForm#POINT_OR_THOUSANDS}. */
    POINT_OR_THOUSANDS,
    /** See {@link NumberForm#COMMA_OR_THOUSANDS}. */
    COMMA_OR_THOUSANDS,
    /** See {@link NumberForm#POINT_THOUSANDS}. */
    POINT_THOUSANDS,
    /** See {@link NumberForm#COMMA_THOUSANDS}. */
    COMMA_THOUSANDS;

    private static final Look[] ALL = values();

    static Look at(int ordinal) {
        return ALL[ordinal];
    }

    static Look of(NumberForm form) {
        return form == NumberForm.NONE ? TEXT : ALL[WHOLE.ordinal() + form.ordinal()];
    }

    /** Whether the cell holds a number. */
    boolean isNumber() {
        return ordinal() >= STORED.ordinal();
    }

    /** Whether the cell holds a number or says why there is none. */
    boolean isReading() {
        return ordinal() >= OVER.ordinal();
    }

    /** Whether the number has decimals, or may have. */
    boolean isDecimal() {
        return ordinal() > WHOLE.ordinal();
    }

    /** How the number is written. */
    NumberForm form() {
        return isNumber() && this != STORED
                ? NumberForm.values()[ordinal() - WHOLE.ordinal()]
                : this == STORED ? NumberForm.POINT : NumberForm.NONE;
    }
}
