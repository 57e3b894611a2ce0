package tallywell.table;

import java.util.List;
import java.util.regex.Pattern;

/**
 * A line of text, cut at its runs of blanks.
 *
 * @param pieces what stands between them; none if the line is blank
 */
record AlignedLine(List<Piece> pieces) {
    private static final Pattern WELL = Pattern.compile("[A-Za-z]{1,2}\\d{1,3}");
    private static final Pattern LETTER = Pattern.compile("[A-Za-z]|[Aa][A-Fa-f]");
    private static final Pattern COLUMN = Pattern.compile("0?[1-9]|[1-4]\\d");

    /** What a cell holds, as far as it matters here. */
    enum Kind {
        NUMBER,
        WELL,
        LETTER,
        WORD
    }

    /** A stretch of a line without a gap in it; first and last position count from 0. */
    record Piece(String text, int first, int last) {
        Kind kind() {
            char c = text.charAt(0);
            if (c >= '0' && c <= '9' || text.length() > 1 && (c == '-' || c == '+' || c == '.')) {
                return Kind.NUMBER;
            }
            return LETTER.matcher(text).matches()
                    ? Kind.LETTER
                    : WELL.matcher(text).matches() ? Kind.WELL : Kind.WORD;
        }

        /** Whether it is a number or a well, as opposed to a word of a title. */
        boolean isEntry() {
            return kind() == Kind.NUMBER || kind() == Kind.WELL;
        }

        /** Whether it is one blank behind another piece, as words of one heading are. */
        boolean follows(Piece other) {
            return first - other.last == 2 && !isEntry() && !other.isEntry();
        }

        boolean overlaps(Piece other) {
            return first <= other.last && last >= other.first;
        }

        int distance(Piece other) {
            return Math.max(0, Math.max(first - other.last, other.first - last));
        }

        Piece joined(Piece other) {
            return new Piece(text, Math.min(first, other.first), Math.max(last, other.last));
        }
    }

    int size() {
        return pieces.size();
    }

    boolean isBlank() {
        return pieces.isEmpty();
    }

    Kind kind() {
        return pieces.get(0).kind();
    }

    boolean isMostlyEntries() {
        return pieces.stream().filter(Piece::isEntry).count() * 2 >= size();
    }

    /** Whether it is a row of a table, by its looks: mostly numbers, wells and letters. */
    boolean isRow() {
        return !isBlank()
                && pieces.stream().filter(piece -> piece.kind() != Kind.WORD).count() * 2 >= size();
    }

    /** Whether it names columns: ascending numbers, letters or wells, with or without words before them. */
    boolean isHeading() {
        int at = 0;
        while (at < size() && pieces.get(at).kind() == Kind.WORD) {
            at++;
        }
        List<Piece> names = pieces.subList(at, size());
        if (names.size() < 2 || at > names.size()) {
            return false;
        }
        Kind kind = names.get(0).kind();
        int before = 0;
        for (Piece name : names) {
            if (name.kind() != kind) {
                return false;
            }
            if (kind == Kind.NUMBER) {
                int value = COLUMN.matcher(name.text()).matches() ? Integer.parseInt(name.text()) : 0;
                if (value <= before) {
                    return false;
                }
                before = value;
            }
        }
        return true;
    }
}
