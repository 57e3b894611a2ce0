package tallywell.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.method.Planning;

/**
 * The dilutions that a laboratory makes, ascending from 1.
 *
 * @param factors final volume over sample volume
 */
record Ladder(List<Double> factors) {
    private static final double[] STEPS = {1, 2, 5};
    private static final double LARGEST = 1e6;

    Ladder {
        factors = List.copyOf(factors);
    }

    static Ladder of(Planning planning) {
        if (!planning.series().isEmpty()) {
            return new Ladder(planning.series());
        }
        List<Double> usual = new ArrayList<>();
        for (double decade = 1; decade <= LARGEST; decade *= 10) {
            for (double step : STEPS) {
                if (step * decade <= LARGEST) {
                    usual.add(step * decade);
                }
            }
        }
        return new Ladder(usual);
    }

    /** The dilution nearest a wanted one, by ratio, among those that are at least some factor; empty if none is. */
    OptionalDouble nearest(double wanted, double least) {
        OptionalDouble best = OptionalDouble.empty();
        for (double each : factors) {
            boolean allowed = each >= least * (1 - 1e-9);
            if (allowed
                    && (best.isEmpty()
                            || Math.abs(Math.log(each / wanted)) < Math.abs(Math.log(best.getAsDouble() / wanted)))) {
                best = OptionalDouble.of(each);
            }
        }
        return best;
    }

    double largest() {
        return factors.get(factors.size() - 1);
    }
}
