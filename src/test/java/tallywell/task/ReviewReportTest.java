package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;

/** Draft, checked, approved, and back to draft. The rule of the second person is common practice (no source). */
class ReviewReportTest {
    private static final Instant NINE = Instant.parse("2026-03-09T09:00:00Z");
    private static final ZoneId ZONE = ZoneId.of("Europe/Zurich");

    @TempDir
    private static Path shared;

    @TempDir
    private Path folder;

    private Path report;

    @BeforeAll
    static void workUpOnce() throws Exception {
        new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(Path.of("samples/cuvette-typed/run.yaml")),
                                Optional.empty(),
                                Wanted.summary(shared.resolve("run.xlsx")),
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
    }

    @BeforeEach
    void copy() throws IOException {
        report = Files.copy(shared.resolve("run.xlsx"), folder.resolve("run.xlsx"));
    }

    private ReviewReport.Outcome state() throws Exception {
        return new ReviewReport().run(ReviewReport.state(report, NINE, ZONE));
    }

    private ReviewReport.Outcome check(String by, int hours) throws Exception {
        return new ReviewReport().run(ReviewReport.checked(report, by, NINE.plusSeconds(3600L * hours), ZONE));
    }

    private ReviewReport.Outcome approve(String by, int hours) throws Exception {
        return new ReviewReport().run(ReviewReport.approved(report, by, NINE.plusSeconds(3600L * hours), ZONE));
    }

    @Test
    void reportIsDraftThenCheckedThenApproved() throws Exception {
        byte[] before = Files.readAllBytes(report);
        assertThat(state().lines().get(0)).endsWith("run.xlsx: draft");
        assertThat(check("R. Haas", 0).lines().get(0)).endsWith("run.xlsx: checked");
        ReviewReport.Outcome approved = approve("M. Keller", 1);
        assertThat(approved.lines().get(0)).endsWith("run.xlsx: approved");
        assertThat(approved.lines())
                .contains(
                        "  checked by R. Haas, 2026-03-09 10:00:00 +01:00",
                        "  approved by M. Keller, 2026-03-09 11:00:00 +01:00");
        assertThat(approved.lines().get(approved.lines().size() - 1))
                .contains("accident, not by intent")
                .contains("no electronic signature");
        assertThat(state().lines()).isEqualTo(approved.lines());
        assertThat(state().changed()).isFalse();
        assertThat(report).hasBinaryContent(before);
    }

    @Test
    void recordIsAFileOfOurOwnForm() throws Exception {
        check("Ø. \"Rød\"\\", 0);
        String hash = Hash.of(report);
        assertThat(folder.resolve("run.review.yaml")).hasContent("""
                tallywell: review/1
                report: "run.xlsx"
                entries:
                  - {step: checked, by: "Ø. \\"Rød\\"\\\\", at: "2026-03-09T09:00:00Z", sha256: "%s"}
                """.formatted(hash));
        assertThat(state().lines().get(1)).startsWith("  checked by Ø. \"Rød\"\\, ");
    }

    @Test
    void anyChangeMakesItADraftAndSaysWhoHadApprovedWhat() throws Exception {
        String hash = Hash.of(report);
        check("R. Haas", 0);
        approve("M. Keller", 1);
        Files.write(report, new byte[] {0}, StandardOpenOption.APPEND);
        ReviewReport.Outcome after = state();
        assertThat(after.changed()).isTrue();
        assertThat(after.lines().get(0)).endsWith("run.xlsx: draft; the workbook has changed since it was approved");
        assertThat(after.lines())
                .contains("  was approved by M. Keller, 2026-03-09 11:00:00 +01:00, when its SHA-256 was " + hash);
        assertThatThrownBy(() -> approve("M. Keller", 2))
                .isInstanceOf(InputException.class)
                .hasMessageEndingWith(
                        "found no check of this workbook by a second person since it changed; expected one with"
                                + " --checked-by before --approved-by");
        assertThat(check("R. Haas", 3).lines().get(0)).endsWith(": checked");
        assertThat(approve("M. Keller", 4).lines().get(0)).endsWith(": approved");
        assertThat(state().lines())
                .filteredOn(line -> line.startsWith("  was "))
                .hasSize(2);
    }

    @Test
    void changeThatIsTakenBackStandsAgain() throws Exception {
        check("R. Haas", 0);
        byte[] before = Files.readAllBytes(report);
        Files.write(report, new byte[] {0}, StandardOpenOption.APPEND);
        assertThat(state().changed()).isTrue();
        Files.write(report, before);
        assertThat(state().lines().get(0)).endsWith(": checked");
    }

