package tallywell.task;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tallywell.files.MethodLibrary;
import tallywell.files.RunReader;
import tallywell.method.Run;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.recheck.CarriedInputs;
import tallywell.recheck.CarriedRun;
import tallywell.recheck.Comparison;
import tallywell.recheck.Difference;
import tallywell.recheck.WorkbookCells;
import tallywell.report.Carried;
import tallywell.report.CarriedFile;
import tallywell.report.CombinedWorkbook;
import tallywell.report.Report;
import tallywell.report.SheetPicture;
import tallywell.report.SummaryWorkbook;

/**
 * Works a summary up again from what it carries, and compares.
 *
 * <p>It shows accident, not intent: whoever changes the inputs in the workbook and everything that follows from them can
 * make a workbook that is identical to itself.
 */
public final class Recheck {
    private final RunLoader loader = new RunLoader();
    private final ReportMaker maker = new ReportMaker();
    private final List<String> failed = new ArrayList<>();

    /**
     * What came of it.
     *
     * @param runs how many runs were worked up again
     * @param differences where the workbook differs, what matters most first; empty if it is identical
     * @param notices what the user should know beside that
     * @param failed the runs whose batch fails its acceptance
     */
    public record Outcome(int runs, List<Difference> differences, List<Notice> notices, List<String> failed) {
        /** Keeps copies that cannot change. */
        public Outcome {
            differences = List.copyOf(differences);
            notices = List.copyOf(notices);
            failed = List.copyOf(failed);
        }

        /** Whether nothing differs. */
        public boolean isIdentical() {
            return differences.isEmpty();
        }

        /** The differences in words, one a line. */
        public List<String> lines() {
            return differences.stream()
                    .map(each -> each.kind().word() + ": " + each.text())
                    .toList();
        }

        /** What it comes to in words. */
        public String sentence() {
            String again = runs + (runs == 1 ? " run" : " runs") + " worked up again from what the workbook carries";
            if (isIdentical()) {
                return "identical; " + again;
            }
            String counts = Arrays.stream(Difference.Kind.values())
                    .filter(kind -> count(kind) > 0)
                    .map(kind -> count(kind) + " × " + kind.word())
                    .collect(Collectors.joining(", "));
            return "differs (" + counts + "); " + again;
        }

        private long count(Difference.Kind kind) {
            return differences.stream().filter(each -> each.kind() == kind).count();
        }
    }

    /**
     * Checks a workbook.
     *
     * @param against folder with the original files, to compare their hashes with, if wanted
     * @throws InputException if it is no workbook of ours, or does not carry what it takes
     * @throws OutputException if there is no room to unpack it
     */
    public Outcome run(Path workbook, Optional<Path> against) throws InputException, OutputException {
        failed.clear();
        WorkbookCells found = WorkbookCells.read(workbook);
        List<CarriedRun> runs = CarriedInputs.of(found);
        if (runs.isEmpty()) {
            throw new InputException(
                    Place.file(workbook),
                    "found no sheet 'Inputs' that names a run; expected a workbook that 'workup' wrote, with all its"
                            + " sheets");
        }
        List<Difference> differences = new ArrayList<>();
        List<Notice> notices = new ArrayList<>();
        Originals originals = new Originals(workbook, against);
        for (CarriedRun run : runs) {
            differences.addAll(Originals.hashes(run));
            differences.addAll(originals.compared(run));
        }
        try {
            WorkbookCells fresh = fresh(workbook, originals.completed(runs));
            differences.addAll(Comparison.of(found, fresh));
        } catch (InputException e) {
            if (differences.isEmpty()) {
                throw e;
            }
            notices.addAll(e.notices());
            notices.add(Notice.error(Place.file(workbook), "cannot be worked up again from what it carries"));
        }
        notices.addAll(versions(workbook, runs, !differences.isEmpty()));
        return new Outcome(runs.size(), differences, notices, failed);
    }

