package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.task.Progress;
import tallywell.task.Wanted;
import tallywell.task.WorkUp;

/** What the command line refuses, the window refuses, with the same words. */
class SameRefusalTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void copySample() throws IOException {
        for (String name : List.of("before.csv", "after.csv", "samples.csv", "method.yaml")) {
            Files.copy(DeskFixture.CIDER.resolve(name), folder.resolve(name));
        }
        String run = Files.readString(DeskFixture.CIDER.resolve("run.yaml"));
        Files.writeString(
                folder.resolve("run.yaml"),
                run.replace(
                        "../../plate-layouts",
                        Path.of("plate-layouts").toAbsolutePath().toString()));
    }

    private void head(String name, String head) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, head + "\n\n" + Files.readString(file));
    }

    private void change(String from, String to) throws IOException {
        Path file = folder.resolve("run.yaml");
        String text = Files.readString(file);
        assertThat(text).contains(from);
        Files.writeString(file, text.replace(from, to));
    }

    private List<String> onTheCommandLine() {
        InputException refused = catchThrowableOfType(InputException.class, this::workUp);
        return refused == null ? List.of() : texts(refused.notices());
    }

    private WorkUp.Outcome workUp() throws InputException, OutputException {
        return new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(folder.resolve("run.yaml")),
                                Optional.empty(),
                                Wanted.summary(folder.resolve("out.xlsx")).overwriting(),
                                Instant.parse("2026-01-01T10:00:00Z"),
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
    }

    private Worked inTheWindow() throws InputException {
        return Worked.of(new RunStore().open(folder.resolve("run.yaml")));
    }

    private static List<String> texts(List<Notice> notices) {
        return notices.stream().map(Notice::text).toList();
    }

    private void bothRefuse(String... words) throws InputException {
        List<String> refused = onTheCommandLine();
        assertThat(refused).hasSize(1);
        assertThat(refused.get(0)).contains(words);
        assertThat(folder.resolve("out.xlsx")).doesNotExist();
        Worked worked = inTheWindow();
        assertThat(worked.analysis().isPresent()).isFalse();
        assertThat(texts(worked.problems())).hasSize(1);
        assertThat(worked.problems().get(0).text()).contains(words);
    }

    private void bothWorkUp() throws InputException {
        assertThat(onTheCommandLine()).isEmpty();
        assertThat(texts(inTheWindow().problems())).isEmpty();
    }

    @Test
    void aWellWhoseFinishedPartIsChosenTwice() throws IOException, InputException {
        change(
                "readings:",
                "finished-from:\n  - {wells: \"A1\", time: 9 min, reason: \"bubble\"}\n"
                        + "  - {wells: \"A1 A2\", time: 8 min, reason: \"slow\"}\nreadings:");
        bothRefuse("found a second 'finished-from' for A1");
    }

    @Test
    void readingsOfPlatesOfOtherNames() throws IOException, InputException {
        head("before.csv", "Plate: HB-001");
        head("after.csv", "Plate: HB-011");
        bothRefuse("found the plate 'HB-001' in ", "and the plate 'HB-011' in ", "'same-plate: \"...\"'");
    }

    @Test
    void oneNameInBothOrInOneOnlyContradictsNothing() throws IOException, InputException {
        head("before.csv", "Plate: HB-001");
        bothWorkUp();
        head("after.csv", "Plate: hb-001");
        bothWorkUp();
    }

    @Test
    void readingsInAnotherOrderThanTheirClockSays() throws IOException, InputException {
        head("before.csv", "Read 2026-03-09 14:22:00");
        head("after.csv", "Read 2026-03-09 14:05:00");
        bothRefuse("read at 2026-03-09 14:22:00", "read at 2026-03-09 14:05:00", "in the order they were taken");
    }

    @Test
    void readingsDaysApart() throws IOException, InputException {
        head("before.csv", "Read 2026-03-09 14:05:00");
        head("after.csv", "Read 2026-03-12 14:22:00");
        bothRefuse("more than 24 h later");
    }

    @Test
    void overMidnightContradictsNothing() throws IOException, InputException {
        head("before.csv", "Read 2026-03-09 23:55:00");
        head("after.csv", "Read 2026-03-10 00:20:00");
        bothWorkUp();
    }

    @Test
    void aPersonWhoSaysWhyIsBelievedAndQuoted() throws IOException, InputException, OutputException {
        head("before.csv", "Plate: HB-001");
        head("after.csv", "Plate: HB-011");
        change("trigger: before}", "trigger: before, same-plate: \"a new label\"}");
        bothWorkUp();
        assertThat(texts(workUp().notices()))
                .anyMatch(text ->
                        text.contains("'HB-011'") && text.contains("accepted with 'same-plate': \"a new label\""));
        RunDraft opened = new RunStore().open(folder.resolve("run.yaml"));
        Path saved = folder.resolve("saved");
        new RunStore().saveInFolder(opened, saved);
        assertThat(Files.readString(saved.resolve("run.yaml"))).contains("same-plate: \"a new label\"");
        Recovery recovery = new Recovery(folder.resolve("kept"));
        recovery.keep(opened);
        assertThat(Worked.of(recovery.run().orElseThrow()).problems()).isEmpty();
    }

    @Test
    void aReasonThatIsEmptyIsNone() throws IOException, InputException {
        change("trigger: before}", "trigger: before, same-plate: \" \"}");
        assertThat(onTheCommandLine()).singleElement().asString().contains("found nothing behind the key");
    }
}
