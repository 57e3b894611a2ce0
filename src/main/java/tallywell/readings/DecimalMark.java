package tallywell.readings;

/** What stands between the whole part of a number and its decimals. */
enum DecimalMark {
    /** As in 0.45. */
    POINT('.', "decimal point"),
    /** As in 0,45. */
    COMMA(',', "decimal comma");

    /** Ten to this power is the largest that a double holds exactly. */
    private static final int EXACT = 22;

    private static final double[] POWERS = powers();

    private final char mark;
    private final String label;

    DecimalMark(char mark, String label) {
        this.mark = mark;
        this.label = label;
    }

    /** The mark in the words of a message. */
    String label() {
        return label;
    }

    private static double[] powers() {
        double[] powers = new double[EXACT + 1];
        powers[0] = 1;
        for (int i = 1; i <= EXACT; i++) {
            powers[i] = powers[i - 1] * 10;
        }
        return powers;
    }

    /**
     * The value of a number of a form that fits this mark, correctly rounded. Up to 15 digits and a power of ten up to
     * 22 one division of two exact doubles is correctly rounded (Clinger 1990, How to read floating point numbers
     * accurately, PLDI); the rest is left to the Java library.
     */
    double parse(CharSequence text) {
        long digits = 0;
        int count = 0;
        int decimals = 0;
        boolean behind = false;
        int length = text.length();
        int at = 0;
        boolean negative = text.charAt(0) == '-';
        if (negative || text.charAt(0) == '+') {
            at = 1;
        }
        for (; at < length; at++) {
            char c = text.charAt(at);
            if (c >= '0' && c <= '9') {
                digits = 10 * digits + c - '0';
                count += digits == 0 ? 0 : 1;
                decimals += behind ? 1 : 0;
            } else if (c == mark) {
                behind = true;
            } else if (c == 'e' || c == 'E') {
                break;
            }
            if (count > 15) {
                return Double.parseDouble(plain(text));
            }
        }
        if (at < length || decimals > EXACT) {
            return Double.parseDouble(plain(text));
        }
        double value = digits / POWERS[decimals];
        return negative ? -value : value;
    }

    private String plain(CharSequence text) {
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == mark) {
                plain.append('.');
            } else if (c != '.' && c != ',' && c != ' ' && c != '\'') {
                plain.append(c);
            }
        }
        return plain.toString();
    }
}
