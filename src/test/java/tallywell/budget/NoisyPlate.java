package tallywell.budget;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.quantity.Unit;
import tallywell.workup.Analysis;
import tallywell.workup.Assay;
import tallywell.workup.Taken;
import tallywell.workup.Workup;

/** A made-up plate of 24 wells with known scatter, read once before and once after the trigger. */
public final class NoisyPlate {
    public static final String LAYOUT = """
            tallywell: layout/1
            name: made up
            plate: 24
            wells:
              A: o a b c d e
              B: o a b c d e
              C: o 1 2 3 4 q
              D: o 1 2 3 4 q
            legend:
              o: {role: blank}
              a: {role: standard, level: 0.05 g/L}
              b: {role: standard, level: 0.1 g/L}
              c: {role: standard, level: 0.2 g/L}
              d: {role: standard, level: 0.3 g/L}
              e: {role: standard, level: 0.4 g/L}
              q: {role: control, name: "control", assigned: 0.25 g/L}
            """;

    private final AssayMethod method;
    private final Layout layout;
    private final SampleList samples;
    private final Map<Well, Double> before = new TreeMap<>();
    private final Map<Well, Double> after = new TreeMap<>();

    private NoisyPlate(AssayMethod method, Layout layout, SampleList samples) {
        this.method = method;
        this.layout = layout;
        this.samples = samples;
    }

    /** The method, with a calibration and further keys. */
    public static String method(String calibration, String... further) {
        return """
                tallywell: method/1
                id: made-up
                signal: {absorptivity: 6300 L/mol/cm}
                steps:
                  - analyte: {name: malic acid, formula: C4H6O5}
                    volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                light-path: {beam: vertical, well-area: 33.2 mm2}
                report: {unit: g/L}
                calibration: %s
                %s
                """.formatted(calibration, String.join("\n", further));
    }

    /**
     * Draws a plate.
     *
     * @param response net ΔA over the concentration pipetted in g/L
     * @param s0 scatter of ΔA of a blank
     * @param s1 relative scatter of net ΔA
     */
    public static NoisyPlate of(
            String method, String layout, List<Sample> samples, DoubleUnaryOperator response, double s0, double s1)
            throws InputException {
        try {
            Path file = Files.createTempFile("layout", ".yaml");
            Files.writeString(file, layout);
            Layout drawn = new LayoutReader().read(file);
            Files.delete(file);
            SampleList list = samples.isEmpty() ? SampleList.plain(drawn.slots()) : SampleList.of(samples);
            NoisyPlate plate = new NoisyPlate(new MethodReader().parse(Path.of("method.yaml"), method), drawn, list);
            plate.fill(response, s0, s1, 20250304);
            return plate;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void fill(DoubleUnaryOperator response, double s0, double s1, long seed) {
        Random random = new Random(seed);
        for (Well well : layout.format().all()) {
            Content content = layout.at(well);
            if (content instanceof Content.Unused) {
                continue;
            }
            double net = response.applyAsDouble(pipetted(content));
            if (content instanceof Content.Blank) {
                net = 0;
            }
            double scatter = Math.hypot(s0, s1 * net) * random.nextGaussian();
            double start = 0.2 + 0.02 * random.nextDouble();
            before.put(well, start);
            after.put(well, start + 0.03 + net + scatter);
        }
    }

    /** The same plate with other scatter. */
    public NoisyPlate redrawn(DoubleUnaryOperator response, double s0, double s1, long seed) {
        NoisyPlate other = new NoisyPlate(method, layout, samples);
        other.fill(response, s0, s1, seed);
        return other;
    }

    /** What is in the wells: levels of standards, 0.07 to 0.35 g/L in slots, 0.25 g/L in controls. */
    private double pipetted(Content content) {
        if (content instanceof Content.Standard standard) {
            return standard.level().of("malic acid").orElseThrow().in(Unit.GRAM_PER_LITRE);
        }
        if (content instanceof Content.Sample sample) {
            return amount(sample.slot());
        }
        if (content instanceof Content.Spike spike) {
            return 0.07 * spike.of()
                    + spike.added().of("malic acid").orElseThrow().in(Unit.GRAM_PER_LITRE);
        }
        return content instanceof Content.Control ? 0.25 : 0;
    }

    /** What a slot holds in g/L. */
    public static double amount(int slot) {
        return 0.07 * (1 + (slot - 1) % 5);
    }

    public Map<Well, Double> after() {
        return after;
    }

    Assay assay() {
        return assay(after);
    }

    public Assay assay(Map<Well, Double> readings) {
        List<Taken> taken = List.of(taken("before", false, before), taken("after", true, readings));
        return new Assay("run.yaml", "", "", "", method, layout, samples, taken, Map.of(), Map.of());
    }

    private Taken taken(String name, boolean trigger, Map<Well, Double> values) {
        ReadingSeries.Builder series = ReadingSeries.endPoint(layout.format());
        values.forEach(series::add);
        return new Taken(name, trigger, List.of(), OptionalDouble.empty(), series.build());
    }

    public Analysis analyse() throws InputException {
        return new Workup().analyse(assay());
    }

    /** The analysis with a reading after the trigger moved by something that depends on its place. */
    public Analysis moved(ToDoubleFunction<Well> by) throws InputException {
        Map<Well, Double> other = new TreeMap<>();
        after.forEach((well, value) -> other.put(well, value + by.applyAsDouble(well)));
        return new Workup().analyse(assay(other));
    }

    /** The analysis with one reading after the trigger moved. */
    public Analysis moved(Well well, double by) throws InputException {
        Map<Well, Double> other = new TreeMap<>(after);
        other.merge(well, by, Double::sum);
        return new Workup().analyse(assay(other));
    }

    /** Samples of the layout with something of their own. */
    public static List<Sample> samples(int count, OptionalDouble volumeUl, Dilution dilution, String group) {
        List<Sample> list = new ArrayList<>();
        for (int slot = 1; slot <= count; slot++) {
            Sample plain = Sample.plain(slot);
            list.add(new Sample(
                    slot, plain.name(), dilution, volumeUl, plain.solid(), plain.densityGPerMl(), group, "", ""));
        }
        return list;
    }
}
