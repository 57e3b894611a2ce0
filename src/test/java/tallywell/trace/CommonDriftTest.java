package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tallywell.trace.SimulatedTrace.Fault;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.SimulatedTrace.Lag;

class CommonDriftTest {
    private static final AfterRule LINE = new AfterRule.Extrapolate(OptionalDouble.empty());
    private static final AfterRule CURVE = new AfterRule.ProgressCurve(OptionalDouble.empty());

    /** A plate of wells of one kind, to each reading of which the same drift is added. */
    private static CommonDrift plate(double carry, double driftMilli, AfterRule rule) {
        SimulatedTrace.Source source = new SimulatedTrace(
                        Kinetics.FIRST_ORDER,
                        0.4,
                        0.02,
                        0,
                        Lag.COUPLED,
                        0,
                        0.001,
                        0.0006,
                        carry,
                        20,
                        15,
                        13,
                        0.12,
                        Fault.NONE)
                .source();
        Random random = new Random(1);
        List<CommonDrift.Followed> wells = new ArrayList<>();
        for (int well = 0; well < 96; well++) {
            SimulatedTrace.Drawn drawn = source.draw(random);
            double[] y = drawn.after().values().clone();
            for (int j = 0; j < y.length; j++) {
                y[j] += 0.001 * driftMilli * Math.sin(2 * Math.PI * j / y.length);
            }
            Series series = Series.of(drawn.after().times(), y);
            Change change = DeltaA.of(drawn.baseline(), series, rule);
            wells.add(new CommonDrift.Followed(
                    Optional.of(((Baseline.Read) drawn.baseline()).readings()),
                    series,
                    change,
                    IntStream.range(0, y.length).boxed().toList()));
        }
        return CommonDrift.of(wells).orElseThrow();
    }

    @Test
    void independentWellsHaveNothingInCommon() {
        assertThat(plate(0, 0, LINE).isSeen()).isFalse();
        assertThat(plate(0.5, 0, LINE).isSeen()).isFalse();
        assertThat(plate(0, 0, CURVE).isSeen()).isFalse();
        assertThat(plate(0.5, 0, CURVE).isSeen()).isFalse();
    }

    @Test
    void lampThatWandersByLessThanTheNoiseIsSeenInThePlate() {
        assertThat(plate(0.5, 0.6, LINE).isSeen()).isTrue();
        CommonDrift drift = plate(0.5, 0.6, CURVE);
        assertThat(drift.isSeen()).isTrue();
        assertThat(drift.size()).isBetween(1e-4, 6e-4);
        // A few have a flag of their own and do not count.
        assertThat(drift.wells()).isBetween(80, 96);
    }

    /**
     * A plate of 96 wells read every 15 s, 3 min before and 10 min after the trigger, with noise of 0.4 mA.
     *
     * @param others how many of them are of another kind than the rest, which are finished and creep by 1 mA/min
     * @param rate of the others, per s
     * @param creepMilli what the creep of the others that dies away comes to at last, in mA
     */
    private static CommonDrift mixed(int others, double rate, double creepMilli, double lampMilli, AfterRule rule) {
        Random random = new Random(5);
        List<CommonDrift.Followed> wells = new ArrayList<>();
        double[] before =
                IntStream.range(0, 13).mapToDouble(j -> 15.0 * j - 185).toArray();
        double[] after = IntStream.range(0, 40).mapToDouble(j -> 15.0 * j + 10).toArray();
        for (int well = 0; well < 96; well++) {
            double k = well < others ? rate : 0.025;
            double dying = well < others ? 0.001 * creepMilli : 0;
            double[] low = new double[before.length];
            for (int j = 0; j < low.length; j++) {
                low[j] = 0.1 + 0.0004 * random.nextGaussian();
            }
            double[] y = new double[after.length];
            for (int j = 0; j < y.length; j++) {
                double t = after[j];
                y[j] = 0.1
                        + 0.3 * -Math.expm1(-k * t)
                        + dying * -Math.expm1(-t / 240)
                        + 0.001 * t / 60
                        + 0.001 * lampMilli * Math.sin(t / 100)
                        + 0.0004 * random.nextGaussian();
            }
            Series baseline = Series.of(before, low);
            Series series = Series.of(after, y);
            wells.add(new CommonDrift.Followed(
                    Optional.of(baseline),
                    series,
                    DeltaA.of(new Baseline.Read(baseline, BeforeRule.MEAN), series, rule),
                    IntStream.range(0, y.length).boxed().toList()));
        }
        return CommonDrift.of(wells).orElseThrow();
    }

