package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
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
        List<Series> after = new ArrayList<>();
        List<Change> changes = new ArrayList<>();
        for (int well = 0; well < 96; well++) {
            SimulatedTrace.Drawn drawn = source.draw(random);
            double[] y = drawn.after().values().clone();
            for (int j = 0; j < y.length; j++) {
                y[j] += 0.001 * driftMilli * Math.sin(2 * Math.PI * j / y.length);
            }
            Series series = Series.of(drawn.after().times(), y);
            after.add(series);
            changes.add(DeltaA.of(drawn.baseline(), series, rule));
        }
        return CommonDrift.of(after, changes).orElseThrow();
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
        assertThat(drift.wells()).isEqualTo(96);
    }

    @Test
    void fewWellsSayNothing() {
        assertThat(CommonDrift.of(List.of(), List.of())).isEmpty();
    }

    @Test
    void listsMustGoTogether() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CommonDrift.of(List.of(Series.untimed(0.1)), List.of()))
                .withMessage("changes must be as many as after (1) but was 0");
    }
}
