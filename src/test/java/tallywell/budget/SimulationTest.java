package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.numeric.StudentT;

/** The additive model of JCGM 101:2008, 9.2 (printed results from memory, recomputed exactly). */
class SimulationTest {
    private static final int TRIALS = 400_000;

    private static double rectangular(SplittableRandom random, double u) {
        return u * Math.sqrt(3) * (2 * random.nextDouble() - 1);
    }

    @Test
    void fourNormalInputsGiveTwoAndPlusMinusThreePointNineTwo() {
        Simulation.Output sum = Simulation.run(
                        TRIALS,
                        1,
                        1,
                        () -> (random, out) -> out[0] = random.nextGaussian()
                                + random.nextGaussian()
                                + random.nextGaussian()
                                + random.nextGaussian())
                .get(0);
        assertThat(sum.mean()).isCloseTo(0, within(0.02));
        assertThat(sum.standardUncertainty()).isCloseTo(2.0, within(0.01));
        assertThat(sum.low()).isCloseTo(-3.92, within(0.04));
        assertThat(sum.high()).isCloseTo(3.92, within(0.04));
    }

    @Test
    void drawsDoNotDependOnHowManyOutputsAreKeptAtATime() {
        Simulation.Trials trials = () -> (random, out) -> {
            for (int i = 0; i < out.length; i++) {
                out[i] = i + random.nextGaussian();
            }
        };
        assertThat(Simulation.run(3000, 11, 5, trials, 6001)).isEqualTo(Simulation.run(3000, 11, 5, trials));
        assertThat(Simulation.run(3000, 11, 5, trials, 1)).isEqualTo(Simulation.run(3000, 11, 5, trials));
    }

    @Test
    void fourRectangularInputsGiveTwoAndPlusMinusThreePointEightEight() {
        Simulation.Output sum = Simulation.run(
                        TRIALS,
                        2,
                        1,
                        () -> (random, out) -> out[0] = rectangular(random, 1)
                                + rectangular(random, 1)
                                + rectangular(random, 1)
                                + rectangular(random, 1))
                .get(0);
        assertThat(sum.standardUncertainty()).isCloseTo(2.0, within(0.01));
        assertThat(sum.low()).isCloseTo(-3.88, within(0.03));
        assertThat(sum.high()).isCloseTo(3.88, within(0.03));
    }

    @Test
    void oneLargeRectangularInputGivesSeventeenWherePropagationGivesNineteenPointNine() {
        Simulation.Output sum = Simulation.run(
                        TRIALS,
                        3,
                        1,
                        () -> (random, out) -> out[0] = rectangular(random, 1)
                                + rectangular(random, 1)
                                + rectangular(random, 1)
                                + rectangular(random, 10))
                .get(0);
        assertThat(sum.standardUncertainty()).isCloseTo(10.15, within(0.03));
        assertThat(sum.high()).isCloseTo(17.0, within(0.05));
        assertThat(sum.low()).isCloseTo(-17.0, within(0.05));
        assertThat(1.96 * sum.standardUncertainty()).isCloseTo(19.9, within(0.06));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 3, 4.5, 20})
    void scaledNormalDrawsHaveStudentsDistribution(double degreesOfFreedom) {
        Simulation.Output t = Simulation.run(
                        200_000,
                        5,
                        1,
                        () -> (random, out) ->
                                out[0] = Simulation.scale(random, degreesOfFreedom) * random.nextGaussian())
                .get(0);
        double factor = StudentT.twoSided(0.95, degreesOfFreedom);
        assertThat((t.high() - t.low()) / 2).isCloseTo(factor, within(0.03 * factor));
    }

    @Test
    void gammaDrawsHaveMeanAndVarianceOfTheirShape() {
        for (double shape : new double[] {0.4, 1, 7.5}) {
            Simulation.Output gamma = Simulation.run(
                            200_000, 6, 1, () -> (random, out) -> out[0] = Simulation.gamma(random, shape))
                    .get(0);
            assertThat(gamma.mean()).isCloseTo(shape, within(0.02 * shape));
            assertThat(gamma.standardUncertainty()).isCloseTo(Math.sqrt(shape), within(0.02 * Math.sqrt(shape)));
        }
    }

    @Test
    void drawsWithoutAValueAreCountedAndLeftOut() {
        Simulation.Output half = Simulation.run(
                        10_000, 9, 1, () -> (random, out) -> out[0] = random.nextBoolean() ? Double.NaN : 1)
                .get(0);
        assertThat(half.lost()).isBetween(4700, 5300);
        assertThat(half.mean()).isEqualTo(1);
        assertThatExceptionOfType(IllegalStateException.class)
                .isThrownBy(() -> Simulation.run(1000, 1, 1, () -> (random, out) -> out[0] = Double.NaN))
                .withMessage("no draw gave a value");
    }

    @Test
    void tooFewTrialsAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Simulation.run(999, 1, 1, () -> (random, out) -> out[0] = 0))
                .withMessage("trials must be at least 1000 but was 999");
    }

    /** JCGM 101:2008, 9.3, mass calibration, table 8 (from memory): draws give 0.0754 mg where first order gives 0.0539 mg. */
    @Test
    void buoyancyInAMassCalibrationGivesWhatFirstOrderMisses() {
        Simulation.Output mass = Simulation.run(TRIALS, 5, 1, () -> (random, out) -> {
                    double reference = 100_000 + 0.050 * random.nextGaussian();
                    double difference = 1.234 + 0.020 * random.nextGaussian();
                    double air = 1.10 + 0.20 * random.nextDouble();
                    double weight = 7000 + 2000 * random.nextDouble();
                    double standard = 7950 + 100 * random.nextDouble();
                    out[0] = (reference + difference) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000;
                })
                .get(0);
        assertThat(mass.mean()).isCloseTo(1.2341, within(0.001));
        assertThat(mass.standardUncertainty()).isCloseTo(0.0754, within(0.0005));
        assertThat(mass.low()).isCloseTo(1.0834, within(0.003));
        assertThat(mass.high()).isCloseTo(1.3825, within(0.003));
    }
}
