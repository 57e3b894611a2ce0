package tallywell.trace;

import org.jspecify.annotations.Nullable;

/**
 * Which parts a progress curve has.
 *
 * @param firstOrder whether the bend is held at 0
 * @param lag kind of lag, or null for none
 * @param step whether the absorbance may step at the trigger
 */
record CurveShape(boolean firstOrder, ReactionLaw.@Nullable Lag lag, boolean step) {
    static final CurveShape PLAIN = new CurveShape(false, null, false);
    static final CurveShape STEP = new CurveShape(false, null, true);

    static CurveShape lagging(ReactionLaw.Lag lag) {
        return new CurveShape(false, lag, false);
    }

    /** The same with the bend held at 0. */
    CurveShape ofFirstOrder() {
        return new CurveShape(true, lag, step);
    }

    /** Nonlinear parameters: ln(half time), bend, lag, as far as there are. */
    int nonlinear() {
        return 1 + (firstOrder ? 0 : 1) + (lag == null ? 0 : 1);
    }

    /** Linear parameters: baseline, change, creep, and the step if there is one. */
    int linear() {
        return step ? 4 : 3;
    }

    int parameters() {
        return linear() + nonlinear();
    }

    double bend(double[] theta) {
        return firstOrder ? 0 : theta[1];
    }

    double lagS(double[] theta) {
        return lag == null ? 0 : theta[firstOrder ? 1 : 2];
    }

    ReactionLaw law(double[] theta) {
        ReactionLaw.Lag kind = lag == null ? ReactionLaw.Lag.INDUCTION : lag;
        return new ReactionLaw(Math.exp(theta[0]), bend(theta), kind, lagS(theta));
    }

    double[] pack(double lnHalfTime, double bend, double lagS) {
        double[] theta = new double[nonlinear()];
        theta[0] = lnHalfTime;
        if (!firstOrder) {
            theta[1] = bend;
        }
        if (lag != null) {
            theta[theta.length - 1] = lagS;
        }
        return theta;
    }
}
