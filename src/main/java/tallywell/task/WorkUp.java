package tallywell.task;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.assess.Assessment;
import tallywell.assess.BasisWords;
import tallywell.assess.Verdict;
import tallywell.budget.SimulatedPlate;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.quantity.Numbers;
import tallywell.report.CombinedWorkbook;
import tallywell.report.Provenance;
import tallywell.report.Report;
import tallywell.report.ResultsTable;
import tallywell.report.SheetPicture;
import tallywell.report.SummaryWorkbook;
import tallywell.report.WellsTable;
import tallywell.workup.Result;

/** Works runs up: readings to concentrations to an Excel summary, and tables where asked for. */
public final class WorkUp {
    private static final double PERCENT = 100;

    private final RunLoader loader = new RunLoader();
    private final ReportMaker maker = new ReportMaker();

    /**
     * What to work up.
     *
     * @param runs run files; empty if the run is named otherwise
     * @param adHoc a run without a run file
     * @param wanted what to write, and where
     * @param made the time that the outputs carry
     * @param zone its zone
     * @param draws how to simulate beside the budgets, if wanted
     */
    public record Request(
            List<Path> runs,
            Optional<AdHocRun> adHoc,
            Wanted wanted,
            Instant made,
            ZoneId zone,
            Optional<Draws> draws) {
        /** Keeps a copy that cannot change. */
        public Request {
            runs = List.copyOf(runs);
        }
    }

    /**
     * What came of it.
     *
     * @param lines one a run that was worked up, in words, and one more where draws were asked for
     * @param notices what the user should be told, left-out runs included
     * @param written the files that were written
     * @param leftOut how many runs could not be worked up
     * @param failed how many batches failed their acceptance
     */
    public record Outcome(List<String> lines, List<Notice> notices, List<Path> written, int leftOut, int failed) {}

    /**
     * Works one or many runs up.
     *
     * @throws InputException if no run can be worked up; nothing is written
     * @throws OutputException if an output cannot be written; nothing is written
     */
    public Outcome run(Request request, Progress progress) throws InputException, OutputException {
        return request.runs().size() > 1 ? many(request, progress) : one(request, progress);
    }

    private Outcome one(Request request, Progress progress) throws InputException, OutputException {
        String name = request.runs().isEmpty()
                ? request.adHoc().orElseThrow().name()
                : request.runs().get(0).toString();
        progress.at(name, 0, 1);
        prepare();
        RunLoader.Loaded loaded = load(request, 0);
        Path output = request.wanted().summary().orElseGet(() -> defaultOutput(Path.of(name)));
        try (Outputs outputs =
                new Outputs(request.wanted().overwrite(), loaded.files().keySet())) {
            outputs.check(output);
            checkDocument(request, outputs);
            Report report = report(request, loaded);
            RunPictures pictures = RunPictures.of(report);
            List<Notice> notices = new ArrayList<>(report.analysis().notices());
            notices.addAll(loaded.departures());
            notices.addAll(ReportMaker.leftOut(report));
            String hash = summary(report, pictures, output, outputs, notices);
            List<Path> written = new ArrayList<>(List.of(output));
            try (Document document = Document.of(request.wanted().document())) {
                document.add(report);
                written.addAll(document.write(output, hash, outputs));
            }
            if (request.wanted().tables().isPresent()) {
                try (Tables tables =
                        new Tables(outputs, request.wanted().tables().get())) {
                    tables.add(report);
                    written.addAll(tables.targets());
                }
            }
            if (request.wanted().charts().isPresent()) {
                written.addAll(
                        charts(pictures, report, request.wanted().charts().get(), outputs, notices));
            }
            try (Packing packing = new Packing(request, outputs)) {
                packing.add(loaded, report);
                written.addAll(packing.finish());
            }
            if (progress.isCancelled()) {
                return new Outcome(List.of(), List.of(), List.of(), 0, 0);
            }
            outputs.commit();
            notices.addAll(outputs.notices());
            return new Outcome(
                    lines(report), notices, written, 0, report.assessment().passed() ? 0 : 1);
        }
    }

    /** The first workbook of a process takes long to load; that goes on beside the reading of the run. */
    private static void prepare() {
        Thread loading = new Thread(
                () -> {
                    try {
                        SummaryWorkbook.prepare();
                    } catch (IOException e) {
                        // Nothing is lost: what stands in the way meets the writing itself, which reports it.
                    }
                },
                "workbook loading");
        loading.setDaemon(true);
        loading.start();
    }

    private static void checkDocument(Request request, Outputs outputs) throws OutputException {
        if (request.wanted().document().isPresent()) {
            outputs.check(request.wanted().document().get());
        }
    }

