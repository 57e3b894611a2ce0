package tallywell.files;

import java.util.OptionalDouble;
import tallywell.method.Analyte;
import tallywell.method.AssayMethod;
import tallywell.method.BatchLimits;
import tallywell.method.CalibrationRule;
import tallywell.method.InputQuantity;
import tallywell.method.LightPath;
import tallywell.method.Limits;
import tallywell.method.ReportRule;
import tallywell.method.Signal;
import tallywell.method.Spread;
import tallywell.method.StaggerFrom;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.method.UncertaintyRule;
import tallywell.method.Volumes;
import tallywell.quantity.Numbers;

/**
 * Writes method files ({@code tallywell: method/1}); {@link MethodReader} reads the same method back. What the steps have
 * in common stands above them only where the format wants it there; a method of one step reads as people write it.
 */
public final class MethodWriter {
    /** The text of a method file. */
    public String text(AssayMethod method) {
        boolean single = method.steps().size() == 1;
        Step first = method.steps().get(0);
        StringBuilder text = new StringBuilder("tallywell: method/1\n");
        line(text, "id", method.id());
        line(text, "title", YamlText.quoted(method.title()));
        if (!method.source().isEmpty()) {
            line(text, "source", YamlText.quoted(method.source()));
        }
        line(text, "signal", single ? signal(first.signal()) : direction(first.signal()));
        text.append("steps:\n");
        for (Step step : method.steps()) {
            step(text, step, !single);
        }
        method.lightPath().ifPresent(path -> line(text, "light-path", lightPath(path)));
        line(text, "trigger-dilution", method.triggerDilution().word());
        line(text, "before", method.before().word());
        if (single) {
            line(text, "creep", creep(first));
        }
        line(text, "calibration", calibration(first.calibration()));
        line(text, "report", report(first.report()));
        if (single) {
            accept(text, "", first.limits());
        }
        uncertainty(text, method.uncertainty());
        if (!method.cautions().isEmpty()) {
            text.append("cautions:\n");
            method.cautions()
                    .forEach(caution ->
                            text.append("  - ").append(YamlText.quoted(caution)).append('\n'));
        }
        return text.toString();
    }

    private static void step(StringBuilder text, Step step, boolean full) {
        text.append("  - analyte: ").append(analyte(step.analyte())).append('\n');
        step.volumes().ifPresent(volumes -> line(text, "    volumes", volumes(volumes)));
        if (!step.timing().equals(Timing.NONE)) {
            line(text, "    timing", timing(step.timing()));
        }
        if (full) {
            line(text, "    signal", signal(step.signal()));
            line(text, "    creep", creep(step));
            line(text, "    calibration", calibration(step.calibration()));
            line(text, "    report", report(step.report()));
            accept(text, "    ", step.limits());
        }
    }

    private static void line(StringBuilder text, String key, String value) {
        text.append(key).append(": ").append(value).append('\n');
    }

    private static String analyte(Analyte analyte) {
        YamlText.Braces braces = new YamlText.Braces().add("name", YamlText.quoted(analyte.name()));
        analyte.formula().ifPresent(formula -> braces.add("formula", formula.toString()));
        boolean follows = analyte.formula().isPresent()
                && analyte.molarMass()
                        .equals(OptionalDouble.of(analyte.formula().get().molarMass()));
        if (!follows) {
            braces.add("molar-mass", analyte.molarMass(), " g/mol");
        }
        return braces.add("signal-per-analyte", Numbers.plain(analyte.signalPerAnalyte()))
                .toString();
    }

    private static String direction(Signal signal) {
        return new YamlText.Braces().add("direction", signal.direction().word()).toString();
    }

    private static String signal(Signal signal) {
        YamlText.Braces braces = new YamlText.Braces();
        if (!signal.species().isEmpty()) {
            braces.add("species", YamlText.quoted(signal.species()));
        }
        return braces.add("wavelength", signal.wavelengthNm(), " nm")
                .add("absorptivity", signal.absorptivity(), " L/mol/cm")
                .add("direction", signal.direction().word())
                .toString();
    }

    private static String volumes(Volumes volumes) {
        return new YamlText.Braces()
                .add("sample", Numbers.plain(volumes.sampleUl()) + " µL")
                .add("before-trigger", Numbers.plain(volumes.beforeTriggerUl()) + " µL")
                .add("after-trigger", Numbers.plain(volumes.afterTriggerUl()) + " µL")
                .toString();
    }

