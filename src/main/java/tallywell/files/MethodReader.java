package tallywell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tallywell.method.Analyte;
import tallywell.method.AssayMethod;
import tallywell.method.BatchLimits;
import tallywell.method.Before;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.CreepOwner;
import tallywell.method.Direction;
import tallywell.method.LightPath;
import tallywell.method.Limits;
import tallywell.method.Model;
import tallywell.method.RepeatRule;
import tallywell.method.ReportRule;
import tallywell.method.Signal;
import tallywell.method.SignalFormula;
import tallywell.method.SpikeScope;
import tallywell.method.StaggerFrom;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.method.TriggerDilution;
import tallywell.method.Volumes;
import tallywell.method.Weights;
import tallywell.notice.InputException;
import tallywell.quantity.ChemicalFormula;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/** Reads method files ({@code tallywell: method/1}). */
public final class MethodReader {
    private static final Pattern ID = Pattern.compile("[a-z0-9][a-z0-9-]*");
    private static final String[] KEYS = {
        "id",
        "title",
        "source",
        "signal",
        "steps",
        "light-path",
        "trigger-dilution",
        "before",
        "creep",
        "calibration",
        "report",
        "accept",
        "cautions",
        "uncertainty",
        "formulas",
        "reagents",
        "dilutions",
        "well",
        "difference",
        "repeats"
    };

    /** Reads a method file. */
    public AssayMethod read(Path path) throws InputException {
        return method(YamlDocument.read(path, "method/1", KEYS));
    }

    /** The same from a text; the path only serves messages. */
    public AssayMethod parse(Path path, String text) throws InputException {
        return method(YamlDocument.parse(path, text, "method/1", KEYS));
    }

    private static AssayMethod method(YamlMapping top) throws InputException {
        YamlNode id = top.need("id", "'id: my-method'");
        if (!ID.matcher(id.text()).matches()) {
            throw id.wrong("found 'id: " + id.text() + "'; expected small letters, digits and '-'");
        }
        top.need("signal", "'signal: {wavelength: 340 nm}'");
        top.need("calibration", "'calibration: {by: standards, model: line}'");
        top.need("report", "'report: {unit: g/L}'");
        Optional<LightPath> lightPath = LightPathReader.lightPath(top);
        YamlNode stepsNode = top.need("steps", "'steps:' with one '- analyte: ...' a trigger");
        List<Step> steps = new ArrayList<>();
        for (YamlNode item : stepsNode.list("one item a trigger")) {
            steps.add(step(top, item, lightPath));
        }
        if (steps.isEmpty()) {
            throw stepsNode.wrong("found no steps; expected one a trigger");
        }
        TriggerDilution dilution = word(top, "trigger-dilution", TriggerDilution.class, TriggerDilution.IGNORE);
        LightPathReader.checkDilution(top, dilution, lightPath, steps);
        LightPathReader.checkMeasured(top, lightPath, steps);
        return new AssayMethod(
                id.text(),
                free(top, "title", id.text()),
                free(top, "source", ""),
                steps,
                lightPath,
                dilution,
                word(top, "before", Before.class, Before.MEAN),
                cautions(top),
                UncertaintyReader.rule(top),
                BenchReader.bench(top, steps),
                DifferenceReader.differences(top, steps),
                top.has("repeats") ? Optional.of(top.need("repeats", "").word(RepeatRule.class)) : Optional.empty());
    }

    private static List<String> cautions(YamlMapping top) throws InputException {
        List<String> cautions = new ArrayList<>();
        if (top.has("cautions")) {
            for (YamlNode item : top.need("cautions", "").list("one caution an item")) {
                cautions.add(item.freeText());
            }
        }
        return cautions;
    }

