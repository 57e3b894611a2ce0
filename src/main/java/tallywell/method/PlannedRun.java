package tallywell.method;

import java.util.List;
import java.util.OptionalDouble;
import tallywell.quantity.Dilution;

/**
 * What a plan file keeps of a plan, to compare the run with.
 *
 * @param method id of the method
 * @param layout name of the layout
 * @param wells how many wells are filled
 * @param samples one a slot
 */
public record PlannedRun(String method, String layout, int wells, List<Slot> samples) {
    /** Keeps a copy that cannot change. */
    public PlannedRun {
        samples = List.copyOf(samples);
    }

    /**
     * One sample as planned.
     *
     * @param slot number in the layout
     * @param sample name
     * @param dilution planned
     * @param volumeUl own volume in the well in µL, if it has one
     * @param treatment free, total or neither
     */
    public record Slot(int slot, String sample, Dilution dilution, OptionalDouble volumeUl, Treatment treatment) {}
}
