package tallywell.workup;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import tallywell.method.AssayMethod;
import tallywell.method.Creep;
import tallywell.method.CreepOwner;
import tallywell.method.Run;
import tallywell.method.Sample;
import tallywell.method.SignalFormula;
import tallywell.method.Step;
import tallywell.method.TriggerDilution;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.trace.AfterRule;
import tallywell.trace.Baseline;
import tallywell.trace.BeforeRule;
import tallywell.trace.Change;
import tallywell.trace.DeltaA;
import tallywell.trace.ReadingScatter;
import tallywell.trace.Series;
import tallywell.trace.TraceFlag;

/** From readings to the ΔA of every well in use, step after step. */
final class Traces {
    /** The last reading before the next trigger. */
    private static final AfterRule SETTLED = new AfterRule.None(OptionalDouble.empty());

    private final Assay assay;
    private final Timeline timeline;
    private final PlateScatter scatter;
    private final Map<Well, WellPath> paths;
    /** How readings of the plate scatter in the step that is being worked. */
    private Optional<ReadingScatter> plate = Optional.empty();
    /** Each well sets and asks its own only, from whatever thread fits it. */
    private final Map<Well, Baseline.Given> carried = new ConcurrentHashMap<>();

    Traces(Assay assay, Timeline timeline) {
        this(assay, timeline, new PlateScatter(assay, timeline));
    }

    /**
     * The same for some wells of a plate.
     *
     * @param scatter how readings of the whole plate scatter
     */
    Traces(Assay assay, Timeline timeline, PlateScatter scatter) {
        this.scatter = scatter;
        this.assay = assay;
        this.timeline = timeline;
        this.paths = assay.path().map(each -> each.paths(assay)).orElse(Map.of());
    }

    /** The wells of the next step in row order; steps must be asked for one after the other. */
    List<WellTrace> of(int step) {
        List<Well> wells = new ArrayList<>();
        for (Well well : assay.layout().format().all()) {
            if (assay.uses(well)) {
                wells.add(well);
            }
        }
        // Wells know nothing of each other, so that traces, which take time, may be fitted side by side.
        boolean fits = assay.method().steps().get(step).creep() != Creep.NONE;
        Stream<Well> stream = fits ? wells.parallelStream() : wells.stream();
        plate = fits ? scatter.of(step) : Optional.empty();
        return stream.map(well -> trace(well, assay.layout().at(well), step)).toList();
    }

    /** The slot a well takes its sample from; 0 if none. */
    static int slotOf(Content content) {
        if (content instanceof Content.Sample sample) {
            return sample.slot();
        }
        if (content instanceof Content.SampleBlank blank) {
            return blank.of();
        }
        return content instanceof Content.Spike spike ? spike.of() : 0;
    }

    private WellTrace trace(Well well, Content content, int step) {
        Optional<Sample> sample = slotOf(content) > 0 ? assay.samples().in(slotOf(content)) : Optional.empty();
        String group = content.group().isEmpty() ? sample.map(Sample::group).orElse("") : content.group();
        Step rules = assay.method().steps().get(step);
        int trigger = firstTrigger(step);
        boolean coupled = rules.signalFormula() == SignalFormula.EQUILIBRIUM_COUPLED;
        WellReadings readings = coupled ? coupled(well, trigger) : timeline.of(well, trigger);
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        boolean used = !assay.exclusions().containsKey(well);
        if (!used) {
            flags.add(Flag.EXCLUDED);
        }
        double factor = beforeFactor(rules);
        Optional<Change> change = coupled
                ? equilibrium(well, step, rules, readings, timeline.of(well, trigger), flags)
                : change(well, step, rules, readings, factor, flags);
        change.ifPresent(each -> each.flags().forEach(flag -> flags.add(of(flag))));
        carry(well, rules, readings, change);
        if (change.isPresent() && isCreepInQuestion(step, readings, change.get())) {
            flags.add(Flag.CREEP_BELONGS);
        }
        OptionalDouble deltaA = change.isPresent()
                ? OptionalDouble.of(
                        rules.signal().direction().sign() * change.get().deltaA())
                : OptionalDouble.empty();
        Optional<WellPath> path = Optional.ofNullable(paths.get(well));
        if (assay.path().isPresent()) {
            deltaA = ofCommonPath(deltaA, path, flags);
        }
        if (isAbsorbanceHigh(rules, readings, change)) {
            flags.add(Flag.ABSORBANCE_HIGH);
        }
        return new WellTrace(well, content, sample, group, used, readings, change, factor, deltaA, path, flags);
    }

