package tallywell.budget;

import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.method.InputQuantity;
import tallywell.method.UncertaintyRule.Stated;
import tallywell.numeric.StudentT;
import tallywell.workup.Result;

/**
 * How sure one result is.
 *
 * <pre>{@code
 * u²        sum of effect²
 * U = k u   k = t(0.975; ν), so 1.96 for many degrees of freedom and 12.7 for one
 * 1/ν       sum over independent estimates of (u of the estimate / u)⁴ / its degrees of freedom
 * }</pre>
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.1, 6.3 and annex G.
 *
 * @param result the result
 * @param contributions every source with an effect on it
 * @param degreesOfFreedom effective degrees of freedom, may be infinite
 * @param validation relative standard uncertainty from the validation of the method, if it says
 * @param stated which of the two is reported
 * @param unstated what the value is proportional to and the method states no uncertainty of, so that it is not in the
 *     budget
 */
public record ResultBudget(
        Result result,
        List<Contribution> contributions,
        double degreesOfFreedom,
        OptionalDouble validation,
        Stated stated,
        Set<InputQuantity> unstated) {
    /** Coverage of the expanded uncertainty. */
    public static final double COVERAGE = 0.95;

    /** Factor for an uncertainty from validation, where no degrees of freedom are known (common practice, no source). */
    private static final double PLAIN_FACTOR = 2;

    /** Keeps a copy that cannot change. */
    public ResultBudget {
        contributions = List.copyOf(contributions);
        EnumSet<InputQuantity> copy = EnumSet.noneOf(InputQuantity.class);
        copy.addAll(unstated);
        unstated = Collections.unmodifiableSet(copy);
    }

    /** The standard uncertainty by the budget, in the unit of the value. */
    public double byBudget() {
        double squares = 0;
        for (Contribution each : contributions) {
            squares += each.effect() * each.effect();
        }
        return Math.sqrt(squares);
    }

    /** Degrees of freedom of the part that is scatter: what is stated adds to u and makes it no less well known. */
    double scatterDegreesOfFreedom() {
        double all = 0;
        double scatter = 0;
        for (Contribution each : contributions) {
            double square = each.effect() * each.effect();
            all += square;
            scatter += each.source().estimate().isScatter() ? square : 0;
        }
        return scatter > 0 ? degreesOfFreedom * Math.pow(scatter / all, 2) : Double.POSITIVE_INFINITY;
    }

    /** The standard uncertainty by the validation, in the unit of the value; empty if the method has none. */
    public OptionalDouble byValidation() {
        return validation.isPresent()
                ? OptionalDouble.of(
                        validation.getAsDouble() * Math.abs(result.value().orElseThrow()))
                : OptionalDouble.empty();
    }

    /** The standard uncertainty that is reported. */
    public double standardUncertainty() {
        return stated == Stated.VALIDATION ? byValidation().orElseThrow() : byBudget();
    }

    /** The coverage factor that goes with it. */
    public double coverageFactor() {
        return stated == Stated.VALIDATION ? PLAIN_FACTOR : factorByBudget();
    }

    /** The coverage factor that goes with the budget. */
    public double factorByBudget() {
        return StudentT.twoSided(COVERAGE, degreesOfFreedom);
    }

    /** What the uncertainty that is reported rests on. */
    public Basis basis() {
        return stated == Stated.VALIDATION ? Basis.VALIDATION : basisByBudget();
    }

    /** What the uncertainty by the budget rests on. */
    public Basis basisByBudget() {
        return Basis.of(contributions);
    }

    /** The expanded uncertainty that is reported. */
    public double expandedUncertainty() {
        return coverageFactor() * standardUncertainty();
    }

    /** The part of the variance that each label has, adding up to 1, largest first; empty if nothing is uncertain. */
    public Map<String, Double> shares() {
        double total = byBudget() * byBudget();
        Map<String, Double> sums = new HashMap<>();
        if (total > 0) {
            for (Contribution each : contributions) {
                sums.merge(each.source().label(), each.effect() * each.effect() / total, Double::sum);
            }
        }
        Map<String, Double> ordered = new LinkedHashMap<>();
        sums.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .forEach(each -> ordered.put(each.getKey(), each.getValue()));
        return ordered;
    }

    /** The covariance with another result of the same plate, from the sources that both share. */
    public double covariance(ResultBudget other) {
        Map<Source, Double> effects = new HashMap<>();
        for (Contribution each : contributions) {
            effects.merge(each.source(), each.effect(), Double::sum);
        }
        double sum = 0;
        for (Contribution each : other.contributions) {
            sum += effects.getOrDefault(each.source(), 0.0) * each.effect();
        }
        return sum;
    }
}
