package tallywell.recheck;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** The cells of a workbook, whichever program saved it. */
public final class WorkbookCells {
    private final Map<String, CellSheet> sheets = new LinkedHashMap<>();

    private final SortedSet<String> covers = new TreeSet<>();

    private WorkbookCells(XSSFWorkbook book) {
        if (book.getCTWorkbook().isSetExternalReferences()) {
            covers.add("links to other files");
        }
        if (book.getCTWorkbook().isSetCalcPr()
                && !book.getCTWorkbook().getCalcPr().getFullPrecision()) {
            covers.add("numbers cut to what is shown (precision as displayed)");
        }
        for (Sheet sheet : book) {
            CellSheet cells = new CellSheet();
            cover(book, sheet, cells);
            for (Row row : sheet) {
                for (org.apache.poi.ss.usermodel.Cell cell : row) {
                    cells.put(cell.getRowIndex(), cell.getColumnIndex(), cell(cell));
                }
            }
            sheets.put(sheet.getSheetName(), cells);
        }
    }

    private static void cover(XSSFWorkbook book, Sheet sheet, CellSheet cells) {
        if (book.getSheetVisibility(book.getSheetIndex(sheet)) != SheetVisibility.VISIBLE) {
            cells.cover("is hidden");
        }
        sheet.getMergedRegions().forEach(each -> cells.cover("has " + each.formatAsString() + " merged into one cell"));
        if (sheet.getSheetConditionalFormatting().getNumConditionalFormattings() > 0) {
            cells.cover("has conditional formats");
        }
    }

    /**
     * Reads a workbook.
     *
     * @throws InputException if the file is no workbook, or damaged
     */
    public static WorkbookCells read(Path file) throws InputException {
        if (!Files.isRegularFile(file)) {
            throw new InputException(Place.file(file), "the file does not exist; expected a workbook of 'workup'");
        }
        try (InputStream in = Files.newInputStream(file)) {
            return of(in);
        } catch (IOException | RuntimeException e) {
            // The library answers damaged packages with unchecked exceptions of many kinds.
            throw new InputException(
                    Place.file(file), "found no whole xlsx file; expected a workbook that 'workup' wrote", e);
        }
    }

    /** Reads a workbook that is known to be whole. */
    public static WorkbookCells of(InputStream in) throws IOException {
        try (XSSFWorkbook book = new XSSFWorkbook(in)) {
            return new WorkbookCells(book);
        }
    }

    /** What changes how all sheets show, or where they look. */
    SortedSet<String> covers() {
        return new TreeSet<>(covers);
    }

    /** The names of the sheets, in order. */
    Set<String> names() {
        return sheets.keySet();
    }

    Optional<CellSheet> sheet(String name) {
        return Optional.ofNullable(sheets.get(name));
    }

    private static Cell cell(org.apache.poi.ss.usermodel.Cell cell) {
        boolean computed = cell.getCellType() == CellType.FORMULA;
        String formula = computed ? FormulaText.of(cell.getCellFormula()) : "";
        CellType shown = computed ? cell.getCachedFormulaResultType() : cell.getCellType();
        return switch (shown) {
            case NUMERIC ->
                new Cell(
                        formula,
                        true,
                        cell.getNumericCellValue(),
                        "",
                        String.valueOf(cell.getCellStyle().getDataFormatString()));
            case STRING ->
                new Cell(formula, false, 0, cell.getRichStringCellValue().getString());
            case BOOLEAN -> new Cell(formula, false, 0, cell.getBooleanCellValue() ? "TRUE" : "FALSE");
            case ERROR -> new Cell(formula, false, 0, "error " + cell.getErrorCellValue());
            default -> new Cell(formula, false, 0, "");
        };
    }
}
