package tallywell.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import tallywell.gui.WindowSpeed;

/**
 * How long the desktop takes from a deed to its picture, in a window of 1366 × 768 on the screen at hand: an export dropped,
 * a well excluded, a finished part and a trigger dragged, 96 traces and 1536 wells painted.
 */
public final class DesktopSpeed {
    private static final int ROUNDS = 25;

    private DesktopSpeed() {}

    /** Measures and prints: the middle of {@value #ROUNDS} rounds and the slowest, in ms of the clock. */
    public static void main(String[] arguments) throws Exception {
        WindowSpeed speed = new WindowSpeed(Path.of("target", "Tallywell-speed"));
        measure("96 wells × 94 times dropped, worked up and painted (bound 300 ms)", speed::drop);
        measure("a well excluded, worked up and painted (bound 100 ms)", speed::exclude);
        measure("finished part dragged, result painted (bound 100 ms)", speed::dragFinished);
        measure("trigger dragged, result painted (bound 100 ms)", speed::dragTrigger);
        measure("96 small traces painted (bound 30 ms)", speed::paintTraces);
        measure("1536 wells painted", speed::paintMany);
        speed.close();
        System.exit(0);
    }

    private static void measure(String what, Callable<Double> round) throws Exception {
        List<Double> times = new java.util.ArrayList<>();
        for (int i = 0; i < 2 * ROUNDS; i++) {
            double time = round.call();
            // The first half warms the program up.
            if (i >= ROUNDS) {
                times.add(time);
            }
        }
        times.sort(null);
        System.out.println(String.format(
                Locale.ROOT, "%s: %.1f ms, slowest %.1f ms", what, times.get(ROUNDS / 2), times.get(ROUNDS - 1)));
    }
}
