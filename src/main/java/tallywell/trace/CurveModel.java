package tallywell.trace;

import tallywell.numeric.SeparableModel;

/**
 * A progress curve over the baseline and the readings after the trigger, scaled and whitened.
 *
 * <pre>{@code
 * before              = B
 * reading at t        = B + D (1 - left(t)) + creep t  (+ step)
 * }</pre>
 *
 * <p>Row 0 is the absorbance before the trigger, the others are the readings. The nonlinear parameters are believed
 * beforehand to lie near a guessed half time (within a factor of 20), at a bend of 1 ± 1.5 and a lag of 0 ± 40 s: beliefs so
 * weak that a trace which shows its burst overrules them, and that keep a trace which does not from wandering off.
 */
final class CurveModel implements SeparableModel {
    private static final double SD_LN_HALF_TIME = 3;
    private static final double BEND = 1;
    private static final double SD_BEND = 1.5;
    private static final double SD_LAG_S = 40;
    private static final double LEAST_BEND = -0.7;
    private static final double MOST_BEND = 9;
    /** A coupled enzyme slower than this is no lag but a second reaction. */
    private static final double MOST_LAG_S = 120;

    private static final double MOST_LN_HALF_TIME = 20;

    private final CurveShape shape;
    private final CurveData data;
    private final double[] left;
    private final double[][] derivatives;

    CurveModel(CurveShape shape, CurveData data) {
        this.shape = shape;
        this.data = data;
        left = new double[data.size()];
        derivatives = new double[3][data.size()];
    }

    @Override
    public int rows() {
        return 1 + data.size();
    }

    @Override
    public int linear() {
        return shape.linear();
    }

    @Override
    public int nonlinear() {
        return shape.nonlinear();
    }

    @Override
    public boolean basis(double[] theta, double[][] basis) {
        double bend = shape.bend(theta);
        if (!(Math.abs(theta[0]) < MOST_LN_HALF_TIME
                && bend > LEAST_BEND
                && bend < MOST_BEND
                && Math.abs(shape.lagS(theta)) < MOST_LAG_S)) {
            return false;
        }
        double[] t = data.times();
        Whitening whitening = data.whitening();
        shape.law(theta).fill(t, left, derivatives[0], derivatives[1], derivatives[2]);
        for (double[] column : basis) {
            column[0] = 0;
        }
        basis[0][0] = 1 / data.uBefore();
        for (int i = 0; i < t.length; i++) {
            double own = whitening.own(i);
            double past = whitening.past(i);
            int p = i == 0 ? 0 : i - 1;
            basis[0][i + 1] = own - past;
            basis[1][i + 1] = own * (1 - left[i]) - past * (1 - left[p]);
            basis[2][i + 1] = own * t[i] - past * t[p];
            if (shape.step()) {
                basis[3][i + 1] = own - past;
            }
        }
        return true;
    }

    @Override
    public void slopes(double[] theta, double[] c, double[][] slopes) {
        int k = 0;
        fill(slopes[k++], derivatives[0], c[1]);
        if (!shape.firstOrder()) {
            fill(slopes[k++], derivatives[1], c[1]);
        }
        if (shape.lag() != null) {
            fill(slopes[k], derivatives[2], c[1]);
        }
    }

    private void fill(double[] slope, double[] derivative, double change) {
        Whitening whitening = data.whitening();
        slope[0] = 0;
        for (int i = 0; i < derivative.length; i++) {
            int p = i == 0 ? 0 : i - 1;
            slope[i + 1] = -change * (whitening.own(i) * derivative[i] - whitening.past(i) * derivative[p]);
        }
    }

    @Override
    public void beliefs(double[] mean, double[] sd) {
        System.arraycopy(shape.pack(data.lnHalfTime(), BEND, 0), 0, mean, 0, mean.length);
        System.arraycopy(shape.pack(SD_LN_HALF_TIME, SD_BEND, SD_LAG_S), 0, sd, 0, sd.length);
    }
}
