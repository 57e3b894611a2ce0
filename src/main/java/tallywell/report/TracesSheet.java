package tallywell.report;

import java.io.IOException;
import java.util.List;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.util.Units;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFPicture;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The pictures of a kinetic run, one below the other: the plate of small traces, then wells one by one. */
final class TracesSheet {
    static final String NAME = "Traces";

    /** Width of a column in pixels at 100 %; seven of them are a character of the standard face. */
    private static final int COLUMN = 70;

    private static final int COLUMNS = 12;
    private static final int PIXELS_PER_ROW = 20;
    private static final double POINTS_PER_ROW = 15;

    private TracesSheet() {}

    /**
     * Writes the sheet.
     *
     * @param pictures at least one
     * @param note what is shown and what is not
     * @param footer for the print
     */
    static void write(List<SheetPicture> pictures, String note, Sheet sheet, String footer) throws IOException {
        int row = 0;
        sheet.row(row++, 26);
        sheet.text(0, NAME, Looks.TITLE);
        sheet.row(row++, POINTS_PER_ROW);
        sheet.text(0, note, Looks.NOTE);
        for (int i = 0; i < pictures.size(); i++) {
            row = place(pictures.get(i), row + 1, sheet);
            if (i % 2 == 0 && i + 1 < pictures.size()) {
                sheet.poi().setRowBreak(row);
            }
        }
        for (int column = 0; column < COLUMNS; column++) {
            sheet.width(column, COLUMN / 7.0);
        }
        sheet.print(false, false, 0, footer);
    }

    /** Puts a picture over rows of known height and says which row comes after it. */
    private static int place(SheetPicture picture, int top, Sheet sheet) throws IOException {
        int height = (int) Math.round(COLUMN * COLUMNS * picture.form());
        int rows = height / PIXELS_PER_ROW;
        for (int row = top; row <= top + rows; row++) {
            sheet.row(row, POINTS_PER_ROW);
        }
        XSSFWorkbook workbook = sheet.poi().getWorkbook();
        XSSFDrawing drawing = sheet.poi().createDrawingPatriarch();
        int rest = height % PIXELS_PER_ROW * Units.EMU_PER_PIXEL;
        XSSFClientAnchor anchor = drawing.createAnchor(0, 0, 0, rest, 0, top, COLUMNS, top + rows);
        anchor.setAnchorType(ClientAnchor.AnchorType.MOVE_DONT_RESIZE);
        XSSFPicture placed =
                drawing.createPicture(anchor, workbook.addPicture(picture.png(), XSSFWorkbook.PICTURE_TYPE_PNG));
        placed.getCTPicture().getNvPicPr().getCNvPr().setDescr(Book.xml(picture.title()));
        return top + rows + 1;
    }
}
