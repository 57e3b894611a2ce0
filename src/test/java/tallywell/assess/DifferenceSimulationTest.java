package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.method.AssayMethod;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.quantity.Unit;
import tallywell.workup.Flag;
import tallywell.workup.PlateOfHalves;

/**
 * Plates with known sucrose, made up by a generator of their own: free part from nothing to all, product from nothing to
 * much, both halves at their own dilution, by standards and by absorptivity.
 */
class DifferenceSimulationTest {
    /** Net ΔA for 1 g/L: 10 · ε · v / (area · M), with 6300 L/mol/cm, 20 µL, 33.2 mm2, by hand. */
    private static final double SLOPE = 6300 * 20 / (10 * 33.2 * 180.156);

    private static final int PLATES = 150;
    private static final double READ = 0.0012;
    private static final double PIPETTE = 0.004;

    /** Sucrose in g/L of what is pipetted of the total, beside what fills it up to the glucose of the total. */
    private static final double[] FREE_PART = {0, 0.002, 0.01, 0.03, 0.1, 0.3, 0.6, 0.95, 1};

    private static final double[] TOTALS = {0.07, 0.12, 0.2, 0.35};
    private static final double[] DILUTIONS = {5, 20, 100, 200};

    private record Truth(double freeGlucose, double totalGlucose) {
        double sucrose() {
            return (totalGlucose - freeGlucose) / PlateOfHalves.GLUCOSE_OF_SUCROSE;
        }
    }

    /** What came of all the differences. */
    private static final class Tally {
        private int all;
        private int reported;
        private int off;
        private int outsideU;
        private int absent;
        private int seen;
        private int bounds;
        private int overBound;

        void add(JudgedDifference each, Truth truth) {
            all++;
            if (truth.sucrose() < 1e-9) {
                absent++;
                seen += each.verdict() != Verdict.REPEAT && !each.flags().contains(Flag.BELOW_DETECTION) ? 1 : 0;
            }
            if (each.budget().isEmpty() || each.verdict() != Verdict.REPORT) {
                return;
            }
            reported++;
            double expanded = each.budget().get().expandedUncertainty();
            double error = Math.abs(each.row().value().orElseThrow() - truth.sucrose());
            outsideU += error > expanded ? 1 : 0;
            off += error > 2 * expanded ? 1 : 0;
            if (each.atMost().isPresent()) {
                bounds++;
                overBound += truth.sucrose() > each.atMost().getAsDouble() ? 1 : 0;
            }
        }

        @Override
        public String toString() {
            return reported + " of " + all + " reported, outside U " + outsideU + ", outside 2 U " + off + ", absent "
                    + absent + " of which seen " + seen + ", bounds " + bounds + " of which passed " + overBound;
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{by: standards, model: line, weights: none}",
                "{by: standards, model: line-through-zero, weights: none}",
                "{by: standards, model: quadratic, weights: none}",
                "{by: absorptivity}"
            })
    void whatIsReportedHoldsTheTruthAndWhatIsAbsentIsNotFound(String calibration) throws InputException {
        AssayMethod method = PlateOfHalves.sucrose(calibration);
        SplittableRandom random = new SplittableRandom(20261201);
        Tally tally = new Tally();
        for (int plate = 0; plate < PLATES; plate++) {
            plate(method, random, tally);
        }
        assertThat(tally.reported).as(tally.toString()).isGreaterThan(tally.all / 2);
        assertThat(tally.off).as(tally.toString()).isLessThan(tally.reported / 100);
        assertThat(tally.outsideU).as(tally.toString()).isLessThan((int) (0.065 * tally.reported));
        // Two standard deviations of a count at 5 % on top.
        assertThat(tally.seen).as(tally.toString()).isLessThan((int)
                (0.05 * tally.absent + 2 * Math.sqrt(0.0475 * tally.absent)));
        assertThat(tally.overBound).as(tally.toString()).isLessThan((int)
                (0.05 * tally.bounds + 2 * Math.sqrt(0.0475 * tally.bounds)));
    }

    private static void plate(AssayMethod method, SplittableRandom random, Tally tally) throws InputException {
        List<Sample> samples = new ArrayList<>();
        Map<String, Truth> truths = new HashMap<>();
        Map<Integer, Double> pipetted = new HashMap<>();
        for (int slot = 1; slot <= PlateOfHalves.SAMPLES; slot++) {
            double dilution = DILUTIONS[random.nextInt(DILUTIONS.length)];
            double total = TOTALS[random.nextInt(TOTALS.length)];
            double part = FREE_PART[random.nextInt(FREE_PART.length)];
            double own = DILUTIONS[random.nextInt(DILUTIONS.length)];
            // Whoever knows how much is free takes a dilution that the standards reach.
            double free = part * total * dilution / own > 0.4 ? dilution : own;
            samples.addAll(PlateOfHalves.pair(slot, "drink " + slot, free, dilution));
            truths.put("drink " + slot, new Truth(part * total * dilution, total * dilution));
            pipetted.put(slot, part * total * dilution / free);
            pipetted.put(PlateOfHalves.SAMPLES + slot, total);
        }
        Assessment assessment = new Assessor().assess(PlateOfHalves.of(method, samples, (well, content) -> {
            double glucose = content instanceof Content.Sample sample ? pipetted.get(sample.slot()) : 0;
            if (content instanceof Content.Standard standard) {
                glucose = standard.level().of("D-glucose").orElseThrow().in(Unit.GRAM_PER_LITRE);
            } else if (content instanceof Content.Control control) {
                glucose = control.assigned().of("D-glucose").orElseThrow().in(Unit.GRAM_PER_LITRE);
            }
            return 0.009 + SLOPE * glucose * (1 + PIPETTE * normal(random)) + READ * normal(random);
        }));
        assertThat(assessment.passed()).as(assessment.sentence()).isTrue();
        assessment
                .differences()
                .forEach(each -> tally.add(each, truths.get(each.row().name())));
    }

    private static double normal(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
