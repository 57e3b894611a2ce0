package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever a reader exports: every rule gives finite numbers, for wells and for the plate, and never an exception. */
class AnyTraceTest {
    private static final List<AfterRule> RULES = List.of(
            new AfterRule.ProgressCurve(OptionalDouble.empty()),
            new AfterRule.Extrapolate(OptionalDouble.empty()),
            new AfterRule.Extrapolate(OptionalDouble.of(100)),
            new AfterRule.None(OptionalDouble.of(600)));

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 42})
    void everyRuleGivesNumbers(long seed) {
        Random random = new Random(seed);
        List<CommonDrift.Followed> plate = new ArrayList<>();
        for (int trace = 0; trace < 500; trace++) {
            Series after = series(random);
            Baseline before = baseline(random);
            for (AfterRule rule : RULES) {
                Change change = DeltaA.of(before, after, rule);
                check(change, "trace " + trace + " by " + rule + ", flags " + change.flags());
                plate.add(new CommonDrift.Followed(
                        Optional.empty(),
                        after,
                        change,
                        IntStream.range(0, after.size()).boxed().toList()));
            }
        }
        CommonDrift drift = CommonDrift.of(plate).orElseThrow();
        assertThat(drift.moves()).isFinite().isNotNegative();
        assertThat(drift.ratio()).isFinite();
    }

    private static void check(Change change, String what) {
        assertThat(change.deltaA()).as(what).isFinite();
        assertThat(change.uDeltaA().orElse(0)).as(what).isFinite().isNotNegative();
        assertThat(change.creepPerMin().orElse(0)).as(what).isFinite();
        assertThat(change.uCreepPerMin().orElse(0)).as(what).isFinite().isNotNegative();
    }

    private static Baseline baseline(Random random) {
        if (random.nextInt(3) == 0) {
            return new Baseline.Given(0.1, random.nextBoolean() ? 0 : 1e-4);
        }
        double[] y = {0.1, 0.1 + 0.001 * random.nextInt(2), 0.1};
        return new Baseline.Read(
                Series.of(new double[] {-40, -20, 0}, y),
                BeforeRule.values()[random.nextInt(BeforeRule.values().length)]);
    }

    /** Of one to ninety readings, with gaps, double times, bubbles, rounding, and any noise from none to much. */
    private static Series series(Random random) {
        int n = 1 + random.nextInt(random.nextBoolean() ? 12 : 90);
        double[] t = new double[n];
        double[] y = new double[n];
        double step = random.nextInt(4) == 0 ? 0 : 5 + 30 * random.nextDouble();
        double size = Math.pow(10, -3 + 4 * random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
        double rate = Math.pow(10, -4 + 4 * random.nextDouble());
        double noise = random.nextInt(3) == 0 ? 0 : Math.pow(10, -5 + 3 * random.nextDouble());
        int course = random.nextInt(8);
        double now = random.nextInt(3) == 0 ? 0 : 15 * random.nextDouble();
        for (int i = 0; i < n; i++) {
            t[i] = now;
            now += random.nextInt(20) == 0 ? 10 * step : random.nextInt(30) == 0 ? 0 : step;
            double bubble = random.nextInt(200) == 0 ? 1 : 0;
            double read = 0.1 + course(course, size, rate, t[i], i, n) + noise * random.nextGaussian() + bubble;
            y[i] = n % 2 == 0 ? Math.round(read * 1e4) / 1e4 : read;
        }
        return Series.of(t, y);
    }

    private static double course(int course, double size, double rate, double t, int i, int n) {
        return switch (course) {
            case 0 -> size * -Math.expm1(-rate * t);
            case 1 -> size * Math.min(1, rate * t);
            case 2 -> size;
            case 3 -> 0;
            case 4 -> size * t;
            case 5 -> i < n / 2 ? 0 : size;
            case 6 -> i % 10 == 7 ? size : 0;
            default -> size * Math.sin(rate * t);
        };
    }
}
