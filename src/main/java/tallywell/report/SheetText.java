package tallywell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;

/**
 * The rows of one worksheet as SpreadsheetML, written once from top to bottom and left to right.
 *
 * <p>A workbook's cells are many and plain, so they are written as text rather than built as objects: a plate followed
 * over time is written some ten times faster and takes a fraction of the memory, and rows can go to a file as they come.
 *
 * <p>Source: ECMA-376-1:2016, 18.3.1.73 (row), 18.3.1.4 (c), 22.9.2.19 (ST_Xstring).
 */
final class SheetText {
    /** The longest text a cell may hold (ECMA-376 leaves it to applications; spreadsheets allow this much). */
    private static final int LONGEST = 32_767;

    private static final int SPILL = 1 << 16;

    private final OutputStream sink;
    private final StringBuilder text = new StringBuilder(SPILL + 4096);
    private int row = -1;
    private int column = -1;
    private int lastRow;
    private int lastColumn;
    private boolean open;

    /** Starts rows that go to a stream as UTF-8. */
    SheetText(OutputStream sink) {
        this.sink = sink;
    }

    /** Starts a row below the last one. */
    void row(int index) throws IOException {
        row(index, 0);
    }

    /** Starts a row with a height in points; 0 leaves the height to the program that shows it. */
    void row(int index, double heightPt) throws IOException {
        if (!(index > row)) {
            throw new IllegalArgumentException("row must be below " + row + " but was " + index);
        }
        endRow();
        row = index;
        column = -1;
        lastRow = index;
        open = true;
        text.append("<row r=\"").append(index + 1).append('"');
        if (heightPt > 0) {
            text.append(" ht=\"").append(heightPt).append("\" customHeight=\"1\"");
        }
        text.append('>');
    }

    /** The row being written, from 0. */
    int row() {
        return row;
    }

    private void endRow() throws IOException {
        if (open) {
            text.append("</row>");
            open = false;
            if (text.length() > SPILL) {
                spill();
            }
        }
    }

    private void spill() throws IOException {
        sink.write(text.toString().getBytes(StandardCharsets.UTF_8));
        text.setLength(0);
    }

    /** Ends the rows. */
    void finish() throws IOException {
        endRow();
        spill();
        sink.flush();
    }

    /** The cells written so far, such as {@code A1:T37}. */
    String extent() {
        return "A1:" + At.cell(lastRow, lastColumn);
    }

    private StringBuilder open(int at, int style) {
        if (!(at > column && open)) {
            throw new IllegalArgumentException("column must be right of " + column + " but was " + at);
        }
        column = at;
        lastColumn = Math.max(lastColumn, at);
        text.append("<c r=\"").append(At.column(at)).append(row + 1).append('"');
        if (style > 0) {
            text.append(" s=\"").append(style).append('"');
        }
        return text;
    }

    /** A cell without a value. */
    void blank(int at, int style) {
        open(at, style).append("/>");
    }

    /** A text; never taken for a formula. */
    void text(int at, String value, int style) {
        if (value.isEmpty()) {
            blank(at, style);
            return;
        }
        open(at, style)
                .append(" t=\"inlineStr\"><is>")
                .append(needsKeeping(value) ? "<t xml:space=\"preserve\">" : "<t>");
        escape(value);
        text.append("</t></is></c>");
    }

    /** Whether a text has blanks that programs would drop or join. */
    private static boolean needsKeeping(String value) {
        return value.charAt(0) <= ' '
                || value.charAt(value.length() - 1) <= ' '
                || value.indexOf('\n') >= 0
                || value.indexOf('\t') >= 0
                || value.contains("  ");
    }

    /** A finite number. */
    void number(int at, double value, int style) {
        open(at, style).append("><v>");
        append(value);
        text.append("</v></c>");
    }

    /** A formula with the number it gives. */
    void formula(int at, String formula, double value, int style) {
        open(at, style).append("><f>");
        escape(formula);
        text.append("</f><v>");
        append(value);
        text.append("</v></c>");
    }

    /** A formula with the text it gives. */
    void formula(int at, String formula, String value, int style) {
        open(at, style).append(" t=\"str\"><f>");
        escape(formula);
        text.append("</f><v>");
        escape(value);
        text.append("</v></c>");
    }

    /** A formula with the number it gives, or with an empty text where it gives none. */
    void formula(int at, String formula, OptionalDouble value, int style) {
        if (value.isPresent()) {
            formula(at, formula, value.getAsDouble(), style);
        } else {
            formula(at, formula, "", style);
        }
    }

    private void append(double value) {
        if (!(Math.abs(value) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("value must be finite but was " + value);
        }
        long whole = (long) value;
        if (whole == value && Math.abs(value) < 1e15) {
            text.append(whole);
        } else {
            text.append(value);
        }
    }

    /**
     * Appends text such that every character comes back: characters that XML forbids as {@code _xHHHH_}, and what looks
     * like that already with its underscore written so. Halves of surrogate pairs, which no text can hold, become U+FFFD.
     */
    private void escape(String value) {
        int end = Math.min(value.length(), LONGEST);
        for (int i = 0; i < end; i++) {
            char c = value.charAt(i);
            if (c == '&') {
                text.append("&amp;");
            } else if (c == '<') {
                text.append("&lt;");
            } else if (c == '>') {
                text.append("&gt;");
            } else if (c == '_' && looksEscaped(value, i)) {
                text.append("_x005F_");
            } else if (c < ' ' && c != '\t' && c != '\n' || c == '\uFFFE' || c == '\uFFFF') {
                escaped(c);
            } else if (Character.isHighSurrogate(c) && i + 1 < end && Character.isLowSurrogate(value.charAt(i + 1))) {
                text.append(c).append(value.charAt(++i));
            } else {
                text.append(Character.isSurrogate(c) ? '\uFFFD' : c);
            }
        }
    }

    private void escaped(char c) {
        String hex = Integer.toHexString(c).toUpperCase(java.util.Locale.ROOT);
        text.append("_x").append("0".repeat(4 - hex.length())).append(hex).append('_');
    }

    private static boolean looksEscaped(String value, int at) {
        if (at + 6 >= value.length() || value.charAt(at + 1) != 'x' || value.charAt(at + 6) != '_') {
            return false;
        }
        for (int i = at + 2; i < at + 6; i++) {
            if (Character.digit(value.charAt(i), 16) < 0) {
                return false;
            }
        }
        return true;
    }
}