    private WorkbookCells fresh(Path workbook, List<Carried> carried, List<String> names)
            throws InputException, OutputException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            boolean combined = carried.get(0).setting(CombinedWorkbook.SUMMARY).isPresent();
            if (combined) {
                combined(workbook, carried, names, out);
            } else {
                Report report = report(workbook, names.get(0), carried.get(0));
                RunPictures pictures = RunPictures.of(report);
                boolean drawn = carried.get(0).setting(SummaryWorkbook.TRACES).equals(Optional.of("drawn"));
                new SummaryWorkbook().write(report, drawn ? List.of(undrawn()) : List.of(), pictures.note(), out);
            }
            return WorkbookCells.of(new ByteArrayInputStream(out.toByteArray()));
        } catch (IOException e) {
            throw new OutputException(workbook, "cannot be made again to compare with (" + e.getMessage() + ")", e);
        }
    }

    private WorkbookCells fresh(Path workbook, List<CarriedRun> runs) throws InputException, OutputException {
        return fresh(
                workbook,
                runs.stream().map(CarriedRun::carried).toList(),
                runs.stream().map(CarriedRun::name).toList());
    }

    private void combined(Path workbook, List<Carried> carried, List<String> names, ByteArrayOutputStream out)
            throws IOException, InputException, OutputException {
        try (CombinedWorkbook book = new CombinedWorkbook()) {
            for (int i = 0; i < carried.size(); i++) {
                book.add(report(workbook, names.get(i), carried.get(i)));
            }
            book.finish(out);
        }
    }

    /** In place of a picture, which is not compared. */
    private static SheetPicture undrawn() {
        return new SheetPicture("", new byte[] {0}, 1);
    }

    private Report report(Path workbook, String name, Carried carried) throws InputException, OutputException {
        try (CarriedFiles files = new CarriedFiles(workbook, carried.files())) {
            try {
                ReportMaker.Circumstances circumstances = AskedFor.circumstances(carried);
                Report report = maker.report(loaded(name, carried, files), AskedFor.asked(carried), circumstances);
                if (!report.assessment().passed()) {
                    failed.add(name);
                }
                return report;
            } catch (InputException e) {
                InputException named = new InputException(
                        e.notices().stream().map(files::named).toList());
                named.initCause(e);
                throw named;
            } catch (IllegalArgumentException e) {
                throw new InputException(Place.in(workbook, "sheet Inputs"), String.valueOf(e.getMessage()), e);
            }
        } catch (IOException e) {
            throw new OutputException(workbook, "what was unpacked cannot be removed (" + e.getMessage() + ")", e);
        }
    }

    private RunLoader.Loaded loaded(String name, Carried carried, CarriedFiles files) throws InputException {
        ReadFiles read = new ReadFiles();
        Optional<String> method = AskedFor.method(carried);
        if (method.isPresent()) {
            Run run = AskedFor.run(carried, loader.triggers(name, method.get(), files));
            return loader.load(name, run, files, read);
        }
        Finder.Found file = files.find("run", name);
        read.add("run", name, file);
        return loader.load(name, new RunReader().read(file.path()), files, read);
    }

    private static List<Notice> versions(Path workbook, List<CarriedRun> runs, boolean differs) {
        List<Notice> notices = new ArrayList<>();
        String made = runs.get(0).carried().setting("version").orElse("");
        if (!made.equals(Version.text())) {
            notices.add(Notice.attention(
                    Place.file(workbook),
                    "made by version " + made + ", checked by version " + Version.text()
                            + (differs ? "; another version may round or decide differently" : "")));
        }
        MethodLibrary library = new MethodLibrary();
        for (CarriedFile file : runs.get(0).carried().files()) {
            Optional<String> ours =
                    Originals.isBuiltIn(file.typed(), file.name()) ? library.file(file.typed()) : Optional.empty();
            if (ours.isPresent()
                    && !Hash.of(ours.get().getBytes(java.nio.charset.StandardCharsets.UTF_8))
                            .equals(file.sha256())) {
                notices.add(Notice.attention(
                        Place.file(workbook),
                        "the built-in method " + file.typed()
                                + " has changed since; what was compared is worked up by the method that the workbook"
                                + " carries"));
            }
        }
        return notices;
    }
}
