package tallywell.workup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.Run;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.Mark;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/** Small plates typed in tests: method and layout as their files, readings as grids. */
public final class Plates {
    private String method = "";
    private String layout = "";
    private final List<Sample> samples = new ArrayList<>();
    private final List<Taken> readings = new ArrayList<>();
    private final Map<Well, Run.Exclusion> exclusions = new HashMap<>();
    private final Map<Well, Run.FinishedFrom> finishedFrom = new HashMap<>();

    private Plates() {}

    /** A plate of six wells to fill in. */
    public static Plates small() {
        return new Plates();
    }

    public Plates method(String text) {
        method = text;
        return this;
    }

    /** Two rows of three words, and a legend. */
    public Plates layout(String rowA, String rowB, String legend) {
        layout = "tallywell: layout/1\nname: small\nplate: 6\nwells:\n  A: " + rowA + "\n  B: " + rowB + "\nlegend:\n"
                + legend.indent(2);
        return this;
    }

    public Plates sample(Sample sample) {
        samples.add(sample);
        return this;
    }

    /** One end point: six numbers in row order, or the words over, missing, none. */
    public Plates read(boolean triggerBefore, String numbers) {
        return read(triggerBefore, OptionalDouble.empty(), numbers);
    }

    public Plates read(boolean triggerBefore, OptionalDouble timeS, String numbers) {
        ReadingSeries.Builder series = ReadingSeries.endPoint(new PlateFormat(2, 3));
        String[] words = numbers.strip().split("\\s+");
        for (int i = 0; i < words.length; i++) {
            Well well = new Well(i / 3, i % 3);
            switch (words[i]) {
                case "over" -> series.add(well, Mark.OVER);
                case "missing" -> series.add(well, Mark.MISSING);
                case "none" -> {}
                default -> series.add(well, Double.parseDouble(words[i]));
            }
        }
        readings.add(new Taken("reading " + (readings.size() + 1), triggerBefore, List.of(), timeS, series.build()));
        return this;
    }

    /** A series with shared times: one line of numbers a well, in row order. */
    public Plates series(boolean triggerBefore, List<Double> triggerAtS, double[] timesS, double[]... wells) {
        ReadingSeries.Builder series = ReadingSeries.timed(new PlateFormat(2, 3));
        for (int i = 0; i < wells.length; i++) {
            series.add(new Well(i / 3, i % 3), timesS, wells[i], null);
        }
        readings.add(new Taken(
                "series " + (readings.size() + 1), triggerBefore, triggerAtS, OptionalDouble.empty(), series.build()));
        return this;
    }

    public Plates exclude(String well) {
        Well each = Well.parse(well).orElseThrow();
        exclusions.put(each, new Run.Exclusion(List.of(each), "bubble", "J. Vale", 1));
        return this;
    }

    public Plates finishedFrom(String well, double timeS) {
        Well each = Well.parse(well).orElseThrow();
        finishedFrom.put(each, new Run.FinishedFrom(List.of(each), timeS, "bubble", "J. Vale", 7));
        return this;
    }

    public Assay assay() throws InputException {
        try {
            AssayMethod read = new MethodReader().parse(Path.of("method.yaml"), method);
            Path file = Files.createTempFile("layout", ".yaml");
            Files.writeString(file, layout);
            Layout drawn = new LayoutReader().read(file);
            Files.delete(file);
            SampleList list = samples.isEmpty() ? SampleList.plain(drawn.slots()) : SampleList.of(samples);
            return new Assay("run.yaml", "", "", "", read, drawn, list, readings, exclusions, finishedFrom);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public Analysis analyse() throws InputException {
        return new Workup().analyse(assay());
    }
}
