package tallywell.report;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** One sheet in the making: cells from top to bottom and left to right, and how it is shown and printed. */
final class Sheet {
    private static final int UNITS_PER_CHARACTER = 256;

    private final XSSFSheet poi;
    private final Styles styles;
    private final Store store;
    private final SheetText text;

    Sheet(XSSFSheet poi, Styles styles, Store store) {
        this.poi = poi;
        this.styles = styles;
        this.store = store;
        this.text = new SheetText(store.out());
    }

    XSSFSheet poi() {
        return poi;
    }

    Store store() {
        return store;
    }

    SheetText text() {
        return text;
    }

    /** Starts a row, counted from 0. */
    void row(int index) throws IOException {
        text.row(index);
    }

    /** Starts a row with a height in points. */
    void row(int index, double heightPt) throws IOException {
        text.row(index, heightPt);
    }

    /** A text; one that begins like a formula is marked as text for programs that would read it again. */
    void text(int column, String value, Look look) {
        text.text(column, value, styles.of(beginsLikeFormula(value) ? look.asText() : look));
    }

    private static boolean beginsLikeFormula(String value) {
        return !value.isEmpty() && "=+-@\t\r".indexOf(value.charAt(0)) >= 0;
    }

    void number(int column, double value, Look look) {
        text.number(column, value, styles.of(look));
    }

    /** A number, or an empty cell. */
    void number(int column, OptionalDouble value, Look look) {
        if (value.isPresent()) {
            number(column, value.getAsDouble(), look);
        } else {
            blank(column, look);
        }
    }

    void blank(int column, Look look) {
        text.blank(column, styles.of(look));
    }

    /** A formula with what it gives; an empty text where there is no number. */
    void formula(int column, String formula, OptionalDouble value, Look look) {
        text.formula(column, formula, value, styles.of(look));
    }

    void formula(int column, String formula, double value, Look look) {
        text.formula(column, formula, value, styles.of(look));
    }

    void formula(int column, String formula, String value, Look look) {
        text.formula(column, formula, value, styles.of(look));
    }

    /** Widths of the first columns in characters. */
    void widths(double... characters) {
        for (int i = 0; i < characters.length; i++) {
            width(i, characters[i]);
        }
    }

    void width(int column, double characters) {
        poi.setColumnWidth(column, (int) Math.round(characters * UNITS_PER_CHARACTER));
    }

    /** One cell over several. */
    void merge(int firstRow, int lastRow, int firstColumn, int lastColumn) {
        poi.addMergedRegionUnsafe(new CellRangeAddress(firstRow, lastRow, firstColumn, lastColumn));
    }

    /** Cells across one row that look alike, the first with a text, merged into one. */
    void banner(int firstColumn, int lastColumn, String value, Look look) {
        text(firstColumn, value, look);
        for (int column = firstColumn + 1; column <= lastColumn; column++) {
            blank(column, look);
        }
        if (lastColumn > firstColumn) {
            merge(text.row(), text.row(), firstColumn, lastColumn);
        }
    }

    /** A header row. */
    void heads(int firstColumn, List<String> titles, Look look) {
        int column = firstColumn;
        for (String title : titles) {
            text(column++, title, look);
        }
    }

    /** Keeps the first rows and columns in view. */
    void freeze(int rows, int columns) {
        poi.createFreezePane(columns, rows);
    }

    /** A4, one page wide, with page numbers; the first rows again on each page. */
    void print(boolean landscape, boolean onePage, int titleRows, String footer) {
        PrintSetup setup = poi.getPrintSetup();
        setup.setPaperSize(PrintSetup.A4_PAPERSIZE);
        setup.setLandscape(landscape);
        poi.setFitToPage(true);
        setup.setFitWidth((short) 1);
        setup.setFitHeight((short) (onePage ? 1 : 0));
        poi.setMargin(org.apache.poi.ss.usermodel.PageMargin.LEFT, 0.5);
        poi.setMargin(org.apache.poi.ss.usermodel.PageMargin.RIGHT, 0.5);
        poi.setMargin(org.apache.poi.ss.usermodel.PageMargin.TOP, 0.6);
        poi.setMargin(org.apache.poi.ss.usermodel.PageMargin.BOTTOM, 0.7);
        if (titleRows > 0) {
            poi.setRepeatingRows(new CellRangeAddress(0, titleRows - 1, -1, -1));
        }
        // & begins a code in footers.
        String plain = Book.xml(footer).replace("&", "&&");
        poi.getFooter().setLeft("&8 " + (plain.length() > 100 ? plain.substring(0, 100) : plain));
        poi.getFooter().setRight("&8&A, page &P of &N");
    }

    /** Prints at a size that can be read, on as many pages across as it takes, with the first columns on each. */
    void printWide(int titleColumns, int titleRows) {
        poi.setFitToPage(false);
        poi.getPrintSetup().setScale((short) 60);
        poi.setRepeatingColumns(new CellRangeAddress(-1, -1, 0, titleColumns - 1));
        poi.setRepeatingRows(new CellRangeAddress(0, titleRows - 1, -1, -1));
    }

    /** What is printed: from the first cell to this one. */
    void printArea(int lastRow, int lastColumn) {
        int index = poi.getWorkbook().getSheetIndex(poi);
        poi.getWorkbook().setPrintArea(index, 0, lastColumn, 0, lastRow);
    }

    /** Makes a cell lead to another sheet. */
    void link(int row, int column, String sheet) {
        XSSFHyperlink link = poi.getWorkbook().getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
        link.setAddress("'" + sheet + "'!A1");
        link.setCellReference(At.cell(row, column));
        poi.addHyperlink(link);
    }

    /** Rows that stand on top of every further page. */
    void titleRows(int first, int last) {
        poi.setRepeatingRows(new CellRangeAddress(first, last, -1, -1));
    }

    /** Prints landscape at the scale at which so many characters fit across. */
    void scaleTo(int characters) {
        // A character is 7 pixels of 1/96 inch wide; 10.5 inches remain between the margins.
        double inches = characters * 7 / 96.0;
        poi.setFitToPage(false);
        poi.getPrintSetup().setScale((short) Math.max(10, Math.min(100, Math.floor(90 * 10.5 / inches))));
    }

    /** Begins a new page after a row. */
    void breakAfter(int row) {
        poi.setRowBreak(row);
    }
}
