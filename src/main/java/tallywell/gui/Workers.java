package tallywell.gui;

import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;

/** The threads beside the window: one for the work, piece after piece, and others for files. */
final class Workers {
    private static final int LAST_S = 20;

    private final ExecutorService work = Executors.newSingleThreadExecutor(threads("work"));
    private final ExecutorService files = Executors.newCachedThreadPool(threads("files"));

    private static ThreadFactory threads(String name) {
        return task -> {
            Thread thread = new Thread(task, name);
            thread.setDaemon(true);
            return thread;
        };
    }

    /** Where runs are worked up. */
    Executor work() {
        return work;
    }

    /** Where files are read and written. */
    Executor files() {
        return files;
    }

    /** What is still being written is waited for, though not for ever, after the window has gone. */
    void end() {
        Thread last = new Thread(
                () -> {
                    try {
                        rest();
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                },
                "last files");
        last.start();
    }

    /** Takes no more work and waits until what goes on is done; true if it was within {@value #LAST_S} s. */
    boolean rest() throws InterruptedException {
        work.shutdown();
        files.shutdown();
        return work.awaitTermination(LAST_S, TimeUnit.SECONDS) && files.awaitTermination(LAST_S, TimeUnit.SECONDS);
    }
}
