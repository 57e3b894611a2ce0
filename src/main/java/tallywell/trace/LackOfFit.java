package tallywell.trace;

import tallywell.numeric.SeparableModel;

/**
 * What a progress curve lacks: by how much its sum of squares would fall with one thing more, to first order.
 *
 * <p>Each gain is that of one more column beside the slopes of the fit, in units of the variance of a row; without the
 * thing it has one degree of freedom of noise. Bent creep stands for t² and t³ beside the creep: the larger of the
 * gain of both, and 1.34 times that of t² alone, which has the same limits. Creep that dies away is that of {@link BentCreep}.
 */
final class LackOfFit {
    private final double lagGain;
    private final double stepGain;
    private final double jumpGain;
    private final double bentGain;
    private final double[] residual;
    private final Dying dying;

    private LackOfFit(
            double lagGain, double stepGain, double jumpGain, double bentGain, double[] residual, Dying dying) {
        this.lagGain = lagGain;
        this.stepGain = stepGain;
        this.jumpGain = jumpGain;
        this.bentGain = bentGain;
        this.residual = residual;
        this.dying = dying;
    }

    /** Creep that dies away: by what the sum of squares would fall, its size squared per that, what it does to ΔA. */
    private record Dying(double gain, double norm, double lever) {}

    /** Looks at a fit to these data, rows having variance 1. */
    static LackOfFit of(CurveFit fit, CurveData data) {
        ReactionLaw.Lag lag = fit.shape().lag() == null
                ? ReactionLaw.Lag.INDUCTION
                : fit.shape().lag();
        int n = data.size();
        double[][] basis = new double[4][n + 1];
        double[][] slopes = new double[3][n + 1];
        double[] theta = {fit.lnHalfTime(), fit.bend(), fit.lagS()};
        double[] c = {fit.before(), fit.change(), fit.creepPerS(), fit.step()};
        SeparableModel model = new CurveModel(new CurveShape(false, lag, true), data);
        model.basis(theta, basis);
        model.slopes(theta, c, slopes);
        double[] r = data.rows().clone();
        for (int k = 0; k < c.length; k++) {
            for (int i = 0; i <= n; i++) {
                r[i] -= c[k] * basis[k][i];
            }
        }
        Span span = spanOf(fit.shape(), basis, slopes);
        span.takeOff(r);
        double ofLag = span.gain(slopes[2], r);
        double ofStep = span.gain(basis[3], r);
        double ofJump = span.jump(basis[0], firstOfJump(data), r, 1).gain();
        double[] column = dyingAway(data);
        double lever = lever(fit, basis, slopes, column);
        double norm = span.freed(column);
        double product = Span.dot(column, r);
        Dying dying = new Dying(norm > 0 ? product * product / norm : 0, norm, lever);
        return new LackOfFit(ofLag, ofStep, ofJump, bent(span, data, r), r, dying);
    }

    /** Creep that dies away, counted from the trigger. */
    private static double[] dyingAway(CurveData data) {
        double[] t = data.times();
        double[] shape = BentCreep.dyingAway(t, 0, t.length);
        for (int i = 0; i < shape.length; i++) {
            shape[i] -= 1;
        }
        return data.whitening().column(shape);
    }

    /** What a unit of a column that the fit does not have does to its absorbance after the reaction. */
    private static double lever(CurveFit fit, double[][] basis, double[][] slopes, double[] column) {
        CurveShape shape = fit.shape();
        double[] products = new double[shape.parameters()];
        int k = 0;
        products[k++] = Span.dot(slopes[0], column);
        if (!shape.firstOrder()) {
            products[k++] = Span.dot(slopes[1], column);
        }
        if (shape.lag() != null) {
            products[k++] = Span.dot(slopes[2], column);
        }
        for (int j = 0; j < shape.linear(); j++) {
            products[k++] = Span.dot(basis[j], column);
        }
        return fit.afterBy(products);
    }

    /**
     * Variance of the absorbance after the reaction that creep which dies away, too little to be sure of, stands for.
     *
     * @param variance variance of a row
     */
    double allowance(double variance) {
        return dying.norm > 0 && dying.gain > variance ? dying.lever * dying.lever * dying.gain / dying.norm : 0;
    }

    private static Span spanOf(CurveShape shape, double[][] basis, double[][] slopes) {
        Span span = new Span(9);
        for (int k = 0; k < shape.linear(); k++) {
            span.add(basis[k]);
        }
        // The bend counts as a parameter even where it is held at 0: an average over both stands behind the fit.
        span.add(slopes[0]);
        span.add(slopes[1]);
        if (shape.lag() != null) {
            span.add(slopes[2]);
        }
        return span;
    }

    private static double[] firstOfJump(CurveData data) {
        double[] first = new double[data.size() + 1];
        for (int i = 0; i < data.size(); i++) {
            first[i + 1] = data.whitening().own(i);
        }
        return first;
    }

    private static double bent(Span span, CurveData data, double[] r) {
        double[] t = data.times();
        double[] square = new double[t.length];
        double[] cube = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            double x = t[i] / t[t.length - 1];
            square[i] = x * x;
            cube[i] = x * x * x;
        }
        double[] first = data.whitening().column(square);
        double[] second = data.whitening().column(cube);
        double ofSquare = span.gain(first, r);
        span.add(first);
        span.takeOff(r);
        double ofBoth = ofSquare + span.gain(second, r);
        span.add(second);
        span.takeOff(r);
        return Math.max(ofBoth, 1.34 * ofSquare);
    }

    /** Gain of a lag. */
    double lagGain() {
        return lagGain;
    }

    /** Gain of a step at the trigger. */
    double stepGain() {
        return stepGain;
    }

    /** Largest gain of a jump at one of the readings. */
    double jumpGain() {
        return jumpGain;
    }

    /** Gain of creep that is not constant. */
    double bentGain() {
        return bentGain;
    }

    /** Sum of squares that remains once the creep may bend. */
    double squaresOfBent() {
        double sum = 0;
        for (double each : residual) {
            sum += each * each;
        }
        return sum;
    }

    /** Lag-one correlation of the rows once the creep may bend. */
    double correlationOfBent() {
        double products = 0;
        for (int i = 2; i < residual.length; i++) {
            products += residual[i] * residual[i - 1];
        }
        double squares = squaresOfBent();
        return squares > 0 ? products / squares : 0;
    }
}
