package tallywell.workup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.BiFunction;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Treatment;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;

/** Eighteen samples free and total in duplicate, on the layout that is delivered, with the ΔA that a test says. */
public final class PlateOfHalves {
    /** Samples of the layout. */
    public static final int SAMPLES = 18;

    /** D-glucose in one gram of sucrose, by their molar masses (IUPAC 2021). */
    public static final double GLUCOSE_OF_SUCROSE = 180.156 / 342.297;

    private static final String LAYOUT = "plate-layouts/free-and-total-in-duplicate.yaml";

    private PlateOfHalves() {}

    /** The sucrose method that is built in, with another calibration. */
    public static AssayMethod sucrose(String calibration) throws InputException {
        return method("sucrose-340", calibration);
    }

    /** A method that is built in, with another calibration. */
    public static AssayMethod method(String id, String calibration) throws InputException {
        try {
            String text = new String(
                    PlateOfHalves.class
                            .getResourceAsStream("/tallywell/methods/" + id + ".yaml")
                            .readAllBytes(),
                    java.nio.charset.StandardCharsets.UTF_8);
            return new MethodReader()
                    .parse(
                            Path.of(id + ".yaml"),
                            text.replace("{by: standards, model: line, weights: none}", calibration)
                                    // The plates of these tests scatter, and nothing else.
                                    .replaceAll("(?m)^uncertainty:.*\\R(?: .*\\R)*", ""));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A sample as free in slot i and as total in slot 18 + i, each at its dilution. */
    public static List<Sample> pair(int slot, String name, double free, double total) {
        return List.of(half(slot, name, Treatment.FREE, free), half(SAMPLES + slot, name, Treatment.TOTAL, total));
    }

    private static Sample half(int slot, String name, Treatment treatment, double dilution) {
        return new Sample(
                slot,
                name,
                new Dilution(dilution),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                treatment.word(),
                "",
                "",
                treatment);
    }

    /** Works a plate up from ΔA. */
    public static Analysis of(AssayMethod method, List<Sample> samples, BiFunction<Well, Content, Double> deltaA)
            throws InputException {
        Layout layout = new LayoutReader().read(Path.of(LAYOUT));
        Map<Well, Double> before = new TreeMap<>();
        Map<Well, Double> after = new TreeMap<>();
        for (Well well : layout.format().all()) {
            if (!(layout.at(well) instanceof Content.Unused)) {
                before.put(well, 0.112);
                after.put(well, 0.112 + deltaA.apply(well, layout.at(well)));
            }
        }
        List<Sample> list = new ArrayList<>(samples);
        Assay assay = new Assay(
                "run.yaml",
                "",
                "",
                "",
                method,
                layout,
                SampleList.of(list),
                List.of(taken("before", false, before, layout), taken("after", true, after, layout)),
                Map.of(),
                Map.of());
        return new Workup().analyse(assay);
    }

    private static Taken taken(String name, boolean trigger, Map<Well, Double> values, Layout layout) {
        ReadingSeries.Builder series = ReadingSeries.endPoint(layout.format());
        values.forEach(series::add);
        return new Taken(name, trigger, List.of(), OptionalDouble.empty(), series.build());
    }
}
