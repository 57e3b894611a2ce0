package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.Executor;
import tallywell.plate.Well;

/** Desks whose background work is done at once, or when a test says so. */
final class DeskFixture {
    static final Path LAYOUT = Path.of("plate-layouts/thirty-six-with-controls.yaml");
    static final Path CIDER = Path.of("samples/cider-l-malic");
    static final Executor NOW = Runnable::run;

    private DeskFixture() {}

    static RunDesk empty() {
        return new RunDesk(RunDraft.EMPTY, NOW, NOW);
    }

    static RunDesk.Drop drop(RunDesk desk, Path... files) {
        RunDesk.Drop[] came = new RunDesk.Drop[1];
        desk.drop(List.of(files), drop -> came[0] = drop);
        return came[0];
    }

    static Well well(String name) {
        return Well.parse(name).orElseThrow();
    }

    static List<Well> wells(String... names) {
        return java.util.Arrays.stream(names).map(DeskFixture::well).toList();
    }

    /** Work that waits until it is told to go on. */
    static final class Later implements Executor {
        private final Deque<Runnable> waiting = new ArrayDeque<>();

        @Override
        public void execute(Runnable task) {
            waiting.add(task);
        }

        void goOn() {
            while (!waiting.isEmpty()) {
                waiting.remove().run();
            }
        }
    }
}
