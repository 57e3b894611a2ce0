package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.EventQueue;
import java.nio.file.Files;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import tallywell.desk.Recovery;
import tallywell.desk.RunDraft;

/** A fault of the program, on the thread of the work or of the window. */
@Tag("windows")
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+")
class FaultWindowsTest extends WindowFixture {
    private final Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();

    @AfterEach
    void asBefore() {
        Thread.setDefaultUncaughtExceptionHandler(before);
    }

    @Test
    void aFaultKeepsTheWorkAndSaysWhereAndTheWorkGoesOn() throws Exception {
        RunPage page = example();
        Thread.setDefaultUncaughtExceptionHandler(window.faults());
        RunDraft edited = on(() -> {
            page.desk().history().edit(page.desk().draft().withTitle("before the fault"), "title");
            return page.desk().draft();
        });
        await("the work", () -> !page.desk().isBusy());
        new Recovery(home.resolve("unsaved")).forget();
        window.back().execute(() -> {
            throw new IllegalStateException("a fault for the test");
        });
        await("what is said", () -> page.said().words().contains("fault of the program"));
        String words = on(() -> page.said().words());
        assertThat(words)
                .contains(
                        "a fault for the test",
                        home.resolve("unsaved").toString(),
                        home.resolve("fault.txt").toString());
        assertThat(new Recovery(home.resolve("unsaved")).run().orElseThrow().title())
                .isEqualTo(edited.title());
        assertThat(Files.readString(home.resolve("fault.txt"))).contains("a fault for the test", "FaultWindowsTest");
        // The thread that ended has a successor.
        on(() -> {
            page.desk().history().edit(page.desk().draft().withTitle("after the fault"), "title");
            return "";
        });
        await(
                "the next work",
                () -> !page.desk().isBusy()
                        && page.desk().worked().draft().title().equals("after the fault"));
    }

    @Test
    void aFaultOfTheWindowItselfIsSaidOnce() throws Exception {
        Thread.setDefaultUncaughtExceptionHandler(window.faults());
        Runnable failing = () -> {
            throw new IllegalStateException("a fault of the window");
        };
        EventQueue.invokeLater(failing);
        await("what is said", () -> window.startSaid().words().contains("a fault of the window"));
        assertThat(on(() -> window.startSaid().words())).contains("Nothing was unsaved");
        on(() -> {
            window.startSaid().clear();
            return "";
        });
        EventQueue.invokeLater(failing);
        robot.waitForIdle();
        Thread.sleep(500);
        assertThat(on(() -> window.startSaid().words())).isEmpty();
    }
}