    @Test
    void reactionsThatAreNotOverInSomeWellsAreNoDriftOfThePlate() {
        for (AfterRule rule : List.of(LINE, CURVE)) {
            for (double rate : new double[] {0.004, 0.006, 0.01}) {
                assertThat(mixed(32, rate, 0, 0, rule).isSeen())
                        .as(rule + " " + rate)
                        .isFalse();
            }
            // A lamp is seen beside them.
            assertThat(mixed(32, 0.004, 0, 0.8, rule).isSeen())
                    .as(rule.toString())
                    .isTrue();
        }
    }

    @Test
    void creepThatDiesAwayInSomeWellsIsNoDriftOfThePlate() {
        for (AfterRule rule : List.of(LINE, CURVE)) {
            for (double creep : new double[] {3, 6, 20}) {
                assertThat(mixed(32, 0.025, creep, 0, rule).isSeen())
                        .as(rule + " " + creep)
                        .isFalse();
            }
            assertThat(mixed(96, 0.025, 12, 0, rule).isSeen())
                    .as(rule.toString())
                    .isTrue();
        }
    }

    @Test
    void baselinesThatSlopeInSomeWellsAreNoDriftOfThePlate() {
        assertThat(baselines(32)).isFalse();
        assertThat(baselines(96)).isTrue();
    }

    /** Whether a slope of 1 mA/min in so many of 96 baselines is seen. */
    private static boolean baselines(int sloping) {
        Random random = new Random(6);
        List<CommonDrift.Followed> wells = new ArrayList<>();
        double[] before =
                IntStream.range(0, 13).mapToDouble(j -> 15.0 * j - 185).toArray();
        double[] after = IntStream.range(0, 40).mapToDouble(j -> 15.0 * j + 10).toArray();
        for (int well = 0; well < 96; well++) {
            double slope = well < sloping ? 0.001 / 60 : 0;
            Series baseline = Series.of(
                    before,
                    Arrays.stream(before)
                            .map(t -> 0.1 + slope * t + 0.0004 * random.nextGaussian())
                            .toArray());
            Series series = Series.of(
                    after,
                    Arrays.stream(after)
                            .map(t -> 0.3 + 0.0004 * random.nextGaussian())
                            .toArray());
            wells.add(new CommonDrift.Followed(
                    Optional.of(baseline),
                    series,
                    DeltaA.of(new Baseline.Read(baseline, BeforeRule.MEAN), series, LINE),
                    IntStream.range(0, after.length).boxed().toList()));
        }
        return CommonDrift.of(wells).orElseThrow().isSeen();
    }

    @Test
    void fewWellsSayNothing() {
        assertThat(CommonDrift.of(List.of())).isEmpty();
    }

    @Test
    void whatIsSmallBesideTheUncertaintyDoesNotMatter() {
        CommonDrift drift = plate(0, 0.6, LINE);
        assertThat(drift.mattersTo(0.9 * drift.moves())).isEqualTo(drift.moves() > 0.0005);
        assertThat(drift.mattersTo(1.1 * drift.moves())).isFalse();
        assertThat(plate(0, 0, LINE).mattersTo(1e-9)).isFalse();
    }

    @Test
    void wellsReadAtShiftedTimesAreComparedPassByPass() {
        // Every other well begins one pass later; reading by reading its drift would run against that of its
        // neighbours.
        List<CommonDrift.Followed> wells = new ArrayList<>();
        Random random = new Random(2);
        for (int well = 0; well < 32; well++) {
            int first = well % 2 * 2;
            double[] t = new double[40];
            double[] y = new double[40];
            List<Integer> passes = new ArrayList<>();
            for (int j = 0; j < t.length; j++) {
                t[j] = 15.0 * (j + 1);
                y[j] = 0.3 + 0.0006 * random.nextGaussian() + ((j + first) % 4 < 2 ? 0.0006 : -0.0006);
                passes.add(j + first);
            }
            Series series = Series.of(t, y);
            wells.add(new CommonDrift.Followed(
                    Optional.empty(), series, DeltaA.of(new Baseline.Given(0.1, 0.0002), series, LINE), passes));
        }

        assertThat(CommonDrift.of(wells).orElseThrow().size()).isBetween(5e-4, 7e-4);
    }

    @Test
    void listsMustGoTogether() {
        Series series = Series.untimed(0.1);
        Change change = DeltaA.of(new Baseline.Given(0.1, 0), series, new AfterRule.None(OptionalDouble.empty()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CommonDrift.Followed(Optional.empty(), series, change, List.of()))
                .withMessage("passes must be as many as after (1) but was 0");
    }
}
