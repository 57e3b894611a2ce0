package tallywell.table;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** A workbook in the older binary format (xls), or a protected one of either format: both come in the same container. */
final class OldWorkbook {
    /** What a byte of such a file may take in memory once it is opened. */
    private static final int GROWTH = 8;

    private static final String PROTECTED =
            "found a workbook protected by a password; expected one without; save it again without a password";

    private final Path file;
    private final Limits limits;

    OldWorkbook(Path file, Limits limits) {
        this.file = file;
        this.limits = limits;
    }

    /** Reads all sheets. */
    List<Table> sheets() throws IOException, InputException {
        limits.checkBytes(file, Files.size(file) * GROWTH);
        try (POIFSFileSystem container = new POIFSFileSystem(file.toFile(), true)) {
            if (container.getRoot().hasEntryCaseInsensitive("EncryptedPackage")) {
                throw new InputException(Place.file(file), PROTECTED);
            }
            if (!container.getRoot().hasEntryCaseInsensitive("Workbook")
                    && !container.getRoot().hasEntryCaseInsensitive("Book")) {
                throw new InputException(
                        Place.file(file), "found an office document that is no workbook; expected text, xlsx or xls");
            }
            return sheets(container);
        } catch (EncryptedDocumentException e) {
            throw new InputException(Place.file(file), PROTECTED, e);
        } catch (IOException | RuntimeException e) {
            // The library answers damaged files with unchecked exceptions of many kinds.
            throw new InputException(
                    Place.file(file), "found a damaged workbook; expected a whole xls file; export it again", e);
        }
    }

    private List<Table> sheets(POIFSFileSystem container) throws IOException, InputException {
        try (HSSFWorkbook workbook = new HSSFWorkbook(container, false)) {
            List<Table> tables = new ArrayList<>();
            for (Sheet sheet : workbook) {
                tables.add(table(sheet, workbook.getInternalWorkbook().isUsing1904DateWindowing()));
            }
            return tables;
        }
    }

    private Table table(Sheet sheet, boolean from1904) throws InputException {
        CellCollector collector = new CellCollector(file, limits);
        BitSet numbers = new BitSet();
        for (int r = 0; r <= sheet.getLastRowNum(); r++) {
            Row row = sheet.getRow(r);
            int width = row == null ? 0 : row.getLastCellNum();
            for (int c = 0; c < width; c++) {
                Cell cell = row.getCell(c, Row.MissingCellPolicy.RETURN_BLANK_AS_NULL);
                if (cell == null) {
                    collector.empty();
                    continue;
                }
                String text = text(cell, from1904);
                if (typeOf(cell) == CellType.NUMERIC
                        && !text.contains(":")
                        && !text.contains("%")
                        && !text.matches("\\d{4}-\\d\\d-\\d\\d")) {
                    numbers.set(collector.next());
                }
                collector.cell(text);
            }
            collector.endRow();
        }
        return new Table(file, sheet.getSheetName(), new Table.Cells(collector, numbers, true), hidden(sheet));
    }

    private static List<String> hidden(Sheet sheet) {
        List<String> hidden = new ArrayList<>();
        int index = sheet.getWorkbook().getSheetIndex(sheet);
        if (sheet.getWorkbook().isSheetHidden(index) || sheet.getWorkbook().isSheetVeryHidden(index)) {
            hidden.add("the sheet is hidden; it was read like any other");
        }
        for (int r = 0; r <= sheet.getLastRowNum(); r++) {
            Row row = sheet.getRow(r);
            if (row != null && row.getZeroHeight()) {
                hidden.add("row " + (r + 1) + " and perhaps others are hidden; they were read like any other");
                break;
            }
        }
        return hidden;
    }

    private static CellType typeOf(Cell cell) {
        return cell.getCellType() == CellType.FORMULA ? cell.getCachedFormulaResultType() : cell.getCellType();
    }

    private static String text(Cell cell, boolean from1904) {
        return switch (typeOf(cell)) {
            case NUMERIC -> {
                double value = cell.getNumericCellValue();
                var style = cell.getCellStyle();
                yield Clocks.text(value, style.getDataFormat(), style.getDataFormatString(), from1904)
                        .orElseGet(() -> SheetCells.plain(value));
            }
            case BOOLEAN -> cell.getBooleanCellValue() ? "TRUE" : "FALSE";
            case ERROR -> FormulaError.forInt(cell.getErrorCellValue()).getString();
            case STRING -> cell.getStringCellValue();
            default -> "";
        };
    }
}
