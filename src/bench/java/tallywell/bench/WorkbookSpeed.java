package tallywell.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.report.Carried;
import tallywell.report.CarriedFile;
import tallywell.report.CombinedWorkbook;
import tallywell.report.InputFile;
import tallywell.report.Provenance;
import tallywell.report.Report;
import tallywell.report.SampleRuns;
import tallywell.report.SummaryWorkbook;
import tallywell.task.Progress;
import tallywell.task.Wanted;
import tallywell.task.WorkUp;

/**
 * How long workbooks take, warm: the summary of a kinetic run (96 × 94 readings), the whole command for it with reading,
 * arithmetic and pictures, and the combined summary of 300 such runs, each with inputs of its own.
 */
public final class WorkbookSpeed {
    private static final int WARM_UP = 20;
    private static final int ROUNDS = 31;
    private static final int RUNS = 300;
    private static final int MANY_ROUNDS = 5;
    private static final Path SAMPLE = Path.of("samples/cider-malic-kinetic");

    private WorkbookSpeed() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException, InputException, OutputException {
        Path out = Files.createTempFile("workbook", ".xlsx");
        try {
            Report report = carrying(SampleRuns.report("cider-malic-kinetic"), 0);
            measure("workbook of a kinetic run, without pictures", ROUNDS, () -> write(report, out));
            print("its size", Files.size(out) / 1e3, "kB");
            measure("the whole of it: reading, arithmetic, pictures, workbook", ROUNDS, () -> workUp(out));
            print("its size", Files.size(out) / 1e3, "kB");
            List<Report> reports = new ArrayList<>();
            for (int i = 0; i < RUNS; i++) {
                reports.add(carrying(report, i));
            }
            measure("combined workbook of " + RUNS + " runs", MANY_ROUNDS, () -> combined(reports, out));
            print("its size", Files.size(out) / 1e6, "MB");
            List<Report> bare = Collections.nCopies(RUNS, SampleRuns.report("cider-malic-kinetic"));
            measure("the same without inputs", MANY_ROUNDS, () -> combined(bare, out));
        } finally {
            Files.delete(out);
        }
    }

    private interface Work {
        void run() throws IOException, InputException, OutputException;
    }

    private static void measure(String what, int rounds, Work work)
            throws IOException, InputException, OutputException {
        double[] times = new double[rounds];
        double[] own = new double[rounds];
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        for (int i = -Math.min(WARM_UP, rounds); i < rounds; i++) {
            long start = System.nanoTime();
            long startOwn = threads.getCurrentThreadCpuTime();
            work.run();
            if (i >= 0) {
                own[i] = (threads.getCurrentThreadCpuTime() - startOwn) / 1e6;
                times[i] = (System.nanoTime() - start) / 1e6;
            }
        }
        Arrays.sort(times);
        Arrays.sort(own);
        print(
                what + ": median",
                times[rounds / 2],
                String.format(
                        Locale.ROOT, "ms (least %.1f); processor time of its thread: %.1f", times[0], own[rounds / 2]));
        if (rounds == MANY_ROUNDS) {
            print("that is", times[rounds / 2] / RUNS, "ms a run");
            print("in processor time", own[rounds / 2] / RUNS, "ms a run");
        }
    }

    private static void write(Report report, Path out) throws IOException {
        try (OutputStream to = Files.newOutputStream(out)) {
            new SummaryWorkbook().write(report, to);
        }
    }

    private static void combined(List<Report> reports, Path out) throws IOException {
        try (CombinedWorkbook book = new CombinedWorkbook();
                OutputStream to = Files.newOutputStream(out)) {
            for (Report report : reports) {
                book.add(report);
            }
            book.finish(to);
        }
    }

    private static void workUp(Path out) throws InputException, OutputException {
        new WorkUp()
                .run(
                        new WorkUp.Request(List.of(SAMPLE.resolve("run.yaml")), Optional.empty(), Wanted.summary(out).overwriting(), Instant.EPOCH, ZoneOffset.UTC, Optional.empty()),
                        Progress.SILENT);
    }

    /** The report with its inputs, which differ from run to run. */
    private static Report carrying(Report report, int number) throws IOException {
        List<CarriedFile> files = new ArrayList<>();
        List<InputFile> inputs = new ArrayList<>();
        for (String name : List.of("run.yaml", "samples.csv", "trace.csv")) {
            String text = Files.readString(SAMPLE.resolve(name)).replace("0.2", "0.2" + number % 10 + number / 10);
            String hash = String.format(Locale.ROOT, "%064x", 31L * name.hashCode() + number);
            files.add(new CarriedFile("readings", name, name, hash, text.getBytes(StandardCharsets.UTF_8)));
            inputs.add(new InputFile("readings", name, hash));
        }
        Provenance from = report.provenance();
        Provenance with = new Provenance(
                from.version(), from.made(), from.zone(), inputs, "", Optional.of(new Carried(List.of(), files)));
        return new Report(report.run(), report.analysis(), report.assessment(), with);
    }

    private static void print(String what, double value, String unit) {
        System.out.println(String.format(Locale.ROOT, "%s: %.1f %s", what, value, unit));
    }
}
