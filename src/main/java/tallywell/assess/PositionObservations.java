package tallywell.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Whether the place on the plate matters: rows, columns, the edge, the well before. */
final class PositionObservations {
    private static final int DIGITS = 2;
    private static final double LEAST_MILLI = 0.001;

    private final Optional<Repeatability> scatter;
    private final String of;
    private final List<WellResult> wells;
    private final Map<Well, WellResult> byWell;
    private final int rows;
    private final int columns;

    PositionObservations(StepAnalysis step, Optional<Repeatability> scatter, String of) {
        this.scatter = scatter;
        this.of = of;
        this.wells = step.where(well -> well.used() && well.deltaA().isPresent());
        this.byWell = step.wells().stream().collect(Collectors.toMap(WellResult::well, Function.identity()));
        this.rows = 1
                + step.wells().stream()
                        .mapToInt(each -> each.well().row())
                        .max()
                        .orElse(0);
        this.columns = 1
                + step.wells().stream()
                        .mapToInt(each -> each.well().column())
                        .max()
                        .orElse(0);
    }

    List<Check> all() {
        List<WellResult> blanks = wells.stream()
                .filter(well -> well.content() instanceof Content.Blank blank && blank.triggered())
                .toList();
        List<Check> checks = new ArrayList<>();
        checks.add(check(
                "no trend of the blanks over the columns",
                blanks,
                well -> well.well().column(),
                "column"));
        checks.add(check("no trend over the rows", wells, well -> well.well().row(), "row"));
        checks.add(check("no trend over the columns", wells, well -> well.well().column(), "column"));
        checks.add(check("edge like the middle", wells, this::edge, "edge well"));
        // Tips of a multichannel pipette go from left to right along a row.
        checks.add(carryOver());
        return checks;
    }

    private double edge(WellResult well) {
        int row = well.well().row();
        int column = well.well().column();
        return row == 0 || column == 0 || row == rows - 1 || column == columns - 1 ? 1 : 0;
    }

    private Check check(String name, List<WellResult> among, ToDoubleFunction<WellResult> covariate, String unit) {
        Optional<Trend> trend = scatter.flatMap(each -> Trend.of(among, each, covariate));
        String source = "t test within replicates, two-sided, 1 %";
        if (trend.isEmpty()) {
            return Observations.open(name + of, "too few replicates in different places", source);
        }
        return new Check(
                name + of,
                "no clear trend",
                found(trend.get(), unit),
                Observations.state(!trend.get().isClear()),
                source);
    }

    private Check carryOver() {
        String name = "no carry-over from the well to the left" + of;
        String source = "t test within replicates, one-sided, 1 %";
        List<WellResult> behind =
                wells.stream().filter(well -> before(well).isPresent()).toList();
        Optional<Trend> trend = scatter.flatMap(each -> Trend.of(
                behind,
                each,
                well -> before(well).flatMap(PositionObservations::net).orElse(0.0)));
        if (trend.isEmpty()) {
            return Observations.open(name, "too few replicates behind different wells", source);
        }
        boolean suspected = trend.get().t() > 0 && trend.get().probability() / 2 < Trend.SIGNIFICANCE;
        return new Check(
                name,
                "no clear part of the net ΔA of the well before",
                Numbers.rounded(100 * trend.get().slope(), DIGITS) + " % of it",
                Observations.state(!suspected),
                source);
    }

    private Optional<WellResult> before(WellResult well) {
        return well.well().column() == 0
                ? Optional.empty()
                : Optional.ofNullable(byWell.get(
                                new Well(well.well().row(), well.well().column() - 1)))
                        .filter(each -> net(each).isPresent());
    }

    private static Optional<Double> net(WellResult well) {
        return well.netDeltaA().isPresent() ? Optional.of(well.netDeltaA().getAsDouble()) : Optional.empty();
    }

    private static String found(Trend trend, String unit) {
        double milli = 1000 * trend.slope();
        // Readings have four decimals: what is far below is the rest of a subtraction.
        String size = Math.abs(milli) < LEAST_MILLI ? "less than 0.001" : Numbers.rounded(milli, DIGITS);
        return size + " mA for each " + unit + ", p "
                + (trend.probability() < 0.0001 ? "below 0.0001" : Numbers.rounded(trend.probability(), DIGITS));
    }
}
