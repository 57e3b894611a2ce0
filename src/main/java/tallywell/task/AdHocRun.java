package tallywell.task;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.method.Run;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/**
 * A run named on the command line instead of in a run file: the first file is read before the trigger, the rest after it
 * in order; or one series with the trigger inside.
 *
 * @param method id of a built-in method, or the path of a method file
 * @param layout path of a layout
 * @param samples path of a sample list, if there is one
 * @param files exports in the order they were taken, at least one
 * @param triggerAtS moments of the triggers inside a single series, in s; else empty
 */
public record AdHocRun(String method, Path layout, Optional<Path> samples, List<Path> files, List<Double> triggerAtS) {
    /** Keeps copies that cannot change. */
    public AdHocRun {
        files = List.copyOf(files);
        triggerAtS = List.copyOf(triggerAtS);
    }

    /**
     * Reads the moments of triggers.
     *
     * @param words times such as {@code 225 s}
     * @throws IllegalArgumentException with a message for the user if a word is no time, or they do not ascend
     */
    public static List<Double> times(List<String> words) {
        List<Double> times = new ArrayList<>();
        for (String word : words) {
            double time = Quantity.parse(word, Kind.TIME).base();
            if (!(time >= 0) || !times.isEmpty() && !(time > times.get(times.size() - 1))) {
                throw new IllegalArgumentException("found '" + word + "'; expected ascending times of 0 s or more");
            }
            times.add(time);
        }
        return times;
    }

    /**
     * The same as a run file would say it.
     *
     * @param triggers how many triggers the method has: with several, each file after the first follows a trigger of its own
     */
    Run run(int triggers) {
        List<Run.Reading> readings = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            boolean triggerBefore = i == 1 || i > 1 && triggers > 1;
            readings.add(Run.Reading.of(files.get(i).toString(), triggerBefore, i == 0 ? triggerAtS : List.of()));
        }
        return new Run("", method, layout.toString(), samples.map(Path::toString), "", readings, List.of(), List.of());
    }

    /** What messages and tables call the run: its first file. */
    String name() {
        return files.get(0).toString();
    }
}
