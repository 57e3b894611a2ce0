package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.trace.SimulatedTrace.Fault;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.SimulatedTrace.Lag;

class ProgressCurveTest {
    private static final AfterRule CURVE = new AfterRule.ProgressCurve(OptionalDouble.empty());
    private static final double CREEP_PER_MIN = 0.002;

    private static SimulatedTrace saturating(double lagS, Fault fault) {
        return new SimulatedTrace(
                Kinetics.MICHAELIS_MENTEN,
                0.4,
                0.1,
                0.002,
                Lag.COUPLED,
                lagS,
                CREEP_PER_MIN,
                0.0005,
                0,
                20,
                15,
                13,
                0.12,
                fault);
    }

    private static Change curve(SimulatedTrace.Drawn drawn) {
        return DeltaA.of(drawn.baseline(), drawn.after(), CURVE);
    }

    private static SimulatedTrace.Drawn changed(SimulatedTrace.Drawn drawn, int reading, double by) {
        double[] y = drawn.after().values().clone();
        y[reading] += by;
        return new SimulatedTrace.Drawn(
                drawn.baseline(), Series.of(drawn.after().times(), y));
    }

    @Test
    void changeCreepAndConstantsAreFound() {
        Change change = curve(saturating(0, Fault.NONE).source().draw(new Random(1)));

        assertThat(change.deltaA()).isCloseTo(0.4, within(3 * change.uDeltaA().getAsDouble()));
        assertThat(change.creepPerMin().getAsDouble())
                .isCloseTo(CREEP_PER_MIN, within(3 * change.uCreepPerMin().getAsDouble()));
        assertThat(change.finished()).isEmpty();
        assertThat(change.flags()).isEmpty();
        FittedCurve fitted = change.curve().orElseThrow();
        assertThat(fitted.law()).isEqualTo("integrated Michaelis-Menten");
        assertThat(fitted.michaelisConstant().getAsDouble()).isCloseTo(0.04, within(0.005));
        assertThat(fitted.vmaxPerS().getAsDouble()).isCloseTo(0.002, within(5e-5));
        assertThat(fitted.rateConstantPerS()).isEmpty();
    }

    @Test
    void firstOrderIsRecognised() {
        SimulatedTrace kind = new SimulatedTrace(
                Kinetics.FIRST_ORDER,
                0.4,
                0.012,
                0,
                Lag.COUPLED,
                0,
                CREEP_PER_MIN,
                0.0005,
                0,
                20,
                15,
                13,
                0.12,
                Fault.NONE);

        FittedCurve fitted = curve(kind.source().draw(new Random(2))).curve().orElseThrow();

        assertThat(fitted.law()).isEqualTo("first order");
        assertThat(fitted.rateConstantPerS().getAsDouble()).isCloseTo(0.012, within(2e-4));
        assertThat(fitted.lagS()).isZero();
        assertThat(fitted.step()).isZero();
    }

    @Test
    void lagOfACoupledEnzymeIsFound() {
        FittedCurve fitted = curve(saturating(45, Fault.NONE).source().draw(new Random(3)))
                .curve()
                .orElseThrow();

        assertThat(fitted.law()).isEqualTo("integrated Michaelis-Menten, coupled lag");
        assertThat(fitted.lagS()).isCloseTo(45, within(3.0));
    }

    @Test
    void stepAtTheTriggerBelongsToTheChange() {
        SimulatedTrace.Drawn drawn = saturating(0, Fault.NONE).source().draw(new Random(4));
        double[] y =
                Arrays.stream(drawn.after().values()).map(each -> each + 0.03).toArray();

        Change change = DeltaA.of(drawn.baseline(), Series.of(drawn.after().times(), y), CURVE);

        assertThat(change.deltaA()).isCloseTo(0.43, within(3 * change.uDeltaA().getAsDouble()));
        assertThat(change.curve().orElseThrow().step()).isCloseTo(0.03, within(0.002));
        assertThat(change.curve().orElseThrow().law()).endsWith("step at the trigger");
    }

    @Test
    void curveIsDrawnWhereTheReadingsAre() {
        SimulatedTrace kind = saturating(30, Fault.NONE);
        FittedCurve fitted = curve(kind.source().draw(new Random(5))).curve().orElseThrow();
        double[] t = kind.times();
        double[] mean = kind.mean(t);

        for (int i = 0; i < t.length; i++) {
            assertThat(fitted.at(t[i])).isCloseTo(mean[i], within(0.002));
        }
        assertThat(fitted.burstLeft(t[t.length - 1])).isCloseTo(0, within(1e-4));
        assertThat(fitted.finishedAt(1200)).isCloseTo(mean[t.length - 1], within(0.001));
    }

