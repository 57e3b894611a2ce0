package tallywell.plate;

import java.util.Optional;

/**
 * One well, by row and column.
 *
 * @param row from 0, printed as a letter
 * @param column from 0, printed from 1
 */
public record Well(int row, int column) implements Comparable<Well> {
    private static final int LETTERS = 26;

    /** Refuses negative positions. */
    public Well {
        if (!(row >= 0 && column >= 0)) {
            throw new IllegalArgumentException("row and column must be at least 0 but were " + row + " and " + column);
        }
    }

    /**
     * Reads a well such as {@code B7}, {@code b07} or {@code AA1}. A blank between letter and number is allowed.
     *
     * @param text the well as typed
     * @return empty if the text is no well of any plate
     */
    public static Optional<Well> parse(CharSequence text) {
        int start = 0;
        int end = text.length();
        while (start < end && Character.isWhitespace(text.charAt(start))) {
            start++;
        }
        while (end > start && Character.isWhitespace(text.charAt(end - 1))) {
            end--;
        }
        int at = start;
        while (at < end && isLetter(text.charAt(at))) {
            at++;
        }
        int row = rowOf(text.subSequence(start, at));
        while (at < end && text.charAt(at) == ' ') {
            at++;
        }
        int column = columnOf(text.subSequence(at, end));
        return row < 0 || column < 0 ? Optional.empty() : Optional.of(new Well(row, column));
    }

    /**
     * The row a letter or pair of letters names, from 0; -1 if none does. Upper and lower case are the same.
     *
     * @param letters such as {@code H} or {@code AF}
     */
    public static int rowOf(CharSequence letters) {
        int length = letters.length();
        if (length == 0 || length > 2) {
            return -1;
        }
        int row = 0;
        for (int i = 0; i < length; i++) {
            char c = letters.charAt(i);
            if (!isLetter(c)) {
                return -1;
            }
            row = row * LETTERS + (c & ~0x20) - 'A' + 1;
        }
        return row <= 32 ? row - 1 : -1;
    }

    /**
     * The column a number names, from 0; -1 if none does. Leading zeros are allowed.
     *
     * @param digits such as {@code 1}, {@code 01} or {@code 48}
     */
    public static int columnOf(CharSequence digits) {
        int length = digits.length();
        if (length == 0 || length > 3) {
            return -1;
        }
        int column = 0;
        for (int i = 0; i < length; i++) {
            char c = digits.charAt(i);
            if (c < '0' || c > '9') {
                return -1;
            }
            column = 10 * column + c - '0';
        }
        return column >= 1 && column <= 48 ? column - 1 : -1;
    }

    /** The letter or letters of a row counted from 0. */
    public static String rowName(int row) {
        return row < LETTERS
                ? String.valueOf((char) ('A' + row))
                : String.valueOf((char) ('A' + row / LETTERS - 1)) + (char) ('A' + row % LETTERS);
    }

    /** The letter or letters of this well's row. */
    public String rowName() {
        return rowName(row);
    }

    private static boolean isLetter(char c) {
        return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
    }

    /** Row order. */
    @Override
    public int compareTo(Well other) {
        return row != other.row ? Integer.compare(row, other.row) : Integer.compare(column, other.column);
    }

    /** The well as reports print it, such as {@code B7}. */
    @Override
    public String toString() {
        return rowName() + (column + 1);
    }
}
