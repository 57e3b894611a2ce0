package tallywell.task;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.files.PlanFile;
import tallywell.files.RunReader;
import tallywell.files.SampleListReader;
import tallywell.method.AssayMethod;
import tallywell.method.PlannedRun;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plan.Departures;
import tallywell.plan.EarlierResult;
import tallywell.plan.Planner;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;
import tallywell.workup.Assay;
import tallywell.workup.Taken;

/** Gathers everything that a run names, relative to the run file. */
final class RunLoader {
    private final MethodLibrary library = new MethodLibrary();

    /**
     * A run with everything it names.
     *
     * @param assay ready to be worked up
     * @param files each file that was read, with what it was read as; in the order of the run
     * @param departures where the run departs from the plan it names
     */
    record Loaded(Assay assay, Map<Path, String> files, List<Notice> departures) {
        private static final String DEPARTS = "departs from its plan: ";

        /** Keeps a copy that cannot change. */
        Loaded {
            departures = List.copyOf(departures);
        }

        /** The departures without what each message begins with. */
        List<String> departuresInWords() {
            return departures.stream()
                    .map(each -> each.text().substring(DEPARTS.length()))
                    .toList();
        }
    }

    /** Loads a run file. */
    Loaded load(Path runFile) throws InputException {
        Run run = new RunReader().read(runFile);
        return load(runFile.toString(), Optional.of(runFile), run);
    }

    /**
     * Loads a run.
     *
     * @param name as typed, for messages and tables
     * @param runFile what paths are relative to; none for a run named on the command line
     */
    Loaded load(String name, Optional<Path> runFile, Run run) throws InputException {
        Map<Path, String> files = new LinkedHashMap<>();
        runFile.ifPresent(file -> files.put(file, "run"));
        AssayMethod method = method(name, runFile, run.method(), files);
        Path layoutFile = resolve(name, runFile, run.layout());
        Layout layout = new LayoutReader().read(layoutFile);
        files.put(layoutFile, "layout");
        SampleList samples = SampleList.plain(layout.slots());
        if (run.samples().isPresent()) {
            Path file = resolve(name, runFile, run.samples().get());
            samples = new SampleListReader().read(file);
            files.put(file, "samples");
        }
        List<String> plates = new ArrayList<>();
        List<Taken> readings = readings(name, runFile, run, method, files, plates);
        String plate = plates.stream().distinct().count() == 1 ? plates.get(0) : "";
        Assay assay = new Assay(
                name,
                plate,
                run.title(),
                run.operator(),
                method,
                layout,
                samples,
                readings,
                exclusions(run),
                finishedFrom(name, run));
        return new Loaded(assay, files, departures(name, runFile, run, assay, files));
    }

    /** How many triggers the method of a run has. */
    int triggers(String name, String method) throws InputException {
        return method(name, Optional.empty(), method, new LinkedHashMap<>()).triggers();
    }

    private static List<Notice> departures(
            String name, Optional<Path> runFile, Run run, Assay assay, Map<Path, String> files) throws InputException {
        if (run.plan().isEmpty()) {
            return List.of();
        }
        Path file = resolve(name, runFile, run.plan().get());
        PlannedRun plan = new PlanFile().read(file);
        files.put(file, "plan");
        Departures.Done done = new Departures.Done(
                assay.method(), assay.layout(), assay.samples(), LastReadings.of(assay.readings(), assay.method()));
        return Departures.of(plan, done).stream()
                .map(text -> Notice.attention(new Place.InFile(name, ""), Loaded.DEPARTS + text))
                .toList();
    }

    /**
     * Loads what a run wants before it is done.
     *
     * @param files takes each file that was read
     */
    Planner.Wanted wanted(Path runFile, Map<Path, String> files) throws InputException {
        String name = runFile.toString();
        Optional<Path> base = Optional.of(runFile);
        Run run = new RunReader().readBefore(runFile);
        files.put(runFile, "run");
        AssayMethod method = method(name, base, run.method(), files);
        Path layoutFile = resolve(name, base, run.layout());
        Layout layout = new LayoutReader().read(layoutFile);
        files.put(layoutFile, "layout");
        List<WantedSample> samples = List.of();
        if (run.samples().isPresent()) {
            Path file = resolve(name, base, run.samples().get());
            samples = new SampleListReader().readWanted(file);
            files.put(file, "samples");
        }
        List<EarlierResult> earlier = List.of();
        if (run.planning().earlier().isPresent()) {
            Path file = resolve(name, base, run.planning().earlier().get());
            earlier = EarlierResults.read(file);
            files.put(file, "earlier results");
        }
        return new Planner.Wanted(name, run.title(), run.operator(), method, layout, samples, earlier, run.planning());
    }

    private AssayMethod method(String name, Optional<Path> runFile, String method, Map<Path, String> files)
            throws InputException {
        Optional<AssayMethod> builtIn = library.find(method);
        if (builtIn.isPresent()) {
            return builtIn.get();
        }
        Path file = resolve(name, runFile, method);
        boolean looksLikeId = !method.contains(".") && !method.contains("/") && !method.contains("\\");
        if (looksLikeId && !java.nio.file.Files.exists(file)) {
            throw new InputException(
                    new Place.InFile(name, ""),
                    "found the method '" + method + "', which is neither built in nor a file; built in are "
                            + String.join(", ", library.ids()));
        }
        AssayMethod read = new MethodReader().read(file);
        files.put(file, "method");
        return read;
    }

    private static List<Taken> readings(
            String name,
            Optional<Path> runFile,
            Run run,
            AssayMethod method,
            Map<Path, String> files,
            List<String> plates)
            throws InputException {
        Importer importer = new Importer();
        List<Taken> readings = new ArrayList<>();
        OptionalDouble wavelength = method.steps().get(0).signal().wavelengthNm();
        for (Run.Reading reading : run.readings()) {
            Path file = resolve(name, runFile, reading.file());
            Choice choice = new Choice(reading.block(), reading.plate(), reading.wavelengthNm());
            Export export = importer.read(file, choice);
            Block block = export.one(choice, wavelength);
            files.put(file, "readings");
            plates.add(block.plate());
            readings.add(new Taken(
                    reading.file(), reading.triggerBefore(), reading.triggerAtS(), reading.timeS(), block.series()));
        }
        return readings;
    }

    private static Map<Well, Run.Exclusion> exclusions(Run run) {
        Map<Well, Run.Exclusion> exclusions = new HashMap<>();
        for (Run.Exclusion each : run.exclusions()) {
            each.wells().forEach(well -> exclusions.putIfAbsent(well, each));
        }
        return exclusions;
    }

    private static Map<Well, Run.FinishedFrom> finishedFrom(String name, Run run) throws InputException {
        Map<Well, Run.FinishedFrom> choices = new HashMap<>();
        for (Run.FinishedFrom each : run.finishedFrom()) {
            for (Well well : each.wells()) {
                Run.FinishedFrom before = choices.put(well, each);
                if (before != null) {
                    throw new InputException(
                            new Place.InFile(name, "line " + each.line()),
                            "found a second 'finished-from' for " + well + " (the first is in line " + before.line()
                                    + "); expected one for each well");
                }
            }
        }
        return choices;
    }

    private static Path resolve(String name, Optional<Path> runFile, String typed) throws InputException {
        try {
            Path path = Path.of(typed);
            return runFile.map(file -> file.resolveSibling(path)).orElse(path).normalize();
        } catch (InvalidPathException e) {
            throw new InputException(
                    new Place.InFile(name, ""), "found the path '" + typed + "', which this system does not allow", e);
        }
    }
}
