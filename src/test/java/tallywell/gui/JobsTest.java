package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.EventQueue;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import javax.swing.AbstractButton;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.notice.Place;

/** What goes on beside the windows, without a screen. */
class JobsTest {
    private final Deque<Runnable> waiting = new ArrayDeque<>();
    private final Jobs jobs = new Jobs(waiting::add, Runnable::run);
    private final List<String> done = new ArrayList<>();
    private Said said;

    @BeforeEach
    void open() throws Exception {
        EventQueue.invokeAndWait(() -> said = new Said());
    }

    private void goOn() {
        while (!waiting.isEmpty()) {
            waiting.remove().run();
        }
    }

    private AbstractButton cancel() {
        return (AbstractButton) Windows.find(said, "cancel");
    }

    @Test
    void theResultArrivesAndNothingIsLeftOver() {
        jobs.run(said, "Reading …", progress -> "read", done::add);
        assertThat(done).isEmpty();
        goOn();
        assertThat(done).containsExactly("read");
        assertThat(said.words()).isEmpty();
    }

    @Test
    void whatWasSaidBeforeComesBackWithItsCures() {
        said.offer("Is this the right layout?", "Use the other", () -> done.add("cured"));
        said.busy("Saving …", Optional.empty());
        assertThat(said.words()).isEqualTo("Saving …");
        assertThat(cancel().isVisible()).isFalse();
        said.idle();
        assertThat(said.words()).isEqualTo("Is this the right layout?");
        ((AbstractButton) Windows.find(said, "offer")).doClick(0);
        assertThat(done).containsExactly("cured");
    }

    @Test
    void aCancelledReadingIsDroppedAndSaidSo() throws Exception {
        jobs.run(said, "Reading …", progress -> "read", done::add);
        // Longer than it takes until a job is shown.
        long end = System.nanoTime() + 20_000_000_000L;
        while (!said.isBusy() && System.nanoTime() < end) {
            Thread.sleep(20);
            EventQueue.invokeAndWait(() -> {});
        }
        EventQueue.invokeAndWait(() -> cancel().doClick(0));
        goOn();
        assertThat(done).isEmpty();
        assertThat(said.words()).isEqualTo("Cancelled: Reading. Nothing was changed.");
    }

    @Test
    void whatCannotBeReadIsSaid() {
        jobs.<String>run(
                said,
                "Reading …",
                progress -> {
                    throw new InputException(Place.file(Path.of("a.csv")), "found nothing; expected readings");
                },
                done::add);
        goOn();
        assertThat(said.words()).isEqualTo("A.csv: found nothing; expected readings");
    }

    @Test
    void whatCannotBeWrittenIsSaidWithWhatHelps() {
        jobs.<String>run(
                said,
                "Writing …",
                progress -> {
                    throw new OutputException(
                            Path.of("gone", "a.xlsx"), "cannot be written", new NoSuchFileException("gone"));
                },
                done::add);
        goOn();
        assertThat(said.words()).contains("a.xlsx: cannot be written. The folder is not there");
    }

    @Test
    void fullDisksAndForbiddenPlacesAreToldApart() {
        Path file = Path.of("a.xlsx");
        assertThat(OutputWords.of(new OutputException(
                        file, "cannot be written", new java.io.IOException("No space left on device"))))
                .endsWith(Text.of("output.full"));
        assertThat(OutputWords.of(new OutputException(
                        file, "cannot be written", new java.nio.file.AccessDeniedException("a.xlsx"))))
                .endsWith(Text.of("output.denied"));
        assertThat(OutputWords.of(new OutputException(
                        file,
                        "cannot be put in place",
                        new java.nio.file.FileSystemException(
                                "a.xlsx", null, "The process cannot access the file because it is being used"))))
                .endsWith(Text.of("output.locked"));
    }

    @Test
    void aFaultOfTheProgramIsSaidAndGoesOnToWhoeverReportsIt() {
        jobs.<String>run(
                said,
                "Reading …",
                progress -> {
                    throw new IllegalStateException("a fault");
                },
                done::add);
        assertThatThrownBy(this::goOn).hasMessage("a fault");
        assertThat(said.words()).isEqualTo(Text.of("job.fault", "Reading …"));
        assertThat(said.isBusy()).isFalse();
    }
}
