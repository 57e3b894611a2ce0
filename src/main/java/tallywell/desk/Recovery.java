package tallywell.desk;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Properties;
import java.util.stream.Collectors;
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
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.plate.Layout;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;

/**
 * Keeps unsaved work in a folder, so that a crash or a power cut loses nothing: written after every edit, gone after
 * saving. What stands there at the next start is offered. Not for the event thread.
 */
public final class Recovery {
    private static final String RUN = "run.properties";
    private static final String LAYOUT = "layout.yaml";

    private final Path folder;

    /** Work is kept in a folder of its own. */
    public Recovery(Path folder) {
        this.folder = folder;
    }

    /** Keeps a layout. */
    public void keep(Layout layout) throws OutputException {
        SafeFile.write(folder.resolve(LAYOUT), new LayoutWriter().text(layout));
    }

    /** The layout that was kept, if there is one that can be read. */
    public Optional<Layout> layout() throws InputException {
        Path file = folder.resolve(LAYOUT);
        return Files.isRegularFile(file) ? Optional.of(new LayoutReader().read(file)) : Optional.empty();
    }

    /** Keeps a run, whatever is still missing in it. */
    public void keep(RunDraft draft) throws OutputException {
        Properties kept = new Properties();
        kept.setProperty("title", draft.title());
        kept.setProperty("operator", draft.operator());
        draft.file().ifPresent(file -> kept.setProperty("file", file.toString()));
        draft.method().ifPresent(origin -> {
            kept.setProperty("method.name", origin.name());
            origin.text().ifPresent(text -> kept.setProperty("method", text));
        });
        draft.layout().ifPresent(origin -> {
            kept.setProperty("layout.name", origin.name());
            kept.setProperty("layout", new LayoutWriter().text(origin.value()));
        });
        draft.samples().ifPresent(origin -> {
            kept.setProperty("samples.name", origin.name());
            kept.setProperty("samples", origin.text().orElseGet(() -> new SampleListWriter().text(origin.value())));
            origin.text().ifPresent(text -> kept.setProperty("samples.typed", "yes"));
        });
        path(kept, "method.file", draft.method().flatMap(Origin::file));
        path(kept, "layout.file", draft.layout().flatMap(Origin::file));
        path(kept, "samples.file", draft.samples().flatMap(Origin::file));
        kept.setProperty("run", runText(draft));
        StringWriter text = new StringWriter();
        try {
            kept.store(text, null);
        } catch (IOException e) {
            throw new OutputException(folder.resolve(RUN), "cannot be written (" + e.getMessage() + ")", e);
        }
        SafeFile.write(folder.resolve(RUN), text.toString());
    }

    private static void path(Properties kept, String key, Optional<Path> file) {
        file.ifPresent(path -> kept.setProperty(key, absolute(path)));
    }

    private static String absolute(Path path) {
        return path.toAbsolutePath().toString();
    }

    /** Readings, exclusions and finished parts in the form of a run file; method and layout stand beside it. */
    private static String runText(RunDraft draft) {
        List<Run.Reading> readings = draft.readings().stream()
                .map(each -> each.reading(absolute(each.file())))
                .toList();
        Run run = new Run(
                "",
                "kept",
                "kept",
                Optional.empty(),
                "",
                readings,
                draft.exclusions(),
                draft.finishedFrom(),
                draft.bench().plan().map(Recovery::absolute),
                draft.bench().withEarlier(draft.bench().earlier().map(Recovery::absolute)));
        return new RunWriter().text(run);
    }

