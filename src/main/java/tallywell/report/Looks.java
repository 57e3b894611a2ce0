package tallywell.report;

import tallywell.statement.Rounding;

/** The looks that all sheets share. */
final class Looks {
    static final Look TITLE = Look.PLAIN.face(Look.Face.TITLE);
    static final Look SECTION = Look.PLAIN.face(Look.Face.SECTION);
    static final Look NOTE = Look.PLAIN.face(Look.Face.SOFT);
    static final Look NOTE_WRAPPED = NOTE.wrapped();
    static final Look TEXT = Look.PLAIN;
    static final Look WRAPPED = Look.PLAIN.wrapped();
    static final Look LABEL = Look.PLAIN.face(Look.Face.SOFT);
    static final Look HEAD =
            Look.PLAIN.face(Look.Face.BOLD).fill(Look.Fill.HEAD).edge(Look.Edge.HEAD);
    static final Look INDENTED = Look.PLAIN.align(Look.Align.INDENT);
    static final Look HEAD_WORKING = HEAD.fill(Look.Fill.WORKING);
    static final Look LINK = Look.PLAIN.face(Look.Face.LINK);
    static final Look INPUT = Look.PLAIN.fill(Look.Fill.INPUT);
    static final Look COMPUTED = Look.PLAIN.face(Look.Face.COMPUTED).fill(Look.Fill.COMPUTED);

    /** Absorbances. */
    static final String ABSORBANCE = "0.0000";

    /** Absorbance per minute. */
    static final String CREEP = "0.00000";

    private static final String[] DECIMALS = {
        "0", "0.0", "0.00", "0.000", "0.0000", "0.00000", "0.000000", "0.0000000", "0.00000000"
    };

    private Looks() {}

    /** A heading over numbers, over texts, or over texts that keep a distance from a number. */
    static Look head(boolean numbers, boolean indented) {
        return numbers ? HEAD.align(Look.Align.RIGHT) : indented ? HEAD.align(Look.Align.INDENT) : HEAD;
    }

    /** A number format that shows some significant digits of numbers as large as this one. */
    static String digits(double value, int digits) {
        return decimals(Rounding.place(value, digits));
    }

    /** A number format with digits behind the point; none where the place is before it. */
    static String decimals(int place) {
        return DECIMALS[Math.max(0, Math.min(DECIMALS.length - 1, place))];
    }
}