    /** Writes the workbook and says its SHA-256. */
    private static String summary(
            Report report, RunPictures pictures, Path output, Outputs outputs, List<Notice> notices)
            throws OutputException {
        Optional<String> obstacle = pictures.obstacle();
        obstacle.ifPresent(why -> notices.add(Notice.attention(
                Place.file(output), "the sheet Traces is left out, because no picture can be drawn: " + why)));
        List<SheetPicture> sheet = obstacle.isPresent() ? List.of() : pictures.forSheet();
        return outputs.writeHashed(output, out -> new SummaryWorkbook().write(report, sheet, pictures.note(), out));
    }

    /** Draws a run's traces; where it has none, that is said and nothing is written. */
    private static List<Path> charts(
            RunPictures pictures, Report report, Path folder, Outputs outputs, List<Notice> notices)
            throws OutputException {
        if (pictures.isEmpty()) {
            notices.add(Notice.attention(
                    Place.file(Path.of(report.run())),
                    "no well was read three times or more after the trigger, so there is no trace to draw"));
        }
        return pictures.write(outputs, folder);
    }

    private Outcome many(Request request, Progress progress) throws InputException, OutputException {
        Path output = request.wanted()
                .summary()
                .orElseThrow(() -> new IllegalArgumentException("output must be given for many runs"));
        List<String> lines = new ArrayList<>();
        List<Notice> notices = new ArrayList<>();
        List<Path> written = new ArrayList<>(List.of(output));
        List<String> folders = ChartFolders.of(request.runs());
        int leftOut = 0;
        int failed = 0;
        try (Outputs outputs = new Outputs(request.wanted().overwrite(), request.runs());
                CombinedWorkbook workbook = new CombinedWorkbook();
                Document document = Document.of(request.wanted().document());
                Tables tables = request.wanted().tables().isPresent()
                        ? new Tables(outputs, request.wanted().tables().get())
                        : Tables.none();
                Packing packing = new Packing(request, outputs)) {
            outputs.check(output);
            checkDocument(request, outputs);
            for (int i = 0; i < request.runs().size(); i++) {
                progress.at(request.runs().get(i).toString(), i, request.runs().size());
                if (progress.isCancelled()) {
                    return new Outcome(List.of(), List.of(), List.of(), 0, 0);
                }
                try {
                    Made made = made(request, i);
                    RunLoader.Loaded loaded = made.loaded();
                    Report report = made.report();
                    outputs.protect(loaded.files().keySet());
                    workbook.add(report);
                    tables.add(report);
                    document.add(report);
                    packing.add(loaded, report);
                    lines.addAll(lines(report));
                    notices.addAll(report.analysis().notices());
                    notices.addAll(loaded.departures());
                    notices.addAll(ReportMaker.leftOut(report));
                    if (request.wanted().charts().isPresent()) {
                        Path folder = request.wanted().charts().get().resolve(folders.get(i));
                        written.addAll(charts(RunPictures.of(report), report, folder, outputs, notices));
                    }
                    failed += report.assessment().passed() ? 0 : 1;
                } catch (InputException | RunFault e) {
                    leftOut++;
                    notices.addAll(why(e, request.runs().get(i)));
                    notices.add(Notice.attention(
                            Place.file(request.runs().get(i)), "this run cannot be worked up and is left out"));
                }
            }
            if (lines.isEmpty()) {
                throw new InputException(notices);
            }
            String hash = outputs.writeHashed(output, workbook::finish);
            written.addAll(document.write(output, hash, outputs));
            tables.finish();
            written.addAll(tables.targets());
            written.addAll(packing.finish());
            outputs.protect(loader.seen());
            outputs.commit();
            notices.addAll(outputs.notices());
        } catch (IOException e) {
            throw new OutputException(output, "cannot be written (" + e.getMessage() + ")", e);
        }
        return new Outcome(lines, notices, written, leftOut, failed);
    }

    /**
     * A run with its report.
     *
     * @param loaded what was read
     * @param report what came of it
     */
    private record Made(RunLoader.Loaded loaded, Report report) {}

    /** Works one run up before anything of it is written, so that whatever goes wrong concerns it alone. */
    private Made made(Request request, int index) throws InputException {
        try {
            RunLoader.Loaded loaded = load(request, index);
            return new Made(loaded, report(request, loaded));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            throw new RunFault(request.runs().get(index).toString(), e);
        }
    }

    private static List<Notice> why(Exception e, Path run) {
        return e instanceof InputException input
                ? input.notices()
                : List.of(Notice.error(
                        Place.file(run),
                        String.valueOf(e.getMessage()).substring(run.toString().length() + 2)));
    }

    private RunLoader.Loaded load(Request request, int index) throws InputException {
        if (!request.runs().isEmpty()) {
            return loader.load(request.runs().get(index));
        }
        return loader.load(request.adHoc().orElseThrow());
    }

