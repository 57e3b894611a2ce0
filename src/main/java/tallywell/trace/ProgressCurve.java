package tallywell.trace;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * The absorbance after the reaction by the law of the reaction.
 *
 * <p>The curves that {@link CurveSearch} found are averaged, each with the weight that Schwarz's criterion (BIC) gives it:
 *
 * <pre>{@code
 * weight ~ exp(-(sum of squares / variance + parameters ln n) / 2)
 * }</pre>
 *
 * <p>so that a trace which cannot tell first order from saturation, or a short lag from none, says so in its uncertainty:
 * the variance of the average is the weighted mean of the variances and of the squared distances from the average.
 * Taking the likeliest curve alone would leave that out.
 *
 * <p>Source: G. Schwarz, Estimating the dimension of a model, Ann. Statist. 6 (1978) 461; averaging: A. E. Raftery, Bayesian
 * model selection in social research, Sociol. Methodol. 25 (1995) 111 (both from memory).
 */
final class ProgressCurve {
    /** Fewest readings used: two more than the largest model has parameters. */
    static final int FEWEST = 10;

    /** Standard deviation of ΔA above which a reaction is called incomplete. */
    private static final double MOST_DEVIATION = 0.0024;

    private static final double JUMP_GAIN = 14;
    /** Residuals that carry over more than readers do follow a curve that is not there. */
    private static final double MISFIT_CARRY = 0.85;

    private static final double LEAST_WEIGHT = 1e-4;

    /** Of a row, which noise scales to 1. */
    private static final double LEAST_VARIANCE = 1e-12;

    private static final double MISFIT_RATIO = 10;

    private final double[] t;
    private final double[] y;
    private final CurveSearch.Found found;
    private final double variance;
    private final double[] weights;
    private final int likeliest;
    private final double carryOfBent;
    private final LackOfFit bent;

    private ProgressCurve(double[] t, double[] y, CurveSearch.Found found) {
        this.t = t;
        this.y = y;
        this.found = found;
        CurveFit closest = found.closest();
        // A trace without any noise is fitted exactly, and two exact fits must still be compared.
        variance = Math.max(LEAST_VARIANCE, closest.variance());
        weights = new double[found.fits().size()];
        double total = 0;
        int top = 0;
        for (int k = 0; k < weights.length; k++) {
            CurveFit fit = found.fits().get(k);
            double worse = (fit.squares() - closest.squares()) / variance;
            int more = fit.shape().parameters() - closest.shape().parameters();
            weights[k] = Math.exp(-0.5 * (worse + more * Math.log(t.length)));
            total += weights[k];
            top = weights[k] > weights[top] ? k : top;
        }
        for (int k = 0; k < weights.length; k++) {
            weights[k] /= total;
        }
        likeliest = top;
        carryOfBent = carryOfBent(found, t.length);
        bent = LackOfFit.of(closest, found.data(carryOfBent));
    }

    /** Fits a well; empty if no curve could be fitted. */
    static Optional<ProgressCurve> of(BaselineRule baseline, double[] t, double[] y) {
        return CurveSearch.of(baseline, t, y).map(found -> new ProgressCurve(t, y, found));
    }

    /** The likeliest curve. */
    CurveFit likeliest() {
        return found.fits().get(likeliest);
    }

    /** Noise about the curves. */
    ReadingNoise noise() {
        return found.noise();
    }

    double after() {
        return mean(CurveFit::after);
    }

    double creepPerS() {
        return mean(CurveFit::creepPerS);
    }

    /** Takes one curve, its weight, and the variance of a row. */
    interface Weighed {
        void take(CurveFit fit, double weight, double variance);
    }

    /** Shows every curve that has a weight. */
    void eachFit(Weighed taker) {
        for (int k = 0; k < weights.length; k++) {
            if (weights[k] > LEAST_WEIGHT) {
                taker.take(found.fits().get(k), weights[k], variance);
            }
        }
    }

    private interface Figure {
        double of(CurveFit fit);
    }

    private double mean(Figure figure) {
        double mean = 0;
        for (int k = 0; k < weights.length; k++) {
            mean += weights[k] * figure.of(found.fits().get(k));
        }
        return mean;
    }

    /** Standard deviation of an average: of each curve, and of the curves about their mean. */
    private double deviation(Figure figure, Figure ownVariance) {
        double mean = mean(figure);
        return Math.sqrt(Math.max(
                0, mean(fit -> variance * ownVariance.of(fit) + (figure.of(fit) - mean) * (figure.of(fit) - mean))));
    }