    private static String timing(Timing timing) {
        YamlText.Braces braces = new YamlText.Braces()
                .add("before", timing.beforeS(), " s")
                .add("after", timing.afterS(), " s")
                .add("trigger-to-first-read", Numbers.plain(timing.triggerToFirstReadS()) + " s")
                .add("stagger-per-column", Numbers.plain(timing.staggerPerColumnS()) + " s");
        if (timing.staggerFrom() != StaggerFrom.LEFT) {
            braces.add("stagger-from", timing.staggerFrom().word());
        }
        return braces.add("settle", Numbers.plain(timing.settleS()) + " s").toString();
    }

    private static String lightPath(LightPath path) {
        YamlText.Braces braces = new YamlText.Braces();
        if (path instanceof LightPath.Fixed fixed) {
            braces.add("beam", "fixed").add("length", Numbers.plain(fixed.lengthCm()) + " cm");
        } else if (path instanceof LightPath.Vertical vertical) {
            braces.add("beam", "vertical").add("well-area", Numbers.plain(vertical.wellAreaMm2()) + " mm2");
        }
        return braces.toString();
    }

    private static String creep(Step step) {
        return new YamlText.Braces()
                .add("correct", step.creep().word())
                .add("creep-belongs-to", step.creepOwner().word())
                .toString();
    }

    private static String calibration(CalibrationRule rule) {
        YamlText.Braces braces = new YamlText.Braces().add("by", rule.word());
        if (rule instanceof CalibrationRule.ByStandards standards) {
            braces.add("model", standards.model().word())
                    .add("weights", standards.weights().word());
        }
        return braces.toString();
    }

    private static String report(ReportRule report) {
        return new YamlText.Braces()
                .add("unit", report.unit().symbol())
                .add("solids", report.solids().symbol())
                .toString();
    }

    private static void accept(StringBuilder text, String indent, Limits limits) {
        StringBuilder inner = new StringBuilder();
        limit(
                inner,
                indent + "  delta-a",
                new YamlText.Braces().add("least", limits.deltaALeast(), "").add("most", limits.deltaAMost(), ""));
        limit(inner, indent + "  absorbance", new YamlText.Braces().add("most", limits.absorbanceMost(), ""));
        limit(inner, indent + "  blank-delta-a", new YamlText.Braces().add("most", limits.blankDeltaAMost(), ""));
        limit(
                inner,
                indent + "  replicates",
                new YamlText.Braces()
                        .addPercent("cv", limits.replicateCv())
                        .add("or-range", limits.replicateRange(), ""));
        limit(
                inner,
                indent + "  control-recovery",
                new YamlText.Braces()
                        .addPercent("least", limits.controlLeast())
                        .addPercent("most", limits.controlMost()));
        limit(
                inner,
                indent + "  spike-recovery",
                new YamlText.Braces().addPercent("least", limits.spikeLeast()).addPercent("most", limits.spikeMost()));
        batch(inner, indent, limits.batch());
        if (!inner.isEmpty()) {
            text.append(indent).append("accept:\n").append(inner);
        }
    }

    private static void batch(StringBuilder inner, String indent, BatchLimits limits) {
        limit(inner, indent + "  blank-sd", new YamlText.Braces().add("most", limits.blankSdMost(), ""));
        limit(
                inner,
                indent + "  standard-recovery",
                new YamlText.Braces()
                        .addPercent("least", limits.standardLeast())
                        .addPercent("most", limits.standardMost()));
        limit(
                inner,
                indent + "  slope",
                new YamlText.Braces().addPercent("least", limits.slopeLeast()).addPercent("most", limits.slopeMost()));
        limit(inner, indent + "  absorbance-left", new YamlText.Braces().add("least", limits.absorbanceLeft(), ""));
    }

    private static void uncertainty(StringBuilder text, UncertaintyRule rule) {
        if (rule.equals(UncertaintyRule.NONE)) {
            return;
        }
        text.append("uncertainty:\n");
        line(text, "  by", rule.stated().word());
        rule.inputs().forEach((quantity, spread) -> line(text, "  " + quantity.word(), spread(quantity, spread)));
        rule.validation()
                .ifPresent(validation -> line(
                        text,
                        "  validation",
                        new YamlText.Braces()
                                .add("precision", YamlText.percent(validation.precision()))
                                .add("bias", YamlText.percent(validation.bias()))
                                .toString()));
    }

    private static String spread(InputQuantity quantity, Spread spread) {
        String size = switch (quantity) {
            case MASS -> Numbers.plain(spread.halfWidth()) + " g";
            case CREEP -> Numbers.plain(spread.halfWidth());
            default -> YamlText.percent(spread.halfWidth());
        };
        String form = spread.shape() == Spread.Shape.RECTANGULAR ? "tolerance" : "standard";
        return new YamlText.Braces().add(form, size).toString();
    }

    private static void limit(StringBuilder text, String key, YamlText.Braces braces) {
        if (!braces.isEmpty()) {
            line(text, key, braces.toString());
        }
    }
}
