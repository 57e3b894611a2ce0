package tallywell.task;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.Bench;
import tallywell.method.CalibrationRule;
import tallywell.method.Difference;
import tallywell.method.Hazard;
import tallywell.method.LightPath;
import tallywell.method.Reaction;
import tallywell.method.SignalFormula;
import tallywell.method.Step;
import tallywell.method.TriggerDilution;
import tallywell.method.Volumes;
import tallywell.notice.InputException;
import tallywell.plan.WorkingRange;
import tallywell.quantity.Numbers;

/** Checks a method file and says what it comes to: factor, working range, and what each setting does to a result. */
public final class CheckMethod {
    private static final int DIGITS = 4;

    /**
     * A method in words.
     *
     * @throws InputException if the file is no sound method
     */
    public String show(Path file) throws InputException {
        AssayMethod method = new MethodReader().read(file);
        StringBuilder text = new StringBuilder();
        line(text, method.id() + ": " + method.title());
        line(text, method.source().isEmpty() ? "source: not stated" : "source: " + method.source());
        for (int i = 0; i < method.steps().size(); i++) {
            step(method, i, text);
        }
        differences(method, text);
        bench(method, text);
        hazards(method, text);
        return text.toString();
    }

    private static void step(AssayMethod method, int index, StringBuilder text) {
        Step step = method.steps().get(index);
        line(text, "");
        line(
                text,
                "step " + (index + 1) + ": " + step.analyte().name()
                        + step.analyte()
                                .formula()
                                .map(formula -> ", " + formula)
                                .orElse("")
                        + (step.analyte().molarMass().isPresent()
                                ? ", " + rounded(step.analyte().molarMass().getAsDouble(), 6) + " g/mol"
                                : ", molar mass not stated"));
        for (Reaction reaction : step.chemistry().reactions()) {
            line(text, "  reaction: " + reaction.text());
        }
        line(
                text,
                "  signal: "
                        + (step.signal().species().isEmpty()
                                ? "not named"
                                : step.signal().species())
                        + ", " + rounded(step.analyte().signalPerAnalyte(), DIGITS) + " for each molecule, "
                        + step.signal().direction().word()
                        + (step.chemistry().reactions().isEmpty()
                                ? "; no reactions stated, so not checked"
                                : "; agrees with the reactions"));
        range(method, step, text);
        settings(method, step, text);
        MethodSettings.of(method, step).forEach(line -> line(text, "    " + line));
    }

    private static void range(AssayMethod method, Step step, StringBuilder text) {
        WorkingRange range = WorkingRange.of(method, step, Optional.empty());
        if (range.factor().isEmpty()) {
            line(text, "  factor: cannot be told without volumes, absorptivity, molar mass and light path");
            return;
        }
        double factor = range.factor().getAsDouble();
        line(text, "  factor: " + rounded(factor, 6) + " g/L for a net ΔA of 1, at dilution 1 (V·M/(ε·d·v·s))");
        OptionalDouble low = range.lowest();
        OptionalDouble high = range.highest();
        if (low.isPresent() || high.isPresent()) {
            line(
                    text,
                    "  working range in the sample at dilution 1: "
                            + (low.isPresent() ? rounded(low.getAsDouble(), DIGITS) : "no lower limit") + " to "
                            + (high.isPresent() ? rounded(high.getAsDouble(), DIGITS) : "no upper limit")
                            + " g/L (window of net ΔA times the factor"
                            + (step.calibration() instanceof CalibrationRule.ByAbsorptivity
                                    ? ")"
                                    : "; the standards of the layout bound it, too)"));
        } else {
            line(text, "  working range: not stated; expected 'delta-a: {least: ..., most: ...}' under 'accept'");
        }
    }

