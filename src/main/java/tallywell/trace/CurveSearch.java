package tallywell.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.numeric.SeparableLeastSquares;

/**
 * Finds the progress curves that one well supports.
 *
 * <p>First roughly, all readings counting alike: the integrated law from two starts, one near first order and one near
 * saturation; with a lag of either kind, each from two starts, where a lag would gain anything; with a step at the trigger
 * where that would gain much. The residuals of the best show the noise. Then once more with the noise as it is, and
 * where the bend is not sure to differ from 0, first order beside it.
 */
final class CurveSearch {
    private static final SeparableLeastSquares ROUGH = new SeparableLeastSquares(15, 1e-4);
    private static final SeparableLeastSquares FINE = new SeparableLeastSquares(20, 1e-6);
    private static final double NEAR_FIRST_ORDER = 0.3;
    private static final double NEAR_SATURATION = 2.5;
    private static final double SHORT_LAG_S = 5;
    private static final double LONG_LAG_S = 40;
    private static final double SHORTEST_HALF_TIME_S = 0.001;

    /** Gains in the sum of squares, in units of the noise, from which a lag or a step is tried. */
    private static final double LAG_WORTH_TRYING = 4;

    private static final double STEP_WORTH_TRYING = 12;
    /** Roughly estimated standard deviations from the curve beyond which a reading is far off. */
    private static final double OFF = 5;

    /** A rough curve worse than the best by so many variances has no weight in the end, and costs as much as the others. */
    private static final double NO_WEIGHT = 100;

    /** Standard deviations from 0 beyond which the bend is sure. */
    private static final double SURE_BEND = 4;

    private CurveSearch() {}

    /** What was found. */
    static final class Found {
        private final ReadingNoise noise;
        private final CurveData data;
        private final double[] shown;
        private final List<CurveFit> fits;

        private Found(ReadingNoise noise, CurveData data, double[] shown, List<CurveFit> fits) {
            this.noise = noise;
            this.data = data;
            this.shown = shown;
            this.fits = List.copyOf(fits);
        }

        /** Noise about the rough curve that fitted best. */
        ReadingNoise noise() {
            return noise;
        }

        /** The readings, scaled by that noise. */
        CurveData data() {
            return data;
        }

        /** The readings, scaled by that noise but for another carry. */
        CurveData data(double carry) {
            return data.with(noise, carry, shown);
        }

        /** All curves, one at least. */
        List<CurveFit> fits() {
            return fits;
        }

        /** The curve with the least sum of squares. */
        CurveFit closest() {
            return least(fits);
        }
    }

    /** All curves worth a weight; empty if not even the plainest could be fitted. */
    static Optional<Found> of(BaselineRule baseline, double[] t, double[] y) {
        CurveData rough = CurveData.of(baseline, t, y);
        List<CurveFit> starts = starts(rough);
        if (starts.isEmpty()) {
            return Optional.empty();
        }
        CurveFit best = least(starts);
        double[] shown = best.at(t);
        ReadingNoise noise =
                ReadingNoise.of(residuals(y, shown), shown, best.shape().parameters() - 1, baseline);
        CurveData data = rough.with(noise, noise.carry(), shown);
        List<CurveFit> fits = new ArrayList<>();
        for (CurveFit start : starts) {
            if (start.squares() - best.squares() > NO_WEIGHT * best.variance()) {
                continue;
            }
            start.again(FINE, start.shape(), data).ifPresent(fit -> {
                fits.add(fit);
                if (Math.abs(fit.bend()) < SURE_BEND * Math.sqrt(fit.bendVariance() * fit.variance())) {
                    CurveFit.of(FINE, fit.shape().ofFirstOrder(), data, fit.lnHalfTime(), 0, fit.lagS())
                            .ifPresent(fits::add);
                }
            });
        }
        return fits.isEmpty() ? Optional.empty() : Optional.of(new Found(noise, data, shown, fits));
    }

    private static List<CurveFit> starts(CurveData data) {
        List<CurveFit> starts = new ArrayList<>();
        double half = data.lnHalfTime();
        Optional<CurveFit> plain = better(
                CurveFit.of(ROUGH, CurveShape.PLAIN, data, half, NEAR_FIRST_ORDER, 0),
                CurveFit.of(ROUGH, CurveShape.PLAIN, data, half, NEAR_SATURATION, 0));
        if (plain.isEmpty()) {
            return starts;
        }
        CurveFit fit = plain.get();
        starts.add(fit);
        LackOfFit lack = LackOfFit.of(fit, data);
        if (lack.lagGain() > LAG_WORTH_TRYING || isOff(fit, data)) {
            for (ReactionLaw.Lag lag : ReactionLaw.Lag.values()) {
                CurveShape shape = CurveShape.lagging(lag);
                better(
                                CurveFit.of(ROUGH, shape, data, fit.lnHalfTime(), fit.bend(), SHORT_LAG_S),
                                CurveFit.of(ROUGH, shape, data, underLongLag(fit.lnHalfTime()), 1, LONG_LAG_S))
                        .ifPresent(starts::add);
            }
        }
        if (lack.stepGain() > STEP_WORTH_TRYING) {
            fit.again(ROUGH, CurveShape.STEP, data).ifPresent(starts::add);
        }
        return starts;
    }

    /** Whether a reading lies far off; where one or two readings are all of the burst, the slope of the lag is no guide. */
    private static boolean isOff(CurveFit fit, CurveData data) {
        double[] residual = residuals(data.readings(), fit.at(data.times()));
        for (int i = 0; i < residual.length; i++) {
            if (Math.abs(residual[i]) * data.whitening().own(i) > OFF) {
                return true;
            }
        }
        return false;
    }

    /** Half time of a reaction that a long lag makes look as slow as this. */
    private static double underLongLag(double lnHalfTime) {
        double half = Math.exp(lnHalfTime);
        return Math.log(Math.max(SHORTEST_HALF_TIME_S, half + LONG_LAG_S * Math.expm1(-half / LONG_LAG_S)));
    }

    private static Optional<CurveFit> better(Optional<CurveFit> a, Optional<CurveFit> b) {
        return a.isEmpty() || b.isPresent() && b.get().squares() < a.get().squares() ? b : a;
    }

    private static CurveFit least(List<CurveFit> fits) {
        CurveFit least = fits.get(0);
        for (CurveFit fit : fits) {
            if (fit.squares() < least.squares()) {
                least = fit;
            }
        }
        return least;
    }

    static double[] residuals(double[] y, double[] fitted) {
        double[] residual = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            residual[i] = y[i] - fitted[i];
        }
        return residual;
    }
}