    @ParameterizedTest
    @CsvSource({
        "R. Haas,R. Haas",
        "R. Haas,r.haas",
        "R. Haas,' R.  HAAS '",
        "Zoë,Zoe\u0308",
        "R. Haas,'Haas, R.'",
        "Ada Maria Kern,Kern Ada-Maria",
        "R. Haas,R. H\u0430\u0430s",
        "R. Haas,\uff32. Haas",
        "Nora Osti,\u039dora \u039fsti",
        "M. Kern,M. Kem",
        "S. Allio,S. AI1io"
    })
    void onePersonCannotCheckAndApprove(String checker, String approver) throws Exception {
        check(checker, 0);
        assertThatThrownBy(() -> approve(approver, 1))
                .isInstanceOf(InputException.class)
                .hasMessageEndingWith("checked it and cannot approve it as well; expected a second person");
        assertThat(state().lines().get(0)).endsWith(": checked");
    }

    @Test
    void approvalWithoutACheckIsRefused() {
        assertThatThrownBy(() -> approve("M. Keller", 0))
                .isInstanceOf(InputException.class)
                .hasMessageEndingWith("found no check of this workbook by a second person; expected one with"
                        + " --checked-by before --approved-by");
        assertThat(folder.resolve("run.review.yaml")).doesNotExist();
    }

    @Test
    void sameStepTwiceIsRefused() throws Exception {
        check("R. Haas", 0);
        assertThatThrownBy(() -> check("R. Haas", 1)).hasMessageEndingWith("nothing is recorded");
        assertThatThrownBy(() -> check("S. Lutz", -1)).hasMessageEndingWith("expected a later time");
        assertThatThrownBy(() -> check(" ", 1)).hasMessageContaining("found no name");
    }

    /** Somebody wrote an approval into the file by hand. */
    @Test
    void approvalThatNobodyCheckedDoesNotCount() throws Exception {
        check("R. Haas", 0);
        Path file = folder.resolve("run.review.yaml");
        Files.writeString(file, Files.readString(file).replace("step: checked", "step: approved"));
        assertThat(state().lines().get(0)).endsWith(": draft");
    }

    @ParameterizedTest
    @CsvSource({"R. Haas,M. Haas", "R. Haas,R. Hass", "Zoë Marti,Zoe Marti", "Li Wei,Li Wang"})
    void twoPeopleAreTwoPeople(String checker, String approver) throws Exception {
        check(checker, 0);
        assertThat(approve(approver, 1).lines().get(0)).endsWith(": approved");
    }

    @Test
    void nameWithACharacterThatNobodySeesIsRefused() throws Exception {
        assertThatThrownBy(() -> check("R. Haas\u200b", 0))
                .hasMessageContaining("found the invisible character U+200B (zero width space)");
        assertThat(folder.resolve("run.review.yaml")).doesNotExist();
        check("R. Haas", 0);
        Path file = folder.resolve("run.review.yaml");
        String text = Files.readString(file);
        for (String hidden : List.of("\u200b", "\\u200b", "\u202e")) {
            Files.writeString(file, text.replace("R. Haas", "R. " + hidden + "Haas"));
            assertThatThrownBy(this::state).hasMessageContaining("line 4: found the invisible character U+20");
        }
    }

    /** Every verdict is turned in the XML, and the workbook still says that this program wrote it. */
    @Test
    void workbookThatWasChangedInItsXmlIsNotChecked() throws Exception {
        Path changed = rewritten(report, "xl/worksheets/", ">report<", ">check<");
        Files.delete(report);
        Files.move(changed, report);
        assertThatThrownBy(() -> check("R. Haas", 0))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("differs (")
                .hasMessageContaining("Nothing is recorded; 'tallywell recheck' lists them all");
        assertThat(folder.resolve("run.review.yaml")).doesNotExist();
    }

