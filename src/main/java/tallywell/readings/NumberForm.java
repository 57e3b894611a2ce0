package tallywell.readings;

/**
 * How a number is written, and what that says of the decimal mark of the file. A mark with exactly three digits behind
 * it, and one to three before it that are not a lone zero, may also set apart thousands.
 */
enum NumberForm {
    /** Digits only. */
    WHOLE,
    /** {@code 0.45}: the point is decimal. */
    POINT,
    /** {@code 0,45}: the comma is decimal. */
    COMMA,
    /** {@code 1.234}: decimal point or thousands. */
    POINT_OR_THOUSANDS,
    /** {@code 1,234}: decimal comma or thousands. */
    COMMA_OR_THOUSANDS,
    /** {@code 1.234.567} or {@code 1.234,5}: the point sets apart thousands. */
    POINT_THOUSANDS,
    /** {@code 1,234,567} or {@code 1,234.5}: the comma sets apart thousands. */
    COMMA_THOUSANDS,
    /** No number. */
    NONE;

    /** Whether a number so written can stand in a file with this decimal mark. */
    boolean fits(DecimalMark mark) {
        return switch (this) {
            case WHOLE, POINT_OR_THOUSANDS, COMMA_OR_THOUSANDS -> true;
            case POINT, COMMA_THOUSANDS -> mark == DecimalMark.POINT;
            case COMMA, POINT_THOUSANDS -> mark == DecimalMark.COMMA;
            case NONE -> false;
        };
    }

    /** Whether a number so written proves which mark is decimal. */
    boolean proves() {
        return this == POINT || this == COMMA || this == POINT_THOUSANDS || this == COMMA_THOUSANDS;
    }

    /**
     * The value of a number that stands alone, by its own form; a mark that may be decimal is.
     *
     * @param text a number
     */
    static double value(CharSequence text) {
        NumberForm form = of(text);
        boolean comma = form == COMMA || form == COMMA_OR_THOUSANDS || form == POINT_THOUSANDS;
        return (comma ? DecimalMark.COMMA : DecimalMark.POINT).parse(text);
    }

    /** Finds the form of a cell. Blanks and apostrophes between groups of three digits are taken as thousands marks. */
    static NumberForm of(CharSequence text) {
        int length = text.length();
        int at = length > 0 && (text.charAt(0) == '-' || text.charAt(0) == '+') ? 1 : 0;
        int first = at;
        int digits = 0;
        int points = 0;
        int commas = 0;
        int lastMark = -1;
        int blanks = 0;
        for (; at < length; at++) {
            char c = text.charAt(at);
            if (c >= '0' && c <= '9') {
                digits++;
            } else if (c == '.') {
                points++;
                lastMark = at;
            } else if (c == ',') {
                commas++;
                lastMark = at;
            } else if (c == ' ' || c == '\'') {
                blanks++;
            } else {
                break;
            }
        }
        if (digits == 0) {
            return NONE;
        }
        boolean exponent = at < length;
        if (exponent && !isExponent(text, at)) {
            return NONE;
        }
        if (points + commas + blanks == 0) {
            return WHOLE;
        }
        return points + commas == 1 && blanks == 0
                ? oneMark(text, first, lastMark, at, exponent)
                : grouped(text, first, at, exponent);
    }

    private static boolean isExponent(CharSequence text, int at) {
        char e = text.charAt(at);
        int from = at + 1;
        if (e != 'e' && e != 'E') {
            return false;
        }
        if (from < text.length() && (text.charAt(from) == '-' || text.charAt(from) == '+')) {
            from++;
        }
        return from < text.length() && text.length() - from <= 3 && countDigits(text, from) == text.length() - from;
    }

    private static int countDigits(CharSequence text, int from) {
        int at = from;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        return at - from;
    }

    private static NumberForm oneMark(CharSequence text, int first, int mark, int end, boolean exponent) {
        boolean point = text.charAt(mark) == '.';
        int before = mark - first;
        boolean thousands = !exponent && end - mark - 1 == 3 && before >= 1 && before <= 3 && text.charAt(first) != '0';
        if (point) {
            return thousands ? POINT_OR_THOUSANDS : POINT;
        }
        return thousands ? COMMA_OR_THOUSANDS : COMMA;
    }

    /** Several marks: all but the last kind must set apart groups of three digits. */
    private static NumberForm grouped(CharSequence text, int first, int end, boolean exponent) {
        char group = 0;
        char decimal = 0;
        int since = 0;
        int groups = 0;
        for (int at = first; at < end; at++) {
            char c = text.charAt(at);
            if (c >= '0' && c <= '9') {
                since++;
                continue;
            }
            if (decimal != 0 || groups == 0 && (since == 0 || since > 3) || groups > 0 && since != 3) {
                return NONE;
            }
            if (groups == 0 || c == group) {
                group = c;
                groups++;
            } else if (c == '.' || c == ',') {
                decimal = c;
            } else {
                return NONE;
            }
            since = 0;
        }
        if (decimal == 0 && (since != 3 || exponent)) {
            return NONE;
        }
        return byMarks(group, decimal);
    }

    private static NumberForm byMarks(char group, char decimal) {
        if (group == '.') {
            return POINT_THOUSANDS;
        }
        if (group == ',') {
            return COMMA_THOUSANDS;
        }
        return decimal == '.' ? POINT : decimal == ',' ? COMMA : WHOLE;
    }
}
