package tallywell.trace;

import java.util.Arrays;
import java.util.Optional;
import tallywell.numeric.Regression;
import tallywell.numeric.SeparableLeastSquares;

/**
 * One progress curve fitted to one well.
 *
 * @param shape which parts it has
 * @param regression its parameters: nonlinear, then baseline, change, creep, step
 */
record CurveFit(CurveShape shape, Regression regression) {
    /** Fits from a start. */
    static Optional<CurveFit> of(
            SeparableLeastSquares solver,
            CurveShape shape,
            CurveData data,
            double lnHalfTime,
            double bend,
            double lagS) {
        return solver.fit(new CurveModel(shape, data), data.rows(), shape.pack(lnHalfTime, bend, lagS))
                .map(fit -> new CurveFit(shape, fit.regression()));
    }

    /** Fits the same shape, or another, from where this ended. */
    Optional<CurveFit> again(SeparableLeastSquares solver, CurveShape other, CurveData data) {
        return of(solver, other, data, lnHalfTime(), bend(), lagS());
    }

    double[] theta() {
        return Arrays.copyOf(regression.parameters(), shape.nonlinear());
    }

    double lnHalfTime() {
        return regression.parameter(0);
    }

    double bend() {
        return shape.bend(theta());
    }

    double lagS() {
        return shape.lagS(theta());
    }

    private double linear(int index) {
        return regression.parameter(shape.nonlinear() + index);
    }

    double before() {
        return linear(0);
    }

    double change() {
        return linear(1);
    }

    double creepPerS() {
        return linear(2);
    }

    double step() {
        return shape.step() ? linear(3) : 0;
    }

    /** The absorbance after the reaction, at the trigger. */
    double after() {
        return before() + change() + step();
    }

    double squares() {
        return regression.sumOfSquares();
    }

    /** Sum of squares per degree of freedom, beliefs not counted as observations. */
    double variance() {
        return squares() / Math.max(1, regression.observations() - shape.parameters());
    }

    /** Variance of the finished line at a time in s, for rows of variance 1. */
    double varianceAt(double timeS) {
        return regression.cofactorOf(gradient(timeS));
    }

    /** Covariance of the finished line at a time with the absorbance before the trigger as read. */
    double covarianceWithBefore(double timeS) {
        double[] gradient = gradient(timeS);
        double sum = 0;
        for (int i = 0; i < gradient.length; i++) {
            sum += gradient[i] * regression.cofactor(i, shape.nonlinear());
        }
        return sum;
    }

    /** What the absorbance after the reaction changes by, from the products of the slopes with a change of the rows. */
    double afterBy(double[] products) {
        double[] gradient = gradient(0);
        double sum = 0;
        for (int i = 0; i < gradient.length; i++) {
            for (int j = 0; j < gradient.length; j++) {
                sum += gradient[i] * regression.cofactor(i, j) * products[j];
            }
        }
        return sum;
    }

    private double[] gradient(double timeS) {
        double[] gradient = new double[shape.parameters()];
        int m = shape.nonlinear();
        gradient[m] = 1;
        gradient[m + 1] = 1;
        gradient[m + 2] = timeS;
        if (shape.step()) {
            gradient[m + 3] = 1;
        }
        return gradient;
    }

    /** Variance of the creep per s, for rows of variance 1. */
    double creepVariance() {
        int creep = shape.nonlinear() + 2;
        return regression.cofactor(creep, creep);
    }

    /** Variance of the bend, for rows of variance 1; the shape must have one. */
    double bendVariance() {
        return regression.cofactor(1, 1);
    }

    /** What is left of the burst at each time, as a part. */
    double[] left(double[] t) {
        double[] left = new double[t.length];
        double[] ignored = new double[t.length];
        shape.law(theta()).fill(t, left, ignored, ignored, ignored);
        return left;
    }

    /** The burst left (reading minus finished line) at each time, and below it its slopes by the parameters. */
    double[][] burst(double[] t) {
        int n = t.length;
        double[] left = new double[n];
        double[][] by = new double[3][n];
        shape.law(theta()).fill(t, left, by[0], by[1], by[2]);
        double[][] rows = new double[1 + shape.parameters()][n];
        int ofBend = shape.firstOrder() ? -1 : 1;
        int ofLag = shape.lag() == null ? -1 : shape.nonlinear() - 1;
        for (int i = 0; i < n; i++) {
            rows[0][i] = -change() * left[i];
            rows[1][i] = -change() * by[0][i];
            if (ofBend > 0) {
                rows[1 + ofBend][i] = -change() * by[1][i];
            }
            if (ofLag > 0) {
                rows[1 + ofLag][i] = -change() * by[2][i];
            }
            rows[2 + shape.nonlinear()][i] = -left[i];
        }
        return rows;
    }

    /** Variance, for rows of variance 1, of what has these slopes in column j, the first row aside. */
    double varianceBy(double[][] rows, int j) {
        double[] gradient = new double[shape.parameters()];
        for (int k = 0; k < gradient.length; k++) {
            gradient[k] = rows[1 + k][j];
        }
        return regression.cofactorOf(gradient);
    }

    /** The curve at each time. */
    double[] at(double[] t) {
        double[] fitted = left(t);
        for (int i = 0; i < t.length; i++) {
            fitted[i] = after() - change() * fitted[i] + creepPerS() * t[i];
        }
        return fitted;
    }
}
