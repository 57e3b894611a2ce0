package tallywell.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.method.DilutionSeries;

/**
 * How a dilution is pipetted: one step, or as many as it takes so that no volume is below the smallest one.
 *
 * <pre>{@code
 * each step:   C1 V1 = C2 V2        V1 = V2 / factor, made up with V2 - V1
 * all steps:   dilution = product of the factors
 * }</pre>
 *
 * @param steps in order; none for a sample that is taken as it is
 */
public record DilutionScheme(List<Transfer> steps) {
    private static final int MOST_STEPS = 4;

    /** Factors that differ by less than this are one, since products of decimals are not exact. */
    private static final double SAME = 1e-9;

    /**
     * One transfer.
     *
     * @param takeUl volume taken, in µL
     * @param addUl volume of diluent, in µL; 0 if nothing is added
     * @param factor final volume over volume taken
     */
    public record Transfer(double takeUl, double addUl, double factor) {}

    /** Keeps a copy that cannot change. */
    public DilutionScheme {
        steps = List.copyOf(steps);
    }

    /** The dilution that comes out. */
    public double factor() {
        return steps.stream().mapToDouble(Transfer::factor).reduce(1, (one, other) -> one * other);
    }

    /**
     * The scheme with the fewest steps; of those with equally many the one whose largest factor is smallest.
     *
     * @param factor the dilution, at least 1
     * @param totalUl volume made in each step, in µL
     * @param leastUl smallest volume to pipette, in µL
     * @param series factors to prefer for the steps
     * @return empty if four steps do not suffice
     */
    static Optional<DilutionScheme> of(double factor, double totalUl, double leastUl, DilutionSeries series) {
        if (factor == 1) {
            return Optional.of(new DilutionScheme(List.of()));
        }
        double most = totalUl / leastUl;
        for (int steps = 1; steps <= MOST_STEPS; steps++) {
            if (Math.pow(most, steps) >= factor * (1 - SAME)) {
                List<Double> split = split(factor, steps, most, leastUl, totalUl, series);
                return Optional.of(new DilutionScheme(
                        split.stream().map(each -> transfer(each, totalUl)).toList()));
            }
        }
        return Optional.empty();
    }

    private static Transfer transfer(double factor, double totalUl) {
        double take = totalUl / factor;
        return new Transfer(take, totalUl - take, factor);
    }

    private static List<Double> split(
            double factor, int steps, double most, double leastUl, double totalUl, DilutionSeries series) {
        if (steps == 1) {
            return List.of(factor);
        }
        List<Double> best = List.of();
        for (double first : series.steps()) {
            double rest = factor / first;
            boolean fits = first > 1 && first <= most * (1 + SAME) && rest > 1;
            if (fits && Math.pow(most, steps - 1.0) >= rest * (1 - SAME)) {
                List<Double> others = split(rest, steps - 1, most, leastUl, totalUl, series);
                List<Double> all = new ArrayList<>(List.of(first));
                all.addAll(others);
                if (best.isEmpty() || better(all, best, series)) {
                    best = all;
                }
            }
        }
        return best.isEmpty() ? even(factor, steps) : best;
    }

    private static boolean better(List<Double> one, List<Double> other, DilutionSeries series) {
        int strange = Integer.compare(strange(one, series), strange(other, series));
        return strange != 0 ? strange < 0 : largest(one) < largest(other) - SAME;
    }

    private static int strange(List<Double> factors, DilutionSeries series) {
        return (int) factors.stream()
                .filter(each -> series.steps().stream().noneMatch(own -> Math.abs(own / each - 1) < SAME))
                .count();
    }

    private static double largest(List<Double> factors) {
        return factors.stream().mapToDouble(Double::doubleValue).max().orElse(1);
    }

    private static List<Double> even(double factor, int steps) {
        List<Double> equal = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            equal.add(Math.pow(factor, 1.0 / steps));
        }
        return equal;
    }
}
