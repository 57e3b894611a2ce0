package tallywell.across;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tallywell.budget.ResultBudget;
import tallywell.numeric.Cholesky;
import tallywell.numeric.FisherF;

/**
 * Whether results differ by no more than their uncertainties explain.
 *
 * <pre>{@code
 * Q = dᵀ V⁻¹ d       d the differences of the others from the first, V their covariance
 * Birge ratio = √(Q / (n - 1))
 * }</pre>
 *
 * <p>What results have in common cancels in the differences. Q/(n − 1) is held against the 95 % point of F with the degrees
 * of freedom of what the results differ by; for two results this is the comparison of their difference with its expanded
 * uncertainty. A Birge ratio well over 1 says that something makes the results differ which no uncertainty states.
 *
 * <p>Source: R. T. Birge (1932), The calculation of errors by the method of least squares, Phys. Rev. 40, 207 (from
 * memory), there for independent results; JCGM 100:2008 (GUM), 5.2.2 and G.4, for the rest.
 *
 * @param birge the Birge ratio
 * @param limit what it may be at most at 95 %
 */
public record Consistency(double birge, double limit) {
    /** As good as infinite to 9 digits; the distribution takes no infinite degrees of freedom. */
    private static final double MANY = 1e9;

    /** Whether the results go together. */
    public boolean holds() {
        return birge <= limit;
    }

    /**
     * The consistency of results.
     *
     * @param values two or more
     * @param parts how sure each is; one at least has something of its own
     */
    static Consistency of(double[] values, List<UncertaintyParts> parts) {
        int n = values.length;
        double[][] v = new double[n - 1][n - 1];
        double[] d = new double[n - 1];
        for (int i = 1; i < n; i++) {
            d[i - 1] = values[i] - values[0];
            for (int j = 1; j < n; j++) {
                v[i - 1][j - 1] = covariance(parts, i, j)
                        - covariance(parts, i, 0)
                        - covariance(parts, j, 0)
                        + covariance(parts, 0, 0);
            }
        }
        double[] solved = Cholesky.solve(v, d);
        double q = 0;
        for (int i = 0; i < d.length; i++) {
            q += d[i] * solved[i];
        }
        double freedom = Math.min(freedom(parts), MANY);
        return new Consistency(
                Math.sqrt(Math.max(0, q) / (n - 1)),
                Math.sqrt(FisherF.quantile(ResultBudget.COVERAGE, n - 1.0, freedom)));
    }

    private static double covariance(List<UncertaintyParts> parts, int i, int j) {
        UncertaintyParts one = parts.get(i);
        UncertaintyParts other = parts.get(j);
        double sum = i == j ? one.own() * one.own() : 0;
        for (Map.Entry<Common, Double> each : one.common().entrySet()) {
            sum += each.getValue() * other.common().getOrDefault(each.getKey(), 0.0);
        }
        return sum;
    }

    /** Degrees of freedom of the sum of what the results differ by. */
    private static double freedom(List<UncertaintyParts> parts) {
        int n = parts.size();
        Freedom freedom = new Freedom();
        double squares = 0;
        Set<Common> sources = new HashSet<>();
        for (UncertaintyParts each : parts) {
            squares += each.own() * each.own();
            freedom.add(each.scatter(), each.scatterFreedom());
            sources.addAll(each.common().keySet());
        }
        for (Common source : sources) {
            double sum = 0;
            double sumOfSquares = 0;
            for (UncertaintyParts each : parts) {
                double effect = each.common().getOrDefault(source, 0.0);
                sum += effect;
                sumOfSquares += effect * effect;
            }
            squares += Math.max(0, sumOfSquares - sum * sum / n) * n / (n - 1);
        }
        return freedom.of(Math.sqrt(squares));
    }
}
