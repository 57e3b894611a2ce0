package tallywell.task;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.files.PlanFile;
import tallywell.files.RunReader;
import tallywell.files.SampleListReader;
import tallywell.method.AssayMethod;
import tallywell.method.DilutionSeries;
import tallywell.method.PathReading;
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
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;
import tallywell.workup.Assay;
import tallywell.workup.FinishedChoices;
import tallywell.workup.MeasuredPath;
import tallywell.workup.PlateIdentity;
import tallywell.workup.Taken;

/** Gathers everything that a run names, relative to the run file. */
final class RunLoader {
    private final MethodLibrary library = new MethodLibrary();
    private final Set<Path> seen = new LinkedHashSet<>();

    /**
     * A run with everything it names.
     *
     * @param assay ready to be worked up
     * @param read each file that was read, in the order of the run
     * @param departures where the run departs from the plan it names
     */
    record Loaded(Assay assay, ReadFiles read, List<Notice> departures) {
        private static final String DEPARTS = "departs from its plan: ";

        /** Keeps a copy that cannot change. */
        Loaded {
            departures = List.copyOf(departures);
        }

        /** Each file on this computer that was read, with what it was read as. */
        Map<Path, String> files() {
            return read.onDisk();
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
        String name = runFile.toString();
        Run run = new RunReader().read(runFile);
        ReadFiles read = new ReadFiles();
        read.add("run", name, new Finder.Found(runFile, name));
        return load(name, run, new Finder.Noting(new Finder.OnDisk(name, Optional.of(runFile)), seen), read);
    }

    /** Every file that the run files named, those of runs that cannot be worked up included. */
    Set<Path> seen() {
        return Collections.unmodifiableSet(seen);
    }

    /** Loads a run named on the command line. */
    Loaded load(AdHocRun adHoc) throws InputException {
        Finder finder = new Finder.OnDisk(adHoc.name(), Optional.empty());
        int triggers = triggers(adHoc.name(), adHoc.method(), finder);
        return load(adHoc.name(), adHoc.run(triggers), finder, new ReadFiles());
    }

    /** How many triggers the method of a run has. */
    int triggers(String name, String method, Finder finder) throws InputException {
        return method(name, method, finder, new ReadFiles()).triggers();
    }

    /**
     * Loads a run.
     *
     * @param name as typed, for messages and tables
     * @param read takes each file that was read
     */
    Loaded load(String name, Run run, Finder finder, ReadFiles read) throws InputException {
        AssayMethod method = method(name, run.method(), finder, read);
        Finder.Found layoutFile = finder.find("layout", run.layout());
        Layout layout = new LayoutReader().read(layoutFile.path());
        read.add("layout", run.layout(), layoutFile);
        SampleList samples = SampleList.plain(layout.slots());
        if (run.samples().isPresent()) {
            Finder.Found file = finder.find("samples", run.samples().get());
            samples = new SampleListReader().read(file.path());
            read.add("samples", run.samples().get(), file);
        }
        List<String> plates = new ArrayList<>();
        List<Taken> readings = readings(run, method, finder, read, plates);
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
                Run.Exclusion.byWell(run.exclusions()),
                FinishedChoices.byWell(name, run.finishedFrom()),
                DilutionSeries.of(run.planning()));
        if (run.pathReading().isPresent()) {
            assay = assay.withPath(path(run.pathReading().get(), finder, read));
        }
        return new Loaded(assay, read, departures(name, run, assay, finder, read));
    }

    private static List<Notice> departures(String name, Run run, Assay assay, Finder finder, ReadFiles read)
            throws InputException {
        if (run.plan().isEmpty()) {
            return List.of();
        }
        Finder.Found file = finder.find("plan", run.plan().get());
        PlannedRun plan = new PlanFile().read(file.path());
        read.add("plan", run.plan().get(), file);
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
        Finder finder = new Finder.OnDisk(name, Optional.of(runFile));
        ReadFiles read = new ReadFiles();
        Run run = new RunReader().readBefore(runFile);
        read.add("run", name, new Finder.Found(runFile, name));
        AssayMethod method = method(name, run.method(), finder, read);
        Finder.Found layoutFile = finder.find("layout", run.layout());
        Layout layout = new LayoutReader().read(layoutFile.path());
        read.add("layout", run.layout(), layoutFile);
        List<WantedSample> samples = List.of();
        if (run.samples().isPresent()) {
            Finder.Found file = finder.find("samples", run.samples().get());
            samples = new SampleListReader().readWanted(file.path());
            read.add("samples", run.samples().get(), file);
        }
        List<EarlierResult> earlier = List.of();
        if (run.planning().earlier().isPresent()) {
            String typed = run.planning().earlier().get();
            Finder.Found file = finder.find("earlier results", typed);
            earlier = EarlierResults.read(file.path());
            read.add("earlier results", typed, file);
        }
        files.putAll(read.onDisk());
        return new Planner.Wanted(name, run.title(), run.operator(), method, layout, samples, earlier, run.planning());
    }

    private AssayMethod method(String name, String method, Finder finder, ReadFiles read) throws InputException {
        Optional<AssayMethod> builtIn = finder.hasMethod(method) ? Optional.empty() : library.find(method);
        if (builtIn.isPresent()) {
            read.builtIn(method, library.file(method).orElseThrow());
            return builtIn.get();
        }
        Finder.Found file = finder.find("method", method);
        boolean looksLikeId = !method.contains(".") && !method.contains("/") && !method.contains("\\");
        if (looksLikeId && !java.nio.file.Files.exists(file.path())) {
            throw new InputException(
                    new Place.InFile(name, ""),
                    "found the method '" + method + "', which is neither built in nor a file; built in are "
                            + String.join(", ", library.ids()));
        }
        AssayMethod found = new MethodReader().read(file.path());
        read.add("method", method, file);
        return found;
    }

    private static List<Taken> readings(Run run, AssayMethod method, Finder finder, ReadFiles read, List<String> plates)
            throws InputException {
        Importer importer = new Importer();
        List<Taken> readings = new ArrayList<>();
        OptionalDouble wavelength = method.steps().get(0).signal().wavelengthNm();
        for (Run.Reading reading : run.readings()) {
            Taken taken = taken(reading, wavelength, importer, finder, read);
            plates.add(taken.identity().plate());
            readings.add(taken);
        }
        return readings;
    }

    private static Taken taken(
            Run.Reading reading, OptionalDouble wavelength, Importer importer, Finder finder, ReadFiles read)
            throws InputException {
        Finder.Found file = finder.find("readings", reading.file());
        Choice choice = new Choice(reading.block(), reading.plate(), reading.wavelengthNm());
        Export export = importer.read(file.path(), choice);
        Block block = export.one(choice, wavelength);
        read.add("readings", reading.file(), file);
        return new Taken(
                reading.file(),
                reading.triggerBefore(),
                reading.triggerAtS(),
                reading.timeS(),
                block.series(),
                new PlateIdentity(block.plate(), block.readAt(), reading.samePlate()));
    }

    /** The two readings of the light path; nothing but the run says which of several sets they are. */
    private static MeasuredPath path(PathReading path, Finder finder, ReadFiles read) throws InputException {
        Importer importer = new Importer();
        return new MeasuredPath(
                path,
                taken(path.peak(), OptionalDouble.empty(), importer, finder, read),
                taken(path.beside(), OptionalDouble.empty(), importer, finder, read));
    }
}
