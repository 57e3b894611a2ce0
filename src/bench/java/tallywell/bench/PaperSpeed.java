package tallywell.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import tallywell.notice.InputException;
import tallywell.paper.SummaryDocument;
import tallywell.report.Report;
import tallywell.report.SampleRuns;

/** How long the PDF document of a run takes, cold and warm: end points, and a kinetic run with its flagged traces. */
public final class PaperSpeed {
    private static final int WARM_UP = 40;
    private static final int ROUNDS = 40;

    private PaperSpeed() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException, InputException {
        for (String sample : new String[] {"cider-malic-kinetic", "cider-l-malic"}) {
            Report report = SampleRuns.report(sample);
            long start = System.nanoTime();
            write(report);
            print(sample + ", first", start, 1);
            for (int i = 0; i < WARM_UP; i++) {
                write(report);
            }
            start = System.nanoTime();
            for (int i = 0; i < ROUNDS; i++) {
                write(report);
            }
            print(sample + ", warm", start, ROUNDS);
        }
    }

    private static void write(Report report) throws IOException {
        try (SummaryDocument document = new SummaryDocument()) {
            document.add(report);
            document.write("run.xlsx", "0".repeat(64), OutputStream.nullOutputStream());
        }
    }

    private static void print(String what, long start, int rounds) {
        double ms = (System.nanoTime() - start) / 1e6 / rounds;
        System.out.println(String.format(Locale.ROOT, "%s: %.1f ms", what, ms));
    }
}
