package tallywell.desk;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.assess.Assessment;
import tallywell.assess.Judgement;
import tallywell.curve.Calibration;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Kind;
import tallywell.statement.Bounds;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** The numbers that the wells of a plate show, for one step of a method, as numbers and as text. */
final class WellNumbers {
    static final double MILLI = 1000;
    private static final int DIGITS = 3;

    private final Shown shown;
    private final Map<Well, WellResult> results = new HashMap<>();
    private final Map<Well, Double> differences = new HashMap<>();
    private final Map<Well, String> bounds = new HashMap<>();
    private Optional<Calibration> calibration = Optional.empty();
    private String unit = "";

    /** No numbers yet. */
    WellNumbers(Shown shown) {
        this.shown = shown;
    }

    /** The numbers of a step. */
    WellNumbers(Worked worked, StepAnalysis step, Shown shown) {
        this(shown);
        unit = step.step().report().unit().symbol();
        calibration = step.calibration();
        step.wells().forEach(well -> results.put(well.well(), well));
        differences.putAll(FromReplicates.of(step));
        if (worked.analysis().isPresent() && worked.assessment().isPresent()) {
            collectBounds(worked.analysis().get(), worked.assessment().get(), step.number());
        }
    }

    /** What can be said of wells beyond the standards, as the table of results says it. */
    private void collectBounds(Analysis analysis, Assessment assessment, int step) {
        for (Judgement each : assessment.judgements()) {
            if (each.result().step() == step && each.result().value().isEmpty()) {
                String words = shown.marked(Bounds.words(analysis, each.result()));
                each.result().wells().stream()
                        .flatMap(well -> of(well).stream())
                        .filter(well -> well.flags().stream().anyMatch(WellNumbers::isBeyond))
                        .forEach(well -> bounds.put(well.well(), words));
            }
        }
    }

    /** Whether a flag says that a well is beyond the standards. */
    static boolean isBeyond(Flag flag) {
        return flag == Flag.ABOVE_STANDARDS || flag == Flag.BELOW_STANDARDS;
    }

    Collection<WellResult> results() {
        return results.values();
    }

    Optional<WellResult> of(Well well) {
        return Optional.ofNullable(results.get(well));
    }

    String unit(PlateShow show) {
        return switch (show) {
            case CREEP -> " mA/min";
            case REPLICATES -> " mA apart";
            case CONCENTRATION -> " " + unit + " in the original sample";
            default -> "";
        };
    }

    /** What a well shows; empty if nothing. */
    String value(PlateShow show, Well well) {
        if (show == PlateShow.REPLICATES) {
            Double difference = differences.get(well);
            if (difference == null) {
                return "";
            }
            String text = shown.fixed(MILLI * difference, 1);
            return difference > 0 ? "+" + text : text.replace('-', '−');
        }
        OptionalDouble raw = raw(show, well);
        String otherwise = show == PlateShow.CONCENTRATION ? bounds.getOrDefault(well, "") : "";
        return raw.isPresent() ? text(show, raw.getAsDouble()) : otherwise;
    }

    String text(PlateShow show, double value) {
        return switch (show) {
            case CREEP, REPLICATES -> shown.fixed(value, 1).replace('-', '−');
            case CONCENTRATION -> value == 0 ? "0" : shown.rounded(value, DIGITS);
            default -> shown.fixed(value, 3).replace('-', '−');
        };
    }

    /** What the ground of a well stands for; a difference by its size. */
    OptionalDouble size(PlateShow show, Well well) {
        if (show == PlateShow.REPLICATES) {
            Double difference = differences.get(well);
            return difference == null ? OptionalDouble.empty() : OptionalDouble.of(Math.abs(MILLI * difference));
        }
        return raw(show, well);
    }

    private OptionalDouble raw(PlateShow show, Well well) {
        WellResult result = results.get(well);
        if (result == null) {
            return OptionalDouble.empty();
        }
        return switch (show) {
            case BEFORE -> result.trace().before();
            case AFTER -> result.trace().after();
            case DELTA_A -> result.deltaA();
            case CREEP ->
                result.trace().creepPerMin().isPresent()
                        ? OptionalDouble.of(MILLI * result.trace().creepPerMin().getAsDouble())
                        : OptionalDouble.empty();
            case CONCENTRATION -> concentration(result);
            default -> OptionalDouble.empty();
        };
    }

    /** Standards are calculated back, also where scatter puts one a little beyond the range that they make themselves. */
    OptionalDouble concentration(WellResult result) {
        boolean isBack = result.value().isEmpty()
                && result.content() instanceof Content.Standard
                && result.netDeltaA().isPresent()
                && result.unit().kind() == Kind.CONCENTRATION
                && calibration.isPresent();
        if (!isBack) {
            return result.value();
        }
        OptionalDouble level =
                calibration.get().curve().levelOf(result.netDeltaA().getAsDouble());
        return level.isPresent()
                ? OptionalDouble.of(level.getAsDouble() / result.unit().factor())
                : level;
    }
}
