package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.quantity.Unit;
import tallywell.statement.Bounds;
import tallywell.statement.Words;
import tallywell.workup.Flag;
import tallywell.workup.PlateOfHalves;

/** Drinks and milk as they come: little is free of what a treatment releases, or nearly all. */
class DifferenceVerdictsTest {
    private static final String LINE = "{by: standards, model: line, weights: none}";

    /** Net ΔA for 1 g/L of a hexose: 10 · ε · v / (area · M), by hand. */
    private static final double SLOPE = 6300 * 20 / (10 * 33.2 * 180.156);

    /** Hexose of one gram of a disaccharide. */
    private static final double RELEASED = PlateOfHalves.GLUCOSE_OF_SUCROSE;

    /** One sample: g/L of hexose free, g/L of disaccharide, dilutions. */
    private record Drink(double free, double product, double dilutionFree, double dilutionTotal) {}

    private static Assessment of(String id, String calibration, Drink... drinks) throws InputException {
        List<Sample> samples = new ArrayList<>();
        Map<Integer, Double> pipetted = new HashMap<>();
        // The rest of the plate is ordinary, and shows the scatter.
        for (int slot = 1; slot <= PlateOfHalves.SAMPLES; slot++) {
            Drink drink = slot <= drinks.length ? drinks[slot - 1] : new Drink(10, 30, 50, 100);
            samples.addAll(PlateOfHalves.pair(slot, "drink " + slot, drink.dilutionFree(), drink.dilutionTotal()));
            pipetted.put(slot, drink.free() / drink.dilutionFree());
            pipetted.put(
                    PlateOfHalves.SAMPLES + slot, (drink.free() + RELEASED * drink.product()) / drink.dilutionTotal());
        }
        SplittableRandom random = new SplittableRandom(12);
        return new Assessor()
                .assess(PlateOfHalves.of(PlateOfHalves.method(id, calibration), samples, (well, content) -> {
                    double hexose = content instanceof Content.Sample sample ? pipetted.get(sample.slot()) : 0;
                    if (content instanceof Content.Standard standard) {
                        hexose = standard.level().of("any").orElseThrow().in(Unit.GRAM_PER_LITRE);
                    } else if (content instanceof Content.Control control) {
                        hexose = control.assigned().of("any").orElseThrow().in(Unit.GRAM_PER_LITRE);
                    }
                    double scatter =
                            0.0012 * (random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5) * 2;
                    return 0.009 + scatter + SLOPE * hexose;
                }));
    }

