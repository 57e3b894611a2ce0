package tallywell.budget;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;
import tallywell.numeric.StudentT;

/**
 * How sure a·x − b·y is, for two results of one plate.
 *
 * <pre>{@code
 * u²  sum over sources of (a · effect on x − b · effect on y)²
 * ν   u⁴ / (s⁴ / ν(s))    s what of u is scatter rather than stated
 * }</pre>
 *
 * <p>A source that acts on both is wrong in both alike, so its effects are added with their signs before they are squared.
 * What both share may cancel, and with it the well-known part that makes the effective degrees of freedom of single
 * results many; so these are counted anew, over the scatter that is left and with those of the less well known of the
 * two, which is on the safe side.
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.2.2 and G.4.
 *
 * @param standardUncertainty u
 * @param degreesOfFreedom ν, may be infinite
 * @param basis whether a stated source is left once what is shared has cancelled
 */
public record Combination(double standardUncertainty, double degreesOfFreedom, Basis basis) {
    /** How sure the difference of two results is: x − y, in the unit of both. */
    public static Combination difference(ResultBudget x, ResultBudget y) {
        return of(1, x, 1, y, source -> true);
    }

    /** A multiple of one result, from the sources that act on it. */
    static Combination of(double a, ResultBudget x, Predicate<Source> acting) {
        return of(a, x, 0, x, acting);
    }

    /** A difference, from the sources that act on it. */
    static Combination of(double a, ResultBudget x, double b, ResultBudget y, Predicate<Source> acting) {
        // In a fixed order: sums in another one differ in their last digit.
        Map<Source, Double> effects = new LinkedHashMap<>();
        x.contributions().forEach(each -> effects.merge(each.source(), a * each.effect(), Double::sum));
        if (b != 0) {
            y.contributions().forEach(each -> effects.merge(each.source(), -b * each.effect(), Double::sum));
        }
        double all = 0;
        double scatter = 0;
        double stated = 0;
        for (Map.Entry<Source, Double> each : effects.entrySet()) {
            if (acting.test(each.getKey())) {
                double square = each.getValue() * each.getValue();
                all += square;
                scatter += each.getKey().estimate().isScatter() ? square : 0;
                stated += each.getKey().estimate() == Estimate.STATED ? square : 0;
            }
        }
        double known = b == 0
                ? x.scatterDegreesOfFreedom()
                : Math.min(x.scatterDegreesOfFreedom(), y.scatterDegreesOfFreedom());
        return new Combination(Math.sqrt(all), freedom(all, scatter, known), Basis.of(stated > 0));
    }

    /** The same with a further part of its own that is taken as exactly known. */
    Combination and(double stated) {
        double square = standardUncertainty * standardUncertainty;
        double all = square + stated * stated;
        return new Combination(
                Math.sqrt(all),
                square > 0 ? freedom(all, square, degreesOfFreedom) : degreesOfFreedom,
                stated != 0 ? Basis.BUDGET : basis);
    }

    private static double freedom(double all, double part, double ofPart) {
        return part > 0 ? Math.pow(all / part, 2) * ofPart : Double.POSITIVE_INFINITY;
    }

    /** The coverage factor for 95 %. */
    double coverageFactor() {
        return StudentT.twoSided(ResultBudget.COVERAGE, degreesOfFreedom);
    }
}
