package tallywell.gui;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.util.concurrent.atomic.AtomicLong;

/** Measures how long single events hold the event thread. */
final class Stalls {
    /** 50 ms are meant; twice that leaves room for a machine that other work shares. */
    static final long ALLOWED_MS = 100;

    private final AtomicLong longest = new AtomicLong();
    private volatile String what = "";

    Stalls() {
        Toolkit.getDefaultToolkit().getSystemEventQueue().push(new EventQueue() {
            @Override
            protected void dispatchEvent(AWTEvent event) {
                long start = System.nanoTime();
                super.dispatchEvent(event);
                long took = System.nanoTime() - start;
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
