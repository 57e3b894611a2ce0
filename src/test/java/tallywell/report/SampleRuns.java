package tallywell.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import tallywell.assess.Assessor;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.files.RunReader;
import tallywell.files.SampleListReader;
import tallywell.method.AssayMethod;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.workup.Assay;
import tallywell.workup.Taken;
import tallywell.workup.Workup;

/** Works up the runs of {@code samples/}, whose exports are of a few plain forms, for tests of what is written. */
public final class SampleRuns {
    static final Instant MADE = Instant.parse("2026-03-09T13:05:00Z");
    static final ZoneId ZONE = ZoneId.of("Europe/Zurich");

    private SampleRuns() {}

    /** The report on a folder of {@code samples/}. */
    public static Report report(String folder) throws InputException {
        return report(assay(folder));
    }

    /** The report on an assay. */
    public static Report report(Assay assay) throws InputException {
        var analysis = new Workup().analyse(assay);
        List<InputFile> inputs = List.of(
                new InputFile("run", assay.name(), "0".repeat(64)),
                new InputFile("readings", assay.readings().get(0).name(), "1".repeat(64)));
        return new Report(
                assay.name(),
                analysis,
                new Assessor().assess(analysis),
                new Provenance("0.1.0-test", MADE, ZONE, inputs, ""));
    }

    /** Everything that a folder of {@code samples/} is worked up from. */
    public static Assay assay(String folder) throws InputException {
        UnaryOperator<String> asItIs = UnaryOperator.identity();
        return assay(folder, asItIs, asItIs, asItIs);
    }

    /** The same with another method. */
    public static Assay assay(String folder, UnaryOperator<String> method) throws InputException {
        return assay(folder, method, UnaryOperator.identity(), UnaryOperator.identity());
    }

    /** The same with the text of its method, layout and sample list changed. */
    public static Assay assay(
            String folder, UnaryOperator<String> method, UnaryOperator<String> layout, UnaryOperator<String> samples)
            throws InputException {
        Path path = Path.of("samples", folder, "run.yaml");
        Run run = new RunReader().read(path);
        Layout drawn =
                new LayoutReader().read(edited(path.resolveSibling(run.layout()).normalize(), layout));
        List<Taken> taken = new ArrayList<>();
        for (Run.Reading reading : run.readings()) {
            taken.add(new Taken(
                    reading.file(),
                    reading.triggerBefore(),
                    reading.triggerAtS(),
                    reading.timeS(),
                    series(path.resolveSibling(reading.file()), drawn)));
        }
        Map<Well, Run.Exclusion> exclusions = new HashMap<>();
        run.exclusions().forEach(each -> each.wells().forEach(well -> exclusions.put(well, each)));
        Map<Well, Run.FinishedFrom> finished = new HashMap<>();
        run.finishedFrom().forEach(each -> each.wells().forEach(well -> finished.put(well, each)));
        return new Assay(
                path.toString(),
                "",
                run.title(),
                run.operator(),
                method(path.resolveSibling(run.method()), run.method(), method),
                drawn,
                run.samples().isPresent()
                        ? new SampleListReader()
                                .read(edited(path.resolveSibling(run.samples().get()), samples))
                        : SampleList.plain(drawn.slots()),
                taken,
                exclusions,
                finished);
    }

    private static AssayMethod method(Path path, String id, UnaryOperator<String> edit) throws InputException {
        Optional<String> known = new MethodLibrary().file(id);
        return new MethodReader().parse(path, edit.apply(known.isPresent() ? known.get() : text(path)));
    }

    /** The file itself, or a copy with its text changed. */
    private static Path edited(Path path, UnaryOperator<String> edit) {
        String text = text(path);
        String changed = edit.apply(text);
        if (changed.equals(text)) {
            return path;
        }
        try {
            Path copy = Files.createTempDirectory("tallywell").resolve(path.getFileName());
            copy.toFile().deleteOnExit();
            return Files.writeString(copy, changed);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path path) {
        try {
            return Files.readString(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ReadingSeries series(Path path, Layout layout) {
        List<String[]> rows = rows(path);
        if (rows.stream().anyMatch(row -> row[0].startsWith("Time"))) {
            return kinetic(rows, layout);
        }
        ReadingSeries.Builder builder = ReadingSeries.endPoint(layout.format());
        boolean list = rows.stream().anyMatch(row -> row[0].equalsIgnoreCase("well"));
        for (String[] row : rows) {
            if (list) {
                Optional<Well> well = Well.parse(row[0]);
                well.ifPresent(each -> builder.add(each, Double.parseDouble(row[1].replace(',', '.'))));
            } else if (Well.rowOf(row[0]) >= 0 && row.length > 2) {
                for (int column = 1; column < row.length; column++) {
                    builder.add(new Well(Well.rowOf(row[0]), column - 1), Double.parseDouble(row[column]));
                }
            }
        }
        return builder.build();
    }

    private static ReadingSeries kinetic(List<String[]> rows, Layout layout) {
        String[] head = rows.get(0);
        double[] times = rows.stream()
                .skip(1)
                .mapToDouble(row -> Double.parseDouble(row[0]))
                .toArray();
        ReadingSeries.Builder builder = ReadingSeries.timed(layout.format());
        for (int column = 1; column < head.length; column++) {
            int at = column;
            double[] values = rows.stream()
                    .skip(1)
                    .mapToDouble(row -> Double.parseDouble(row[at]))
                    .toArray();
            builder.add(Well.parse(head[column]).orElseThrow(), times, values, null);
        }
        return builder.build();
    }

    private static List<String[]> rows(Path path) {
        try {
            String text = Files.readString(path, StandardCharsets.ISO_8859_1);
            String delimiter = text.contains("\t") ? "\t" : text.contains(";") ? ";" : ",";
            return text.lines()
                    .filter(line -> !line.isBlank())
                    .map(line -> line.split(delimiter, -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