    /** Standard deviation of ΔA. */
    double deviation() {
        double before = found.data().uBefore();
        return deviation(CurveFit::after, fit -> fit.varianceAt(0) - 2 * fit.covarianceWithBefore(0) + before * before);
    }

    /** Factor that makes a standard uncertainty of a standard deviation. */
    double coverage() {
        int parameters = found.closest().shape().parameters() - 1;
        return Coverage.factor(Noise.freedom(t.length, parameters, noise().carry()));
    }

    /**
     * Standard uncertainty of the absorbance after the reaction, creep that dies away included.
     *
     * @param ofCourse what {@link #ofCourse} gives
     */
    double uncertainty(double ofCourse) {
        return Math.hypot(coverage() * deviation(), ofCourse);
    }

    /** The part of it that creep which dies away stands for. */
    double ofCourse() {
        double creep = Math.abs(creepPerS()) + 2 * deviation(CurveFit::creepPerS, CurveFit::creepVariance);
        double known = coverage() * deviation();
        return Math.sqrt(BentCreep.limited(bent.allowance(scaleOfBent()), known, creep * t[t.length - 1]));
    }

    double uCreepPerS() {
        return coverage() * deviation(CurveFit::creepPerS, CurveFit::creepVariance);
    }

    /** Standard uncertainty of the finished line at a time in s. */
    double uAt(double timeS) {
        return coverage() * deviation(fit -> fit.after() + fit.creepPerS() * timeS, fit -> fit.varianceAt(timeS));
    }

    /** Whether the curve fails to describe the trace. */
    boolean misfits() {
        CurveFit fit = found.closest();
        double[] residual = CurveSearch.residuals(y, fit.at(t));
        double[] left = fit.left(t);
        double burst = 0;
        double tail = 0;
        int inBurst = 0;
        double products = 0;
        for (int i = 0; i < t.length; i++) {
            double square = residual[i] * residual[i];
            products += i == 0 ? 0 : residual[i] * residual[i - 1];
            if (left[i] > 0.01) {
                burst += square;
                inBurst++;
            } else {
                tail += square;
            }
        }
        int inTail = t.length - inBurst;
        boolean burstOff =
                inBurst >= 4 && inTail >= 8 && burst / inBurst > MISFIT_RATIO * Math.max(tail / inTail, floor());
        boolean wanders = t.length >= Noise.FEWEST_FOR_CARRY
                && burst + tail > t.length * floor()
                && products / (burst + tail) > MISFIT_CARRY;
        return burstOff || wanders;
    }

    private static double floor() {
        return BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER;
    }

    /** What is to be flagged of the trace. */
    Set<TraceFlag> flags() {
        Set<TraceFlag> flags = EnumSet.noneOf(TraceFlag.class);
        double before = found.data().baseline().value();
        if (deviation() > MOST_DEVIATION || FinishedLine.isReaction(creepPerS(), t[t.length - 1], after() - before)) {
            flags.add(TraceFlag.REACTION_INCOMPLETE);
        }
        if (LackOfFit.of(found.closest(), found.data()).jumpGain() > JUMP_GAIN * variance) {
            flags.add(TraceFlag.JUMP);
        }
        if (creepBends()) {
            flags.add(TraceFlag.CREEP_NOT_CONSTANT);
        }
        return flags;
    }

    /** Whether the creep bends beyond doubt. */
    private boolean creepBends() {
        double most = Noise.gain(BentCreep.SURE_GAIN, t.length, parametersOfBent(found), carryOfBent);
        return bent.bentGain() > most * scaleOfBent();
    }

    private double scaleOfBent() {
        return bent.squaresOfBent() / Math.max(1, t.length - parametersOfBent(found));
    }

    /**
     * How much carries over once the creep may bend. What a bend leaves in the residuals looks like noise that carries over,
     * and would hide the bend.
     */
    private static double carryOfBent(CurveSearch.Found found, int n) {
        double correlation = LackOfFit.of(found.closest(), found.data(0)).correlationOfBent();
        return Math.min(found.noise().carry(), Noise.unbiased(correlation, n, parametersOfBent(found)));
    }

    private static int parametersOfBent(CurveSearch.Found found) {
        return found.closest().shape().parameters() + 1;
    }
}
