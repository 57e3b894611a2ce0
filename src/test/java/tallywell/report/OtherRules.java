package tallywell.report;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tallywell.method.PathReading;
import tallywell.method.Run;
import tallywell.method.Sample;
import tallywell.method.Spread;
import tallywell.method.Treatment;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;
import tallywell.workup.Assay;
import tallywell.workup.MeasuredPath;
import tallywell.workup.Plates;
import tallywell.workup.Taken;

/** Small runs by the rules that few methods need: coupled to an equilibrium, by difference, stated in another form. */
final class OtherRules {
    private static final String HEAD = """
            tallywell: method/1
            id: small
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            """;

    private OtherRules() {}

    static Map<String, Assay> all() throws InputException {
        Map<String, Assay> all = new TreeMap<>();
        all.put("coupled", coupled());
        all.put("measured-path", measured("{by: absorptivity}"));
        all.put("measured-path-standards", measured("{by: standards, model: line}"));
        all.put("difference", difference("report: {unit: g/L}\n"));
        all.put(
                "other-form",
                difference("report: {unit: g/L, as: {name: D-glucose monohydrate, formula: C6H12O6·H2O}}\n"));
        all.put(
                "other-form-millimoles",
                difference("report: {unit: mmol/L, as: {name: carbon, formula: C, per-analyte: 6}}\n"));
        return all;
    }

    /** Light paths measured by water; one reading of them is over the range. */
    private static Assay measured(String calibration) throws InputException {
        return Plates.small()
                .method(HEAD.replace("{beam: fixed, length: 1 cm}", "{beam: measured, well-area: 33.2 mm2}")
                                .replace("{by: absorptivity}", calibration)
                        + """
                        steps:
                          - analyte: {name: malic acid, formula: C4H6O5}
                            volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                        report: {unit: g/L}
                        """)
                .layout("o a b", "1 1 1", """
                        o: {role: blank}
                        a: {role: standard, level: 0.05 g/L}
                        b: {role: standard, level: 0.25 g/L}
                        """)
                .read(false, "0.1 0.11 0.1 0.1 0.12 0.1")
                .read(true, "0.16 0.31 0.9 0.6 0.61 0.6")
                .assay()
                .withPath(new MeasuredPath(
                        new PathReading(path(), path(), 0.341, 0.158, Spread.standard(0.01)),
                        endPoint("peak", "0.215 0.212 0.219 0.217 0.209 over"),
                        endPoint("beside", "0.06 0.061 0.059 0.06 0.06 0.06")));
    }

    private static Run.Reading path() {
        return Run.Reading.of("after.csv", false, List.of());
    }

    private static Taken endPoint(String name, String numbers) throws InputException {
        Taken taken = Plates.small()
                .method(HEAD + """
                        steps:
                          - analyte: {name: malic acid, formula: C4H6O5}
                            volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                        report: {unit: g/L}
                        """)
                .layout("o o o", "o o o", "o: {role: blank}")
                .read(false, numbers)
                .assay()
                .readings()
                .get(0);
        return new Taken(name, false, List.of(), OptionalDouble.empty(), taken.series());
    }

    private static Assay coupled() throws InputException {
        double[] times = {0, 60, 120, 180, 240, 300, 360, 420, 480, 540};
        double[] blank = {0.100, 0.101, 0.099, 0.340, 0.341, 0.340, 0.345, 0.346, 0.345, 0.346};
        double[] one = {0.100, 0.102, 0.100, 0.350, 0.351, 0.350, 0.850, 0.860, 0.870, 0.880};
        double[] other = {0.110, 0.111, 0.112, 0.360, 0.362, 0.361, 0.840, 0.851, 0.859, 0.871};
        return Plates.small()
                .method(HEAD + """
                        steps:
                          - analyte: {name: acetic acid, formula: C2H4O2}
                            signal-formula: equilibrium-coupled
                            volumes: {sample: 0.1 mL, before-trigger: 3 mL, after-trigger: 3.15 mL}
                        report: {unit: g/L}
                        creep: {correct: extrapolate}
                        """)
                .layout("o 1 1", "o . .", "o: {role: blank}")
                .series(false, List.of(180.0, 360.0), times, blank, one, other, blank, blank, blank)
                .assay();
    }

    private static Assay difference(String report) throws InputException {
        return Plates.small()
                .method(HEAD + report + """
                        steps:
                          - analyte: {name: D-glucose, formula: C6H12O6}
                            volumes: {sample: 0.1 mL, before-trigger: 3 mL, after-trigger: 3 mL}
                        difference:
                          - {analyte: {name: sucrose, formula: C12H22O11}, of: D-glucose, yield: 95 %}
                        """)
                .layout("f 1 1", "t 2 2", "f: {role: blank, group: free}\nt: {role: blank, group: total}\n")
                .sample(sample(1, Treatment.FREE, "free", "10"))
                .sample(sample(2, Treatment.TOTAL, "total", "50"))
                .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                .read(true, "0.12 0.5 0.51 0.15 0.6 0.62")
                .assay();
    }

    private static Sample sample(int slot, Treatment treatment, String group, String dilution) {
        return new Sample(
                slot,
                "Nectar",
                Dilution.parse(dilution),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                group,
                "",
                "",
                treatment);
    }
}