    private static Judgement half(Assessment assessment, int slot) {
        return assessment.judgements().stream()
                .filter(each -> each.result().slot().orElse(0) == slot)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void drinkWithLittleSucroseAndHardlyAnyFreeGlucoseHasAResult() throws InputException {
        Assessment assessment = of("sucrose-340", LINE, new Drink(0.01, 0.4, 1, 1));
        JudgedDifference sucrose = assessment.differences().get(0);
        assertThat(sucrose.row().value().orElseThrow()).isCloseTo(0.4, within(0.02));
        assertThat(sucrose.budget().orElseThrow().expandedUncertainty()).isBetween(0.001, 0.02);
        assertThat(sucrose.verdict()).isEqualTo(Verdict.REPORT);
        assertThat(sucrose.flags()).containsExactly(Flag.HALF_BELOW_STANDARDS);
        assertThat(half(assessment, 1).result().value())
                .as("nothing is extrapolated")
                .isEmpty();
    }

    @Test
    void littleFreeGlucoseInAStrongDilutionNeedsNoRepeat() throws InputException {
        Assessment assessment = of("sucrose-340", LINE, new Drink(0.5, 90, 100, 200));
        JudgedDifference sucrose = assessment.differences().get(0);
        assertThat(sucrose.row().value().orElseThrow()).isCloseTo(90, within(2.0));
        assertThat(sucrose.verdict()).isEqualTo(Verdict.REPORT);
        assertThat(sucrose.advice()).isEqualTo(new Advice.None());
        assertThat(half(assessment, 1).verdict()).isEqualTo(Verdict.REPORT);
        assertThat(half(assessment, 1).result().flags()).contains(Flag.BELOW_STANDARDS);
        assertThat(Repeats.isAny(assessment)).isFalse();
        assertThat(assessment.count(Verdict.REPORT)).as("products, not halves").isEqualTo(PlateOfHalves.SAMPLES);
    }

    @Test
    void lactoseFreeMilkIsBelowABoundAndFreeOfItIsNotShown() throws InputException {
        Assessment assessment = of("lactose-galactose-340", LINE, new Drink(25, 0.02, 100, 100));
        JudgedDifference lactose = assessment.differences().get(0);
        assertThat(lactose.flags()).contains(Flag.BELOW_DETECTION, Flag.FREE_OF_NOT_SHOWN);
        assertThat(lactose.verdict()).isEqualTo(Verdict.CHECK);
        double most = lactose.atMost().orElseThrow();
        assertThat(most)
                .isCloseTo(
                        Math.max(0, lactose.row().value().orElseThrow())
                                + lactose.budget().orElseThrow().decision(),
                        within(1e-12));
        assertThat(most).isGreaterThan(0.1);
        assertThat(Bounds.words(lactose)).startsWith("< ");
    }

    /** A product that holds far more, or a method that is sure enough, needs no such word. */
    @Test
    void milkIsPlainlyNotFreeOfLactose() throws InputException {
        JudgedDifference lactose = of("lactose-galactose-340", LINE, new Drink(0.08, 47, 1, 100))
                .differences()
                .get(0);
        assertThat(lactose.flags()).doesNotContain(Flag.FREE_OF_NOT_SHOWN, Flag.BELOW_DETECTION);
        assertThat(lactose.row().value().orElseThrow()).isCloseTo(47, within(1.0));
        assertThat(lactose.verdict()).isEqualTo(Verdict.REPORT);
    }

    @Test
    void halfOverTheStandardsIsTheOneToRepeat() throws InputException {
        Assessment assessment = of("sucrose-340", LINE, new Drink(30, 40, 20, 200));
        JudgedDifference sucrose = assessment.differences().get(0);
        assertThat(sucrose.row().value()).isEmpty();
        assertThat(sucrose.verdict()).isEqualTo(Verdict.REPEAT);
        assertThat(sucrose.adviceFor()).isEqualTo(JudgedDifference.For.FREE);
        assertThat(sucrose.advice()).isEqualTo(half(assessment, 1).advice());
        assertThat(Words.advice(sucrose)).startsWith("the free half: repeat at dilution 1");
        assertThat(assessment.count(Verdict.REPEAT)).isEqualTo(1);
        assertThat(Repeats.of(assessment).bySlot().values())
                .extracting(Sample::label)
                .containsExactly("drink 1 (free)", "drink 1 (total)");
    }

    /** Milk at 500: 0.046 to 0.053 g/L of galactose, at the lowest standard. */
    @Test
    void totalThatWasDilutedTooFarIsToldSo() throws InputException {
        Assessment assessment = of("lactose-galactose-340", LINE, new Drink(0.05, 44, 1, 500));
        JudgedDifference lactose = assessment.differences().get(0);
        assertThat(lactose.verdict()).isEqualTo(Verdict.REPEAT);
        assertThat(lactose.adviceFor()).isEqualTo(JudgedDifference.For.TOTAL);
        assertThat(lactose.advice().word()).isEqualTo("dilute:100");
        assertThat(lactose.row().value()).isPresent();
    }

    @Test
    void whatIsNotFoundIsLookedForWithLessDilutionWhereThatHelps() throws InputException {
        // The total lies in the window, and at half of the dilution would lie nearer its middle.
        Assessment assessment = of("sucrose-340", LINE, new Drink(8, 0.01, 50, 100));
        JudgedDifference sucrose = assessment.differences().get(0);
        assertThat(sucrose.flags()).contains(Flag.BELOW_DETECTION);
        assertThat(sucrose.verdict()).isEqualTo(Verdict.REPEAT);
        assertThat(sucrose.adviceFor()).isEqualTo(JudgedDifference.For.TOTAL);
        assertThat(half(assessment, PlateOfHalves.SAMPLES + 1).advice()).isEqualTo(sucrose.advice());
        assertThat(half(assessment, PlateOfHalves.SAMPLES + 1).verdict()).isEqualTo(Verdict.REPEAT);
    }

    @Test
    void halvesThatWereSwappedAreSeen() throws InputException {
        // What stands in the list as total is the free half of another drink.
        JudgedDifference sucrose = of("sucrose-340", LINE, new Drink(30, -40, 100, 50))
                .differences()
                .get(0);
        assertThat(sucrose.row().value().orElseThrow()).isLessThan(-30);
        assertThat(sucrose.flags()).contains(Flag.BELOW_ZERO, Flag.BELOW_DETECTION);
        assertThat(sucrose.verdict()).isNotEqualTo(Verdict.REPORT);
    }
}
