package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.drop;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OrderEvidenceTest {
    private static final String GRID = "\n,1,2,3,4,5,6,7,8,9,10,11,12\n"
            + String.join(
                    "\n",
                    List.of("A", "B", "C", "D", "E", "F", "G", "H").stream()
                            .map(row -> row + ",x".repeat(12))
                            .toList());

    @TempDir
    private Path folder;

    private Path export(String name, String head, double absorbance) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, head + GRID.replace("x", Double.toString(absorbance)) + "\n");
        return file;
    }

    private static Optional<LocalDateTime> readAt(Path file) {
        return ((Dropped.OfReadings) new Router().route(file))
                .export()
                .blocks()
                .get(0)
                .readAt();
    }

    @Test
    void theMomentMayStandOnAnotherSheetThanTheReadings() throws IOException {
        Path file = folder.resolve("reader.xlsx");
        try (XSSFWorkbook workbook = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(file)) {
            Sheet about = workbook.createSheet("about");
            about.createRow(0).createCell(0).setCellValue("Read 2026-03-09 14:05:22");
            Sheet readings = workbook.createSheet("plate");
            for (int row = 0; row <= 8; row++) {
                Row cells = readings.createRow(row);
                for (int column = 0; column <= 12; column++) {
                    if (row == 0 || column == 0) {
                        String head = row > 0 ? "" + (char) ('A' + row - 1) : column > 0 ? "" + column : "";
                        cells.createCell(column).setCellValue(head);
                    } else {
                        cells.createCell(column).setCellValue(0.1234 + row / 100.0);
                    }
                }
            }
            workbook.write(out);
        }
        assertThat(readAt(file)).hasValue(LocalDateTime.parse("2026-03-09T14:05:22"));
    }

    @Test
    void namesAndTimesThatAgreeAreSaid() throws IOException {
        RunDesk desk = DeskFixture.empty();
        drop(
                desk,
                export("after.csv", "Read 2026-03-09 14:22:00", 0.43),
                export("before.csv", "Read 2026-03-09 14:05:00", 0.11));
        assertThat(desk.orderEvidence(Shown.POINT))
                .isEqualTo("The mean absorbance goes from 0.110 to 0.430; "
                        + "the names and the times in the files (14:05:00, 14:22:00) agree.");
    }

    @Test
    void timesAgainstTheMeansAreSaidAndNothingIsDecidedByThem() throws IOException {
        RunDesk desk = DeskFixture.empty();
        drop(
                desk,
                export("one.csv", "Read 2026-03-09 14:22:00", 0.11),
                export("two.csv", "Read 2026-03-09 14:05:00", 0.43));
        assertThat(desk.draft().readings()).extracting(Intake::name).containsExactly("one.csv", "two.csv");
        assertThat(desk.orderEvidence(new Shown(',')))
                .isEqualTo("The mean absorbance goes from 0,110 to 0,430. "
                        + "But the times in the files (14:22:00, 14:05:00) say otherwise: please check.");
    }

    @Test
    void withoutNamesAndTimesOnlyTheMeansSpeak() throws IOException {
        RunDesk desk = DeskFixture.empty();
        drop(desk, export("one.csv", "", 0.11));
        assertThat(desk.orderEvidence(Shown.POINT)).isEmpty();
        drop(desk, export("two.csv", "", 0.43));
        assertThat(desk.orderEvidence(Shown.POINT)).isEqualTo("The mean absorbance goes from 0.110 to 0.430.");
    }
}
