package tallywell.trace;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The likeliest progress curve of a well, for pictures and for the record.
 *
 * <p>ΔA is an average over the curves that the trace supports, so it need not be the change of this one to the last digit.
 */
public final class FittedCurve {
    private final CurveFit fit;
    private final ReactionLaw law;
    private final double after;
    private final double creepPerS;
    private final double uAtEnd;
    private final List<Integer> leftOut;

    FittedCurve(CurveFit fit, double after, double creepPerS, double uAtEnd, List<Integer> leftOut) {
        this.fit = fit;
        this.law = fit.shape().law(fit.theta());
        this.after = after;
        this.creepPerS = creepPerS;
        this.uAtEnd = uAtEnd;
        this.leftOut = List.copyOf(leftOut);
    }

    /** Readings of the series after the trigger that were left out as off the curve, ascending. */
    public List<Integer> leftOut() {
        return leftOut;
    }

    /** Standard uncertainty of the finished line at the last reading. */
    public double uAtEnd() {
        return uAtEnd;
    }

    /** The curve at a time in s from the trigger, 0 or later. */
    public double at(double timeS) {
        return fit.after() - burstLeft(timeS) + fit.creepPerS() * timeS;
    }

    /** The finished line (average of the curves) at a time in s from the trigger. */
    public double finishedAt(double timeS) {
        return after + creepPerS * timeS;
    }

    /** The burst still to come at a time in s, in absorbance; it has the sign of the change. */
    public double burstLeft(double timeS) {
        return fit.change() * law.left(timeS);
    }

    /** The curve at ascending times, which costs far less than one by one. */
    double[] at(double[] timesS) {
        return fit.at(timesS);
    }

    /** The burst still to come at ascending times. */
    double[] burstLeft(double[] timesS) {
        double[] left = fit.left(timesS);
        for (int i = 0; i < left.length; i++) {
            left[i] *= fit.change();
        }
        return left;
    }

    /** Rate constant per s where the law is of first order, without lag. */
    public OptionalDouble rateConstantPerS() {
        return fit.shape().firstOrder() ? OptionalDouble.of(law.firstOrderPerS()) : OptionalDouble.empty();
    }

    /** Michaelis constant in absorbance where the law saturates. */
    public OptionalDouble michaelisConstant() {
        return fit.shape().firstOrder() ? OptionalDouble.empty() : law.michaelisConstant(Math.abs(fit.change()));
    }

    /** Largest rate in absorbance per s where the law saturates. */
    public OptionalDouble vmaxPerS() {
        return fit.shape().firstOrder() ? OptionalDouble.empty() : law.vmaxPerS(Math.abs(fit.change()));
    }

    /** Time constant of the lag in s, 0 without one. */
    public double lagS() {
        return fit.lagS();
    }

    /** Step of absorbance at the trigger, 0 without one. */
    public double step() {
        return fit.step();
    }

    /** The law in words, such as "first order, coupled lag". */
    public String law() {
        String order = fit.shape().firstOrder() ? "first order" : "integrated Michaelis-Menten";
        ReactionLaw.Lag lag = fit.shape().lag();
        String lagging = lag == null ? "" : lag == ReactionLaw.Lag.COUPLED ? ", coupled lag" : ", induction lag";
        return order + lagging + (fit.shape().step() ? ", step at the trigger" : "");
    }
}
