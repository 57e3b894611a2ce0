package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import tallywell.method.Model;
import tallywell.method.Run;
import tallywell.method.Weights;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.plate.Wells;
import tallywell.workup.Assay;
import tallywell.workup.MeasuredPath;
import tallywell.workup.Taken;

/** The sample runs with one thing changed, so that every path to a value is taken by some workbook. */
final class Variants {
    private static final String TWO_STEPS = """
            tallywell: method/1
            id: two-steps
            title: Two steps
            source: none
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: rises}
            steps:
              - analyte: {name: first, formula: C4H6O5}
                volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
              - analyte: {name: second, formula: C4H6O5}
                volumes: {sample: 20 µL, before-trigger: 290 µL, after-trigger: 290 µL}
            light-path: {beam: vertical, well-area: 33.2 mm2}
            before: mean
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private Variants() {}

    /** All runs that a workbook is made of, by name. */
    static Map<String, Assay> all() throws InputException {
        Map<String, Assay> all = new TreeMap<>();
        Assay cider = SampleRuns.assay("cider-l-malic");
        Assay puree = SampleRuns.assay("puree-citric-solids");
        Assay kinetic = SampleRuns.assay("cider-malic-kinetic");
        Assay cuvette = SampleRuns.assay("cuvette-typed");
        all.put("cider", cider);
        all.put("puree", puree);
        all.put("juice", SampleRuns.assay("juice-glucose-fructose"));
        all.put("cuvette", cuvette);
        all.put("kinetic", kinetic);
        all.put("nectar", SampleRuns.assay("nectar-sucrose"));
        all.put("dairy", SampleRuns.assay("dairy-lactose"));
        all.put("vinegar", SampleRuns.assay("vinegar-acetic-coupled"));
        all.put(
                "vinegar-scarce",
                method(
                        "vinegar-acetic-coupled",
                        "    signal-formula: equilibrium-coupled\n",
                        "    signal-formula: equilibrium-coupled\n    coupled-to: {NAD: 1.241 mmol/L, L-malate: 5.172 mmol/L}\n"));
        for (Model model : Model.values()) {
            for (Weights weights : Weights.values()) {
                boolean logistic = model == Model.LOGISTIC_4 || model == Model.LOGISTIC_5;
                if (!logistic || weights == Weights.NONE) {
                    Assay run = method(
                            "cider-l-malic",
                            "model: line, weights: none",
                            "model: " + model.word() + ", weights: " + weights.word());
                    all.put(model.word() + "-" + weights.word().replace('/', '-'), logistic ? saturating(run) : run);
                }
            }
        }
        all.put("excluded", excluding(cider, "A1 D8 D5 G7 B1", "excluded"));
        all.put(
                "excluded-variance-function",
                excluding(
                        method(
                                "cider-l-malic",
                                "model: line, weights: none",
                                "model: quadratic, weights: variance-function"),
                        "A1 D8 D5 G7 B1",
                        "excluded"));
        all.put("excluded-solids", excluding(puree, "A1 A3 C2 B1 D4 A5", "excluded"));
        all.put("marks", marked(cider));
        all.put("below-single", changed(cuvette, 1, new Well(0, 0), 0, 0.1));
        all.put("millimoles", method("cider-l-malic", "unit: g/L", "unit: mmol/L"));
        all.put("micromoles", method("cider-l-malic", "unit: g/L", "unit: µmol/L"));
        all.put("hundred-millilitres", method("cider-l-malic", "unit: g/L", "unit: g/100mL"));
        all.put("content", dense("g/100g"));
        all.put("content-mg", dense("mg/kg"));
        all.put("solids-mg", method("puree-citric-solids", "solids: g/100g", "solids: mg/kg"));
        all.put("groups", grouped());
        all.put("kinetic-staggered", staggered());
        all.put("kinetic-last", method("cider-malic-kinetic", "before: mean", "before: last"));
        all.put("kinetic-marks", markedKinetic(kinetic));
        all.put("kinetic-two-steps", twoSteps("creep: {correct: extrapolate}"));
        all.put("kinetic-next-step", twoSteps("creep: {correct: extrapolate, creep-belongs-to: next-step}"));
        all.put("kinetic-curves", twoSteps("creep: {correct: progress-curve}"));
        all.put("coupled-trace", coupled());
        all.put("pairs", difference("report: {unit: g/L}"));
        all.put("pairs-form", difference("report: {unit: mmol/L, as: {name: carbon, formula: C, per-analyte: 4}}"));
        all.put("kinetic-nearest", method("cider-malic-kinetic", "correct: extrapolate", "correct: none"));
        all.putAll(OtherRules.all());
        return all;
    }

    /** A sample run with one place of its method changed. */
    private static Assay method(String folder, String from, String to) throws InputException {
        return SampleRuns.assay(folder, text -> replaced(text, from, to));
    }

    private static String replaced(String text, String from, String to) {
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    /** One of them. */
    static Assay named(String name) throws InputException {
        return Optional.ofNullable(all().get(name)).orElseThrow();
    }

    static Assay excluding(Assay assay, String wells, String reason) {
        List<Well> list = Wells.parse(wells, assay.layout().format());
        Map<Well, Run.Exclusion> exclusions = new HashMap<>();
        Run.Exclusion exclusion = new Run.Exclusion(list, reason, "J. Doe", 9);
        list.forEach(well -> exclusions.put(well, exclusion));
        return assay.withExclusions(exclusions);
    }

    /** A trigger that reaches the columns one after the other, before the line of the baseline. */
    private static Assay staggered() throws InputException {
        return SampleRuns.assay(
                "cider-malic-kinetic",
                text -> replaced(
                        replaced(text, "stagger-per-column: 0 s", "stagger-per-column: 2.5 s"),
                        "before: mean",
                        "before: line"));
    }

    /** The kinetic trace read as two steps, the second of which does nothing, by absorptivity. */
    private static Assay twoSteps(String creep) throws InputException {
        return triggeredTwice(TWO_STEPS + creep + "\n");
    }

    private static Assay triggeredTwice(String method) throws InputException {
        Assay assay = SampleRuns.assay("cider-malic-kinetic", text -> method);
        Taken taken = assay.readings().get(0);
        Taken twice =
                new Taken(taken.name(), taken.triggerBefore(), List.of(225.0, 1100.0), taken.timeS(), taken.series());
        return assay.withReadings(List.of(twice));
    }

    /** The same two triggers as the two halves of a step that is coupled to an equilibrium. */
    private static Assay coupled() throws InputException {
        String first = "  - analyte: {name: first, formula: C4H6O5}\n";
        int second = TWO_STEPS.indexOf("  - analyte: {name: second");
        String method = TWO_STEPS.substring(0, second) + TWO_STEPS.substring(TWO_STEPS.indexOf("light-path:"));
        return triggeredTwice(replaced(method, first, first + "    signal-formula: equilibrium-coupled\n")
                + "creep: {correct: extrapolate}\n");
    }

    /** Pairs of slots as the free and the total amount of a sample. */
    private static Assay difference(String report) throws InputException {
        return SampleRuns.assay(
                "cider-l-malic",
                text -> replaced(text, "report: {unit: g/L}", report) + """
                        difference:
                          - analyte: {name: dimalate, formula: C8H10O9}
                            of: L-malic acid
                            released: 2
                            yield: 95 %
                        """,
                UnaryOperator.identity(),
                text -> {
                    StringBuilder list = new StringBuilder("slot,sample,dilution,treatment\n");
                    for (int slot = 1; slot <= 36; slot++) {
                        String treatment = slot % 2 == 0 ? "free" : "total";
                        list.append(slot + ",S" + (slot + 1) / 2 + "," + (slot % 2 == 0 ? 10 : 20) + "," + treatment
                                + "\n");
                    }
                    return list.toString();
                });
    }

    /** Liquids by mass, some with a volume of their own. */
    private static Assay dense(String unit) throws InputException {
        return SampleRuns.assay(
                "cider-l-malic",
                text -> replaced(text, "unit: g/L", "unit: " + unit),
                UnaryOperator.identity(),
                text -> samples("density_g_per_mL,volume", slot -> 1.01 + 0.001 * slot + "," + (10 + slot) + " µL"));
    }

    /** Two groups of blanks, of names that a spreadsheet would take for a criterion. */
    private static Assay grouped() throws InputException {
        return SampleRuns.assay(
                "cider-l-malic",
                UnaryOperator.identity(),
                text -> replaced(
                        text.replaceFirst("( F: .*?) o ", "$1 p ").replaceFirst("( C: .*?) o ", "$1 p "),
                        "  o:  {role: blank}",
                        "  o:  {role: blank}\n  p:  {role: blank, group: \">0*\"}"),
                text -> samples("group", slot -> slot % 2 == 0 ? ">0*" : ""));
    }

    private static String samples(String columns, IntFunction<String> values) {
        StringBuilder list = new StringBuilder("slot,sample,dilution," + columns + "\n");
        for (int slot = 1; slot <= 36; slot++) {
            list.append(slot + ",S" + slot + ",10," + values.apply(slot) + "\n");
        }
        return list.toString();
    }

    /** The same plate as a reader with stray light would see it, so that the standards make an S. */
    private static Assay saturating(Assay assay) {
        ReadingSeries before = assay.readings().get(0).series();
        Taken after = assay.readings().get(1);
        ReadingSeries.Builder bent = ReadingSeries.endPoint(before.format());
        for (Well well : before.wells()) {
            double from = before.absorbance(well, 0);
            double rise = Math.max(0, after.series().absorbance(well, 0) - from);
            bent.add(well, from + 1.6 * (1 - Math.pow(1 + Math.pow(rise / 0.6, 1.6), -0.8)));
        }
        return assay.withReadings(List.of(assay.readings().get(0), taken(after, bent.build())));
    }

    private static Assay marked(Assay assay) {
        List<Taken> readings = new ArrayList<>();
        for (Taken taken : assay.readings()) {
            boolean after = taken.triggerBefore();
            ReadingSeries.Builder marked = ReadingSeries.endPoint(taken.series().format());
            for (Well well : taken.series().wells()) {
                if (after && (well.equals(new Well(0, 1)) || well.equals(new Well(0, 7)))) {
                    marked.add(well, Mark.OVER);
                } else if (well.equals(new Well(after ? 1 : 2, 2))) {
                    marked.add(well, Mark.MISSING);
                } else {
                    marked.add(well, taken.series().absorbance(well, 0));
                }
            }
            readings.add(taken(taken, marked.build()));
        }
        return assay.withReadings(readings);
    }

    private static Assay markedKinetic(Assay assay) {
        Taken taken = assay.readings().get(0);
        return assay.withReadings(List.of(taken(
                taken,
                series(
                        taken.series(),
                        well -> {
                            Mark[] marks = new Mark[taken.series().size(well)];
                            java.util.Arrays.fill(marks, Mark.NONE);
                            marks[70] = well.row() == 4 ? Mark.MISSING : Mark.NONE;
                            marks[3] = well.column() == 2 ? Mark.MISSING : Mark.NONE;
                            return Optional.of(marks);
                        },
                        UnaryOperator.identity()))));
    }

    private static Taken taken(Taken taken, ReadingSeries series) {
        return new Taken(taken.name(), taken.triggerBefore(), taken.triggerAtS(), taken.timeS(), series);
    }

    private static ReadingSeries series(
            ReadingSeries series,
            java.util.function.Function<Well, Optional<Mark[]>> marks,
            UnaryOperator<double[]> change) {
        ReadingSeries.Builder builder = ReadingSeries.timed(series.format());
        for (Well well : series.wells()) {
            double[] times = new double[series.size(well)];
            double[] values = new double[times.length];
            for (int i = 0; i < times.length; i++) {
                times[i] = series.timeS(well, i);
                values[i] = series.absorbance(well, i);
            }
            builder.add(well, times, change.apply(values), marks.apply(well).orElse(null));
        }
        return builder.build();
    }

    /** The same run with one reading changed. */
    static Assay changed(Assay assay, int entry, Well at, int index, double value) {
        List<Taken> readings = new ArrayList<>(assay.allReadings());
        Taken taken = readings.get(entry);
        ReadingSeries series = taken.series();
        ReadingSeries.Builder builder =
                series.isTimed() ? ReadingSeries.timed(series.format()) : ReadingSeries.endPoint(series.format());
        for (Well well : series.wells()) {
            double[] times = new double[series.size(well)];
            double[] values = new double[times.length];
            Mark[] marks = new Mark[times.length];
            for (int i = 0; i < times.length; i++) {
                times[i] = series.isTimed() ? series.timeS(well, i) : 0;
                boolean changes = well.equals(at) && i == index;
                marks[i] = changes ? Mark.NONE : series.mark(well, i);
                values[i] = changes ? value : marks[i] == Mark.NONE ? series.absorbance(well, i) : 0;
            }
            builder.add(well, times, values, marks);
        }
        readings.set(entry, taken(taken, builder.build()));
        int own = assay.readings().size();
        Assay changed = assay.withReadings(readings.subList(0, own));
        return assay.path().isEmpty()
                ? changed
                : changed.withPath(
                        new MeasuredPath(assay.path().get().reading(), readings.get(own), readings.get(own + 1)));
    }
}
