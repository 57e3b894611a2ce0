package tallywell.task;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.Step;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.workup.Taken;

/** When each step was read last, counted from its trigger, as far as the exports and the run say. */
final class LastReadings {
    private LastReadings() {}

    /** One a step in s; empty where nothing tells. */
    static List<OptionalDouble> of(List<Taken> readings, AssayMethod method) {
        List<OptionalDouble> byTrigger = byTrigger(readings, method);
        List<OptionalDouble> bySteps = new ArrayList<>();
        int trigger = 0;
        for (Step step : method.steps()) {
            trigger += step.signalFormula().triggers();
            bySteps.add(trigger <= byTrigger.size() ? byTrigger.get(trigger - 1) : OptionalDouble.empty());
        }
        return bySteps;
    }

    private static List<OptionalDouble> byTrigger(List<Taken> readings, AssayMethod method) {
        List<OptionalDouble> last = new ArrayList<>();
        for (Taken taken : readings) {
            if (!taken.triggerAtS().isEmpty()) {
                inside(taken, last);
                continue;
            }
            if (taken.triggerBefore()) {
                last.add(OptionalDouble.empty());
            }
            if (!last.isEmpty()) {
                int now = last.size() - 1;
                last.set(now, later(last.get(now), after(taken, method, last.size())));
            }
        }
        return last;
    }

    /** Triggers inside a series: each is read until the next. */
    private static void inside(Taken taken, List<OptionalDouble> last) {
        List<Double> triggers = taken.triggerAtS();
        OptionalDouble end = ends(taken.series(), false);
        for (int i = 0; i < triggers.size(); i++) {
            OptionalDouble until = i + 1 < triggers.size() ? OptionalDouble.of(triggers.get(i + 1)) : end;
            last.add(
                    until.isPresent()
                            ? OptionalDouble.of(until.getAsDouble() - triggers.get(i))
                            : OptionalDouble.empty());
        }
    }

    /** A file of its own: from its first reading on its own time counts. */
    private static OptionalDouble after(Taken taken, AssayMethod method, int trigger) {
        OptionalDouble first = taken.timeS();
        OptionalDouble begin = ends(taken.series(), true);
        OptionalDouble end = ends(taken.series(), false);
        boolean isSeries = begin.isPresent() && end.isPresent() && end.getAsDouble() > begin.getAsDouble();
        if (first.isEmpty() && taken.triggerBefore() && isSeries) {
            first = OptionalDouble.of(step(method, trigger).timing().triggerToFirstReadS());
        }
        if (first.isEmpty()) {
            return first;
        }
        double length = isSeries ? end.getAsDouble() - begin.getAsDouble() : 0;
        return OptionalDouble.of(first.getAsDouble() + length);
    }

    private static Step step(AssayMethod method, int trigger) {
        int triggers = 0;
        for (Step step : method.steps()) {
            triggers += step.signalFormula().triggers();
            if (trigger <= triggers) {
                return step;
            }
        }
        return method.steps().get(method.steps().size() - 1);
    }

    private static OptionalDouble ends(ReadingSeries series, boolean first) {
        if (!series.isTimed()) {
            return OptionalDouble.empty();
        }
        OptionalDouble found = OptionalDouble.empty();
        for (Well well : series.wells()) {
            int size = series.size(well);
            if (size > 0) {
                double time = series.timeS(well, first ? 0 : size - 1);
                boolean isFurther =
                        found.isEmpty() || (first ? time < found.getAsDouble() : time > found.getAsDouble());
                found = isFurther ? OptionalDouble.of(time) : found;
            }
        }
        return found;
    }

    private static OptionalDouble later(OptionalDouble one, OptionalDouble other) {
        if (one.isEmpty() || other.isEmpty()) {
            return one.isEmpty() ? other : one;
        }
        return OptionalDouble.of(Math.max(one.getAsDouble(), other.getAsDouble()));
    }
}
