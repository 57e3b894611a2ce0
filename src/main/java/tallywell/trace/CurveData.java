package tallywell.trace;

import java.util.Arrays;

/**
 * One well as a progress curve is fitted to it: readings, their scaling, and a first guess of the half time.
 *
 * <p>Rows are the absorbance before the trigger and then the readings, each divided by its standard deviation and freed of
 * what its predecessor foretells.
 */
final class CurveData {
    /** A baseline of which nothing is known is taken to be this part of a reading's scatter off. */
    private static final double LEAST_BEFORE = 0.1;

    private final BaselineRule baseline;
    private final double[] t;
    private final double[] y;
    private final double lnHalfTime;
    private final double uBefore;
    private final Whitening whitening;
    private final double[] rows;

    private CurveData(
            BaselineRule baseline,
            double[] t,
            double[] y,
            double lnHalfTime,
            double[] sd,
            double sdBefore,
            double carry) {
        this.baseline = baseline;
        this.t = t;
        this.y = y;
        this.lnHalfTime = lnHalfTime;
        uBefore = Math.max(baseline.uncertainty(sdBefore, carry).orElse(0), LEAST_BEFORE * sdBefore);
        whitening = Whitening.of(sd, carry, t);
        rows = whitening.apply(baseline.value(), uBefore, y);
    }

    /** Readings of one and the same scatter, guessed from their second differences, and nothing carried over. */
    static CurveData of(BaselineRule baseline, double[] t, double[] y) {
        double sd = roughScatter(y);
        double[] sds = new double[t.length];
        Arrays.fill(sds, sd);
        return new CurveData(baseline, t, y, Math.log(halfTime(baseline.value(), t, y)), sds, sd, 0);
    }

    /** The same readings with noise as a first fit showed it. */
    CurveData with(ReadingNoise noise, double carry, double[] fitted) {
        return new CurveData(baseline, t, y, lnHalfTime, noise.sd(fitted), noise.sd(baseline.value()), carry);
    }

    private static double roughScatter(double[] y) {
        double[] size = new double[y.length - 2];
        for (int i = 1; i < y.length - 1; i++) {
            size[i - 1] = Math.abs(y[i] - 0.5 * (y[i - 1] + y[i + 1]));
        }
        Arrays.sort(size);
        // A second difference of this form has variance 3/2; 1.4826 turns a median size into a standard deviation.
        return Math.max(BurstTail.LEAST_SCATTER, 1.4826 / Math.sqrt(1.5) * size[size.length / 2]);
    }

    private static double halfTime(double before, double[] t, double[] y) {
        int n = t.length;
        LineFit tail = LineFit.of(t, y, n - n / 3, n, null);
        double burst = tail.at(0) - before;
        // Readings at one and the same time may be the first, at the trigger itself.
        double shortest = 0.6 * Math.max(t[0], t[n - 1] / n);
        for (int i = 0; i < n; i++) {
            if ((y[i] - tail.slope() * t[i] - before) / burst > 0.5) {
                return i == 0 ? shortest : Math.max(shortest, 0.5 * (t[i - 1] + t[i]));
            }
        }
        return Math.max(shortest, t[n / 2]);
    }

    int size() {
        return t.length;
    }

    BaselineRule baseline() {
        return baseline;
    }

    double[] times() {
        return t;
    }

    double[] readings() {
        return y;
    }

    double lnHalfTime() {
        return lnHalfTime;
    }

    double uBefore() {
        return uBefore;
    }

    Whitening whitening() {
        return whitening;
    }

    double[] rows() {
        return rows;
    }
}