    /**
     * The run that was kept, if there is one.
     *
     * @throws InputException if what was kept cannot be read, such as an export that has been moved since
     */
    public Optional<RunDraft> run() throws InputException {
        Path file = folder.resolve(RUN);
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        Properties kept = new Properties();
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            kept.load(reader);
        } catch (IOException | IllegalArgumentException e) {
            throw new InputException(Place.file(file), "the work that was kept cannot be read", e);
        }
        RunDraft draft = RunDraft.EMPTY;
        Optional<Origin<AssayMethod>> method = method(kept, file);
        if (method.isPresent()) {
            draft = draft.withMethod(method.get());
        }
        if (kept.containsKey("layout")) {
            Path part = part("layout.kept.yaml", kept.getProperty("layout"));
            draft = draft.withLayout(new Origin<>(
                    kept.getProperty("layout.name", ""),
                    file(kept, "layout.file"),
                    new LayoutReader().read(part),
                    Optional.empty()));
        }
        if (kept.containsKey("samples")) {
            Path part = part("samples.kept.csv", kept.getProperty("samples"));
            draft = draft.withSamples(Optional.of(new Origin<>(
                    kept.getProperty("samples.name", ""),
                    file(kept, "samples.file"),
                    new SampleListReader().read(part),
                    Optional.ofNullable(kept.getProperty("samples.typed")).map(typed -> kept.getProperty("samples")))));
        }
        return Optional.of(withReadings(draft, kept));
    }

    private static Optional<Origin<AssayMethod>> method(Properties kept, Path file) throws InputException {
        String name = kept.getProperty("method.name", "");
        if (kept.containsKey("method")) {
            String text = kept.getProperty("method");
            return Optional.of(
                    new Origin<>(name, Optional.empty(), new MethodReader().parse(file, text), Optional.of(text)));
        }
        Optional<Path> own = file(kept, "method.file");
        return own.isPresent()
                ? Optional.of(Origin.file(own.get(), new MethodReader().read(own.get())))
                : new MethodLibrary().find(name).map(method -> Origin.unsaved(name, method));
    }

    private RunDraft withReadings(RunDraft draft, Properties kept) throws InputException {
        String text = kept.getProperty("run", "");
        Run run = new RunReader().readBefore(part("run.kept.yaml", text));
        List<Intake> readings = new ArrayList<>();
        for (Run.Reading each : run.readings()) {
            readings.add(read(each, draft));
        }
        return new RunDraft(
                kept.getProperty("title", ""),
                kept.getProperty("operator", ""),
                draft.method(),
                draft.layout(),
                draft.samples(),
                readings,
                run.exclusions().stream()
                        .map(each -> new Run.Exclusion(each.wells(), each.reason(), each.by(), 0))
                        .toList(),
                run.finishedFrom().stream()
                        .map(each -> new Run.FinishedFrom(each.wells(), each.timeS(), each.reason(), each.by(), 0))
                        .toList(),
                file(kept, "file"),
                new Bench(
                        run.plan().map(Path::of),
                        run.planning(),
                        run.planning().earlier().map(Path::of)));
    }

    private static Intake read(Run.Reading reading, RunDraft draft) throws InputException {
        OptionalInt block = reading.block();
        Choice choice = new Choice(block, reading.plate(), reading.wavelengthNm());
        Export export = new Importer().read(Path.of(reading.file()), choice);
        OptionalDouble wavelength = draft.method()
                .map(each -> each.value().steps().get(0).signal().wavelengthNm())
                .orElse(OptionalDouble.empty());
        return new Intake(
                Path.of(reading.file()),
                choice,
                RunStore.block(export, choice, wavelength),
                export.explanation().text(),
                reading.triggerBefore(),
                reading.triggerAtS(),
                reading.timeS(),
                reading.samePlate());
    }

    private static Optional<Path> file(Properties kept, String key) {
        return Optional.ofNullable(kept.getProperty(key)).map(Path::of);
    }

    /** The readers of our formats read files; a part of what was kept becomes one for them. */
    private Path part(String name, String text) throws InputException {
        Path part = folder.resolve(name);
        try {
            SafeFile.write(part, text);
        } catch (OutputException e) {
            throw new InputException(Place.file(part), "the work that was kept cannot be read", e);
        }
        return part;
    }

    /** Forgets what was kept: it has been saved, or nobody wants it. */
    public void forget() throws OutputException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (var files = Files.list(folder)) {
            for (Path each : files.collect(Collectors.toList())) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            throw new OutputException(folder, "cannot be cleared (" + e.getMessage() + ")", e);
        }
    }
}
