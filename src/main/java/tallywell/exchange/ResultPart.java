package tallywell.exchange;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import tallywell.assess.Advice;
import tallywell.assess.BasisWords;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.budget.Basis;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.ResultBudget;
import tallywell.method.Sample;
import tallywell.plate.Well;
import tallywell.report.Report;
import tallywell.workup.Result;

/** One result in {@code results.json}. */
final class ResultPart {
    private final Report report;
    private final Json json;

    private ResultPart(Report report, Json json) {
        this.report = report;
        this.json = json;
    }

    static void write(Report report, Judgement judgement, Json json) throws IOException {
        ResultPart part = new ResultPart(report, json);
        Optional<ResultBudget> budget = judgement.budget();
        part.found(judgement.result());
        part.uncertainty(
                number(budget, ResultBudget::standardUncertainty),
                number(budget, ResultBudget::expandedUncertainty),
                number(budget, ResultBudget::coverageFactor),
                number(budget, ResultBudget::degreesOfFreedom),
                BasisWords.of(judgement),
                budget.map(ResultBudget::shares).orElse(Map.of()));
        part.judged(judgement.result(), judgement.verdict(), judgement.advice());
        json.number("atMost", OptionalDouble.empty());
        json.textOrNull("adviceFor", "");
    }

    static void write(Report report, JudgedDifference judged, Json json) throws IOException {
        ResultPart part = new ResultPart(report, json);
        Result row = judged.row();
        Optional<DifferenceBudget> budget = judged.budget();
        part.found(row);
        part.uncertainty(
                number(budget, DifferenceBudget::standardUncertainty),
                number(budget, DifferenceBudget::expandedUncertainty),
                number(budget, DifferenceBudget::coverageFactor),
                number(budget, DifferenceBudget::degreesOfFreedom),
                BasisWords.of(judged),
                Map.of());
        part.judged(row, judged.verdict(), judged.advice());
        json.number("atMost", judged.atMost());
        json.textOrNull("adviceFor", judged.adviceFor().word());
    }

    private static <T> OptionalDouble number(Optional<T> budget, ToDoubleFunction<T> what) {
        return budget.isPresent() ? OptionalDouble.of(what.applyAsDouble(budget.get())) : OptionalDouble.empty();
    }

    private void found(Result result) throws IOException {
        Optional<Sample> sample = result.slot().isPresent()
                ? report.analysis().assay().samples().in(result.slot().getAsInt())
                : Optional.empty();
        json.text("role", result.role());
        json.number(
                "slot",
                result.slot().isPresent() ? OptionalDouble.of(result.slot().getAsInt()) : OptionalDouble.empty());
        json.textOrNull("id", sample.map(Sample::id).orElse(""));
        json.text("sample", result.name());
        json.textOrNull("note", sample.map(Sample::note).orElse(""));
        json.text("analyte", result.analyte());
        json.number("step", result.step());
        json.texts("wells", result.wells().stream().map(Well::toString).toList());
        json.number("value", result.value());
        json.object("unit", () -> StepPart.unit(result.unit(), json));
        json.number("n", result.n());
        json.number("cvPercent", result.cvPercent());
        json.number("netDeltaA", result.netDeltaA());
        json.number("dilution", result.dilution().factor());
        json.number("valueAll", result.valueAll());
        json.number("assigned", result.assigned());
        json.number("recoveryPercent", result.recoveryPercent());
    }

    /** Infinitely many degrees of freedom, which JSON cannot say, are null. */
    private void uncertainty(
            OptionalDouble u,
            OptionalDouble expanded,
            OptionalDouble k,
            OptionalDouble freedom,
            Optional<Basis> basis,
            Map<String, Double> shares)
            throws IOException {
        json.number("u", u);
        json.number("U", expanded);
        json.number("k", k);
        json.number(
                "degreesOfFreedom",
                freedom.isPresent() && freedom.getAsDouble() <= Double.MAX_VALUE ? freedom : OptionalDouble.empty());
        json.textOrNull("uBasis", basis.map(Basis::word).orElse(""));
        json.objects("budget", shares.entrySet(), share -> {
            json.text("source", share.getKey());
            json.number("share", share.getValue());
        });
    }

    private void judged(Result result, Verdict verdict, Advice advice) throws IOException {
        json.text("verdict", verdict.word());
        json.objects("flags", result.flags(), flag -> {
            json.text("word", flag.word());
            json.text("text", flag.text());
        });
        json.textOrNull("advice", advice.word());
    }
}
