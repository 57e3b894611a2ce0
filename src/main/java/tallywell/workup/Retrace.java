package tallywell.workup;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.plate.WellMap;

/**
 * Works single wells up anew, for one who drags at their traces: their ΔA and value against the blanks and the calibration
 * of a plate that is worked up already. Where the wells are blanks, sample blanks or standards themselves, what follows
 * from them stays as it was until the whole plate is worked up again.
 */
public final class Retrace {
    private Retrace() {}

    /**
     * The wells of one step, in row order.
     *
     * @param worked the plate as it is
     * @param changed the same plate with other readings, triggers or finished parts
     * @param step from 1
     * @throws InputException if the changed plate has no such trigger
     */
    public static List<WellResult> of(Analysis worked, Assay changed, int step, Collection<Well> wells)
            throws InputException {
        StepAnalysis of = worked.steps().get(step - 1);
        Assay few = only(changed, new HashSet<>(wells));
        Traces traces = new Traces(few, new Timeline(few), new PlateScatter(changed, new Timeline(changed)));
        List<WellTrace> anew = List.of();
        for (int i = 0; i < step; i++) {
            anew = traces.of(i);
        }
        Map<Well, WellTrace> byWell = new HashMap<>();
        anew.forEach(trace -> byWell.put(trace.well(), trace));
        List<WellTrace> all = new ArrayList<>();
        for (WellResult each : of.wells()) {
            all.add(byWell.getOrDefault(each.well(), each.trace()));
        }
        NetChanges net = new NetChanges(all, of.blanks());
        return new Values(changed.method(), of.step(), of.calibration()).of(anew, net);
    }

    private static Assay only(Assay assay, Set<Well> wells) {
        Layout layout = assay.layout();
        Content unused = new Content.Unused();
        return assay.withLayout(new Layout(
                layout.name(), WellMap.of(layout.format(), well -> wells.contains(well) ? layout.at(well) : unused)));
    }
}
