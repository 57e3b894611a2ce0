package tallywell.workup;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Well;

/** Means of the blanks of each group, for every group that a well in use belongs to. */
final class Blanks {
    private Blanks() {}

    static Map<String, BlankMean> of(Assay assay, Step step, List<WellTrace> traces) throws InputException {
        Set<String> groups = new LinkedHashSet<>();
        for (WellTrace trace : traces) {
            groups.add(trace.group());
        }
        Map<String, BlankMean> means = new TreeMap<>();
        for (String group : groups) {
            means.put(group, mean(assay, step, traces, group));
        }
        return means;
    }

    private static BlankMean mean(Assay assay, Step step, List<WellTrace> traces, String group) throws InputException {
        List<WellTrace> triggered = blanks(traces, group, true);
        List<WellTrace> untriggered = blanks(traces, group, false);
        if (triggered.isEmpty()) {
            throw missing(assay, step, traces, group);
        }
        return new BlankMean(
                group,
                wells(triggered),
                Means.mean(deltas(triggered)),
                Means.sd(deltas(triggered)),
                wells(untriggered),
                untriggered.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Means.mean(deltas(untriggered))));
    }

    private static InputException missing(Assay assay, Step step, List<WellTrace> traces, String group) {
        List<Well> drawn = traces.stream()
                .filter(trace -> isBlank(trace, group, true))
                .map(WellTrace::well)
                .toList();
        List<Well> needing = traces.stream()
                .filter(trace -> trace.group().equals(group) && !(trace.content() instanceof Content.Blank))
                .map(WellTrace::well)
                .limit(6)
                .toList();
        String of = group.isEmpty() ? "" : " in group '" + group + "'";
        String found = drawn.isEmpty()
                ? "found no blank" + of + " in the layout '" + assay.layout().name() + "'"
                : "found no blank" + of + " with a reading that counts (" + Means.words(drawn) + ") in the step '"
                        + step.analyte().name() + "'";
        return new InputException(
                assay.place(),
                found + "; expected at least one, since the net ΔA of " + Means.words(needing)
                        + " is taken against it");
    }

    private static List<WellTrace> blanks(List<WellTrace> traces, String group, boolean triggered) {
        List<WellTrace> blanks = new ArrayList<>();
        for (WellTrace trace : traces) {
            if (trace.used() && trace.deltaA().isPresent() && isBlank(trace, group, triggered)) {
                blanks.add(trace);
            }
        }
        return blanks;
    }

    private static boolean isBlank(WellTrace trace, String group, boolean triggered) {
        return trace.group().equals(group)
                && trace.content() instanceof Content.Blank blank
                && blank.triggered() == triggered;
    }

    private static double[] deltas(List<WellTrace> traces) {
        return traces.stream()
                .mapToDouble(trace -> trace.deltaA().orElseThrow())
                .toArray();
    }

    private static List<Well> wells(List<WellTrace> traces) {
        return traces.stream().map(WellTrace::well).toList();
    }
}
