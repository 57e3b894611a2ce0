package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tallywell.budget.ResultBudget;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.PathReading;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.method.Spread;
import tallywell.plate.Layout;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.workup.Assay;
import tallywell.workup.MeasuredPath;
import tallywell.workup.Taken;
import tallywell.workup.Workup;

/**
 * Plates whose menisci are deep and differ from well to well, read in the near infra-red with noise and against a 1 cm
 * reading that is off: value ± U holds the truth, which it does not where the meniscus is taken as flat.
 */
class MeasuredPathSimulationTest {
    private static final int PLATES = 120;
    private static final double FLAT_CM = 290 / 33.2 / 10;
    private static final double PEAK = 0.341;
    private static final double BESIDE = 0.158;
    private static final double U_OF_ONE_CM = 0.01;

    private static final String LAYOUT = """
            tallywell: layout/1
            plate: 24
            wells:
              A: o 1 2 3 4 5
              B: o 1 2 3 4 5
              C: o 6 7 8 9 10
              D: o 6 7 8 9 10
            legend:
              o: {role: blank}
            """;

    private final Random random = new Random(977);

    private static AssayMethod method(String beam, String uncertainty) throws Exception {
        return new MethodReader().parse(Path.of("method.yaml"), """
                tallywell: method/1
                id: made-up
                signal: {absorptivity: 6300 L/mol/cm}
                steps:
                  - analyte: {name: malic acid, molar-mass: 134.087 g/mol}
                    volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                light-path: {beam: %s, well-area: 33.2 mm2}
                report: {unit: g/L}
                calibration: {by: absorptivity}
                %s
                """.formatted(beam, uncertainty));
    }

    /** The concentration pipetted in g/L. */
    private static double truth(int slot) {
        return 0.03 * slot;
    }

    private record Drawn(Assay flat, Assay measured) {}

    private Drawn draw(Layout layout, AssayMethod flat, AssayMethod measured, double noise) {
        ReadingSeries.Builder before = ReadingSeries.endPoint(layout.format());
        ReadingSeries.Builder after = ReadingSeries.endPoint(layout.format());
        ReadingSeries.Builder peak = ReadingSeries.endPoint(layout.format());
        ReadingSeries.Builder beside = ReadingSeries.endPoint(layout.format());
        for (Well well : layout.format().all()) {
            // The middle lies 8 % below the mean, with 3 % from well to well.
            double cm = FLAT_CM * (0.92 + 0.03 * random.nextGaussian());
            double c = well.column() == 0 ? 0 : truth(well.column() + (well.row() < 2 ? 0 : 5));
            double perCm = 6300 * c * 20 / 290 / 134.087 + 0.04;
            before.add(well, 0.2 + 0.0005 * random.nextGaussian());
            after.add(well, 0.2 + perCm * cm + 0.0005 * random.nextGaussian());
            peak.add(well, 0.04 + PEAK * cm + noise * random.nextGaussian());
            beside.add(well, 0.04 + BESIDE * cm + noise * random.nextGaussian());
        }
        List<Taken> readings = List.of(taken("before", false, before), taken("after", true, after));
        Assay plate = new Assay(
                "run.yaml", "", "", "", flat, layout, SampleList.plain(layout.slots()), readings, Map.of(), Map.of());
        Assay other = new Assay(
                "run.yaml",
                "",
                "",
                "",
                measured,
                layout,
                SampleList.plain(layout.slots()),
                readings,
                Map.of(),
                Map.of());
        double off = 1 + U_OF_ONE_CM * random.nextGaussian();
        PathReading reading =
                new PathReading(picked(), picked(), off * PEAK, off * BESIDE, Spread.standard(U_OF_ONE_CM));
        return new Drawn(
                plate,
                other.withPath(new MeasuredPath(reading, taken("peak", false, peak), taken("beside", false, beside))));
    }

    private static Taken taken(String name, boolean trigger, ReadingSeries.Builder series) {
        return new Taken(name, trigger, List.of(), OptionalDouble.empty(), series.build());
    }

    private static Run.Reading picked() {
        return new Run.Reading(
                "after.csv",
                false,
                List.of(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0);
    }

    /** How many results hold the truth, are off by more than 2 U with verdict report, of how many; and the mean of value over truth. */
    private record Tally(int held, int wrong, int all, double mean) {
        static Tally of(List<Assay> plates) throws Exception {
            int held = 0;
            int wrong = 0;
            int all = 0;
            double sum = 0;
            for (Assay plate : plates) {
                Assessment assessment = new Assessor().assess(new Workup().analyse(plate));
                for (int i = 0; i < assessment.judgements().size(); i++) {
                    Judgement each = assessment.judgements().get(i);
                    ResultBudget budget = assessment.budget().results().get(i).orElseThrow();
                    double truth = truth(each.result().slot().orElseThrow());
                    double off = Math.abs(each.result().value().orElseThrow() - truth);
                    held += off <= budget.expandedUncertainty() ? 1 : 0;
                    wrong += off > 2 * budget.expandedUncertainty() && each.verdict() == Verdict.REPORT ? 1 : 0;
                    sum += each.result().value().orElseThrow() / truth;
                    all++;
                }
            }
            return new Tally(held, wrong, all, sum / all);
        }

        double heldPercent() {
            return 100.0 * held / all;
        }
    }

    @Test
    void valueAndUHoldTheTruthWhereThePathIsMeasured() throws Exception {
        Path file = Files.createTempFile("layout", ".yaml");
        Files.writeString(file, LAYOUT);
        Layout layout = new LayoutReader().read(file);
        Files.delete(file);
        AssayMethod flat = method("vertical", "uncertainty: {light-path: {standard: 1 %}}");
        AssayMethod measured = method("measured", "");
        List<Drawn> drawn = java.util.stream.IntStream.range(0, PLATES)
                .mapToObj(i -> draw(layout, flat, measured, 0.0005))
                .toList();
        Tally byPath = Tally.of(drawn.stream().map(Drawn::measured).toList());
        Tally byArea = Tally.of(drawn.stream().map(Drawn::flat).toList());
        // The standard error of 1200 results, of which the ten of a plate share one error, is 1 to 2; 400 plates gave
        // 95.4.
        assertThat(byPath.heldPercent()).isBetween(92.0, 98.5);
        assertThat(byPath.wrong()).isLessThan(byPath.all() / 100);
        assertThat(byPath.mean()).isBetween(0.997, 1.003);
        // A flat meniscus is 8 % wrong, which its U does not hold.
        assertThat(byArea.mean()).isBetween(0.91, 0.93);
        assertThat(byArea.heldPercent()).isLessThan(50);
    }
}
