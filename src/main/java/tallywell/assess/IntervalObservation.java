package tallywell.assess;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Inverse;
import tallywell.curve.InversePrediction;
import tallywell.curve.LevelInterval;
import tallywell.curve.ResponseVariance;
import tallywell.numeric.StudentT;
import tallywell.quantity.Numbers;
import tallywell.workup.Analysis;
import tallywell.workup.Result;
import tallywell.workup.ResultScale;
import tallywell.workup.StepAnalysis;

/**
 * Whether value ± U stands for the interval that the curve gives (Fieller's for a line), which need not be symmetric. Both
 * are taken from the scatter about the curve alone, so that their shapes are compared and nothing else. The one result
 * that differs most is named with its interval.
 */
final class IntervalObservation {
    private static final String NAME = "value ± U stands for the interval of the curve";
    private static final String SOURCE = "Fieller's interval of 95 %, from the scatter about the curve";
    private static final double COVERAGE = 0.95;

    /** A tenth of U shows in the second of the two digits that U is given with. */
    private static final double VISIBLE = 0.1;

    private static final int DIGITS = 3;

    private IntervalObservation() {}

    /** The interval of a result, and how far its ends are from those of the symmetric one, in parts of its half width. */
    private record Found(Result result, LevelInterval interval, double off) {}

    /** The observation; nothing without a curve whose scatter is known, or where no result lies on it. */
    static Optional<Check> of(Analysis analysis, StepAnalysis step, String of) {
        if (step.calibration().isEmpty()
                || step.calibration().get().residualSd().orElse(0) == 0) {
            return Optional.empty();
        }
        Calibration calibration = step.calibration().get();
        return analysis.results().stream()
                .filter(each -> each.step() == step.number() && each.n() > 0)
                .flatMap(each -> found(calibration, each).stream())
                .max(Comparator.comparingDouble(Found::off))
                .map(most -> check(analysis, most, of));
    }

    private static Optional<Found> found(Calibration calibration, Result result) {
        OptionalDouble net = result.netDeltaA();
        if (net.isEmpty() || !(calibration.invert(net.getAsDouble()) instanceof Inverse.Within within)) {
            return Optional.empty();
        }
        InversePrediction prediction = new InversePrediction(
                calibration, net.getAsDouble(), ResponseVariance.residual(calibration, within.level(), result.n()));
        double factor = StudentT.twoSided(COVERAGE, calibration.fit().degreesOfFreedom());
        double half = factor * prediction.standardUncertainty();
        LevelInterval interval = prediction.interval(factor);
        double low = within.level() - interval.low().orElse(Double.NEGATIVE_INFINITY);
        double high = interval.high().orElse(Double.POSITIVE_INFINITY) - within.level();
        return Optional.of(new Found(result, interval, Math.max(Math.abs(low / half - 1), Math.abs(high / half - 1))));
    }

    private static Check check(Analysis analysis, Found most, String of) {
        Result result = most.result();
        boolean passes = most.off() <= VISIBLE;
        String off = most.off() <= Double.MAX_VALUE
                ? "ends of " + result.name() + " differ by " + Numbers.fixed(100 * most.off(), 1) + " % of U"
                : "an end of " + result.name() + " has no bound";
        String ends = "; " + end(analysis, result, most.interval().low(), "no lower end") + " to "
                + end(analysis, result, most.interval().high(), "no upper end") + " "
                + result.unit().symbol()
                + ", with all sources by draws (--monte-carlo)";
        return new Check(
                NAME + of,
                "at most " + Numbers.fixed(100 * VISIBLE, 0) + " % of U",
                passes ? off : off + ends,
                Observations.state(passes),
                SOURCE);
    }

    private static String end(Analysis analysis, Result result, OptionalDouble level, String none) {
        return level.isPresent()
                ? Numbers.rounded(level.getAsDouble() * new ResultScale(analysis, result).value(), DIGITS)
                : none;
    }
}
