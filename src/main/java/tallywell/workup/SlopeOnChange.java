package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.numeric.RandomEffectsLine;
import tallywell.numeric.Significance;
import tallywell.numeric.StudentT;

/**
 * Creep regressed on ΔA: a weighted line with a variance between groups of wells, since creep differs between samples by more
 * than it is uncertain.
 *
 * @param perMin slope: creep per min for each unit of ΔA
 * @param uPerMin its standard uncertainty
 * @param freedom degrees of freedom
 * @param groups on how many groups of replicates it rests
 * @param without the same with each group left out in turn; empty for one of these
 */
public record SlopeOnChange(double perMin, double uPerMin, int freedom, int groups, List<SlopeOnChange> without) {
    /** Two degrees of freedom are left where one group is left out. */
    private static final int FEWEST = 5;

    /** How many uncertainties of ΔA the groups must spread, so that errors shared by ΔA and creep make no slope. */
    private static final double SPREAD = 20;

    /** Keeps a copy that cannot change. */
    public SlopeOnChange {
        without = List.copyOf(without);
    }

    /**
     * A group of replicates.
     *
     * @param change mean ΔA
     * @param uChange its standard uncertainty, 0 where unknown
     * @param creepPerMin mean creep, positive where the signal goes the way it should
     * @param uCreepPerMin its standard uncertainty, 0 where unknown
     */
    record Point(double change, double uChange, double creepPerMin, double uCreepPerMin) {}

    /** The slope over groups; empty where there are fewer than five, or their ΔA hardly differs. */
    static Optional<SlopeOnChange> of(List<Point> points) {
        if (points.size() < FEWEST || !spreads(points)) {
            return Optional.empty();
        }
        List<SlopeOnChange> without = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            List<Point> rest = new ArrayList<>(points);
            rest.remove(i);
            if (!spreads(rest)) {
                // All would hang on this one group.
                return Optional.empty();
            }
            without.add(fitted(rest, List.of()));
        }
        return Optional.of(fitted(points, without));
    }

    private static boolean spreads(List<Point> points) {
        double mean = points.stream().mapToDouble(Point::change).average().orElse(0);
        double squares = points.stream()
                .mapToDouble(point -> (point.change() - mean) * (point.change() - mean))
                .sum();
        double own = points.stream()
                .mapToDouble(point -> point.uChange() * point.uChange())
                .sum();
        return squares > 0 && squares > SPREAD * SPREAD * own;
    }

    private static SlopeOnChange fitted(List<Point> points, List<SlopeOnChange> without) {
        RandomEffectsLine line = RandomEffectsLine.fit(
                points.stream().mapToDouble(Point::change).toArray(),
                points.stream().mapToDouble(Point::creepPerMin).toArray(),
                points.stream().mapToDouble(Point::uCreepPerMin).toArray());
        return new SlopeOnChange(line.slope(), line.uSlope(), line.degreesOfFreedom(), points.size(), without);
    }

    /**
     * Whether it differs from another slope, or from none, in Student's t test at 1 %, two-sided, with all groups and with each
     * of them left out: no single sample decides.
     */
    boolean differsFrom(Optional<SlopeOnChange> other) {
        return isBeyond(other) && without.stream().allMatch(each -> each.isBeyond(other) && sameWay(each, other));
    }

    private boolean sameWay(SlopeOnChange each, Optional<SlopeOnChange> other) {
        double from = other.map(SlopeOnChange::perMin).orElse(0.0);
        return (perMin - from) * (each.perMin() - from) > 0;
    }

    private boolean isBeyond(Optional<SlopeOnChange> other) {
        double off = Math.abs(perMin - other.map(SlopeOnChange::perMin).orElse(0.0));
        double uOther = other.map(SlopeOnChange::uPerMin).orElse(0.0);
        double u = Math.hypot(uPerMin, uOther);
        double own = Math.pow(uPerMin / u, 4) / freedom;
        double ofOther =
                other.isEmpty() ? 0 : Math.pow(uOther / u, 4) / other.get().freedom();
        // Welch and Satterthwaite.
        return u > 0 && off > u * StudentT.twoSided(1 - Significance.ONE_PERCENT.probability(), 1 / (own + ofOther));
    }
}
