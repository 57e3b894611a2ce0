package tallywell.gui;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Measures how long single events hold the event thread, as processor time: what other programs take of a shared machine is
 * not ours.
 */
final class Stalls {
    /** No event may take longer. */
    static final long ALLOWED_MS = 50;

    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private final AtomicLong longest = new AtomicLong();
    private volatile String what = "";

    Stalls() {
        Toolkit.getDefaultToolkit().getSystemEventQueue().push(new EventQueue() {
            @Override
            protected void dispatchEvent(AWTEvent event) {
                long start = threads.getCurrentThreadCpuTime();
                super.dispatchEvent(event);
                long took = threads.getCurrentThreadCpuTime() - start;
                if (took > longest.get()) {
                    longest.set(took);
                    what = event.toString();
                }
            }
        });
    }

    /** Something that is done while events are measured. */
    interface Doing {
        void run() throws Exception;
    }

    void during(Doing doing) throws Exception {
        doing.run();
        EventQueue.invokeAndWait(() -> {});
    }

    void forget() {
        longest.set(0);
    }

    double longestMs() {
        return longest.get() / 1e6;
    }

    @Override
    public String toString() {
        return "longest event " + longestMs() + " ms: " + what;
    }
}
