package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.Well;
import tallywell.table.Table;

/** A table, with what each of its cells looks like. */
final class Sheet {
    /** Longer cells hold no number, well or word that matters here. */
    private static final int LONGEST = 64;

    /** No row of a spreadsheet has more cells, nor has a plate of 1536 wells at ten wavelengths. */
    private static final int WIDEST = 16_384;

    private final Table table;
    private final Table.Cell cell;
    private final byte[] looks;

    /**
     * Looks at all cells.
     *
     * @throws InputException if a row has more cells than any row of readings
     */
    Sheet(Table table) throws InputException {
        this.table = table;
        cell = new Table.Cell(table);
        looks = new byte[table.places()];
        for (int row = 0; row < table.rows(); row++) {
            int width = table.width(row);
            if (width > WIDEST) {
                throw new InputException(
                        table.place(row),
                        "found a row of " + width + " cells; expected at most " + WIDEST
                                + ", as many as readings fill");
            }
            for (int column = 0; column < width; column++) {
                looks[table.index(row, column)] = (byte) classify(row, column).ordinal();
            }
        }
    }

    private Look classify(int row, int column) {
        cell.at(row, column);
        int length = cell.length();
        if (length == 0) {
            return Look.EMPTY;
        }
        if (length > LONGEST) {
            return Look.TEXT;
        }
        char first = cell.charAt(0);
        if (first >= '0' && first <= '9' || first == '-' || first == '+' || first == '.' || first == ',') {
            NumberForm form = NumberForm.of(cell);
            if (form != NumberForm.NONE) {
                return form != NumberForm.WHOLE && table.isNumber(row, column) ? Look.STORED : Look.of(form);
            }
        }
        return ofWords(plain(cell.toString()));
    }

    /** Text with plain blanks in place of those that do not break lines. */
    private static String plain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\u00a0' || c == '\u202f' || c == '\u2007' || c == '\u2009' || c == '\u3000') {
                return text.replaceAll("[\u00a0\u202f\u2007\u2009\u3000]", " ").strip();
            }
        }
        return text;
    }

    private static Look ofWords(String text) {
        if (text.isEmpty()) {
            return Look.EMPTY;
        }
        if (Character.isLetter(text.charAt(0)) && Well.rowOf(text) >= 0) {
            return Look.ROW;
        }
        if (WellHeading.plain(text).isPresent()) {
            return Look.WELL;
        }
        Mark mark = Words.mark(text);
        if (mark != Mark.NONE) {
            return mark == Mark.OVER ? Look.OVER : Look.MISSING;
        }
        if (text.indexOf(':') > 0 && Moment.parse(text).isPresent()) {
            return Look.CLOCK;
        }
        return Look.of(NumberForm.of(bare(text)));
    }

    /** A number without a unit of absorbance behind it, with plain signs and blanks. */
    private static String bare(String text) {
        return text.replace('\u2212', '-')
                .replace('\u00a0', ' ')
                .replace('\u202f', ' ')
                .replace('\u2009', ' ')
                .replace('\u2019', '\'')
                .replaceFirst("(?<=\\d) ?(A|AU|OD|Abs|E|AE)$", "");
    }

    Table table() {
        return table;
    }

    int rows() {
        return table.rows();
    }

    int width(int row) {
        return table.width(row);
    }

    /** What a cell looks like; empty beyond the end of its row. */
    Look look(int row, int column) {
        return row < 0 || column < 0 || column >= table.width(row)
                ? Look.EMPTY
                : Look.at(looks[table.index(row, column)]);
    }

    String text(int row, int column) {
        return plain(table.text(row, column));
    }

    boolean isBlank(int row) {
        for (int column = 0; column < width(row); column++) {
            if (look(row, column) != Look.EMPTY) {
                return false;
            }
        }
        return true;
    }

    /** The first row from the given one on that is not blank; the number of rows if there is none. */
    int nextFilled(int from) {
        int row = from;
        while (row < rows() && isBlank(row)) {
            row++;
        }
        return row;
    }

    /** The row of a plate that a cell names, such as {@code B}, {@code Row B} or {@code b:}; -1 if it names none. */
    int plateRow(int row, int column) {
        Look look = look(row, column);
        if (look == Look.ROW) {
            return Well.rowOf(text(row, column));
        }
        if (look != Look.TEXT) {
            return -1;
        }
        String text = text(row, column);
        if (text.length() > 24) {
            return -1;
        }
        return Well.rowOf(named(text, Meaning.ROW));
    }

    /** The column of a plate that a cell names, such as {@code 3}, {@code 03} or {@code Column 3}; -1 if none. */
    int plateColumn(int row, int column) {
        Look look = look(row, column);
        if (look == Look.WHOLE) {
            return Well.columnOf(text(row, column));
        }
        if (look == Look.POINT || look == Look.COMMA) {
            // Programs that know only one kind of number write 1.0 for 1.
            String text = text(row, column);
            return text.matches("\\d{1,2}[.,]0") ? Well.columnOf(text.substring(0, text.length() - 2)) : -1;
        }
        if (look != Look.TEXT) {
            return -1;
        }
        String text = text(row, column);
        return text.length() > 24 ? -1 : Well.columnOf(named(text, Meaning.COLUMN));
    }

    private static String named(String text, Meaning meaning) {
        List<String> words = Words.split(text.toLowerCase(java.util.Locale.ROOT));
        if (words.size() == 1 && text.matches(".*[:.)]")) {
            return words.get(0);
        }
        return words.size() == 2 && Words.of(words.get(0)).contains(meaning) ? words.get(1) : "";
    }

    /** The well that a cell names. */
    Optional<Well> well(int row, int column) {
        return look(row, column) == Look.WELL ? WellHeading.plain(text(row, column)) : Optional.empty();
    }

    /** The number in a cell that looks like one. */
    double number(int row, int column, DecimalMark mark) {
        Look look = look(row, column);
        DecimalMark own = look == Look.STORED ? DecimalMark.POINT : mark;
        cell.at(row, column);
        char first = cell.charAt(0);
        char last = cell.charAt(cell.length() - 1);
        boolean plain = last >= '0' && last <= '9' && first < 128 || last == '.' || last == ',';
        return plain ? own.parse(cell) : own.parse(bare(plain(cell.toString())));
    }

    /** All cells of a row as one line of words; of two cells the first announces the second. */
    String line(int row) {
        List<Integer> filled = filled(row);
        if (filled.size() == 2 && look(row, filled.get(0)) == Look.TEXT) {
            String key = text(row, filled.get(0));
            return key + (key.endsWith(":") || key.endsWith("=") ? " " : ": ") + text(row, filled.get(1));
        }
        StringBuilder line = new StringBuilder();
        for (int column = 0; column < Math.min(width(row), 64); column++) {
            if (look(row, column) != Look.EMPTY) {
                line.append(line.isEmpty() ? "" : " ").append(text(row, column));
            }
        }
        return line.toString();
    }

    /** The cells of a row that are not empty. */
    List<Integer> filled(int row) {
        List<Integer> columns = new ArrayList<>();
        for (int column = 0; column < width(row); column++) {
            if (look(row, column) != Look.EMPTY) {
                columns.add(column);
            }
        }
        return columns;
    }

    /** Stops at a cell, whose text the message shows. */
    InputException fault(int row, int column, String found, String expected) {
        String text = text(row, column);
        String shown = text.length() > 40 ? text.substring(0, 40) + "…" : text;
        return new InputException(
                table.place(row, column), "found " + found + " '" + shown + "'; expected " + expected);
    }
}
