package tallywell.report;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.poi.ss.util.CellRangeAddress;

/** A sheet on several runs: some lines of text, then one table, written cell by cell. */
final class AcrossSheet {
    private static final int LINE_PT = 13;

    private final Sheet sheet;
    private final List<String> titles;
    private final double[] widths;
    private int row;
    private int headRow;
    private int column;

    AcrossSheet(Sheet sheet, List<String> titles, double[] widths) {
        this.sheet = sheet;
        this.titles = titles;
        this.widths = widths.clone();
    }

    /** Title, lines of text, header row. */
    void head(String title, List<String> lines) throws IOException {
        sheet.row(row++, 26);
        sheet.text(0, title, Looks.TITLE);
        int last = titles.size() - 1;
        int characters = 0;
        for (double width : widths) {
            characters += (int) width;
        }
        for (String line : lines) {
            sheet.row(row++, LINE_PT * ChecksSheet.lines(line, characters));
            sheet.banner(0, last, line, Looks.WRAPPED);
        }
        row++;
        headRow = row;
        sheet.row(row++);
        for (int i = 0; i < titles.size(); i++) {
            sheet.text(i, titles.get(i), Looks.head(isNumber(i), i > 0 && isNumber(i - 1)));
        }
    }

    private boolean isNumber(int at) {
        return switch (titles.get(at)) {
            case "first", "second", "difference", "value", "u", "U", "k", "n", "SD", "Birge ratio", "score", "weight" ->
                true;
            default -> false;
        };
    }

    /** Starts the next row. */
    void row() throws IOException {
        sheet.row(row++);
        column = 0;
    }

    void text(String text) {
        text(text, Looks.TEXT);
    }

    void text(String text, Look look) {
        boolean afterNumber = column > 0 && isNumber(column - 1);
        sheet.text(column++, text, afterNumber ? look.align(Look.Align.INDENT) : look);
    }

    /** Leaves cells empty. */
    void skip(int cells) {
        for (int i = 0; i < cells; i++) {
            sheet.blank(column++, Looks.TEXT);
        }
    }

    /** A value, shown to the place of its expanded uncertainty. */
    void value(OptionalDouble value, OptionalDouble expanded) {
        sheet.number(
                column++,
                value,
                value.isPresent()
                        ? Look.PLAIN.format(Looks.decimals(Rounded.place(value.getAsDouble(), expanded)))
                        : Look.PLAIN);
    }

    void uncertainty(OptionalDouble u) {
        sheet.number(column++, u, u.isPresent() ? Look.PLAIN.format(Looks.digits(u.getAsDouble(), 2)) : Look.PLAIN);
    }

    void score(OptionalDouble score) {
        sheet.number(column++, score, Look.PLAIN.format("0.00"));
    }

    void count(int n) {
        sheet.number(column++, (double) n, Looks.TEXT);
    }

    /** Widths, filter, printing. */
    void finish() {
        sheet.widths(widths);
        sheet.freeze(headRow + 1, 1);
        sheet.poi().setAutoFilter(new CellRangeAddress(headRow, Math.max(headRow, row - 1), 0, titles.size() - 1));
        sheet.print(true, false, 0, sheet.poi().getSheetName());
        sheet.titleRows(headRow, headRow);
    }

    /** The sheet that says what all this comes from. */
    static void files(Book book, Provenance made) throws IOException {
        AcrossSheet files =
                new AcrossSheet(book.add("Files"), List.of("role", "file", "SHA-256"), new double[] {14, 60, 70});
        files.head("Files", List.of("Made " + made.madeText() + " with Tallywell " + made.version()));
        for (InputFile each : made.inputs()) {
            files.row();
            files.text(each.role());
            files.text(each.name());
            files.text(each.sha256());
        }
        files.finish();
    }
}
