package tallywell.report;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.workup.Assay;

/** The cider run with other names of samples than anyone would like to see. */
public final class HostileRun {
    private HostileRun() {}

    /** All slots have one name. */
    public static Report report(String name, String note) throws InputException {
        return report(List.of(name), note);
    }

    /** Slots take the names in turn; run, plate, title and operator have such names too. */
    public static Report report(List<String> names, String note) throws InputException {
        Assay assay = SampleRuns.assay("cider-l-malic");
        Map<Integer, Sample> samples = new TreeMap<>();
        for (Sample each : assay.samples().bySlot().values()) {
            samples.put(
                    each.slot(),
                    new Sample(
                            each.slot(),
                            names.get((each.slot() - 1) % names.size()),
                            each.dilution(),
                            each.volumeUl(),
                            each.solid(),
                            each.densityGPerMl(),
                            each.group(),
                            each.id(),
                            note));
        }
        return SampleRuns.report(new Assay(
                names.get(0),
                names.get(0),
                names.get(names.size() - 1),
                names.get(0),
                assay.method(),
                assay.layout(),
                SampleList.of(samples.values()),
                assay.readings(),
                assay.exclusions(),
                assay.finishedFrom()));
    }
}
