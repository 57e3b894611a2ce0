package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.budget.Basis;
import tallywell.budget.ResultBudget;
import tallywell.curve.Calibration;
import tallywell.curve.Line;
import tallywell.method.AssayMethod;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.LightPath;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.method.UncertaintyRule;
import tallywell.method.Volumes;
import tallywell.plate.Content;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.report.UncertaintyWords;
import tallywell.trace.Change;
import tallywell.trace.FinishedPart;
import tallywell.workup.Analysis;
import tallywell.workup.BlankMean;
import tallywell.workup.DifferenceResult;
import tallywell.workup.IndicatorLeft;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;
import tallywell.workup.WellTrace;

/** Shows the sum of a result: each formula with its own numbers, from the readings to the value, line by line. */
public final class Sum {
    private static final int A = 6;
    private static final int U_DIGITS = 3;
    private static final double PERCENT = 100;
    private static final int DIGITS = 6;
    private static final int SLOPE_DIGITS = 8;

    private final AssayMethod method;
    private final StepAnalysis analysis;
    private final Step step;
    private final Shown shown;
    private final List<String> lines = new ArrayList<>();

    private Sum(AssayMethod method, StepAnalysis analysis, Shown shown) {
        this.method = method;
        this.analysis = analysis;
        this.step = analysis.step();
        this.shown = shown;
    }

    /** The sum of a result as lines of text, with where its uncertainty comes from if it has one; empty without an analysis. */
    public static List<String> of(Worked worked, Result result, Shown shown) {
        if (worked.analysis().isEmpty()) {
            return List.of();
        }
        if (result.role().equals(DifferenceResult.ROLE)) {
            return worked.assessment()
                    .map(assessment -> DifferenceSum.of(assessment, result, shown))
                    .orElse(List.of());
        }
        Analysis analysis = worked.analysis().get();
        Sum sum = new Sum(analysis.assay().method(), analysis.stepOf(result), shown);
        sum.write(result);
        // The result of a judgement has flags that the analysis knew nothing of.
        worked.assessment().stream()
                .flatMap(assessment -> assessment.judgements().stream())
                .filter(each -> each.result().step() == result.step()
                        && each.result().wells().equals(result.wells()))
                .flatMap(each -> each.budget().stream())
                .findFirst()
                .ifPresent(sum::uncertainty);
        return List.copyOf(sum.lines);
    }

    private void uncertainty(ResultBudget budget) {
        String unit = " " + budget.result().unit();
        lines.add("");
        boolean scatterOnly = budget.basis() == Basis.SCATTER_ONLY;
        lines.add("± U (" + (scatterOnly ? Basis.SCATTER_ONLY.word() : "95 %") + ") = k · u = "
                + shown.rounded(budget.coverageFactor(), U_DIGITS) + " · "
                + shown.rounded(budget.standardUncertainty(), U_DIGITS) + " = "
                + shown.rounded(budget.expandedUncertainty(), U_DIGITS) + unit);
        if (budget.stated() == UncertaintyRule.Stated.VALIDATION) {
            lines.add("  u is from the validation of the method");
            return;
        }
        List<String> shares = new ArrayList<>();
        budget.shares().forEach((label, part) -> shares.add(label + " " + shown.fixed(PERCENT * part, 0) + " %"));
        lines.add("  parts of u²: " + String.join(", ", shares) + UncertaintyWords.missing(budget.unstated()));
    }

    private void write(Result result) {
        lines.add(result.name() + ", " + result.analyte());
        List<WellResult> wells = analysis.where(well -> result.wells().contains(well.well()));
        for (WellResult well : wells) {
            lines.add("");
            if (well.used()) {
                well(well);
            } else {
                lines.add(well.well() + "  excluded, does not count");
            }
        }
        lines.add("");
        lines.add(mean(result, wells));
    }

    private String mean(Result result, List<WellResult> wells) {
        if (result.value().isEmpty()) {
            return "No value: not every well that counts has one.";
        }
        List<String> values = wells.stream()
                .filter(WellResult::used)
                .filter(well -> well.value().isPresent())
                .map(well -> shown.rounded(well.value().orElseThrow(), DIGITS))
                .toList();
        String total = shown.rounded(result.value().getAsDouble(), DIGITS) + " " + result.unit();
        return values.size() == 1
                ? "Value = " + total
                : "Value = mean of the wells = (" + String.join(" + ", values) + ") / " + values.size() + " = " + total;
    }