    @Test
    void fallingSignalIsTheRisingOneUpsideDown() {
        SimulatedTrace.Drawn up = saturating(0, Fault.NONE).source().draw(new Random(6));
        DoubleUnaryOperator turn = each -> -each;
        Baseline.Read read = (Baseline.Read) up.baseline();
        Baseline down = new Baseline.Read(
                Series.of(
                        read.readings().times(),
                        Arrays.stream(read.readings().values()).map(turn).toArray()),
                BeforeRule.MEAN);
        Series after = Series.of(
                up.after().times(), Arrays.stream(up.after().values()).map(turn).toArray());

        Change rising = curve(up);
        Change falling = DeltaA.of(down, after, CURVE);

        assertThat(falling.deltaA()).isCloseTo(-rising.deltaA(), within(1e-9));
        assertThat(falling.uDeltaA().getAsDouble()).isCloseTo(rising.uDeltaA().getAsDouble(), within(1e-9));
    }

    @Test
    void givenBaselineBringsItsUncertainty() {
        SimulatedTrace.Drawn drawn = saturating(0, Fault.NONE).source().draw(new Random(7));

        Change change = DeltaA.of(new Baseline.Given(0.12, 0.002), drawn.after(), CURVE);

        assertThat(change.uDeltaA().getAsDouble()).isBetween(0.0018, 0.0026);
        assertThat(change.before()).isEqualTo(0.12);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 12, 40, 78})
    void spikeIsLeftOutAndMovesNothing(int reading) {
        SimulatedTrace.Drawn clean = saturating(0, Fault.NONE).source().draw(new Random(8));

        Change change = curve(changed(clean, reading, 0.05));

        assertThat(change.flags()).contains(TraceFlag.SPIKE);
        assertThat(change.curve().orElseThrow().leftOut()).contains(reading);
        assertThat(change.deltaA()).isCloseTo(curve(clean).deltaA(), within(2e-4));
    }

    @Test
    void jumpIsFlaggedWhereverItIs() {
        SimulatedTrace.Source source = saturating(0, Fault.JUMP).source();
        Random random = new Random(9);
        int flagged = 0;
        for (int i = 0; i < 200; i++) {
            Change change = curve(source.draw(random));
            flagged += change.flags().isEmpty()
                            && Math.abs(change.deltaA() - 0.4)
                                    > 2 * change.uDeltaA().orElseThrow()
                    ? 0
                    : 1;
        }
        // At least 95 % are flagged or within their uncertainty.
        assertThat(flagged).isGreaterThanOrEqualTo(190);
    }

    @Test
    void creepThatDiesAwayIsFlagged() {
        SimulatedTrace kind = new SimulatedTrace(
                Kinetics.FIRST_ORDER,
                0.4,
                0.02,
                0,
                Lag.COUPLED,
                0,
                0.005,
                0.0003,
                0,
                30,
                15,
                13,
                0.12,
                Fault.SATURATING_CREEP);

        assertThat(curve(kind.source().draw(new Random(10))).flags()).isNotEmpty();
    }

    /** Readings over range inside the burst, and readings missing later, are gaps that the law bridges; both are said. */
    @Test
    void gapsInTheBurstAndAfterItAreBridgedAndSaid() {
        SimulatedTrace.Drawn drawn = saturating(0, Fault.NONE).source().draw(new Random(12));
        double[] t = drawn.after().times();
        double[] y = drawn.after().values();
        double[] keptT = new double[t.length - 10];
        double[] keptY = new double[t.length - 10];
        int n = 0;
        for (int i = 0; i < t.length; i++) {
            if ((i < 4 || i > 8) && (i < 40 || i > 44)) {
                keptT[n] = t[i];
                keptY[n++] = y[i];
            }
        }
        Series gaps = Series.of(keptT, keptY)
                .withOver(t[4], t[5], t[6], t[7], t[8])
                .withMissing(t[40], t[41], t[42], t[43], t[44]);

        for (AfterRule rule : new AfterRule[] {CURVE, new AfterRule.Extrapolate(OptionalDouble.empty())}) {
            Change change = DeltaA.of(drawn.baseline(), gaps, rule);

            assertThat(change.flags()).containsExactlyInAnyOrder(TraceFlag.OVER_RANGE, TraceFlag.READINGS_MISSING);
            assertThat(change.deltaA())
                    .isCloseTo(0.4, within(3 * change.uDeltaA().getAsDouble()));
        }
    }

    /** A fast reaction, an enzyme that comes up slowly: one or two readings are all of the burst, and none is off it. */
    @Test
    void burstOfTwoReadingsUnderALagIsNoSpike() {
        SimulatedTrace.Source source = new SimulatedTrace(
                        Kinetics.MICHAELIS_MENTEN,
                        0.1,
                        0.1,
                        0.01,
                        Lag.INDUCTION,
                        20,
                        0,
                        0.0003,
                        0.5,
                        15,
                        15,
                        13,
                        0.15,
                        Fault.NONE)
                .source();
        Random random = new Random(3);
        for (int i = 0; i < 20; i++) {
            Change change = curve(source.draw(random));

            assertThat(change.flags()).doesNotContain(TraceFlag.SPIKE);
            assertThat(change.deltaA())
                    .isCloseTo(0.1, within(4 * change.uDeltaA().getAsDouble()));
        }
    }

    /** A slow second phase of a tenth of the burst is no end of it, and is not taken for one in silence. */
    @Test
    void secondPhaseIsSaidByTheLineToo() {
        double[] t = new double[120];
        double[] y = new double[120];
        Random random = new Random(4);
        for (int i = 0; i < t.length; i++) {
            t[i] = 15.0 * (i + 1);
            y[i] = 0.15
                    + 0.5 * -Math.expm1(-0.03 * t[i])
                    + 0.05 * -Math.expm1(-t[i] / 600)
                    + 0.0003 * random.nextGaussian();
        }

        Change change = DeltaA.of(
                new Baseline.Given(0.15, 1e-4), Series.of(t, y), new AfterRule.Extrapolate(OptionalDouble.empty()));

        assertThat(change.flags()).contains(TraceFlag.CREEP_NOT_CONSTANT);
    }

    /** The end of this trace alone cannot bound what is left of it; the burst as a whole can. */
    @Test
    void lawOfTheWholeBurstSaysThatAReactionIsOver() {
        SimulatedTrace.Source source = new SimulatedTrace(
                        Kinetics.FIRST_ORDER,
                        0.1,
                        0.05,
                        0,
                        Lag.COUPLED,
                        60,
                        0.001,
                        0.0003,
                        0,
                        8,
                        15,
                        13,
                        0.15,
                        Fault.NONE)
                .source();
        Random random = new Random(5);
        int incomplete = 0;
        int byTailAlone = 0;
        for (int i = 0; i < 100; i++) {
            SimulatedTrace.Drawn drawn = source.draw(random);
            Change change =
                    DeltaA.of(drawn.baseline(), drawn.after(), new AfterRule.Extrapolate(OptionalDouble.empty()));
            incomplete += change.flags().contains(TraceFlag.REACTION_INCOMPLETE) ? 1 : 0;
            BaselineRule baseline = BaselineRule.of(drawn.baseline());
            double[] t = drawn.after().times();
            double[] y = drawn.after().values();
            Tail tail = BurstTail.of(t, y, baseline, SeenBurst.in(t, y, baseline));
            byTailAlone += tail != null && tail.leftBound(FinishedStart.of(tail, 32)) > 0.0005 ? 1 : 0;
        }

        assertThat(incomplete).isLessThanOrEqualTo(6);
        assertThat(byTailAlone).isGreaterThan(15);
    }

    @Test
    void traceThatFollowsNoSuchLawFallsBackToTheLineAndSaysSo() {
        double[] t = new double[80];
        double[] y = new double[80];
        Random random = new Random(11);
        for (int i = 0; i < 80; i++) {
            t[i] = 15.0 * (i + 1);
            // Two bursts, the second beginning when the first is over.
            double second = Math.max(0, t[i] - 300);
            y[i] = 0.1
                    + 0.3 * -Math.expm1(-t[i] / 40)
                    + 0.3 * -Math.expm1(-second / 40)
                    + 0.0004 * random.nextGaussian();
        }
        Baseline baseline = new Baseline.Read(Series.untimed(0.1, 0.1002, 0.0999, 0.1001), BeforeRule.MEAN);

        Change change = DeltaA.of(baseline, Series.of(t, y), CURVE);

        assertThat(change.flags()).contains(TraceFlag.CURVE_MISFIT);
        assertThat(change.curve()).isEmpty();
        assertThat(change.deltaA()).isCloseTo(0.6, within(0.002));
    }

    @Test
    void tooFewReadingsForACurveFallBackToTheLineAndSaySo() {
        Series few =
                Series.of(new double[] {600, 720, 840, 960, 1080}, new double[] {0.5, 0.5002, 0.5004, 0.5006, 0.5008});

        Change change = DeltaA.of(new Baseline.Given(0.1, 0), few, CURVE);

        assertThat(change.flags()).containsExactly(TraceFlag.CURVE_MISFIT);
        assertThat(TraceFlag.CURVE_MISFIT.text())
                .isEqualTo("no progress curve fits, or too few readings for one: the line was used");
        assertThat(change.after()).isCloseTo(0.499, within(1e-12));
    }

    @Test
    void analystsOwnStartMeansTheLine() {
        SimulatedTrace.Drawn drawn = saturating(0, Fault.NONE).source().draw(new Random(12));

        Change change = DeltaA.of(drawn.baseline(), drawn.after(), new AfterRule.ProgressCurve(OptionalDouble.of(600)));

        assertThat(change.flags()).containsExactly(TraceFlag.FINISHED_BY_HAND);
        assertThat(change.finished().orElseThrow().from()).isEqualTo(39);
    }

    @Test
    void straightRiseThatNeverBendsIsUnfinishedAndNotCreep() {
        double[] t = new double[40];
        double[] y = new double[40];
        Random random = new Random(13);
        for (int i = 0; i < 40; i++) {
            t[i] = 15.0 * (i + 1);
            y[i] = 0.1 + 0.001 * t[i] + 0.0004 * random.nextGaussian();
        }
        Baseline baseline = new Baseline.Read(Series.untimed(0.1, 0.1002, 0.0999, 0.1001), BeforeRule.MEAN);

        assertThat(DeltaA.of(baseline, Series.of(t, y), CURVE).flags()).contains(TraceFlag.REACTION_INCOMPLETE);
        assertThat(DeltaA.of(baseline, Series.of(t, y), new AfterRule.Extrapolate(OptionalDouble.empty()))
                        .flags())
                .contains(TraceFlag.REACTION_INCOMPLETE);
    }

    @Test
    void baselineOfTheNextStepIsTheFinishedLineAtItsTrigger() {
        Change change = curve(saturating(0, Fault.NONE).source().draw(new Random(14)));

        Baseline.Given next = change.baselineOfNext(1230);

        assertThat(next.value())
                .isCloseTo(change.after() + 20.5 * change.creepPerMin().getAsDouble(), within(1e-12));
        assertThat(next.standardUncertainty()).isBetween(1e-4, 6e-4);
    }

    /** Nothing a reader can export ends in NaN or in an exception. */
    @ParameterizedTest
    @EnumSource(Odd.class)
    void oddTracesGiveNumbers(Odd odd) {
        double[] t = new double[30];
        double[] y = new double[30];
        for (int i = 0; i < 30; i++) {
            t[i] = odd == Odd.ALL_AT_ONCE ? 60 : 20.0 * (odd == Odd.PAIRS ? i / 2 : i);
            y[i] = odd.reading(i);
        }
        Baseline baseline = new Baseline.Read(Series.untimed(0.1), BeforeRule.LINE);
        for (AfterRule rule : new AfterRule[] {CURVE, new AfterRule.Extrapolate(OptionalDouble.empty())}) {
            Change change = DeltaA.of(baseline, Series.of(t, y), rule);

            assertThat(change.deltaA()).isFinite();
            change.uDeltaA().ifPresent(u -> assertThat(u).isFinite().isNotNegative());
            change.creepPerMin().ifPresent(creep -> assertThat(creep).isFinite());
        }
    }

    private enum Odd {
        FLAT,
        FALLING,
        STEP,
        ZERO,
        SAWTOOTH,
        HUGE,
        ALL_AT_ONCE,
        PAIRS,
        LAST_ONLY;

        double reading(int i) {
            return switch (this) {
                case FLAT, ALL_AT_ONCE -> 0.1;
                case FALLING -> 0.5 - 0.01 * i;
                case STEP -> i < 15 ? 0.1 : 0.9;
                case ZERO -> 0;
                case SAWTOOTH -> i % 2 == 0 ? 0.1 : 0.3;
                case HUGE -> 1e6 * (1 - Math.exp(-0.3 * i));
                case PAIRS -> 0.5 * (1 - Math.exp(-0.3 * i));
                case LAST_ONLY -> i < 29 ? 0.1 : 3.5;
            };
        }
    }
}
