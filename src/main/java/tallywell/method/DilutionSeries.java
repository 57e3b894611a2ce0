package tallywell.method;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.Dilution;

/**
 * The dilutions that a laboratory makes: what a plan chooses from, and what advice is given in.
 *
 * <p>Where none of them is high enough they are made one after another, as a plan splits large dilutions: a step of the
 * series on top of the largest one, up to four dilutions and a factor of 1 000 000 in all.
 *
 * @param steps final volume over sample volume, ascending, each at least 1
 */
public record DilutionSeries(List<Double> steps) {
    /** 1, 2, 5, 10, 20, 50 and so on to 1 000 000 (common practice, no source). */
    public static final DilutionSeries USUAL = usual();

    /** As many as a plan splits a dilution into. */
    private static final int MOST_STEPS = 4;

    private static final double LARGEST = 1e6;

    /** What binary fractions may be off, as a part. */
    private static final double SAME = 1e-9;

    /** Keeps a copy that cannot change. */
    public DilutionSeries {
        steps = List.copyOf(steps);
        if (steps.isEmpty() || !steps.stream().allMatch(each -> each >= 1)) {
            throw new IllegalArgumentException("steps must be some factors of at least 1 but were " + steps);
        }
    }

    private static DilutionSeries usual() {
        List<Double> usual = new ArrayList<>();
        for (double decade = 1; decade < LARGEST; decade *= 10) {
            usual.addAll(List.of(decade, 2 * decade, 5 * decade));
        }
        usual.add(LARGEST);
        return new DilutionSeries(usual);
    }

    /** Those of a laboratory's own {@code planning: series}; the usual ones where it states none. */
    public static DilutionSeries of(Planning planning) {
        return planning.series().isEmpty() ? USUAL : new DilutionSeries(planning.series());
    }

    /**
     * The dilution nearest a wanted one, by ratio, among those that are at least some factor.
     *
     * @param wanted a factor over 0
     * @param least the lowest factor that will do
     * @return empty if none is as high as that, also one after another
     */
    public Optional<Dilution> nearest(double wanted, double least) {
        OptionalDouble best = OptionalDouble.empty();
        for (double each : atLeast(least)) {
            if (best.isEmpty() || distance(each, wanted) < distance(best.getAsDouble(), wanted)) {
                best = OptionalDouble.of(each);
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(new Dilution(best.getAsDouble()));
    }

    /** The smallest dilution that is at least some factor; the factor itself where none is as high as that. */
    public Dilution next(double least) {
        List<Double> enough = atLeast(least);
        return new Dilution(enough.isEmpty() ? least : enough.get(0));
    }

    /** The highest dilution, made one after another. */
    public double largest() {
        List<Double> repeated = oneAfterAnother();
        return repeated.isEmpty() ? largestStep() : repeated.get(repeated.size() - 1);
    }

    /** The steps that are high enough; where none is, what comes of several of them. */
    private List<Double> atLeast(double least) {
        List<Double> steps = high(this.steps, least);
        return steps.isEmpty() ? high(oneAfterAnother(), least) : steps;
    }

    private static List<Double> high(List<Double> factors, double least) {
        return factors.stream().filter(each -> each >= least * (1 - SAME)).toList();
    }

    private List<Double> oneAfterAnother() {
        List<Double> all = new ArrayList<>();
        double before = largestStep();
        for (int i = 1; i < MOST_STEPS; i++) {
            for (double step : steps) {
                if (step > 1 && step * before <= LARGEST * (1 + SAME)) {
                    all.add(step * before);
                }
            }
            before *= largestStep();
        }
        return all;
    }

    private double largestStep() {
        return steps.get(steps.size() - 1);
    }

    private static double distance(double one, double other) {
        return Math.abs(Math.log(one / other));
    }
}
