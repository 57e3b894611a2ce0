package tallywell.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Flag;
import tallywell.workup.IndicatorLeft;
import tallywell.workup.ReadingAdvice;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Whether the reactions were over, the creep steady, the reader within its range, the indicator enough. */
final class ReactionObservations {
    private static final int MOST_NAMED = 8;

    private final StepAnalysis step;
    private final String of;

    ReactionObservations(StepAnalysis step, String of) {
        this.step = step;
        this.of = of;
    }

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        if (step.step().creep() == Creep.NONE) {
            checks.add(Observations.open("reactions were over" + of, "creep is not looked at", "method, creep"));
        } else {
            checks.add(traced("reactions were over", Flag.REACTION_INCOMPLETE));
            checks.add(traced("creep is constant", Flag.CREEP_NOT_CONSTANT));
            checks.add(drift());
        }
        checks.add(wells("traces break at the trigger", "no well", flagged(Flag.TRIGGER_ELSEWHERE), "trace"));
        checks.add(absorbance());
        checks.add(wells("no ceiling of the reader", "no well", flagged(Flag.READER_CEILING), "ends of the wells"));
        if (step.step().signal().direction() == Direction.FALLS) {
            checks.add(indicator());
        }
        return checks;
    }

    private List<WellResult> flagged(Flag flag) {
        return step.where(well -> well.flags().contains(flag));
    }

    /** Whether the wells drift together by what matters to any of them. */
    private Check drift() {
        String name = "wells do not drift together";
        OptionalDouble moves = step.driftOfDeltaA();
        if (moves.isEmpty()) {
            return Observations.open(name + of, "too few wells with traces", "trace");
        }
        int flagged =
                step.where(well -> well.flags().contains(Flag.PLATE_DRIFTS)).size();
        String found = moves.getAsDouble() == 0
                ? "nothing in common"
                : "in common, what may move ΔA by " + Numbers.fixed(moves.getAsDouble(), 4) + "; it matters to "
                        + (flagged == 0 ? "no well" : flagged + (flagged == 1 ? " well" : " wells"));
        return new Check(name + of, "nothing that matters to ΔA", found, Observations.state(flagged == 0), "trace");
    }

    /** What only a trace can show. Wells read once or twice after the trigger show nothing of it, and never pass. */
    private Check traced(String name, Flag flag) {
        List<WellResult> bad = step.where(well -> well.flags().contains(flag));
        List<WellResult> read = step.where(
                well -> well.used() && !well.trace().readings().after().isEmpty());
        long silent = read.stream().filter(ReactionObservations::isSilent).count();
        if (bad.isEmpty() && silent == read.size()) {
            return Observations.open(
                    name + of, "the readings after the trigger show nothing of it; " + wouldShow(), "trace");
        }
        Check check = wells(name, "no well", bad, "trace");
        return silent == 0
                ? check
                : new Check(
                        check.name(),
                        check.limit(),
                        check.found() + "; " + silent + " of " + read.size()
                                + " wells were read too few times to show it; " + wouldShow(),
                        check.state(),
                        check.source());
    }

    /** Number and spacing of readings that would do, by the law that judges the wells and the plate's own scatter. */
    private String wouldShow() {
        ReadingAdvice advice = ReadingAdvice.of(step);
        String at = " at a scatter of " + Numbers.fixed(1000 * advice.scatter(), 1) + " mA"
                + (advice.ofPlate() ? "" : ", which the plate does not show,") + " and ΔA of "
                + Numbers.rounded(advice.change(), 2) + " or more";
        return advice.words()
                .map(words -> words + ", the first " + Numbers.rounded(advice.firstS() / 60, 2)
                        + " min after the trigger, would" + at)
                .orElse("no few readings would" + at + ": follow the reaction, or dilute less");
    }

    private static boolean isSilent(WellResult well) {
        return well.flags().contains(Flag.CREEP_NOT_MEASURED) || well.flags().contains(Flag.CREEP_NOT_TESTED);
    }

    private Check absorbance() {
        OptionalDouble most = step.step().limits().absorbanceMost();
        String name = "readings within the range of the reader";
        if (most.isEmpty()) {
            List<WellResult> over = step.where(well -> well.flags().contains(Flag.OVER_RANGE));
            return over.isEmpty()
                    ? Observations.open(name + of, "no reading marked as over range", "no absorbance in the method")
                    : wells(name, "no reading over range", over, "reader");
        }
        return wells(
                name,
                "at most " + Numbers.plain(most.getAsDouble()),
                step.where(well -> well.flags().contains(Flag.ABSORBANCE_HIGH)
                        || well.flags().contains(Flag.OVER_RANGE)),
                "method, absorbance");
    }

    private Check indicator() {
        Optional<IndicatorLeft> lowest = step.wells().stream()
                .filter(WellResult::used)
                .map(well -> step.indicator().get(well.well()))
                .filter(Objects::nonNull)
                .min(Comparator.comparingDouble(IndicatorLeft::left));
        if (lowest.isEmpty()) {
            return Observations.open("indicator left after the reaction" + of, "no reading", "trace");
        }
        List<WellResult> low = step.where(well -> well.used() && well.flags().contains(Flag.INDICATOR_LOW));
        String found = "least absorbance of indicator left "
                + Numbers.fixed(lowest.get().left(), 3)
                + " (plate and reagents " + Numbers.fixed(lowest.get().background(), 3) + ", "
                + lowest.get().backgroundFrom().text() + ")";
        Check check = wells(
                "indicator left after the reaction",
                "at least " + Numbers.plain(lowest.get().least()),
                low,
                "");
        return new Check(
                check.name(),
                check.limit(),
                low.isEmpty() ? found : found + "; " + check.found(),
                check.state(),
                step.step().limits().batch().indicatorLeft().isPresent() ? "method, indicator-left" : "own choice");
    }

    private Check wells(String name, String limit, List<WellResult> bad, String source) {
        String found = bad.isEmpty()
                ? "no well"
                : bad.size()
                        + (bad.size() == 1 ? " well: " : " wells: ")
                        + bad.stream()
                                .limit(MOST_NAMED)
                                .map(WellResult::well)
                                .map(Well::toString)
                                .collect(Collectors.joining(", "))
                        + (bad.size() > MOST_NAMED ? ", …" : "");
        return new Check(name + of, limit, found, Observations.state(bad.isEmpty()), source);
    }
}