    private static void settings(AssayMethod method, Step step, StringBuilder text) {
        boolean constants = step.calibration() instanceof CalibrationRule.ByAbsorptivity;
        line(
                text,
                "  calibration by " + step.calibration().word() + ": "
                        + (constants
                                ? "absorptivity, light path and volumes make the result"
                                : "the standards make the result; absorptivity and light path serve only to plan"));
        if (constants) {
            line(text, "    absorptivity 1 % higher: results 0.990 times");
            step.volumes().ifPresent(volumes -> sensitivity(method, volumes, text));
        }
        step.volumes()
                .ifPresent(volumes -> line(
                        text,
                        "    1 µL more sample than said: results "
                                + Numbers.fixed((volumes.sampleUl() + 1) / volumes.sampleUl(), 3) + " times"
                                + (constants ? "" : ", unless the standards get it too")));
        line(
                text,
                "    creep " + step.creep().word() + ": "
                        + switch (step.creep()) {
                            case NONE ->
                                "a rise of 0.001 a minute over " + Numbers.brief(minutes(step), 3)
                                        + " min stays in the result" + shift(method, step, 0.001 * minutes(step));
                            case EXTRAPOLATE ->
                                "the line through the finished part is carried back to the trigger; read at least three times after it";
                            case PROGRESS_CURVE -> "a rate law is fitted; read at least every half minute";
                        });
        if (method.triggerDilution() == TriggerDilution.IGNORE
                && method.lightPath()
                        .filter(path -> path instanceof LightPath.Fixed)
                        .isPresent()) {
            step.volumes()
                    .ifPresent(volumes -> line(
                            text,
                            "    trigger-dilution ignore: the volume goes from "
                                    + Numbers.plain(volumes.beforeTriggerUl())
                                    + " to " + Numbers.plain(volumes.afterTriggerUl()) + " µL, so "
                                    + Numbers.fixed(100 * (1 - volumes.beforeTriggerUl() / volumes.afterTriggerUl()), 2)
                                    + " % of A before goes into ΔA; the blank takes off what both have"));
        }
        if (step.signalFormula() == SignalFormula.EQUILIBRIUM_COUPLED) {
            line(
                    text,
                    "    signal-formula equilibrium-coupled: E = (A2 - A0) - (A1 - A0)²/(A2 - A0)"
                            + (step.reactants().mmolPerL().isEmpty()
                                    ? ""
                                    : ", times (C - A2 + A0)/(C - A1 + A0) for each of coupled-to,")
                            + " stands for ΔA; two triggers, three readings");
        }
        step.report()
                .as()
                .ifPresent(form -> line(
                        text,
                        "    reported as " + form.name() + ": results "
                                + rounded(
                                        form.massRatio(
                                                step.analyte().molarMass().orElseThrow()),
                                        6) + " times those of "
                                + step.analyte().name()));
        step.standard()
                .ifPresent(substance -> line(
                        text,
                        "    standards from " + substance.form().name() + ": weigh "
                                + rounded(
                                        substance.weighedPerAnalyte(
                                                step.analyte().molarMass().orElseThrow()),
                                        6)
                                + " g for each g of " + step.analyte().name()));
    }

    private static void sensitivity(AssayMethod method, Volumes volumes, StringBuilder text) {
        boolean vertical = method.lightPath()
                .filter(path -> path instanceof LightPath.Vertical)
                .isPresent();
        boolean measured = method.lightPath()
                .filter(path -> path instanceof LightPath.Measured)
                .isPresent();
        line(
                text,
                vertical
                        ? "    well area 1 % larger: results 1.010 times; the total volume cancels"
                        : "    path 1 % longer: results 0.990 times; total volume 1 % larger: 1.010 times");
        if (measured) {
            line(text, "    light path: measured well by well; the well area is for plans, and cancels from results");
        }
        if (vertical || measured) {
            line(
                    text,
                    (measured ? "    planned light path: " : "    light path: ")
                            + Numbers.fixed(method.lightPath().orElseThrow().cm(volumes.afterTriggerUl()), 3)
                            + " cm at " + Numbers.plain(volumes.afterTriggerUl()) + " µL");
        }
    }

    private static double minutes(Step step) {
        return step.timing().afterS().orElse(600) / 60;
    }

    private static String shift(AssayMethod method, Step step, double deltaA) {
        OptionalDouble factor = WorkingRange.of(method, step, Optional.empty()).factor();
        return factor.isPresent()
                ? String.format(Locale.ROOT, ", %s g/L at dilution 1", rounded(factor.getAsDouble() * deltaA, 3))
                : "";
    }

    private static void differences(AssayMethod method, StringBuilder text) {
        for (Difference each : method.differences()) {
            double measured = method.steps().stream()
                    .filter(step -> step.analyte().name().equals(each.of()))
                    .findFirst()
                    .flatMap(step -> step.analyte().molarMass().stream().boxed().findFirst())
                    .orElseThrow();
            line(text, "");
            line(
                    text,
                    "by difference: " + each.analyte().name() + " = "
                            + rounded(
                                    each.analyte().molarMass().orElseThrow()
                                            / measured
                                            / each.released()
                                            / each.yield(),
                                    6)
                            + " · (" + each.of() + " total - free)");
            each.freeOf()
                    .ifPresent(content -> line(
                            text,
                            "  free-of " + content + ": where the content may lie on either side of it, that is said"));
        }
    }

    private static void bench(AssayMethod method, StringBuilder text) {
        if (!method.bench().dilutions().isEmpty()) {
            line(text, "");
            for (Bench.Usual usual : method.bench().dilutions()) {
                line(text, "usual: " + usual.name() + ", " + usual.content() + ", dilution " + usual.dilution());
            }
        }
    }

    /** What the substances do, then what the method itself says. */
    private static void hazards(AssayMethod method, StringBuilder text) {
        if (method.bench().hazards().isEmpty() && method.cautions().isEmpty()) {
            return;
        }
        line(text, "");
        for (Hazard each : method.bench().hazards()) {
            line(text, "caution: " + each.text() + " (" + each.source() + ")");
        }
        for (String each : method.cautions()) {
            line(text, "caution: " + each + " (the method)");
        }
        if (method.cautions().stream().noneMatch(each -> each.contains("safety data sheets"))) {
            line(
                    text,
                    "caution: local rules, the people qualified for them, and the suppliers' safety data sheets come first");
        }
    }

    private static String rounded(double value, int digits) {
        return Numbers.brief(value, digits);
    }

    private static void line(StringBuilder text, String line) {
        text.append(line).append('\n');
    }
}