    /** Without a measured path there is no ΔA that could be compared with those of other wells. */
    private OptionalDouble ofCommonPath(OptionalDouble deltaA, Optional<WellPath> path, Set<Flag> flags) {
        if (path.isEmpty()) {
            flags.add(Flag.READINGS_MISSING);
            return OptionalDouble.empty();
        }
        if (MeasuredPath.isDoubtful(assay.method(), path.get().cm())) {
            flags.add(Flag.PATH_DOUBTFUL);
        }
        return deltaA.isPresent()
                ? OptionalDouble.of(deltaA.getAsDouble() * path.get().scale())
                : deltaA;
    }

    private int firstTrigger(int step) {
        return firstTrigger(assay, step);
    }

    /** The trigger that a step is followed from, the last of its own. */
    static int lastTrigger(Assay assay, int step) {
        int triggers = assay.method().steps().get(step).signalFormula().triggers();
        return firstTrigger(assay, step) + triggers - 1;
    }

    private static int firstTrigger(Assay assay, int step) {
        return assay.method().steps().subList(0, step).stream()
                .mapToInt(each -> each.signalFormula().triggers())
                .sum();
    }

    /** The readings of a step with two triggers: before both, between them, after both. */
    private WellReadings coupled(Well well, int trigger) {
        WellReadings first = timeline.of(well, trigger);
        WellReadings second = timeline.of(well, trigger + 1);
        return new WellReadings(
                first.baseline(),
                first.after(),
                second.after(),
                second.nextTriggerS(),
                first.baselineOver() + first.afterOver().size(),
                first.baselineMissing() + first.afterMissing().size(),
                second.afterOver(),
                second.afterMissing());
    }

    /** Three readings: A0 is the baseline, A1 the last reading before the trigger of the analyte, A2 by the step's rule. */
    private Optional<Change> equilibrium(
            Well well, int step, Step rules, WellReadings readings, WellReadings first, Set<Flag> flags) {
        Optional<Change> settled = change(well, step, rules, first, 1, EnumSet.noneOf(Flag.class), SETTLED);
        if (settled.isEmpty()) {
            flags.add(readings.baselineOver() > 0 ? Flag.OVER_RANGE : Flag.READINGS_MISSING);
            return Optional.empty();
        }
        carried.put(well, EquilibriumFormula.between(settled.get()));
        // From here on the second trigger is like any trigger whose baseline is known.
        Optional<Change> used = change(well, 1, rules, readings, 1, flags, afterRule(well, rules));
        carried.remove(well);
        if (used.isEmpty()) {
            return used;
        }
        Optional<Change> change = EquilibriumFormula.of(
                settled.get(),
                used.get(),
                rules.signal().direction().sign(),
                rules.reactantAbsorbances(assay.method().lightPath()));
        if (change.isEmpty()) {
            flags.add(Flag.EQUILIBRIUM_LOST);
        }
        return change;
    }

    private double beforeFactor(Step rules) {
        return assay.method().triggerDilution() == TriggerDilution.CORRECT
                ? rules.volumes()
                        .map(v -> v.beforeTriggerUl() / v.afterTriggerUl())
                        .orElse(1.0)
                : 1;
    }

    private Optional<Change> change(
            Well well, int step, Step rules, WellReadings readings, double factor, Set<Flag> flags) {
        return change(well, step, rules, readings, factor, flags, afterRule(well, rules));
    }

    private Optional<Change> change(
            Well well,
            int step,
            Step rules,
            WellReadings readings,
            double factor,
            Set<Flag> flags,
            AfterRule afterRule) {
        Optional<Baseline> baseline = baseline(well, step, readings, factor, flags);
        boolean complete = !readings.after().isEmpty() && !isPlannedReadingLost(rules, readings);
        if (!complete) {
            flags.add(readings.afterOver().isEmpty() ? Flag.READINGS_MISSING : Flag.OVER_RANGE);
        }
        if (baseline.isEmpty() || !complete) {
            return Optional.empty();
        }
        return Optional.of(DeltaA.of(baseline.get(), after(readings), afterRule, plate.orElse(null)));
    }

    private Optional<Baseline> baseline(Well well, int step, WellReadings readings, double factor, Set<Flag> flags) {
        if (step > 0) {
            Baseline.Given given = carried.get(well);
            if (given == null) {
                flags.add(Flag.READINGS_MISSING);
                return Optional.empty();
            }
            return Optional.of(new Baseline.Given(given.value() * factor, given.standardUncertainty() * factor));
        }
        if (readings.baselineOver() > 0) {
            flags.add(Flag.OVER_RANGE);
            return Optional.empty();
        }
        if (readings.baselineMissing() > 0) {
            flags.add(Flag.READINGS_MISSING);
        }
        if (readings.baseline().isEmpty()) {
            return Optional.empty();
        }
        double[] values = readings.baseline().stream()
                .mapToDouble(point -> point.absorbance() * factor)
                .toArray();
        boolean timed = readings.baseline().stream().allMatch(WellReadings.Point::timed);
        Series series = timed
                ? Series.of(
                        readings.baseline().stream()
                                .mapToDouble(WellReadings.Point::timeS)
                                .toArray(),
                        values)
                : Series.untimed(values);
        return Optional.of(new Baseline.Read(series, beforeRule(assay.method())));
    }

