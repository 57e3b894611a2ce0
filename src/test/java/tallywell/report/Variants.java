package tallywell.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import tallywell.method.AssayMethod;
import tallywell.method.Before;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.CreepOwner;
import tallywell.method.Model;
import tallywell.method.ReportRule;
import tallywell.method.Run;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.method.Weights;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.plate.Wells;
import tallywell.quantity.Unit;
import tallywell.workup.Assay;
import tallywell.workup.Taken;

/** The sample runs with one thing changed, so that every path to a value is taken by some workbook. */
final class Variants {
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
        for (Model model : Model.values()) {
            for (Weights weights : Weights.values()) {
                boolean logistic = model == Model.LOGISTIC_4 || model == Model.LOGISTIC_5;
                if (!logistic || weights == Weights.NONE) {
                    Assay run = logistic ? saturating(cider) : cider;
                    all.put(model.word() + "-" + weights.word().replace('/', '-'), calibrated(run, model, weights));
                }
            }
        }
        all.put("excluded", excluding(cider, "A1 D8 D5 G7 B1", "excluded"));
        all.put("excluded-solids", excluding(puree, "A1 A3 C2 B1 D4 A5", "excluded"));
        all.put("marks", marked(cider));
        all.put("below-single", changed(cuvette, 1, new Well(0, 0), 0, 0.1));
        all.put("millimoles", reported(cider, Unit.MILLIMOLE_PER_LITRE));
        all.put("micromoles", reported(cider, Unit.MICROMOLE_PER_LITRE));
        all.put("hundred-millilitres", reported(cider, Unit.GRAM_PER_100_ML));
        all.put("content", reported(dense(cider), Unit.GRAM_PER_100_G));
        all.put("content-mg", reported(dense(cider), Unit.MILLIGRAM_PER_KILOGRAM));
        all.put("solids-mg", solids(puree));
        all.put("groups", grouped(cider));
        all.put("kinetic-staggered", staggered(kinetic));
        all.put("kinetic-last", with(kinetic, before(kinetic.method(), Before.LAST)));
        all.put("kinetic-marks", markedKinetic(kinetic));
        all.put("kinetic-two-steps", twoSteps(kinetic, Creep.EXTRAPOLATE, CreepOwner.NOTHING));
        all.put("kinetic-next-step", twoSteps(kinetic, Creep.EXTRAPOLATE, CreepOwner.NEXT_STEP));
        all.put("kinetic-curves", twoSteps(kinetic, Creep.PROGRESS_CURVE, CreepOwner.NOTHING));
        all.put("kinetic-nearest", creep(kinetic, Creep.NONE));
        all.putAll(OtherRules.all());
        return all;
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
        return new Assay(
                assay.name(),
                assay.plate(),
                assay.title(),
                assay.operator(),
                assay.method(),
                assay.layout(),
                assay.samples(),
                assay.readings(),
                exclusions,
                assay.finishedFrom());
    }

    private static Assay with(Assay assay, AssayMethod method) {
        return new Assay(
                assay.name(),
                assay.plate(),
                assay.title(),
                assay.operator(),
                method,
                assay.layout(),
                assay.samples(),
                assay.readings(),
                assay.exclusions(),
                assay.finishedFrom());
    }

    private static Assay with(Assay assay, Layout layout, SampleList samples) {
        return new Assay(
                assay.name(),
                assay.plate(),
                assay.title(),
                assay.operator(),
                assay.method(),
                layout,
                samples,
                assay.readings(),
                assay.exclusions(),
                assay.finishedFrom());
    }

    private static AssayMethod steps(AssayMethod method, List<Step> steps) {
        return new AssayMethod(
                method.id(),
                method.title(),
                method.source(),
                steps,
                method.lightPath(),
                method.triggerDilution(),
                method.before(),
                method.cautions(),
                method.uncertainty(),
                method.bench(),
                method.differences());
    }

    private static AssayMethod before(AssayMethod method, Before before) {
        return new AssayMethod(
                method.id(),
                method.title(),
                method.source(),
                method.steps(),
                method.lightPath(),
                method.triggerDilution(),
                before,
                method.cautions(),
                method.uncertainty(),
                method.bench(),
                method.differences());
    }

    private static Step step(Step step, Timing timing, Creep creep, CalibrationRule calibration, ReportRule report) {
        return new Step(
                step.analyte(),
                step.signal(),
                step.volumes(),
                timing,
                creep,
                step.creepOwner(),
                calibration,
                report,
                step.limits(),
                step.signalFormula(),
                step.chemistry(),
                step.standard());
    }

    private static Assay calibrated(Assay assay, Model model, Weights weights) {
        Step step = assay.method().steps().get(0);
        CalibrationRule rule = new CalibrationRule.ByStandards(model, weights);
        return with(
                assay, steps(assay.method(), List.of(step(step, step.timing(), step.creep(), rule, step.report()))));
    }

    private static Assay reported(Assay assay, Unit unit) {
        Step step = assay.method().steps().get(0);
        ReportRule rule =
                new ReportRule(unit, step.report().solids(), step.report().as());
        return with(
                assay,
                steps(assay.method(), List.of(step(step, step.timing(), step.creep(), step.calibration(), rule))));
    }

    private static Assay solids(Assay assay) {
        Step step = assay.method().steps().get(0);
        ReportRule rule = new ReportRule(
                step.report().unit(), Unit.MILLIGRAM_PER_KILOGRAM, step.report().as());
        return with(
                assay,
                steps(assay.method(), List.of(step(step, step.timing(), step.creep(), step.calibration(), rule))));
    }

    private static Assay creep(Assay assay, Creep creep) {
        Step step = assay.method().steps().get(0);
        return with(
                assay,
                steps(assay.method(), List.of(step(step, step.timing(), creep, step.calibration(), step.report()))));
    }

    /** A trigger that reaches the columns one after the other, before the line of the baseline. */
    private static Assay staggered(Assay assay) {
        Step step = assay.method().steps().get(0);
        Timing timing = step.timing();
        Timing staggered = new Timing(
                timing.beforeS(),
                timing.afterS(),
                timing.triggerToFirstReadS(),
                2.5,
                timing.staggerFrom(),
                timing.settleS());
        Step changed = step(step, staggered, step.creep(), step.calibration(), step.report());
        return with(assay, before(steps(assay.method(), List.of(changed)), Before.LINE));
    }

    /** The same trace read as two steps, the second of which does nothing. */
    private static Assay twoSteps(Assay assay, Creep creep, CreepOwner owner) {
        Step step = assay.method().steps().get(0);
        Step changed = new Step(
                step.analyte(),
                step.signal(),
                step.volumes(),
                step.timing(),
                creep,
                owner,
                new CalibrationRule.ByAbsorptivity(),
                step.report(),
                step.limits(),
                step.signalFormula(),
                step.chemistry(),
                step.standard());
        Taken taken = assay.readings().get(0);
        Taken twice =
                new Taken(taken.name(), taken.triggerBefore(), List.of(225.0, 1100.0), taken.timeS(), taken.series());
        return with(assay.withReadings(List.of(twice)), steps(assay.method(), List.of(changed, changed)));
    }

    private static Assay dense(Assay assay) {
        Map<Integer, Sample> samples = new TreeMap<>();
        assay.samples()
                .bySlot()
                .forEach((slot, each) -> samples.put(
                        slot,
                        sample(
                                each,
                                OptionalDouble.of(1.01 + 0.001 * slot),
                                each.group(),
                                OptionalDouble.of(10.0 + slot))));
        return with(assay, assay.layout(), new SampleList(samples));
    }

    private static Sample sample(Sample each, OptionalDouble density, String group, OptionalDouble volume) {
        return new Sample(
                each.slot(),
                each.name(),
                each.dilution(),
                volume,
                each.solid(),
                density,
                group,
                each.id(),
                each.note());
    }

    /** Two groups of blanks, of names that a spreadsheet would take for a criterion. */
    private static Assay grouped(Assay assay) {
        Map<Integer, Sample> samples = new TreeMap<>();
        assay.samples()
                .bySlot()
                .forEach((slot, each) -> samples.put(
                        slot, sample(each, each.densityGPerMl(), slot % 2 == 0 ? ">0*" : "", each.volumeUl())));
        List<Well> blanks = assay.layout().where(content -> content instanceof Content.Blank);
        Layout layout =
                new Layout(assay.layout().name(), WellMap.of(assay.layout().format(), well -> {
                    Content content = assay.layout().at(well);
                    return blanks.indexOf(well) % 2 == 1 ? new Content.Blank(content.word(), ">0*", true) : content;
                }));
        return with(assay, layout, new SampleList(samples));
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
        List<Taken> readings = new ArrayList<>(assay.readings());
        Taken taken = readings.get(entry);
        ReadingSeries series = taken.series();
        ReadingSeries.Builder builder =
                series.isTimed() ? ReadingSeries.timed(series.format()) : ReadingSeries.endPoint(series.format());
        for (Well well : series.wells()) {
            double[] times = new double[series.size(well)];
            double[] values = new double[times.length];
            for (int i = 0; i < times.length; i++) {
                times[i] = series.isTimed() ? series.timeS(well, i) : 0;
                values[i] = well.equals(at) && i == index ? value : series.absorbance(well, i);
            }
            builder.add(well, times, values, null);
        }
        readings.set(entry, taken(taken, builder.build()));
        return assay.withReadings(readings);
    }
}
