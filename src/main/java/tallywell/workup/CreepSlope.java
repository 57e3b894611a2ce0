package tallywell.workup;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.Step;
import tallywell.plate.Content;

/**
 * How creep goes with ΔA over the wells of a step.
 *
 * <p>Creep of reagents is the same in every well, and that of the matrix differs from sample to sample. Creep that grows with
 * ΔA is neither: it is analyte that reacts slowly (another anomer, a slow isomer), or it follows the product. In the first case
 * the line at the trigger leaves it out of ΔA, and one well alone cannot tell. Where standards make the calibration their
 * slope is what those of the others are held against, since a slow part that is the same in standards and samples cancels.
 *
 * @param samples slope over samples, controls, spikes and blanks; empty where there are too few, or ΔA hardly differs
 * @param standards slope over standards and blanks, where standards make the calibration; empty as above
 */
public record CreepSlope(Optional<SlopeOnChange> samples, Optional<SlopeOnChange> standards) {
    private static final double SECONDS_PER_MINUTE = 60;

    /** What no ΔA is known to, in absorbance; as for drifts of the plate. */
    private static final double LEAST = 0.0005;

    /** Wells that say nothing of creep: other things happen there, and are flagged. */
    private static final Set<Flag> UNFIT =
            EnumSet.of(Flag.EXCLUDED, Flag.JUMP, Flag.REACTION_INCOMPLETE, Flag.CURVE_MISFIT);

    /** The slopes of a step; empty where its creep is not measured. */
    static Optional<CreepSlope> of(Step step, List<WellTrace> traces) {
        if (step.creep() == Creep.NONE) {
            return Optional.empty();
        }
        double sign = step.signal().direction().sign();
        boolean byStandards = !(step.calibration() instanceof CalibrationRule.ByAbsorptivity);
        Predicate<WellTrace> isStandard = trace -> trace.content() instanceof Content.Standard;
        Optional<SlopeOnChange> standards = byStandards
                ? SlopeOnChange.of(points(traces, sign, trace -> isStandard.test(trace) || isBlank(trace)))
                : Optional.empty();
        Optional<SlopeOnChange> samples =
                SlopeOnChange.of(points(traces, sign, trace -> !byStandards || !isStandard.test(trace)));
        return Optional.of(new CreepSlope(samples, standards));
    }

    private static boolean isBlank(WellTrace trace) {
        return trace.content() instanceof Content.Blank;
    }

    private static List<SlopeOnChange.Point> points(List<WellTrace> traces, double sign, Predicate<WellTrace> belongs) {
        Map<String, List<WellTrace>> groups = new LinkedHashMap<>();
        for (WellTrace trace : traces) {
            if (tells(trace) && belongs.test(trace)) {
                groups.computeIfAbsent(key(trace), key -> new ArrayList<>()).add(trace);
            }
        }
        return groups.values().stream().map(wells -> point(wells, sign)).toList();
    }

    /** Blanks are one group: their creep is that of the reagents. */
    private static String key(WellTrace trace) {
        return isBlank(trace) ? "blank" : trace.content() + " " + trace.group();
    }

    private static boolean tells(WellTrace trace) {
        boolean triggered = !(trace.content() instanceof Content.SampleBlank)
                && !(trace.content() instanceof Content.Blank blank && !blank.triggered());
        return triggered
                && trace.used()
                && trace.deltaA().isPresent()
                && trace.creepPerMin().isPresent()
                && trace.flags().stream().noneMatch(UNFIT::contains);
    }

    private static SlopeOnChange.Point point(List<WellTrace> wells, double sign) {
        return new SlopeOnChange.Point(
                mean(wells.stream().map(WellTrace::deltaA).toList()),
                uOfMean(wells.stream().map(CreepSlope::uOfNoise).toList()),
                sign
                        * mean(wells.stream()
                                .map(well -> scaled(well, well.creepPerMin()))
                                .toList()),
                uOfMean(wells.stream()
                        .map(well -> scaled(well, well.uCreepPerMin()))
                        .toList()));
    }

