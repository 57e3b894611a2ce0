package tallywell.across;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tallywell.assess.Assessor;
import tallywell.budget.NoisyPlate;
import tallywell.method.InputQuantity;
import tallywell.method.RepeatRule;
import tallywell.plate.Well;

/**
 * Pairs of plates made up with known errors, worked up from their readings: one error of the standard for both plates, one
 * of each plate, scatter of each well. What the formulas say must be what the pairs show.
 */
class AcrossSimulationTest {
    private static final int PAIRS = 300;
    private static final double STANDARD = 0.03;
    private static final double PLATE = 0.01;
    private static final double S0 = 0.004;
    private static final double SLOPE = 2.8;
    private static final DoubleUnaryOperator RESPONSE = level -> SLOPE * level;
    private static final double[] LEVELS = {0, 0.05, 0.1, 0.2, 0.3, 0.4};

    private static NoisyPlate plate;

    @BeforeAll
    static void makeUp() throws Exception {
        plate = NoisyPlate.of(
                NoisyPlate.method(
                        "{by: standards, model: line, weights: none}",
                        "uncertainty:",
                        "  standard: {standard: 3 %}",
                        "  plate: {standard: 1 %}"),
                NoisyPlate.LAYOUT,
                List.of(),
                RESPONSE,
                S0,
                0);
    }

    /** Rows A and B hold standards from column 2 on, rows C and D samples and the control. */
    private static RunResults run(String name, double standard, double ofPlate, long seed, SharedSources shared)
            throws Exception {
        var analysis = plate.redrawn(RESPONSE, S0, 0, seed).moved(well -> moved(well, standard, ofPlate));
        return RunResults.of(name, new Assessor().assess(analysis), shared);
    }

    private static double moved(Well well, double standard, double ofPlate) {
        if (well.column() == 0) {
            return 0;
        }
        if (well.row() < 2) {
            return SLOPE * LEVELS[well.column()] * standard;
        }
        double amount = well.column() == 5 ? 0.25 : NoisyPlate.amount(well.column());
        return SLOPE * amount * ofPlate;
    }

    /** What the pairs show of slot 4: SD of the differences, SD of the means, and how often each stayed within its U. */
    private record Shown(
            double differenceSd, double meanSd, double differenceU, double meanU, double agree, double covered) {}

    private static Shown simulate(boolean oneLot, SharedSources shared) throws Exception {
        Random random = new Random(20261125);
        double truth = NoisyPlate.amount(4);
        double differences = 0;
        double means = 0;
        double differenceU = 0;
        double meanU = 0;
        int agree = 0;
        int covered = 0;
        for (int pair = 0; pair < PAIRS; pair++) {
            double lot = STANDARD * random.nextGaussian();
            double other = oneLot ? lot : STANDARD * random.nextGaussian();
            RunResults first = run("a", lot, PLATE * random.nextGaussian(), random.nextLong(), shared);
            RunResults second = run("b", other, PLATE * random.nextGaussian(), random.nextLong(), shared);
            ComparedResult row = Comparison.of(first, second).rows().stream()
                    .filter(each -> each.first().result().name().equals("4"))
                    .findFirst()
                    .orElseThrow();
            CombinedResult mean = Combination.of(List.of(first, second), RepeatRule.MEAN, true).results().stream()
                    .filter(each -> each.name().equals("4"))
                    .findFirst()
                    .orElseThrow();
            double d = row.difference().orElseThrow();
            double off = mean.value().orElseThrow() - truth;
            differences += d * d;
            means += off * off;
            differenceU += row.doubt().orElseThrow().u() / PAIRS;
            meanU += mean.u().orElseThrow() / PAIRS;
            agree += row.agreement() == ComparedResult.Agreement.AGREE ? 1 : 0;
            covered += Math.abs(off) <= mean.expanded().orElseThrow() ? 1 : 0;
        }
        return new Shown(
                Math.sqrt(differences / PAIRS),
                Math.sqrt(means / PAIRS),
                differenceU,
                meanU,
                (double) agree / PAIRS,
                (double) covered / PAIRS);
    }

    /** Standard error of a standard deviation of 300 is 4.1 %, of a part of 95 % 1.3 percentage points; three of each. */
    private static void holds(Shown shown) {
        assertThat(shown.differenceU() / shown.differenceSd()).isBetween(0.877, 1.123);
        assertThat(shown.meanU() / shown.meanSd()).isBetween(0.877, 1.123);
        assertThat(shown.agree()).isBetween(0.911, 0.989);
        assertThat(shown.covered()).isBetween(0.911, 0.989);
    }

    @Test
    void oneLotOfStandardIsTakenOutOfTheDifferenceAndKeptInTheMean() throws Exception {
        Shown shown = simulate(true, SharedSources.USUAL);
        holds(shown);
        // The error of the standard, 0.0084 g/L, is larger than all else together; it must not be in the difference.
        assertThat(shown.differenceU()).isLessThan(STANDARD * NoisyPlate.amount(4));
        assertThat(shown.meanU()).isGreaterThan(STANDARD * NoisyPlate.amount(4));
    }

    @Test
    void anotherLotCountsInTheDifferenceAndShrinksInTheMean() throws Exception {
        holds(simulate(false, SharedSources.usualWith(Set.of(), EnumSet.of(InputQuantity.STANDARD))));
    }

    @Test
    void sharedSourcesAreNamed() throws Exception {
        Comparison comparison =
                Comparison.of(run("a", 0, 0, 1, SharedSources.USUAL), run("b", 0, 0, 2, SharedSources.USUAL));
        assertThat(comparison.shared()).containsExactly("assigned value of the standard (malic acid)");
    }
}
