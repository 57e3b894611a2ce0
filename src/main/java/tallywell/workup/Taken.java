package tallywell.workup;

import java.util.List;
import java.util.OptionalDouble;
import tallywell.plate.ReadingSeries;

/**
 * One entry of a run's readings, as imported.
 *
 * @param name file as typed, for messages and reports
 * @param triggerBefore whether a trigger was added just before
 * @param triggerAtS moments of the triggers inside the series in s of the file's own time, ascending
 * @param timeS time of the (first) reading from the first trigger of its step, in s, if the run says
 * @param series the readings
 * @param identity what tells which plate it is
 */
public record Taken(
        String name,
        boolean triggerBefore,
        List<Double> triggerAtS,
        OptionalDouble timeS,
        ReadingSeries series,
        PlateIdentity identity) {
    /** Readings that do not say which plate they are of. */
    public Taken(
            String name, boolean triggerBefore, List<Double> triggerAtS, OptionalDouble timeS, ReadingSeries series) {
        this(name, triggerBefore, triggerAtS, timeS, series, PlateIdentity.UNKNOWN);
    }

    /** Keeps a copy that cannot change. */
    public Taken {
        triggerAtS = List.copyOf(triggerAtS);
    }
}
