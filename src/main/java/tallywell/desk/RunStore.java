package tallywell.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.files.LayoutReader;
import tallywell.files.LayoutWriter;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.files.RunReader;
import tallywell.files.RunWriter;
import tallywell.files.SampleListReader;
import tallywell.files.SampleListWriter;
import tallywell.method.AssayMethod;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;
import tallywell.task.Progress;
import tallywell.task.Wanted;
import tallywell.task.WorkUp;

/** Opens and saves runs; not for the event thread. */
public final class RunStore {
    private static final String RUN = "run.yaml";

    private final MethodLibrary library = new MethodLibrary();

    /** Opens a run file with everything it names. */
    public RunDraft open(Path file) throws InputException {
        Run run = new RunReader().read(file);
        if (run.pathReading().isPresent()) {
            throw new InputException(
                    Place.file(file),
                    "the run measures its light paths ('path-reading'), which the window cannot show or keep yet; expected a run"
                            + " without it, or work this one up with 'tallywell workup'");
        }
        Origin<AssayMethod> method = method(file, run.method());
        Path layout = resolve(file, run.layout());
        Optional<Origin<SampleList>> samples = Optional.empty();
        if (run.samples().isPresent()) {
            Path list = resolve(file, run.samples().get());
            samples = Optional.of(Origin.file(list, new SampleListReader().read(list)));
        }
        return new RunDraft(
                run.title(),
                run.operator(),
                Optional.of(method),
                Optional.of(Origin.file(layout, new LayoutReader().read(layout))),
                samples,
                readings(file, run, method.value()),
                run.exclusions(),
                run.finishedFrom(),
                Optional.of(file),
                bench(file, run));
    }

    private static Bench bench(Path file, Run run) throws InputException {
        Optional<Path> plan =
                run.plan().isPresent() ? Optional.of(resolve(file, run.plan().get())) : Optional.empty();
        Optional<Path> earlier = run.planning().earlier().isPresent()
                ? Optional.of(resolve(file, run.planning().earlier().get()))
                : Optional.empty();
        return new Bench(plan, run.planning(), earlier);
    }

    /** A built-in method. */
    public Origin<AssayMethod> builtIn(String id) throws InputException {
        AssayMethod method = library.find(id)
                .orElseThrow(() -> new InputException(
                        Place.nowhere(), "found no built-in method '" + id + "'; built in are " + library.ids()));
        return Origin.unsaved(id, method);
    }

    /** The text of a method's file, wherever it is. */
    public String text(Origin<AssayMethod> method) throws InputException {
        if (method.text().isPresent()) {
            return method.text().get();
        }
        if (method.file().isEmpty()) {
            return library.file(method.value().id())
                    .orElseThrow(() -> new IllegalArgumentException(
                            "method must be built in, in a file, or carry its text but was " + method.name()));
        }
        try {
            return Files.readString(method.file().get());
        } catch (IOException e) {
            throw new InputException(
                    Place.file(method.file().get()), "the file cannot be read (" + e.getMessage() + ")", e);
        }
    }

    /** The ids of the built-in methods. */
    public List<String> builtIn() {
        return library.ids();
    }

    private Origin<AssayMethod> method(Path runFile, String typed) throws InputException {
        if (library.ids().contains(typed)) {
            return builtIn(typed);
        }
        Path file = resolve(runFile, typed);
        return Origin.file(file, new MethodReader().read(file));
    }

    private static List<Intake> readings(Path file, Run run, AssayMethod method) throws InputException {
        Importer importer = new Importer();
        OptionalDouble wavelength = method.steps().get(0).signal().wavelengthNm();
        List<Intake> readings = new ArrayList<>();
        for (Run.Reading each : run.readings()) {
            Path export = resolve(file, each.file());
            Choice choice = new Choice(each.block(), each.plate(), each.wavelengthNm());
            Export read = importer.read(export, choice);
            readings.add(new Intake(
                    export,
                    choice,
                    block(read, choice, wavelength),
                    read.explanation().text(),
                    each.triggerBefore(),
                    each.triggerAtS(),
                    each.timeS(),
                    each.samePlate()));
        }
        return readings;
    }