    private Report report(Request request, RunLoader.Loaded loaded) throws InputException {
        return maker.report(
                loaded,
                request.adHoc().map(AskedFor::asked).orElse(List.of()),
                new ReportMaker.Circumstances(Version.text(), request.made(), request.zone(), request.draws()));
    }

    private static List<String> lines(Report report) {
        List<String> lines = new ArrayList<>(List.of(line(report)));
        report.simulated().ifPresent(simulated -> lines.add(compared(report, simulated)));
        return lines;
    }

    /** How far draws and budgets are apart. */
    private static String compared(Report report, SimulatedPlate simulated) {
        String drawn = report.run() + ": Monte Carlo with " + simulated.trials() + " draws: ";
        Optional<SimulatedPlate.Farthest> farthest =
                simulated.farthest(report.assessment().budget());
        if (farthest.isEmpty()) {
            return drawn + "no result has an uncertainty to compare with.";
        }
        Result result = farthest.get().budget().result();
        return drawn + "u differs from that of the budget by "
                + Numbers.fixed(PERCENT * farthest.get().relative(), 1)
                + " % at most ('" + result.name() + "', " + result.analyte() + ").";
    }

    private static String line(Report report) {
        Assessment assessment = report.assessment();
        return report.run() + ": " + assessment.sentence() + " Results: " + assessment.count(Verdict.REPORT)
                + " to report, " + assessment.count(Verdict.CHECK) + " to check, " + assessment.count(Verdict.REPEAT)
                + " to repeat." + new BasisWords(assessment).sentence();
    }

    private static Path defaultOutput(Path named) {
        String file = String.valueOf(named.getFileName());
        return named.resolveSibling(file.replaceFirst("[.][^.]*$", "") + ".xlsx");
    }

    /** The data package, where one is wanted. */
    private static final class Packing implements AutoCloseable {
        private final Optional<Path> wanted;
        private final Optional<PackageFolder> folder;

        Packing(Request request, Outputs outputs) throws OutputException {
            wanted = request.wanted().dataPackage();
            folder = request.wanted().dataPackage().isPresent()
                    ? Optional.of(new PackageFolder(
                            outputs,
                            request.wanted().dataPackage().get(),
                            request.wanted().overwrite(),
                            provenance(request)))
                    : Optional.empty();
        }

        /** Of the package as a whole; its inputs come run by run. */
        private static Provenance provenance(Request request) {
            return new Provenance(
                    Version.text(),
                    request.made(),
                    request.zone(),
                    List.of(),
                    request.draws().map(Draws::words).orElse(""));
        }

        void add(RunLoader.Loaded loaded, Report report) throws OutputException {
            if (folder.isPresent()) {
                folder.get().add(loaded, report);
            }
        }

        /** Ends the package; what was written is its folder. */
        List<Path> finish() throws InputException, OutputException {
            if (folder.isPresent()) {
                folder.get().finish();
            }
            return wanted.stream().toList();
        }

        @Override
        public void close() throws OutputException {
            if (folder.isPresent()) {
                folder.get().close();
            }
        }
    }

    /** The two tables, written run by run. */
    private static final class Tables implements AutoCloseable {
        private final List<Path> targets = new ArrayList<>();
        private Optional<ResultsTable> results = Optional.empty();
        private Optional<WellsTable> wells = Optional.empty();

        private Tables() {}

        Tables(Outputs outputs, Path folder) throws OutputException {
            outputs.folder(folder);
            targets.add(folder.resolve("results.csv"));
            targets.add(folder.resolve("wells.csv"));
            try {
                results = Optional.of(new ResultsTable(writer(outputs, targets.get(0))));
                wells = Optional.of(new WellsTable(writer(outputs, targets.get(1))));
            } catch (IOException e) {
                throw new OutputException(folder, "the tables cannot be written (" + e.getMessage() + ")", e);
            }
        }

        static Tables none() {
            return new Tables();
        }

        private static BufferedWriter writer(Outputs outputs, Path target) throws OutputException {
            OutputStream out = outputs.open(target);
            return new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), 1 << 16);
        }

        void add(Report report) throws OutputException {
            try {
                if (results.isPresent()) {
                    results.get().add(report);
                }
                if (wells.isPresent()) {
                    wells.get().add(report);
                }
            } catch (IOException e) {
                throw failed(e);
            }
        }

        List<Path> targets() {
            return targets;
        }

        @Override
        public void close() throws OutputException {
            finish();
        }

        /** Ends the tables, so that they can be put in place. */
        void finish() throws OutputException {
            try {
                if (results.isPresent()) {
                    results.get().close();
                }
                if (wells.isPresent()) {
                    wells.get().close();
                }
            } catch (IOException e) {
                throw failed(e);
            }
        }

        private OutputException failed(IOException e) {
            return new OutputException(targets.get(0), "the tables cannot be written (" + e.getMessage() + ")", e);
        }
    }
}
