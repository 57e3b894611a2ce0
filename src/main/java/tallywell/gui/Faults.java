package tallywell.gui;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import tallywell.desk.Recovery;
import tallywell.desk.RunDraft;
import tallywell.desk.SafeFile;
import tallywell.notice.OutputException;
import tallywell.plate.Layout;

/** Hears of faults of the program on every thread. What is unsaved is kept, the fault is written down, and the user is told. */
final class Faults implements Thread.UncaughtExceptionHandler {
    private final Path record;
    private final Path unsaved;
    private final Executor front;
    private final Consumer<Throwable> heard;
    private final Set<String> known = ConcurrentHashMap.newKeySet();

    /**
     * Begins to hear.
     *
     * @param home where faults are written down
     * @param unsaved where unsaved work is kept
     * @param heard called on the front, once for each kind of fault: one that comes with every repaint would never end
     */
    Faults(Path home, Path unsaved, Executor front, Consumer<Throwable> heard) {
        this.record = home.resolve("fault.txt");
        this.unsaved = unsaved;
        this.front = front;
        this.heard = heard;
    }

    @Override
    public void uncaughtException(Thread thread, Throwable fault) {
        StackTraceElement[] trace = fault.getStackTrace();
        if (known.add(fault.getClass() + (trace.length == 0 ? "" : " " + trace[0]))) {
            front.execute(() -> heard.accept(fault));
        }
    }

    /**
     * Keeps what is unsaved and writes the fault down. Not for the event thread.
     *
     * @return what the user is to know
     */
    String keep(Throwable fault, Optional<RunDraft> run, Optional<Layout> layout) throws OutputException {
        Recovery recovery = new Recovery(unsaved);
        if (run.isPresent()) {
            recovery.keep(run.get());
        }
        if (layout.isPresent()) {
            recovery.keep(layout.get());
        }
        StringWriter text = new StringWriter();
        text.append(OffsetDateTime.now(ZoneId.systemDefault()).toString()).append('\n');
        fault.printStackTrace(new PrintWriter(text, true));
        SafeFile.write(record, text.toString());
        boolean kept = run.isPresent() || layout.isPresent();
        return Text.of(kept ? "fault.kept" : "fault.saved", fault, unsaved, record);
    }
}
