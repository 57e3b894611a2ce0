package tallywell.workup;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Direction;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.trace.CommonDrift;

/** Works one plate up: a pure function from what was read to what it came to. */
public final class Workup {
    /** A ΔA this far on the wrong side is no noise of a reader (a few mA, common practice, no source). */
    private static final double WRONG_WAY = -0.005;

    /** Works a plate up. */
    public Analysis analyse(Assay assay) throws InputException {
        Preconditions.check(assay);
        FinishedChoices.check(assay);
        List<StepAnalysis> steps = steps(assay);
        List<Result> results = results(assay, steps);
        Optional<Whole> put = assay.exclusions().isEmpty() ? Optional.empty() : Optional.of(Whole.of(assay));
        List<Result> all = put.map(whole -> whole.with(results)).orElse(results);
        Halves halves = new Halves(assay, steps);
        List<Half> counting = assay.method().differences().isEmpty()
                ? List.of()
                : all.stream()
                        .map(halves::of)
                        .map(half -> put.map(whole -> whole.with(half)).orElse(half))
                        .toList();
        return new Analysis(assay, steps, all, new Differences(assay).of(counting), Preconditions.remarks(assay));
    }

    private static List<StepAnalysis> steps(Assay assay) throws InputException {
        Traces traces = new Traces(assay, new Timeline(assay));
        List<StepAnalysis> steps = new ArrayList<>();
        for (int i = 0; i < assay.method().steps().size(); i++) {
            steps.add(step(assay, i, traces.of(i), steps));
        }
        return steps;
    }

    private static StepAnalysis step(Assay assay, int index, List<WellTrace> alone, List<StepAnalysis> earlier)
            throws InputException {
        Optional<CommonDrift> drift = PlateDrift.of(alone);
        Step step = assay.method().steps().get(index);
        Map<Well, IndicatorLeft> left = Indicator.of(assay.method(), index, alone, earlier);
        List<WellTrace> traces = Indicator.marked(step, PlateDrift.marked(alone, drift), left);
        Optional<CreepSlope> creep = CreepSlope.of(step, alone);
        traces = TriggerBreak.marked(
                CreepSlope.marked(traces, creep), step.signal().direction());
        traces = ReaderCeiling.marked(traces);
        refuseSwapped(assay, step, traces);
        Map<String, BlankMean> blanks = Blanks.of(assay, step, traces);
        NetChanges net = new NetChanges(traces, blanks);
        CalibrationStage.Made made = CalibrationStage.of(assay, step, traces, net);
        List<WellResult> wells = new Values(assay.method(), step, made.calibration()).of(traces, net);
        return new StepAnalysis(index + 1, step, blanks, made.calibration(), made.wells(), wells, left, drift, creep);
    }

    /** A plate on which most wells go the wrong way was almost surely read in another order than the run says. */
    private static void refuseSwapped(Assay assay, Step step, List<WellTrace> traces) throws InputException {
        List<WellTrace> telling = traces.stream()
                .filter(trace -> !(trace.content() instanceof Content.Blank)
                        && !(trace.content() instanceof Content.SampleBlank)
                        && trace.deltaA().isPresent())
                .toList();
        long wrong = telling.stream()
                .filter(trace -> trace.deltaA().orElseThrow() < WRONG_WAY)
                .count();
        if (2 * wrong <= telling.size()) {
            return;
        }
        double mean = Means.mean(telling.stream()
                .mapToDouble(trace -> trace.deltaA().orElseThrow())
                .toArray());
        boolean rises = step.signal().direction() == Direction.RISES;
        throw new InputException(
                assay.place(),
                "found " + wrong + " of " + telling.size() + " wells with a negative ΔA in the step '"
                        + step.analyte().name() + "' (mean " + Numbers.fixed(mean, 3) + "): the absorbance "
                        + (rises ? "falls" : "rises") + " where the method says it " + (rises ? "rises" : "falls")
                        + "; the readings before and after the trigger are probably swapped: expected them in the order they were taken, found ("
                        + String.join(
                                ", ", assay.readings().stream().map(Taken::name).toList())
                        + "), or 'direction: " + (rises ? "falls" : "rises") + "' in the method");
    }

    private static List<Result> results(Assay assay, List<StepAnalysis> steps) {
        List<Result> samples = new ArrayList<>();
        List<Result> controls = new ArrayList<>();
        List<Result> spikes = new ArrayList<>();
        for (StepAnalysis step : steps) {
            Results results = new Results(step, assay.layout());
            samples.addAll(results.samples());
            controls.addAll(results.controls());
            spikes.addAll(results.spikes());
        }
        List<Result> all = new ArrayList<>(bySlot(samples));
        all.addAll(controls);
        all.addAll(spikes);
        return all;
    }

    private static List<Result> bySlot(List<Result> samples) {
        return samples.stream()
                .sorted(java.util.Comparator.comparingInt(
                                (Result result) -> result.slot().orElse(0))
                        .thenComparingInt(Result::step))
                .toList();
    }

    /**
     * What everything would be with excluded wells put back.
     *
     * @param values by key of the result; empty if the plate cannot be worked up with those wells
     * @param counting the same of halves of differences
     */
    private record Whole(Map<String, OptionalDouble> values, Map<String, OptionalDouble> counting) {
        static Whole of(Assay assay) {
            Map<String, OptionalDouble> values = new HashMap<>();
            Map<String, OptionalDouble> counting = new HashMap<>();
            Assay whole = assay.withoutExclusions();
            try {
                Preconditions.check(whole);
                List<StepAnalysis> steps = steps(whole);
                Halves halves = new Halves(whole, steps);
                for (Result each : results(whole, steps)) {
                    values.put(each.key(), each.value());
                    counting.put(each.key(), halves.of(each).counted().value());
                }
            } catch (InputException e) {
                // With the excluded wells the plate cannot be worked up at all: then there is no such value.
                values.clear();
                counting.clear();
            }
            return new Whole(values, counting);
        }

        List<Result> with(List<Result> results) {
            return results.stream()
                    .map(each -> each.withValueAll(values.getOrDefault(each.key(), OptionalDouble.empty())))
                    .toList();
        }

        Half with(Half half) {
            Result counted = half.counted();
            OptionalDouble all = counting.getOrDefault(counted.key(), OptionalDouble.empty());
            return new Half(half.reported(), counted.withValueAll(all), half.below(), half.wells());
        }
    }
}
