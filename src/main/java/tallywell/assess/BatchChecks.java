package tallywell.assess;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tallywell.curve.Calibration;
import tallywell.method.AssayMethod;
import tallywell.method.BatchLimits;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.Step;
import tallywell.plate.Content;
import tallywell.quantity.Numbers;
import tallywell.workup.BlankMean;
import tallywell.workup.Flag;
import tallywell.workup.Scale;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** The criteria that a method can set for the spread of its blanks and for its standards. */
final class BatchChecks {
    private static final int DIGITS = 4;
    private static final double PERCENT = 100;

    private final AssayMethod method;
    private final StepAnalysis step;
    private final BatchLimits limits;
    private final String of;

    /**
     * The criteria of a step.
     *
     * @param of comma and name of the analyte where there are several, else empty
     */
    BatchChecks(AssayMethod method, StepAnalysis step, String of) {
        this.method = method;
        this.step = step;
        this.limits = step.step().limits().batch();
        this.of = of;
    }

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        for (BlankMean blank : step.blanks().values()) {
            checks.add(spread(blank));
        }
        if (step.step().calibration() instanceof CalibrationRule.ByAbsorptivity
                || step.calibration().isEmpty()) {
            return checks;
        }
        Calibration calibration = step.calibration().get();
        if (step.step().calibration() instanceof CalibrationRule.ByStandards) {
            checks.add(standards(calibration));
            checks.add(order(calibration));
        }
        if (step.step().signal().direction() == Direction.FALLS) {
            checks.add(standardsWithout(
                    Flag.INDICATOR_LOW, "indicator left in the standards", "no standard in which it may have run out"));
        }
        checks.add(standardsWithout(
                Flag.READER_CEILING, "standards within the range of the reader", "no standard at its ceiling"));
        if (step.step().creep() != Creep.NONE) {
            checks.add(over());
        }
        checks.add(slope(calibration));
        return checks;
    }

    private Check spread(BlankMean blank) {
        String name = "spread of the blanks" + of + (blank.group().isEmpty() ? "" : ", group " + blank.group());
        if (blank.sd().isEmpty()) {
            return new Check(name, "", "one blank only", Check.State.NOT_ASSESSED, "layout");
        }
        double sd = blank.sd().getAsDouble();
        String found =
                "SD of ΔA " + Numbers.fixed(sd, DIGITS) + " of " + blank.wells().size() + " wells";
        if (limits.blankSdMost().isEmpty()) {
            return new Check(name, "", found, Check.State.NOT_ASSESSED, "no blank-sd in the method");
        }
        double most = limits.blankSdMost().getAsDouble();
        return new Check(
                name, "at most " + Numbers.rounded(most, DIGITS), found, state(sd <= most), "method, blank-sd");
    }

    /** A level at which no standard was over leaves the curve where nobody knows. */
    private Check over() {
        Map<Content, List<WellResult>> levels = new LinkedHashMap<>();
        step.where(well -> step.calibrationWells().contains(well.well()))
                .forEach(well -> levels.computeIfAbsent(well.content(), key -> new ArrayList<>())
                        .add(well));
        List<String> bad = levels.values().stream()
                .filter(level -> level.stream().allMatch(well -> well.flags().contains(Flag.REACTION_INCOMPLETE)))
                .flatMap(List::stream)
                .map(well -> well.well().toString())
                .toList();
        return new Check(
                "reactions of the standards were over" + of,
                "no level of which no well was",
                bad.isEmpty() ? "none" : String.join(", ", bad),
                state(bad.isEmpty()),
                "trace");
    }

    /** A standard that reads too little bends the calibration of every sample. */
    private Check standardsWithout(Flag fault, String name, String limit) {
        List<String> low =
                step
                        .where(well -> step.calibrationWells().contains(well.well())
                                && well.flags().contains(fault))
                        .stream()
                        .map(well -> well.well().toString())
                        .toList();
        return new Check(
                name + of, limit, low.isEmpty() ? "none" : String.join(", ", low), state(low.isEmpty()), "trace");
    }

    /** A level all of whose wells read more than those of a higher one was swapped or made wrong, whatever the curve. */
    private Check order(Calibration calibration) {
        TreeMap<Double, DoubleSummaryStatistics> levels = new TreeMap<>();
        calibration
                .standards()
                .forEach(each -> levels.computeIfAbsent(each.level(), key -> new DoubleSummaryStatistics())
                        .accept(each.response()));
        List<String> wrong = new ArrayList<>();
        levels.forEach((low, below) -> levels.tailMap(low, false).forEach((high, above) -> {
            if (below.getMin() > above.getMax()) {
                wrong.add(Numbers.plain(low) + " above " + Numbers.plain(high) + " g/L");
            }
        }));
        return new Check(
                "standards in the order of their levels" + of,
                "no level whose wells all read more than those of a higher one",
                wrong.isEmpty() ? "none" : String.join(", ", wrong),
                state(wrong.isEmpty()),
                "net ΔA");
    }

    private Check standards(Calibration calibration) {
        String name = "standards calculated back" + of;
        double[] recoveries = calibration.standards().stream()
                .map(calibration::recovery)
                .flatMapToDouble(OptionalDouble::stream)
                .map(each -> PERCENT * each)
                .toArray();
        long expected = calibration.standards().stream()
                .filter(each -> each.level() > 0)
                .count();
        if (recoveries.length == 0) {
            return new Check(name, "", "no level above 0", Check.State.NOT_ASSESSED, "layout");
        }
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double each : recoveries) {
            least = Math.min(least, each);
            most = Math.max(most, each);
        }
        String found = Numbers.fixed(least, 1) + " to " + Numbers.fixed(most, 1) + " % of their levels";
        Recoveries.Range range = new Recoveries.Range(
                percent(limits.standardLeast()), percent(limits.standardMost()), "method, standard-recovery");
        if (range.isOpen()) {
            return new Check(name, "", found, Check.State.NOT_ASSESSED, "no standard-recovery in the method");
        }
        boolean passes = recoveries.length == expected && range.holds(least) && range.holds(most);
        return new Check(name, range.words(), found, state(passes), range.source());
    }

    private Check slope(Calibration calibration) {
        String name = "slope of the calibration against the absorptivity" + of;
        Optional<String> missing = missing();
        if (missing.isPresent()) {
            return new Check(name, "", "no " + missing.get() + " in the method", Check.State.NOT_ASSESSED, "method");
        }
        double expected = 1
                / new Scale(method, step)
                        .perNetDeltaA(step.where(well -> well.trace().sample().isEmpty())
                                .get(0));
        double slope = calibration.curve().slopeAt(calibration.lowest());
        if (!(Math.abs(slope) <= Double.MAX_VALUE)) {
            return new Check(name, "", "no slope at the lowest level", Check.State.NOT_ASSESSED, "calibration");
        }
        double percent = PERCENT * slope / expected;
        String found = Numbers.fixed(percent, 1) + " % (net ΔA " + Numbers.rounded(slope, DIGITS)
                + " for 1 g/L, expected " + Numbers.rounded(expected, DIGITS) + ")";
        Recoveries.Range range =
                new Recoveries.Range(percent(limits.slopeLeast()), percent(limits.slopeMost()), "method, slope");
        if (range.isOpen()) {
            return new Check(name, "", found, Check.State.NOT_ASSESSED, "no slope in the method");
        }
        return new Check(name, range.words(), found, state(range.holds(percent)), range.source());
    }

    private Optional<String> missing() {
        Step rules = step.step();
        if (rules.signal().absorptivity().isEmpty()) {
            return Optional.of("absorptivity");
        }
        if (method.lightPath().isEmpty()) {
            return Optional.of("light-path");
        }
        if (rules.volumes().isEmpty()) {
            return Optional.of("volumes");
        }
        return rules.analyte().molarMass().isEmpty() ? Optional.of("molar mass") : Optional.empty();
    }

    private static OptionalDouble percent(OptionalDouble fraction) {
        return fraction.isPresent() ? OptionalDouble.of(PERCENT * fraction.getAsDouble()) : fraction;
    }

    private static Check.State state(boolean passes) {
        return passes ? Check.State.PASSED : Check.State.FAILED;
    }
}
