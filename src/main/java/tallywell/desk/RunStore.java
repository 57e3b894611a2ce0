package tallywell.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;
import tallywell.task.Progress;
import tallywell.task.WorkUp;

/** Opens and saves runs; not for the event thread. */
public final class RunStore {
    private static final String RUN = "run.yaml";

    private final MethodLibrary library = new MethodLibrary();

    /** Opens a run file with everything it names. */
    public RunDraft open(Path file) throws InputException {
        Run run = new RunReader().read(file);
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
                Optional.of(file));
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
                    read.one(choice, wavelength),
                    read.explanation().text(),
                    each.triggerBefore(),
                    each.triggerAtS(),
                    each.timeS()));
        }
        return readings;
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
                    saving.place(origin, "samples.csv", new SampleListWriter().text(origin.value())), origin.value()));
        }
        Origin<tallywell.plate.Layout> layout = draft.layout().orElseThrow();
        Path layoutFile = saving.place(layout, "layout.yaml", new LayoutWriter().text(layout.value()));
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
                Optional.of(file));
        SafeFile.write(file, new RunWriter().text(run(saved, saving, methodName)));
        return saved;
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
                draft.finishedFrom());
    }

    /** The files of one run being saved. */
    private static final class Saving {
        private final Path folder;
        private final boolean copies;
        private final Set<Path> taken = new HashSet<>();

        Saving(Path runFile, boolean copies) {
            Path parent = runFile.toAbsolutePath().normalize().getParent();
            this.folder = parent == null ? runFile.toAbsolutePath() : parent;
            this.copies = copies;
            taken.add(runFile.toAbsolutePath().normalize());
        }

        /** Where a part of the run is, or is put now. */
        Path place(Origin<?> origin, String name, String text) throws OutputException {
            if (origin.file().isPresent()) {
                return copy(origin.file().get());
            }
            Path target = free(name);
            SafeFile.write(target, text);
            return target;
        }

        Path copy(Path from) throws OutputException {
            if (!copies) {
                return from;
            }
            Path source = from.toAbsolutePath().normalize();
            if (folder.equals(source.getParent())) {
                taken.add(source);
                return source;
            }
            Path target = free(String.valueOf(from.getFileName()));
            try {
                Files.createDirectories(folder);
                Files.copy(source, target, StandardCopyOption.REPLACE_EXISTING);
            } catch (IOException e) {
                throw new OutputException(target, "cannot be copied (" + e.getMessage() + ")", e);
            }
            return target;
        }

        private Path free(String name) {
            Path target = folder.resolve(name);
            for (int i = 2; !taken.add(target); i++) {
                target = folder.resolve(i + "-" + name);
            }
            return target;
        }

        /** The path as a run file has it: relative, with slashes, if that is possible. */
        String typed(Path file) {
            Path whole = file.toAbsolutePath().normalize();
            boolean sameRoot = whole.getRoot() != null && whole.getRoot().equals(folder.getRoot());
            return sameRoot ? folder.relativize(whole).toString().replace('\\', '/') : whole.toString();
        }
    }

    /**
     * Writes the Excel summary of a saved run, and what else is wanted.
     *
     * @param tables folder for the tables, if wanted
     * @param charts folder for pictures of the traces, if wanted
     * @return the files that were written
     */
    public List<Path> export(
            Path runFile, Path summary, Optional<Path> tables, Optional<Path> charts, Instant now, ZoneId zone)
            throws InputException, OutputException {
        return new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(runFile),
                                Optional.empty(),
                                Optional.of(summary),
                                tables,
                                charts,
                                true,
                                now,
                                zone,
                                Optional.empty()),
                        Progress.SILENT)
                .written();
    }
}
