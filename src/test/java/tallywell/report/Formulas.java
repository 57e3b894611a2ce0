package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** What must hold of every formula of a workbook. */
final class Formulas {
    private Formulas() {}

    /** No cell shows an error. */
    static void assertNoErrors(String name, XSSFWorkbook book) {
        for (Sheet sheet : book) {
            for (Row row : sheet) {
                for (Cell cell : row) {
                    CellType type = cell.getCellType() == CellType.FORMULA
                            ? cell.getCachedFormulaResultType()
                            : cell.getCellType();
                    assertThat(type)
                            .as(name + ", " + sheet.getSheetName() + " " + cell.getAddress() + ": " + cell)
                            .isNotEqualTo(CellType.ERROR);
                }
            }
        }
    }
}