    private static Step step(YamlMapping top, YamlNode item, Optional<LightPath> lightPath) throws InputException {
        YamlMapping keys = item.mapping("a step")
                .only(
                        "analyte",
                        "volumes",
                        "timing",
                        "signal",
                        "calibration",
                        "creep",
                        "report",
                        "accept",
                        "signal-formula",
                        "coupled-to",
                        "reactions",
                        "standard");
        Layered signal = Layered.of(top, keys, "signal").only("species", "wavelength", "absorptivity", "direction");
        Layered calibration = Layered.of(top, keys, "calibration").only("by", "model", "weights");
        Layered report = Layered.of(top, keys, "report").only("unit", "solids", "as");
        Layered creep = Layered.of(top, keys, "creep").only("correct", "creep-belongs-to");
        Layered accept = Layered.of(top, keys, "accept")
                .only(
                        "delta-a",
                        "absorbance",
                        "blank-delta-a",
                        "replicates",
                        "control-recovery",
                        "spike-recovery",
                        "blank-sd",
                        "standard-recovery",
                        "slope",
                        "absorbance-left",
                        "indicator-left");
        Step step = new Step(
                analyte(keys),
                signal(signal),
                volumes(keys),
                timing(keys),
                creep.word("correct", Creep.class, Creep.NONE),
                creep.word("creep-belongs-to", CreepOwner.class, CreepOwner.NOTHING),
                calibration(calibration),
                report(report),
                limits(accept),
                word(keys, "signal-formula", SignalFormula.class, SignalFormula.DIFFERENCE),
                ChemistryReader.chemistry(top, keys, analyte(keys)),
                FormReader.standard(keys),
                CoupledReader.reactants(keys));
        FormReader.check(step, report.find("as"), keys.find("standard"));
        ChemistryReader.check(step, keys);
        CoupledReader.check(step, keys, lightPath);
        if (step.calibration() instanceof CalibrationRule.ByAbsorptivity) {
            checkAbsorptivity(calibration.need("by", ""), step, lightPath);
        }
        return step;
    }

    private static void checkAbsorptivity(YamlNode by, Step step, Optional<LightPath> lightPath) throws InputException {
        if (lightPath.isEmpty()) {
            throw by.wrong("found 'by: absorptivity' without a light path; expected "
                    + "'light-path: {beam: fixed, length: 1 cm}' or '{beam: vertical, well-area: 33.2 mm2}'");
        }
        if (step.signal().absorptivity().isEmpty()) {
            throw by.wrong("found 'by: absorptivity' without a molar absorptivity; expected "
                    + "'absorptivity: 6300 L/mol/cm' under 'signal'");
        }
        if (step.volumes().isEmpty()) {
            throw by.wrong("found 'by: absorptivity' in a step without volumes; expected "
                    + "'volumes: {sample: ..., before-trigger: ..., after-trigger: ...}'");
        }
        if (step.analyte().molarMass().isEmpty()) {
            throw by.wrong(
                    "found 'by: absorptivity' for '" + step.analyte().name()
                            + "' without a molar mass; expected 'formula: C4H6O5' or 'molar-mass: 134.09 g/mol' under 'analyte'");
        }
    }

    static Analyte analyte(YamlMapping step) throws InputException {
        YamlNode node = step.need("analyte", "'analyte: {name: L-malic acid, formula: C4H6O5}'");
        YamlMapping keys = node.mapping("an analyte, such as {name: L-malic acid, formula: C4H6O5}")
                .only("name", "formula", "molar-mass", "signal-per-analyte");
        Optional<ChemicalFormula> formula = Optional.empty();
        if (keys.has("formula")) {
            YamlNode text = keys.need("formula", "");
            try {
                formula = Optional.of(ChemicalFormula.parse(text.text()));
            } catch (IllegalArgumentException e) {
                throw text.wrong(e);
            }
        }
        OptionalDouble stated = keys.has("molar-mass")
                ? OptionalDouble.of(keys.need("molar-mass", "").positive(Kind.MOLAR_MASS))
                : OptionalDouble.empty();
        OptionalDouble molarMass = stated.isEmpty() && formula.isPresent()
                ? OptionalDouble.of(formula.get().molarMass())
                : stated;
        double signals = 1;
        if (keys.has("signal-per-analyte")) {
            YamlNode count = keys.need("signal-per-analyte", "");
            signals = count.number();
            if (!(signals > 0)) {
                throw count.wrong("found '" + count.text()
                        + "'; expected a number above 0; a falling signal is said by 'direction: falls'");
            }
        }
        return new Analyte(keys.need("name", "'name: L-malic acid'").freeText(), formula, molarMass, signals);
    }

