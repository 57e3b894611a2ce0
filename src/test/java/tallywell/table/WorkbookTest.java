package tallywell.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.notice.InputException;

class WorkbookTest {
    @TempDir
    private Path folder;

    private static org.apache.poi.ss.usermodel.Workbook book(boolean old) {
        return old ? new HSSFWorkbook() : new XSSFWorkbook();
    }

    private Path save(org.apache.poi.ss.usermodel.Workbook book) throws IOException {
        Path file = folder.resolve("book.dat");
        try (OutputStream out = Files.newOutputStream(file)) {
            book.write(out);
        }
        book.close();
        return file;
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void cellsComeAsTextWhateverTheirKind(boolean old) throws Exception {
        var book = book(old);
        book.createSheet("Empty");
        Sheet sheet = book.createSheet("Run 1");
        Row row = sheet.createRow(3);
        row.createCell(1).setCellValue("Küvette ");
        row.createCell(2).setCellValue(0.1 + 0.2);
        row.createCell(3).setCellValue(12);
        row.createCell(4).setCellValue("0,456");
        row.createCell(5).setCellValue(true);
        row.createCell(7).setCellErrorValue(org.apache.poi.ss.usermodel.FormulaError.NA.getCode());
        row.createCell(8).setCellFormula("1+1");
        book.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(row.getCell(8));

        Table table = Tables.read(save(book));

        assertThat(table.rows()).isEqualTo(4);
        assertThat(table.isBlank(2)).isTrue();
        assertThat(table.text(3, 0)).isEmpty();
        assertThat(table.text(3, 1)).isEqualTo("Küvette");
        assertThat(table.text(3, 2)).isEqualTo("0.30000000000000004");
        assertThat(table.text(3, 3)).isEqualTo("12");
        assertThat(table.text(3, 4)).isEqualTo("0,456");
        assertThat(table.text(3, 5)).isEqualTo("TRUE");
        assertThat(table.text(3, 6)).isEmpty();
        assertThat(table.text(3, 7)).isEqualTo("#N/A");
        assertThat(table.text(3, 8)).isEqualTo("2");
        assertThat(table.isNumber(3, 2)).isTrue();
        assertThat(table.isNumber(3, 4)).isFalse();
        assertThat(table.isNumber(3, 6)).isFalse();
        assertThat(table.where(3, 2)).isEqualTo("sheet 'Run 1', cell C4");
        assertThat(Tables.sheets(folder.resolve("book.dat"))).hasSize(2);
    }

    /** Fractions of a day by ISO/IEC 29500-1, 18.17.4: 1 is a day, 0 is 1899-12-30 T00:00. */
    @ParameterizedTest
    @CsvSource({
        "h:mm:ss, 0.00034722222222222224, 0:00:30",
        "[h]:mm:ss, 1.5, 36:00:00",
        "mm:ss.0, 0.000349537037037037, 0:00:30.200",
        "h:mm, 0.4375, 10:30",
        "yyyy-mm-dd hh:mm, 45413.4375, 2024-05-01 10:30:00",
        "dd.mm.yyyy, 45413, 2024-05-01",
        "0.000, 0.4375, 0.4375"
    })
    void timesAreNoNumbers(String format, double value, String text) throws Exception {
        for (boolean old : new boolean[] {false, true}) {
            var book = book(old);
            CellStyle style = book.createCellStyle();
            style.setDataFormat(book.createDataFormat().getFormat(format));
            var cell = book.createSheet().createRow(0).createCell(0);
            cell.setCellValue(value);
            cell.setCellStyle(style);
            Table table = Tables.read(save(book));
            assertThat(table.text(0, 0)).isEqualTo(text);
            assertThat(table.isNumber(0, 0)).isEqualTo(format.equals("0.000"));
        }
    }

    @Test
    void formulaNeverCalculatedShowsItself() throws Exception {
        var book = new XSSFWorkbook();
        book.createSheet().createRow(0).createCell(0).setCellFormula("A2*2");
        assertThat(Tables.read(save(book)).text(0, 0)).isEqualTo("=A2*2");
    }

    @Test
    void protectedWorkbooksAreRefused() throws Exception {
        Path plain = save(filled(new XSSFWorkbook()));
        EncryptionInfo info = new EncryptionInfo(EncryptionMode.agile);
        Encryptor encryptor = info.getEncryptor();
        encryptor.confirmPassword("cider");
        Path locked = folder.resolve("locked.xlsx");
        try (POIFSFileSystem container = new POIFSFileSystem()) {
            try (OutputStream out = encryptor.getDataStream(container)) {
                Files.copy(plain, out);
            }
            try (OutputStream out = Files.newOutputStream(locked)) {
                container.writeFilesystem(out);
            }
        }
        assertThatThrownBy(() -> Tables.read(locked))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("protected by a password");
    }

    @Test
    void protectedOldWorkbooksAreRefused() throws Exception {
        Biff8EncryptionKey.setCurrentUserPassword("cider");
        Path file;
        try {
            file = save(filled(new HSSFWorkbook()));
        } finally {
            Biff8EncryptionKey.setCurrentUserPassword(null);
        }
        assertThatThrownBy(() -> Tables.read(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("protected by a password");
    }

    private static <T extends org.apache.poi.ss.usermodel.Workbook> T filled(T book) {
        Sheet sheet = book.createSheet("Run");
        for (int r = 0; r < 50; r++) {
            Row row = sheet.createRow(r);
            for (int c = 0; c < 12; c++) {
                row.createCell(c).setCellValue(r * 0.01 + c);
            }
        }
        return book;
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void truncatedWorkbooksAreRefused(boolean old) throws Exception {
        Path file = save(filled(book(old)));
        byte[] bytes = Files.readAllBytes(file);
        for (int part = 1; part < 8; part++) {
            Path cut = folder.resolve("cut" + part);
            Files.write(cut, java.util.Arrays.copyOf(bytes, Math.max(20, bytes.length * part / 8)));
            assertThatThrownBy(() -> Tables.read(cut))
                    .isInstanceOf(InputException.class)
                    .hasMessageContaining("damaged");
        }
    }

    @Test
    void zipThatIsNoWorkbookIsRefused() throws Exception {
        Path file = folder.resolve("other.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry("readme.txt"));
            zip.write("hello".getBytes(StandardCharsets.UTF_8));
        }
        assertThatThrownBy(() -> Tables.read(file)).hasMessageContaining("a zip file that is no workbook");
    }

    @Test
    void documentTypeIsRefused() throws Exception {
        Path file = rewritten(
                "xl/worksheets/sheet1.xml",
                xml -> xml.replaceFirst("(<worksheet)", "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>$1")
                        .replaceFirst("<v>[^<]*</v>", "<v>&e;</v>"));
        assertThatThrownBy(() -> Tables.read(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found a document type declaration");
    }

    @Test
    void zipBombIsRefused() throws Exception {
        Path file = rewritten(
                "xl/worksheets/sheet1.xml", xml -> xml.replace("<sheetData>", "<sheetData>" + " ".repeat(40_000_000)));
        assertThat(Files.size(file)).isLessThan(100_000);
        assertThatThrownBy(() -> Tables.read(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("damaged");
    }

    private Path rewritten(String part, java.util.function.UnaryOperator<String> change) throws IOException {
        Path plain = save(filled(new XSSFWorkbook()));
        Path file = folder.resolve("changed.xlsx");
        try (ZipInputStream in = new ZipInputStream(Files.newInputStream(plain));
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                String xml = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write((entry.getName().equals(part) ? change.apply(xml) : xml).getBytes(StandardCharsets.UTF_8));
            }
        }
        return file;
    }
}
