package tallywell.readings;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import tallywell.plate.Well;

/** Makes the files of the corpus that are workbooks in the older format, from the readings expected beside them. */
final class OldWorkbookCorpus {
    private static final Path CORPUS = Path.of("src/test/resources/exports");

    private OldWorkbookCorpus() {}

    /** Run in the folder of the project. */
    public static void main(String[] arguments) throws IOException {
        grid();
        series();
    }

    private static List<String[]> readings(String name) throws IOException {
        List<String[]> rows = new ArrayList<>();
        Files.readAllLines(CORPUS.resolve(name + ".expected.csv")).stream()
                .skip(1)
                .forEach(line -> rows.add(line.split(",", -1)));
        return rows;
    }

    private static void save(HSSFWorkbook book, String name) throws IOException {
        try (OutputStream out = Files.newOutputStream(CORPUS.resolve(name))) {
            book.write(out);
        }
        book.close();
    }

    private static void grid() throws IOException {
        HSSFWorkbook book = new HSSFWorkbook();
        Sheet sheet = book.createSheet("Run");
        sheet.createRow(0).createCell(0).setCellValue("Absorbance 340 nm");
        Row head = sheet.createRow(2);
        for (int column = 1; column <= 12; column++) {
            head.createCell(column + 1).setCellValue(column);
        }
        for (String[] each : readings("workbook-old-grid.xls")) {
            Well well = Well.parse(each[6]).orElseThrow();
            Row row = sheet.getRow(well.row() + 3);
            if (row == null) {
                row = sheet.createRow(well.row() + 3);
                row.createCell(1).setCellValue(well.rowName());
            }
            row.createCell(well.column() + 2).setCellValue(Double.parseDouble(each[7]));
        }
        save(book, "workbook-old-grid.xls");
    }

    private static void series() throws IOException {
        HSSFWorkbook book = new HSSFWorkbook();
        CellStyle time = book.createCellStyle();
        time.setDataFormat(book.createDataFormat().getFormat("h:mm:ss"));
        Sheet sheet = book.createSheet("Kinetics");
        Row head = sheet.createRow(0);
        head.createCell(0).setCellValue("Zeit");
        List<String> wells = new ArrayList<>();
        List<String> times = new ArrayList<>();
        for (String[] each : readings("workbook-old-series.xls")) {
            if (!wells.contains(each[6])) {
                wells.add(each[6]);
                head.createCell(wells.size()).setCellValue(each[6]);
            }
            if (!times.contains(each[5])) {
                times.add(each[5]);
                sheet.createRow(times.size()).createCell(0).setCellValue(Double.parseDouble(each[5]) / 86_400);
                sheet.getRow(times.size()).getCell(0).setCellStyle(time);
            }
            sheet.getRow(times.indexOf(each[5]) + 1)
                    .createCell(wells.indexOf(each[6]) + 1)
                    .setCellValue(Double.parseDouble(each[7]));
        }
        save(book, "workbook-old-series.xls");
    }
}