    private static Signal signal(Layered keys) throws InputException {
        Optional<YamlNode> species = keys.find("species");
        Optional<YamlNode> wavelength = keys.find("wavelength");
        return new Signal(
                species.isPresent() ? species.get().text() : "",
                wavelength.isPresent() ? OptionalDouble.of(nanometres(wavelength.get())) : OptionalDouble.empty(),
                keys.positive("absorptivity", Kind.ABSORPTIVITY),
                keys.word("direction", Direction.class, Direction.RISES));
    }

    private static double nanometres(YamlNode node) throws InputException {
        Quantity quantity = node.quantity(Kind.LENGTH);
        if (!(quantity.value() > 0)) {
            throw node.wrong("found '" + node.text() + "'; expected a wavelength above 0, such as 340 nm");
        }
        return quantity.in(Unit.NANOMETRE);
    }

    private static Optional<Volumes> volumes(YamlMapping step) throws InputException {
        Optional<YamlNode> node = step.find("volumes");
        if (node.isEmpty()) {
            return Optional.empty();
        }
        YamlMapping keys = node.get()
                .mapping("volumes, such as {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}")
                .only("sample", "before-trigger", "after-trigger");
        double sample = keys.need("sample", "'sample: 20 µL'").positive(Kind.VOLUME);
        double before = keys.need("before-trigger", "'before-trigger: 270 µL'").positive(Kind.VOLUME);
        double after = keys.need("after-trigger", "'after-trigger: 290 µL'").positive(Kind.VOLUME);
        if (!(before >= sample && after >= before)) {
            throw node.get()
                    .wrong("found volumes that shrink; expected totals that include the sample: "
                            + "sample at most before-trigger, before-trigger at most after-trigger");
        }
        return Optional.of(new Volumes(sample, before, after));
    }

    private static Timing timing(YamlMapping step) throws InputException {
        Optional<YamlNode> node = step.find("timing");
        if (node.isEmpty()) {
            return Timing.NONE;
        }
        YamlMapping keys = node.get()
                .mapping("times, such as {before: 3 min, after: 10 min}")
                .only("before", "after", "trigger-to-first-read", "stagger-per-column", "stagger-from", "settle");
        return new Timing(
                time(keys, "before"),
                time(keys, "after"),
                time(keys, "trigger-to-first-read").orElse(0),
                time(keys, "stagger-per-column").orElse(0),
                keys.has("stagger-from") ? keys.need("stagger-from", "").word(StaggerFrom.class) : StaggerFrom.LEFT,
                time(keys, "settle").orElse(0));
    }

    private static OptionalDouble time(YamlMapping keys, String key) throws InputException {
        Optional<YamlNode> node = keys.find(key);
        return node.isPresent() ? OptionalDouble.of(node.get().notNegative(Kind.TIME)) : OptionalDouble.empty();
    }

    private static CalibrationRule calibration(Layered keys) throws InputException {
        YamlNode by = keys.need("by", "'by: standards'");
        return switch (by.text()) {
            case "absorptivity" -> new CalibrationRule.ByAbsorptivity();
            case "single-standard" -> new CalibrationRule.BySingleStandard();
            case "standards" ->
                new CalibrationRule.ByStandards(
                        keys.need("model", "'model: line'").word(Model.class),
                        keys.word("weights", Weights.class, Weights.NONE));
            default ->
                throw by.wrong(
                        "found 'by: " + by.text() + "'; expected one of standards, single-standard, absorptivity");
        };
    }

