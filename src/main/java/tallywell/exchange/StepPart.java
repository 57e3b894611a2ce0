package tallywell.exchange;

import java.io.IOException;
import java.util.List;
import tallywell.curve.Calibration;
import tallywell.curve.Model;
import tallywell.curve.Standard;
import tallywell.method.CalibrationRule;
import tallywell.method.Step;
import tallywell.plate.Well;
import tallywell.quantity.Unit;
import tallywell.workup.BlankMean;
import tallywell.workup.StepAnalysis;

/** One step in {@code results.json}: its blanks and its calibration. */
final class StepPart {
    private final StepAnalysis step;
    private final Json json;

    private StepPart(StepAnalysis step, Json json) {
        this.step = step;
        this.json = json;
    }

    static void write(StepAnalysis step, Json json) throws IOException {
        new StepPart(step, json).write();
    }

    private void write() throws IOException {
        Step said = step.step();
        json.number("number", step.number());
        json.text("analyte", said.analyte().name());
        json.number("molarMass", said.analyte().molarMass());
        json.textOrNull("signal", said.signal().species());
        json.number("wavelengthNm", said.signal().wavelengthNm());
        json.text("creep", said.creep().word());
        json.objects("blanks", step.blanks().values(), this::blank);
        json.object("calibration", this::calibration);
    }

    private void blank(BlankMean blank) throws IOException {
        json.textOrNull("group", blank.group());
        json.texts("wells", words(blank.wells()));
        json.number("meanDeltaA", blank.mean());
        json.number("sdDeltaA", blank.sd());
        json.texts("withoutTrigger", words(blank.untriggered()));
        json.number("meanDeltaAWithoutTrigger", blank.untriggeredMean());
    }

    private static List<String> words(List<Well> wells) {
        return wells.stream().map(Well::toString).toList();
    }

    private void calibration() throws IOException {
        CalibrationRule rule = step.step().calibration();
        json.text("by", rule.word());
        if (step.calibration().isPresent()) {
            curve(rule, step.calibration().get());
        }
    }

    private void curve(CalibrationRule rule, Calibration calibration) throws IOException {
        Model model = calibration.curve().model();
        json.text("model", model.word());
        json.text("formula", formula(model));
        json.text(
                "weights",
                rule instanceof CalibrationRule.ByStandards by ? by.weights().word() : "none");
        json.objects("parameters", names(model), name -> {
            json.text("name", name);
            json.number("value", calibration.curve().coefficient(names(model).indexOf(name)));
        });
        covariance(calibration);
        json.number("residualSd", calibration.residualSd());
        json.number("lowestLevel", calibration.lowest());
        json.number("highestLevel", calibration.highest());
        json.object("levelUnit", () -> unit(Unit.GRAM_PER_LITRE, json));
        json.beginArray("points");
        for (int i = 0; i < calibration.standards().size(); i++) {
            Well well = step.calibrationWells().get(i);
            Standard standard = calibration.standards().get(i);
            json.object(() -> point(calibration, well, standard));
        }
        json.endArray();
    }

    /** Rows of the covariance matrix of the parameters; none where the curve passes through all points by force. */
    private void covariance(Calibration calibration) throws IOException {
        json.beginArray("covariance");
        int size = calibration.fit().degreesOfFreedom() > 0 ? calibration.fit().size() : 0;
        for (int i = 0; i < size; i++) {
            double[] row = new double[size];
            for (int j = 0; j < size; j++) {
                row[j] = calibration.fit().cofactor(i, j) * calibration.fit().residualVariance();
            }
            json.numbers(row);
        }
        json.endArray();
    }

    private void point(Calibration calibration, Well well, Standard standard) throws IOException {
        json.text("well", well.toString());
        json.number("level", standard.level());
        json.number("netDeltaA", standard.response());
        json.number("weight", standard.weight());
        json.number("residual", calibration.residual(standard));
        json.number("levelBack", calibration.backCalculated(standard));
    }

    private static String formula(Model model) {
        return switch (model) {
            case LINE -> "y = a + b x";
            case LINE_THROUGH_ZERO -> "y = b x";
            case QUADRATIC -> "y = a + b x + c x^2";
            case LOGISTIC_4 -> "y = d + (a - d) / (1 + (x / c)^b)";
            case LOGISTIC_5 -> "y = d + (a - d) / (1 + (x / c)^b)^g";
        };
    }

    /** Names of the coefficients, in the order in which a curve has them. */
    private static List<String> names(Model model) {
        return switch (model) {
            case LINE -> List.of("a", "b");
            case LINE_THROUGH_ZERO -> List.of("b");
            case QUADRATIC -> List.of("a", "b", "c");
            case LOGISTIC_4 -> List.of("a", "b", "c", "d");
            case LOGISTIC_5 -> List.of("a", "b", "c", "d", "g");
        };
    }

    /** A unit as people print it and as other programs understand it. */
    static void unit(Unit unit, Json json) throws IOException {
        json.text("symbol", unit.symbol());
        json.text("ucum", Ucum.of(unit));
    }
}
