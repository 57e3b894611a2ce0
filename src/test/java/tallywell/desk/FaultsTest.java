package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.CIDER;
import static tallywell.desk.DeskFixture.NOW;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.junit.jupiter.api.Test;
import tallywell.method.AssayMethod;
import tallywell.notice.Notice;

/** A fault of the program on the background thread goes on to whoever hears of faults, and nothing waits for it. */
class FaultsTest {
    private final List<Throwable> faults = new ArrayList<>();

    /** A thread that ends with a fault, and says so. */
    private final Executor back = task -> {
        try {
            task.run();
        } catch (RuntimeException | Error e) {
            faults.add(e);
        }
    };

    /** A method that only a fault of the program could make. */
    @SuppressWarnings("NullAway")
    private static Origin<AssayMethod> broken() {
        return new Origin<>("broken", Optional.empty(), null, Optional.empty());
    }

    private RunDesk cider() throws Exception {
        return new RunDesk(new RunStore().open(CIDER.resolve("run.yaml")), back, NOW);
    }

    @Test
    void aRunThatCannotBeWorkedUpByAFaultIsNotBusyForEverAndShowsNoOldResults() throws Exception {
        RunDesk desk = cider();
        assertThat(desk.worked().analysis()).isPresent();
        desk.history().edit(desk.draft().withMethod(broken()), "break");
        assertThat(faults).isNotEmpty();
        assertThat(desk.isBusy()).isFalse();
        assertThat(desk.worked().analysis()).isEmpty();
        assertThat(desk.worked().draft()).isEqualTo(desk.draft());
        assertThat(desk.worked().problems())
                .extracting(Notice::text)
                .singleElement()
                .satisfies(text ->
                        assertThat(text).contains("fault of the program").contains("kept"));
        desk.history().undo();
        assertThat(desk.isBusy()).isFalse();
        assertThat(desk.worked().analysis()).isPresent();
    }

    @Test
    @SuppressWarnings("NullAway")
    void filesThatCannotBeTakenInByAFaultLeaveTheWindowFree() throws Exception {
        RunDesk desk = cider();
        RunDraft before = desk.draft();
        desk.drop(Collections.singletonList((Path) null), drop -> {});
        assertThat(faults).hasSize(1);
        assertThat(desk.isBusy()).isFalse();
        assertThat(desk.draft()).isEqualTo(before);
    }
}