    private static ReportRule report(Layered keys) throws InputException {
        Unit unit = unit(keys.need("unit", "'unit: g/L'"), Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
        Optional<YamlNode> solids = keys.find("solids");
        if (solids.isPresent()) {
            return new ReportRule(unit, unit(solids.get(), Kind.CONTENT), FormReader.as(keys));
        }
        return new ReportRule(unit, unit.kind() == Kind.CONTENT ? unit : Unit.GRAM_PER_100_G, FormReader.as(keys));
    }

    private static Unit unit(YamlNode node, Kind... kinds) throws InputException {
        List<Kind> right = List.of(kinds);
        Optional<Unit> unit = Unit.of(node.text());
        if (unit.isEmpty() || !right.contains(unit.get().kind())) {
            String units = right.stream()
                    .flatMap(kind -> Unit.of(kind).stream())
                    .map(Unit::symbol)
                    .reduce((one, other) -> one + ", " + other)
                    .orElse("");
            throw node.wrong("found the unit '" + node.text() + "'; expected one of " + units);
        }
        return unit.get();
    }

    private static Limits limits(Layered accept) throws InputException {
        Layered deltaA = accept.inner("delta-a").only("least", "most");
        Layered control = recovery(accept, "control-recovery");
        Layered spike = recovery(accept, "spike-recovery", "speaks-for");
        Layered replicates = accept.inner("replicates").only("cv", "or-range");
        deltaA.ordered(deltaA.notNegative("least"), deltaA.notNegative("most"));
        return new Limits(
                deltaA.notNegative("least"),
                deltaA.notNegative("most"),
                accept.inner("absorbance").only("most").notNegative("most"),
                accept.inner("blank-delta-a").only("most").notNegative("most"),
                replicates.positive("cv", Kind.RATIO),
                replicates.notNegative("or-range"),
                control.positive("least", Kind.RATIO),
                control.positive("most", Kind.RATIO),
                spike.positive("least", Kind.RATIO),
                spike.positive("most", Kind.RATIO),
                spike.word("speaks-for", SpikeScope.class, SpikeScope.SAMPLE),
                batchLimits(accept));
    }

    /** Two ends, each a part of a whole. */
    private static Layered recovery(Layered accept, String key, String... more) throws InputException {
        Layered ends = accept.inner(key)
                .only(Stream.concat(Stream.of("least", "most"), Stream.of(more)).toArray(String[]::new));
        return ends.ordered(ends.positive("least", Kind.RATIO), ends.positive("most", Kind.RATIO));
    }

    private static BatchLimits batchLimits(Layered accept) throws InputException {
        Layered standard = recovery(accept, "standard-recovery");
        Layered slope = recovery(accept, "slope");
        Layered indicator = accept.inner("indicator-left").only("least", "background");
        return new BatchLimits(
                accept.inner("blank-sd").only("most").notNegative("most"),
                standard.positive("least", Kind.RATIO),
                standard.positive("most", Kind.RATIO),
                slope.positive("least", Kind.RATIO),
                slope.positive("most", Kind.RATIO),
                accept.inner("absorbance-left").only("least").notNegative("least"),
                indicator.notNegative("least"),
                indicator.notNegative("background"));
    }

    private static String free(YamlMapping keys, String key, String otherwise) throws InputException {
        Optional<YamlNode> node = keys.find(key);
        return node.isPresent() ? node.get().freeText() : otherwise;
    }

    private static <E extends Enum<E> & tallywell.method.Worded> E word(
            YamlMapping keys, String key, Class<E> options, E otherwise) throws InputException {
        Optional<YamlNode> node = keys.find(key);
        return node.isPresent() ? node.get().word(options) : otherwise;
    }
}