    /** A file with one set of readings is opened whatever its wavelength, which is asked about then. */
    static Block block(Export read, Choice choice, OptionalDouble wavelength) throws InputException {
        boolean only = read.blocks().size() == 1 && choice.equals(Choice.none());
        return only ? read.blocks().get(0) : read.one(choice, wavelength);
    }

    private static Path resolve(Path file, String typed) throws InputException {
        try {
            return file.resolveSibling(typed).normalize();
        } catch (InvalidPathException e) {
            throw new InputException(
                    Place.file(file), "found the path '" + typed + "', which this system does not allow", e);
        }
    }

    /** Saves a run where it was; everything that is not in a file yet goes beside it. */
    public RunDraft save(RunDraft draft, Path file) throws OutputException {
        return write(draft, file, false);
    }

    /** Makes a folder for a run: the run file and copies of everything that it names. */
    public RunDraft saveInFolder(RunDraft draft, Path folder) throws OutputException {
        return write(draft, folder.resolve(RUN), true);
    }

    private RunDraft write(RunDraft draft, Path file, boolean copies) throws OutputException {
        Saving saving = new Saving(file, copies);
        Optional<Origin<AssayMethod>> method = Optional.empty();
        String methodName = "";
        if (draft.method().isPresent()) {
            Origin<AssayMethod> origin = draft.method().get();
            method = Optional.of(origin);
            methodName = origin.value().id();
            if (origin.file().isPresent() || origin.text().isPresent()) {
                Path placed = saving.place(origin, "method.yaml", origin.text().orElse(""));
                method = Optional.of(Origin.file(placed, origin.value()));
                methodName = saving.typed(placed);
            }
        }
        Optional<Origin<SampleList>> samples = Optional.empty();
        if (draft.samples().isPresent()) {
            Origin<SampleList> origin = draft.samples().get();
            samples = Optional.of(Origin.file(
                    saving.place(
                            origin,
                            "samples.csv",
                            origin.text().orElseGet(() -> new SampleListWriter().text(origin.value()))),
                    origin.value()));
        }
        Origin<tallywell.plate.Layout> layout = draft.layout().orElseThrow();
        Path layoutFile = saving.place(layout, layoutName(layout.value()), new LayoutWriter().text(layout.value()));
        List<Intake> readings = new ArrayList<>();
        for (Intake each : draft.readings()) {
            readings.add(each.at(saving.copy(each.file())));
        }
        RunDraft saved = new RunDraft(
                draft.title(),
                draft.operator(),
                method,
                Optional.of(Origin.file(layoutFile, layout.value())),
                samples,
                readings,
                draft.exclusions(),
                draft.finishedFrom(),
                Optional.of(file),
                saving.bench(draft.bench()));
        SafeFile.write(file, new RunWriter().text(run(saved, saving, methodName)));
        return saved;
    }

    private static String layoutName(tallywell.plate.Layout layout) {
        String plain = FileNames.of(layout.name());
        return (plain.isEmpty() ? "layout" : plain) + ".yaml";
    }

    private static Run run(RunDraft draft, Saving saving, String method) {
        return new Run(
                draft.title(),
                method,
                saving.typed(draft.layout().orElseThrow().file().orElseThrow()),
                draft.samples().flatMap(Origin::file).map(saving::typed),
                draft.operator(),
                draft.readings().stream()
                        .map(each -> each.reading(saving.typed(each.file())))
                        .toList(),
                draft.exclusions(),
                draft.finishedFrom(),
                draft.bench().plan().map(saving::typed),
                draft.bench().withEarlier(draft.bench().earlier().map(saving::typed)));
    }

    /**
     * Writes the Excel summary of a saved run, and what else is wanted.
     *
     * @param progress can cancel it; then nothing is written
     * @return the files that were written; none if it was cancelled
     */
    public List<Path> export(Path runFile, Wanted wanted, Instant now, ZoneId zone, Progress progress)
            throws InputException, OutputException {
        return new WorkUp()
                .run(
                        new WorkUp.Request(List.of(runFile), Optional.empty(), wanted, now, zone, Optional.empty()),
                        progress)
                .written();
    }
}