    private void well(WellResult well) {
        WellTrace trace = well.trace();
        lines.add(well.well() + "  " + trace.content().role().replace('-', ' ') + " "
                + trace.content().word());
        if (trace.change().isEmpty() || well.deltaA().isEmpty()) {
            lines.add("  no ΔA: "
                    + String.join(
                            "; ", well.flags().stream().map(flag -> flag.text()).toList()));
            return;
        }
        deltaA(trace, trace.change().get());
        Optional.ofNullable(analysis.indicator().get(well.well())).ifPresent(this::indicator);
        if (well.netDeltaA().isPresent()) {
            net(well);
            value(well);
        }
    }

    private void deltaA(WellTrace trace, Change change) {
        double before = trace.before().orElseThrow();
        double after = change.after();
        lines.add("  A before = " + before(trace) + " = " + shown.fixed(before, A));
        lines.add("  A after = " + after(trace, change) + " = " + shown.fixed(after, A));
        String corrected = shown.fixed(before, A);
        String formula = "A before";
        if (trace.beforeFactor() != 1) {
            corrected += " · " + shown.rounded(trace.beforeFactor(), DIGITS);
            formula = "A before · V before / V after";
        }
        boolean rises = step.signal().direction() == Direction.RISES;
        String deltaA = shown.fixed(trace.deltaA().orElseThrow(), A);
        lines.add(
                rises
                        ? "  ΔA = A after − " + formula + " = " + shown.fixed(after, A) + " − " + corrected + " = "
                                + deltaA
                        : "  ΔA = " + formula + " − A after = " + corrected + " − " + shown.fixed(after, A) + " = "
                                + deltaA);
        trace.path()
                .ifPresent(path -> lines.add("  of which each is taken times "
                        + shown.rounded(path.scale(), DIGITS) + ", " + shown.rounded(path.plannedCm(), DIGITS)
                        + " cm over its measured "
                        + shown.rounded(path.cm(), DIGITS) + " cm"));
    }

    private void indicator(IndicatorLeft left) {
        lines.add("  indicator left = A before of the blanks − plate and reagents ("
                + left.backgroundFrom().text()
                + ") − used before the trigger − used until the end = "
                + shown.fixed(left.supplied() + left.background(), A) + " − " + shown.fixed(left.background(), A)
                + " − " + shown.fixed(left.usedBefore(), A) + " − " + shown.fixed(left.used(), A) + " = "
                + shown.fixed(left.left(), A) + (left.isLow() ? ", less than " : ", at least ")
                + shown.plain(left.least()) + (left.isLow() ? ": it may have run out" : ""));
    }

    private String before(WellTrace trace) {
        int readings = trace.readings().baseline().size();
        if (readings == 0) {
            return "A after of the step before, carried to this trigger";
        }
        if (readings == 1) {
            return "the reading before the trigger";
        }
        return switch (method.before()) {
            case MEAN -> "mean of " + readings + " readings";
            case LINE -> "line through " + readings + " readings, at the trigger";
            case LAST -> "the last reading before the trigger";
        };
    }

    private String after(WellTrace trace, Change change) {
        if (change.finished().isPresent() && step.creep() != Creep.NONE) {
            FinishedPart part = change.finished().get();
            double from = trace.readings().after().get(part.from()).timeS() / 60;
            if (Math.abs(part.intercept() - change.after()) < 1e-12) {
                return "line through " + part.readings() + " readings from " + shown.fixed(from, 1)
                        + " min on (creep " + shown.fixed(60_000 * part.slopePerS(), 2)
                        + " mA/min), carried back to the trigger";
            }
            return "end of the fitted progress curve, at the trigger";
        }
        return "the reading after the reaction";
    }

    private void net(WellResult well) {
        BlankMean blank = analysis.blanks().get(well.trace().group());
        double net = well.netDeltaA().orElseThrow();
        double deltaA = well.deltaA().orElseThrow();
        if (blank != null && Math.abs(deltaA - blank.mean() - net) < 1e-9) {
            lines.add("  net ΔA = ΔA − mean ΔA of " + blank.wells().size() + " blanks = " + shown.fixed(deltaA, A)
                    + " − " + shown.fixed(blank.mean(), A) + " = " + shown.fixed(net, A));
            return;
        }
        String what = "  net ΔA = ΔA − ΔA of its sample blanks − what the trigger adds to a blank";
        lines.add(what + " = " + shown.fixed(deltaA, A) + " − " + shown.fixed(deltaA - net, A) + " = "
                + shown.fixed(net, A));
    }

