package tallywell.workup;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import tallywell.plate.Content;

/**
 * ΔA less what the blanks show.
 *
 * <pre>{@code
 * net = ΔA - mean blank
 * net = (ΔA sample - mean sample blank) - (mean blank - mean blank without trigger)     with a sample blank
 * }</pre>
 *
 * <p>Without blanks without trigger the last term is 0, and the well is flagged.
 */
final class NetChanges {
    private final Map<String, BlankMean> blanks;
    private final Map<Integer, double[]> sampleBlanks = new TreeMap<>();

    NetChanges(List<WellTrace> traces, Map<String, BlankMean> blanks) {
        this.blanks = blanks;
        for (WellTrace trace : traces) {
            if (trace.content() instanceof Content.SampleBlank blank) {
                sampleBlanks.put(blank.of(), deltas(traces, blank.of()));
            }
        }
    }

    private static double[] deltas(List<WellTrace> traces, int slot) {
        return traces.stream()
                .filter(trace -> trace.content() instanceof Content.SampleBlank blank && blank.of() == slot)
                .filter(trace -> trace.used() && trace.deltaA().isPresent())
                .mapToDouble(trace -> trace.deltaA().orElseThrow())
                .toArray();
    }

    /** What is taken off the ΔA of a well; empty where its sample blank could not be read, or it has none to take. */
    OptionalDouble offset(WellTrace trace, Set<Flag> flags) {
        BlankMean blank = blanks.get(trace.group());
        if (blank == null) {
            throw new AssertionError("no blank for " + trace.well());
        }
        Content content = trace.content();
        if (content instanceof Content.SampleBlank || content instanceof Content.Blank own && !own.triggered()) {
            return OptionalDouble.empty();
        }
        double[] own = sampleBlanks.get(Traces.slotOf(content));
        if (own == null) {
            return OptionalDouble.of(blank.mean());
        }
        if (own.length == 0) {
            flags.add(Flag.READINGS_MISSING);
            return OptionalDouble.empty();
        }
        if (blank.untriggeredMean().isEmpty()) {
            flags.add(Flag.TRIGGER_BLANK_MISSING);
        }
        return OptionalDouble.of(
                Means.mean(own) + (blank.mean() - blank.untriggeredMean().orElse(0)));
    }

    /** The net ΔA of a well. */
    OptionalDouble net(WellTrace trace, Set<Flag> flags) {
        OptionalDouble offset = offset(trace, flags);
        return trace.deltaA().isPresent() && offset.isPresent()
                ? OptionalDouble.of(trace.deltaA().getAsDouble() - offset.getAsDouble())
                : OptionalDouble.empty();
    }
}
