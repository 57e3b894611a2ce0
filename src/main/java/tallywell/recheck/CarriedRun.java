package tallywell.recheck;

import java.util.List;
import tallywell.report.Carried;

/**
 * What a workbook carries of one run.
 *
 * @param name path of the run as typed
 * @param carried how it was asked for, and the files that came back
 * @param lost files that are not there in whole
 */
public record CarriedRun(String name, Carried carried, List<Lost> lost) {
    /** Keeps a copy that cannot change. */
    public CarriedRun {
        lost = List.copyOf(lost);
    }

    /**
     * A file that the workbook names but does not hold.
     *
     * @param role what it was read as
     * @param typed as the run names it
     * @param name what reports call it
     * @param sha256 the hash that is stated for it
     * @param why in words
     */
    public record Lost(String role, String typed, String name, String sha256, String why) {}
}
