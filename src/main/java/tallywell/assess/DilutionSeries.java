package tallywell.assess;

import java.util.Optional;
import tallywell.quantity.Dilution;

/**
 * The dilutions that a laboratory makes: 1, 2, 5, 10, 20, 50 and so on (common practice, no source).
 */
final class DilutionSeries {
    private static final double[] STEPS = {1, 2, 5};
    private static final double LARGEST = 1e6;

    private DilutionSeries() {}

    /**
     * The dilution of the series that brings a net ΔA nearest the middle of a window, by ratio.
     *
     * @param dilution the one used
     * @param net the net ΔA found with it, positive
     * @param middle the net ΔA wanted, positive
     */
    static Dilution nearest(Dilution dilution, double net, double middle) {
        double wanted = dilution.factor() * net / middle;
        double best = 1;
        for (double decade = 1; decade <= LARGEST; decade *= 10) {
            for (double step : STEPS) {
                double each = step * decade;
                if (Math.abs(Math.log(each / wanted)) < Math.abs(Math.log(best / wanted))) {
                    best = each;
                }
            }
        }
        return new Dilution(best);
    }

    /** The next larger dilution of the series that is at least some times the one used. */
    static Dilution atLeast(Dilution dilution, double times) {
        double least = dilution.factor() * times;
        for (double decade = 1; decade <= LARGEST; decade *= 10) {
            for (double step : STEPS) {
                if (step * decade >= least * (1 - 1e-9)) {
                    return new Dilution(step * decade);
                }
            }
        }
        return new Dilution(LARGEST);
    }

    /** The advice to use another dilution, if that differs from the one used. */
    static Optional<Dilution> ifOther(Dilution advised, Dilution used) {
        return Math.abs(advised.factor() - used.factor()) < 1e-9 * used.factor()
                ? Optional.empty()
                : Optional.of(advised);
    }
}