    /** In {@code creep: none} one planned reading counts; where that one was lost, a neighbour must not stand in for it. */
    private static boolean isPlannedReadingLost(Step rules, WellReadings readings) {
        if (rules.creep() != Creep.NONE || readings.after().isEmpty()) {
            return false;
        }
        double planned = rules.timing().afterS().orElse(Double.MAX_VALUE);
        double nearest = readings.after().stream()
                .mapToDouble(point -> Math.abs(point.timeS() - planned))
                .min()
                .orElse(0);
        return List.of(readings.afterOver(), readings.afterMissing()).stream()
                .flatMap(List::stream)
                .anyMatch(time -> Math.abs(time - planned) < nearest);
    }

    /** The readings after the trigger. */
    static Series after(WellReadings readings) {
        double[] values = readings.after().stream()
                .mapToDouble(WellReadings.Point::absorbance)
                .toArray();
        Series series = readings.isTimed()
                ? Series.of(
                        readings.after().stream()
                                .mapToDouble(WellReadings.Point::timeS)
                                .toArray(),
                        values)
                : Series.untimed(values);
        return series.withOver(doubles(readings.afterOver())).withMissing(doubles(readings.afterMissing()));
    }

    private static double[] doubles(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private AfterRule afterRule(Well well, Step rules) {
        Run.FinishedFrom choice = assay.finishedFrom().get(well);
        OptionalDouble chosen = choice == null ? OptionalDouble.empty() : OptionalDouble.of(choice.timeS());
        return switch (rules.creep()) {
            case NONE -> new AfterRule.None(rules.timing().afterS());
            case EXTRAPOLATE -> new AfterRule.Extrapolate(chosen);
            case PROGRESS_CURVE -> new AfterRule.ProgressCurve(chosen);
        };
    }

    private static BeforeRule beforeRule(AssayMethod method) {
        return switch (method.before()) {
            case MEAN -> BeforeRule.MEAN;
            case LINE -> BeforeRule.LINE;
            case LAST -> BeforeRule.LAST;
        };
    }

    /** The next step begins where this one ends: on its finished line, or at its last reading where there is none. */
    private void carry(Well well, Step rules, WellReadings readings, Optional<Change> change) {
        carried.remove(well);
        if (change.isEmpty()) {
            return;
        }
        if (rules.creep() == Creep.NONE) {
            double last = readings.after().get(readings.after().size() - 1).absorbance();
            carried.put(well, new Baseline.Given(last, 0));
            return;
        }
        // Creep that is the next analyte already reacting must stay in that analyte's own change.
        double untilS = rules.creepOwner() == CreepOwner.NEXT_STEP ? 0 : readings.nextTriggerS();
        carried.put(well, change.get().baselineOfNext(untilS));
    }

    /**
     * Whether it matters more than the uncertainty of ΔA to whom the creep until the next trigger belongs, and there is creep
     * beyond its own uncertainty; line and curve alike.
     */
    private boolean isCreepInQuestion(int step, WellReadings readings, Change change) {
        if (step + 1 >= assay.method().steps().size()
                || change.creepPerMin().isEmpty()
                || change.uCreepPerMin().isEmpty()
                || change.uDeltaA().isEmpty()) {
            return false;
        }
        double creep = Math.abs(change.creepPerMin().getAsDouble());
        double risen = creep / 60 * readings.nextTriggerS();
        return risen > change.uDeltaA().getAsDouble()
                && creep > 2 * change.uCreepPerMin().getAsDouble();
    }

    private static boolean isAbsorbanceHigh(Step rules, WellReadings readings, Optional<Change> change) {
        if (rules.limits().absorbanceMost().isEmpty() || change.isEmpty()) {
            return false;
        }
        double most = rules.limits().absorbanceMost().getAsDouble();
        boolean before = Stream.concat(readings.baseline().stream(), readings.between().stream())
                .anyMatch(point -> point.absorbance() > most);
        for (int i = 0; i < readings.after().size(); i++) {
            if (counts(change.get(), i) && readings.after().get(i).absorbance() > most) {
                return true;
            }
        }
        return before;
    }

    private static boolean counts(Change change, int reading) {
        if (change.reading().isPresent()) {
            return change.reading().getAsInt() == reading;
        }
        return change.finished().map(part -> part.uses(reading)).orElse(true);
    }

    private static Flag of(TraceFlag flag) {
        return Flag.of(flag.code()).orElseThrow(() -> new AssertionError("no word for " + flag));
    }
}