    /** Creep of the same light path as ΔA. */
    private static OptionalDouble scaled(WellTrace well, OptionalDouble creep) {
        return creep.isPresent() ? OptionalDouble.of(well.pathScale() * creep.getAsDouble()) : creep;
    }

    /** What the course of the trace leaves open is no scatter, which alone makes a slope of errors that ΔA and creep share. */
    private static OptionalDouble uOfNoise(WellTrace trace) {
        OptionalDouble u = trace.uDeltaA();
        return u.isPresent()
                ? OptionalDouble.of(
                        Math.sqrt(Math.max(0, u.getAsDouble() * u.getAsDouble() - trace.uCourse() * trace.uCourse())))
                : u;
    }

    private static double mean(Collection<OptionalDouble> values) {
        return values.stream()
                .mapToDouble(OptionalDouble::orElseThrow)
                .average()
                .orElseThrow();
    }

    /** 0 where nothing is known of one. */
    private static double uOfMean(Collection<OptionalDouble> values) {
        double squares = values.stream()
                .mapToDouble(each -> each.orElse(0) * each.orElse(0))
                .sum();
        return values.stream().allMatch(OptionalDouble::isPresent) ? Math.sqrt(squares) / values.size() : 0;
    }

    /** Whether creep of the samples grows with ΔA otherwise than that of the standards, or at all where these do not tell. */
    public boolean isSeen() {
        return samples.isPresent() && samples.get().differsFrom(standards);
    }

    /** Whether creep of the standards themselves grows with ΔA: then it cancels as far as samples were treated alike. */
    public boolean isOfStandards() {
        return standards.isPresent() && standards.get().differsFrom(Optional.empty());
    }

    /** Slope of the samples less that of the standards, per min; 0 where there is none to tell. */
    public double excessPerMin() {
        return samples.map(each ->
                        each.perMin() - standards.map(SlopeOnChange::perMin).orElse(0.0))
                .orElse(0.0);
    }

    /**
     * How uncertain net ΔA is for it, per min of reading time and as a part of net ΔA; 0 where nothing is seen.
     *
     * <p>A slow part with amplitude R and rate k leaves R exp(-k t) k at the mean time t of a line, and this line leaves out of ΔA
     * slope · ΔA · (t + 1 / k). Up to a half-life as long as the readings, T, that is less than 2 T · slope · ΔA.
     */
    public double uPerMin() {
        if (samples.isEmpty() || !isSeen() && !isOfStandards()) {
            return 0;
        }
        double u = Math.hypot(
                samples.get().uPerMin(), standards.map(SlopeOnChange::uPerMin).orElse(0.0));
        return isSeen() ? Math.hypot(excessPerMin(), u) : u;
    }

    /** How long a well was read after the trigger, in min; 0 where its readings have no times. */
    public static double minutesOf(WellTrace trace) {
        List<WellReadings.Point> after = trace.readings().after();
        return after.isEmpty() || !trace.readings().isTimed()
                ? 0
                : after.get(after.size() - 1).timeS() / SECONDS_PER_MINUTE;
    }

    /** The same wells, those to which it may matter marked; blanks and standards never. */
    static List<WellTrace> marked(List<WellTrace> traces, Optional<CreepSlope> slope) {
        if (slope.isEmpty() || !slope.get().isSeen()) {
            return traces;
        }
        return traces.stream()
                .map(trace -> slope.get().mattersTo(trace) ? trace.with(Flag.CREEP_FOLLOWS_ANALYTE) : trace)
                .toList();
    }

    private boolean mattersTo(WellTrace trace) {
        boolean result = trace.content() instanceof Content.Sample
                || trace.content() instanceof Content.Control
                || trace.content() instanceof Content.Spike;
        double effect = Math.abs(excessPerMin() * trace.deltaA().orElse(0) * minutesOf(trace));
        return result && effect > Math.max(LEAST, trace.uDeltaA().orElse(0));
    }
}