    private void value(WellResult well) {
        if (well.concentration().isEmpty()) {
            lines.add("  no concentration: net ΔA is outside the standards; nothing is extrapolated");
            return;
        }
        double net = well.netDeltaA().orElseThrow();
        double c = well.concentration().getAsDouble();
        Optional<Sample> sample = well.trace().sample();
        OptionalDouble own = sample.isPresent() ? sample.get().volumeUl() : OptionalDouble.empty();
        if (analysis.calibration().isPresent()) {
            byCurve(analysis.calibration().get(), net, c, own);
        } else {
            byAbsorptivity(net, c, own);
        }
        Dilution dilution = well.content() instanceof Content.Control control
                ? control.dilution()
                : sample.map(Sample::dilution).orElse(Dilution.NONE);
        original(well, c * dilution.factor(), dilution, sample);
    }

    private void byCurve(Calibration calibration, double net, double c, OptionalDouble own) {
        double scale = own.isPresent() && step.volumes().isPresent()
                ? step.volumes().get().sampleUl() / own.getAsDouble()
                : 1;
        double level = c / scale;
        if (calibration.curve() instanceof Line line) {
            String top = line.intercept() == 0
                    ? shown.fixed(net, A)
                    : "(" + shown.fixed(net, A) + " − " + bracketed(line.intercept()) + ")";
            String a = line.intercept() == 0 ? "" : "a = " + shown.fixed(line.intercept(), A) + ", ";
            lines.add("  calibration: "
                    + CalibrationFormula.equation(calibration.curve().model()) + ", " + a + "b = "
                    + shown.rounded(line.slope(), SLOPE_DIGITS) + " L/g, in the solution pipetted");
            lines.add("  c = " + (line.intercept() == 0 ? "net ΔA / b = " : "(net ΔA − a) / b = ") + top + " / "
                    + shown.rounded(line.slope(), SLOPE_DIGITS) + " = " + shown.rounded(level, DIGITS) + " g/L");
        } else {
            lines.add("  c = level at which the " + calibration.curve().model().word() + " curve gives "
                    + shown.fixed(net, A) + " = " + shown.rounded(level, DIGITS) + " g/L");
        }
        if (scale != 1) {
            lines.add("  c with its own volume = c · v method / v = " + shown.rounded(level, DIGITS) + " · "
                    + shown.rounded(scale, DIGITS) + " = " + shown.rounded(c, DIGITS) + " g/L");
        }
    }

    private String bracketed(double value) {
        String text = shown.fixed(value, A);
        return value < 0 ? "(" + text.replace('-', '−') + ")" : text;
    }

    private void byAbsorptivity(double net, double c, OptionalDouble own) {
        Volumes volumes = step.volumes().orElseThrow();
        LightPath path = method.lightPath().orElseThrow();
        double total = volumes.afterTriggerUl();
        double v = own.orElse(volumes.sampleUl());
        lines.add("  c = net ΔA · V · M / (ε · d · v · s) = " + shown.fixed(net, A) + " · " + shown.plain(total)
                + " µL · "
                + shown.rounded(step.analyte().molarMass().orElseThrow(), DIGITS) + " g/mol / ("
                + shown.plain(step.signal().absorptivity().orElseThrow()) + " L/mol/cm · "
                + shown.rounded(path.cm(total), DIGITS) + " cm · " + shown.plain(v) + " µL · "
                + shown.plain(step.analyte().signalPerAnalyte()) + ") = " + shown.rounded(c, DIGITS) + " g/L");
        if (path instanceof LightPath.Measured) {
            lines.add("  with d, the length that every ΔA is stated for");
        }
        if (path instanceof LightPath.Vertical vertical) {
            lines.add("  with d = V / well area = " + shown.plain(total) + " mm³ / "
                    + shown.plain(vertical.wellAreaMm2()) + " mm²");
        }
    }

    private void original(WellResult well, double undiluted, Dilution dilution, Optional<Sample> sample) {
        if (dilution.factor() != 1) {
            lines.add("  c · dilution = " + shown.rounded(undiluted / dilution.factor(), DIGITS) + " · "
                    + shown.plain(dilution.factor()) + " = " + shown.rounded(undiluted, DIGITS) + " g/L");
        }
        String result = shown.rounded(well.value().orElseThrow(), DIGITS) + " " + well.unit();
        Optional<Sample.Extraction> solid = sample.flatMap(Sample::solid);
        if (solid.isPresent()) {
            lines.add("  value = c · dilution · extract / mass = " + shown.rounded(undiluted, DIGITS) + " g/L · "
                    + shown.plain(solid.get().extractMl()) + " mL / "
                    + shown.plain(solid.get().massG()) + " g = "
                    + result);
        } else if (well.unit().kind() != Kind.CONCENTRATION || well.unit().factor() != 1) {
            lines.add("  value = " + shown.rounded(undiluted, DIGITS) + " g/L = " + result);
        } else {
            lines.add("  value = " + result);
        }
    }
}
