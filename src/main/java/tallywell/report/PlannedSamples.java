package tallywell.report;

import java.io.IOException;
import java.util.List;
import tallywell.method.Sample;
import tallywell.plan.Plan;
import tallywell.quantity.Numbers;

/** Writes the sample list as planned, which a run can name. */
public final class PlannedSamples {
    private static final List<String> TITLES = List.of(
            "slot",
            "sample",
            "dilution",
            "volume",
            "mass_g",
            "extract_mL",
            "density_g_per_mL",
            "group",
            "id",
            "note",
            "treatment");

    /**
     * Writes the list.
     *
     * @param out where to; left open
     */
    public void write(Plan plan, Appendable out) throws IOException {
        CsvRows rows = new CsvRows(out, TITLES);
        for (Plan.PlannedSample each : plan.samples()) {
            Sample sample = each.sample();
            rows.number(sample.slot());
            rows.text(sample.name());
            rows.text(sample.dilution().toString());
            rows.text(
                    sample.volumeUl().isPresent()
                            ? Numbers.plain(sample.volumeUl().getAsDouble()) + " µL"
                            : "");
            rows.text(sample.solid().map(solid -> Numbers.plain(solid.massG())).orElse(""));
            rows.text(sample.solid()
                    .map(solid -> Numbers.plain(solid.extractMl()))
                    .orElse(""));
            rows.number(sample.densityGPerMl());
            rows.text(sample.group());
            rows.text(sample.id());
            rows.text(sample.note());
            rows.text(sample.treatment().word());
            rows.end();
        }
    }
}
