package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.plate.Well;
import tallywell.trace.FinishedPart;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/**
 * What is drawn of one well's trace. Times are in min from the trigger; readings without times stand at -1 and +1.
 *
 * @param well where
 * @param label well and content in a few letters
 * @param points time, absorbance
 * @param timed whether the times are real
 * @param before absorbance at the trigger by the baseline
 * @param after absorbance after the reaction at the trigger
 * @param finishedFromMin start of the finished part; empty if none was fitted
 * @param lineAtEnd absorbance of the fitted line at the last reading
 * @param endMin time of the last reading
 * @param residuals of the fitted line: time, residual in mA
 * @param creep creep in mA/min
 * @param uCreep its standard uncertainty in mA/min
 * @param deltaA ΔA
 */
public record TraceLook(
        Well well,
        String label,
        List<double[]> points,
        boolean timed,
        OptionalDouble before,
        OptionalDouble after,
        OptionalDouble finishedFromMin,
        OptionalDouble lineAtEnd,
        double endMin,
        List<double[]> residuals,
        OptionalDouble creep,
        OptionalDouble uCreep,
        OptionalDouble deltaA) {
    private static final double MINUTE = 60;
    private static final double MILLI = 1000;

    /** Keeps copies that cannot change. */
    public TraceLook {
        points = List.copyOf(points);
        residuals = List.copyOf(residuals);
    }

    /** The traces of some wells in one step, in row order; wells without readings are left out. */
    public static List<TraceLook> of(Analysis analysis, int step, Collection<Well> wells) {
        StepAnalysis of = analysis.steps().get(step - 1);
        return of.where(result -> wells.contains(result.well())).stream()
                .filter(result -> !result.trace().readings().after().isEmpty())
                .map(TraceLook::of)
                .toList();
    }

    private static TraceLook of(WellResult result) {
        WellReadings readings = result.trace().readings();
        boolean timed = readings.isTimed() && readings.after().size() > 1;
        List<double[]> points = new ArrayList<>();
        for (WellReadings.Point point : readings.baseline()) {
            double time = timed && point.timed() ? point.timeS() / MINUTE : -1;
            points.add(new double[] {time, point.absorbance()});
        }
        double end = 1;
        for (WellReadings.Point point : readings.after()) {
            double time = timed ? point.timeS() / MINUTE : 1;
            end = Math.max(end, time);
            points.add(new double[] {time, point.absorbance()});
        }
        Optional<FinishedPart> part = result.trace().change().flatMap(change -> change.finished());
        double last = end;
        return new TraceLook(
                result.well(),
                result.well() + " · " + result.content().role().replace('-', ' ') + " "
                        + result.content().word(),
                points,
                timed,
                result.trace().before(),
                result.trace().after(),
                part.map(each -> OptionalDouble.of(
                                readings.after().get(each.from()).timeS() / MINUTE))
                        .orElse(OptionalDouble.empty()),
                part.map(each -> OptionalDouble.of(each.at(last * MINUTE))).orElse(OptionalDouble.empty()),
                last,
                part.map(each -> residuals(each, readings)).orElse(List.of()),
                milli(result.trace().creepPerMin()),
                result.trace()
                        .change()
                        .map(change -> milli(change.uCreepPerMin()))
                        .orElse(OptionalDouble.empty()),
                result.deltaA());
    }

    private static OptionalDouble milli(OptionalDouble value) {
        return value.isPresent() ? OptionalDouble.of(MILLI * value.getAsDouble()) : value;
    }

    private static List<double[]> residuals(FinishedPart part, WellReadings readings) {
        List<double[]> residuals = new ArrayList<>();
        for (int i = part.from(); i < part.to(); i++) {
            WellReadings.Point point = readings.after().get(i);
            if (part.uses(i)) {
                residuals.add(
                        new double[] {point.timeS() / MINUTE, MILLI * (point.absorbance() - part.at(point.timeS()))});
            }
        }
        return residuals;
    }
}
