package tallywell.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tallywell.plate.Well;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** How far wells are from the mean of their replicates, in net ΔA, or ΔA where there is no net. */
final class FromReplicates {
    private FromReplicates() {}

    /** The wells that have replicates; those that do not count are left out. */
    static Map<Well, Double> of(StepAnalysis step) {
        Map<String, List<WellResult>> groups = new HashMap<>();
        for (WellResult well : step.wells()) {
            if (well.used() && signal(well).isPresent()) {
                groups.computeIfAbsent(
                                well.content().role() + " " + well.content().word(), key -> new ArrayList<>())
                        .add(well);
            }
        }
        Map<Well, Double> differences = new HashMap<>();
        for (List<WellResult> group : groups.values()) {
            double mean = group.stream()
                    .mapToDouble(well -> signal(well).orElseThrow())
                    .average()
                    .orElseThrow();
            if (group.size() > 1) {
                group.forEach(well -> differences.put(well.well(), signal(well).orElseThrow() - mean));
            }
        }
        return differences;
    }

    private static OptionalDouble signal(WellResult well) {
        return well.netDeltaA().isPresent() ? well.netDeltaA() : well.deltaA();
    }
}