    @Test
    void failedBatchIsCheckedOnlyForAReason() throws Exception {
        Path run =
                Files.createDirectories(folder.resolve("failing/samples/cider")).resolve("run.yaml");
        for (String name : List.of("run.yaml", "before.csv", "after.csv", "samples.csv", "method.yaml")) {
            Files.copy(Path.of("samples/cider-l-malic", name), run.resolveSibling(name));
        }
        String layouts = Path.of("plate-layouts").toAbsolutePath().toString();
        Files.writeString(run, Files.readString(run).replace("../../plate-layouts", layouts));
        Path method = run.resolveSibling("method.yaml");
        Files.writeString(method, Files.readString(method).replace("{most: 0.060}", "{most: 0.0001}"));
        report = folder.resolve("failing.xlsx");
        new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(run),
                                Optional.empty(),
                                Wanted.summary(report),
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
        assertThatThrownBy(() -> check("R. Haas", 0))
                .hasMessageContaining("the batch fails its acceptance")
                .hasMessageContaining("run.yaml");
        String why = "blank of a new lot; \"see\" log 7";
        ReviewReport.Outcome checked = new ReviewReport()
                .run(ReviewReport.checked(report, "R. Haas", NINE, ZONE).because(why));
        assertThat(checked.lines().get(1)).endsWith(", though a batch failed: " + why);
        assertThatThrownBy(() -> approve("M. Keller", 1)).hasMessageContaining("expected --reason");
        assertThat(state().lines()).contains(checked.lines().get(1));
    }

    @Test
    void operatorWhoChecksTheOwnWorkIsTold() throws Exception {
        String operator =
                tallywell.report.WorkbookOrigin.of(report).orElseThrow().author();
        assertThat(operator).isNotEmpty();
        assertThat(check(operator, 0).notices()).hasSize(1);
        assertThat(check("S. Lutz", 1).notices()).isEmpty();
    }

    @Test
    void filesThatAreNoReportsOfOursAreRefused() throws Exception {
        Path text = Files.writeString(folder.resolve("a.xlsx"), "no workbook", StandardCharsets.UTF_8);
        assertThatThrownBy(() -> new ReviewReport().run(ReviewReport.state(text, NINE, ZONE)))
                .isInstanceOf(InputException.class)
                .hasMessage(text + ": found no workbook; expected a summary (.xlsx) as 'tallywell workup' wrote it");
        assertThatThrownBy(() -> new ReviewReport().run(ReviewReport.state(folder, NINE, ZONE)))
                .hasMessageContaining("found a folder");
        assertThatThrownBy(() -> new ReviewReport().run(ReviewReport.state(folder.resolve("no.xlsx"), NINE, ZONE)))
                .hasMessageEndingWith("no.xlsx: there is no such file");
        Path other = savedByAnother(report);
        assertThatThrownBy(() -> new ReviewReport().run(ReviewReport.checked(other, "R. Haas", NINE, ZONE)))
                .hasMessageContaining("found a workbook that 'Other Office' saved last");
    }

    @Test
    void reportThatAnotherProgramSavedIsADraftAgain() throws Exception {
        check("R. Haas", 0);
        Path other = savedByAnother(report);
        Files.delete(report);
        Files.move(other, report);
        assertThat(state().changed()).isTrue();
        assertThat(state().lines().get(0)).contains("draft; the workbook has changed");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            step: checked | step: seen | line 4: found 'seen'; expected one of checked, approved
            2026-03-09T09:00:00Z | yesterday | line 4: found 'yesterday'; expected a time with its offset
            sha256: " | sha256: "x | expected 64 hexadecimal digits
            """)
    void damagedRecordsAreRefusedWithTheirLine(String from, String to, String message) throws Exception {
        check("R. Haas", 0);
        Path file = folder.resolve("run.review.yaml");
        Files.writeString(file, Files.readString(file).replace(from, to));
        assertThatThrownBy(this::state).isInstanceOf(InputException.class).hasMessageContaining(message);
    }

    private Path savedByAnother(Path workbook) throws IOException {
        return rewritten(workbook, "docProps/app.xml", "Tallywell", "Other Office");
    }

    private Path rewritten(Path workbook, String parts, String from, String with) throws IOException {
        Path to = folder.resolve("other.xlsx");
        try (ZipFile in = new ZipFile(workbook.toFile());
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(to))) {
            for (ZipEntry each : java.util.Collections.list(in.entries())) {
                out.putNextEntry(new ZipEntry(each.getName()));
                byte[] bytes = in.getInputStream(each).readAllBytes();
                out.write(
                        each.getName().startsWith(parts)
                                ? new String(bytes, StandardCharsets.UTF_8)
                                        .replace(from, with)
                                        .getBytes(StandardCharsets.UTF_8)
                                : bytes);
                out.closeEntry();
            }
        }
        return to;
    }
}
