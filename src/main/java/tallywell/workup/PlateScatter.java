package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.trace.ReadingScatter;

/** How single readings of a plate scatter in one step, by all the wells that were read a few times. */
final class PlateScatter {
    private final Assay assay;
    private final Timeline timeline;

    PlateScatter(Assay assay, Timeline timeline) {
        this.assay = assay;
        this.timeline = timeline;
    }

    /** The scatter in a step from 0; empty where no well shows it. */
    Optional<ReadingScatter> of(int step) {
        int trigger = Traces.lastTrigger(assay, step);
        int sign = assay.method().steps().get(step).signal().direction().sign();
        List<ReadingScatter.Followed> wells = new ArrayList<>();
        for (Well well : assay.layout().format().all()) {
            if (assay.uses(well) && !assay.exclusions().containsKey(well)) {
                WellReadings readings = timeline.of(well, trigger);
                if (!readings.after().isEmpty() && readings.isTimed()) {
                    Content content = assay.layout().at(well);
                    boolean blank = content instanceof Content.Blank || content instanceof Content.SampleBlank;
                    wells.add(new ReadingScatter.Followed(Traces.after(readings), blank ? 0 : sign));
                }
            }
        }
        return Optional.ofNullable(ReadingScatter.of(wells));
    }
}
