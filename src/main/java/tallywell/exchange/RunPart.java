package tallywell.exchange;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tallywell.assess.Assessment;
import tallywell.assess.Check;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.method.AssayMethod;
import tallywell.notice.Notice;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.report.InputFile;
import tallywell.report.Report;
import tallywell.workup.Assay;

/** One run in {@code results.json}. */
final class RunPart {
    private final Report report;
    private final Assay assay;
    private final Json json;

    private RunPart(Report report, Json json) {
        this.report = report;
        this.assay = report.analysis().assay();
        this.json = json;
    }

    static void write(Report report, Json json) throws IOException {
        RunPart part = new RunPart(report, json);
        part.identity();
        json.object("acceptance", part::acceptance);
        json.objects("steps", report.analysis().steps(), step -> StepPart.write(step, json));
        part.results();
        part.choices();
        json.texts(
                "notices",
                report.analysis().notices().stream().map(Notice::toString).toList());
        json.objects("inputs", report.provenance().inputs(), part::input);
    }

    private void identity() throws IOException {
        json.text("run", report.run());
        json.textOrNull("title", assay.title());
        json.textOrNull("plate", assay.plate());
        json.textOrNull("operator", assay.operator());
        AssayMethod method = assay.method();
        json.object("method", () -> {
            json.text("id", method.id());
            json.text("title", method.title());
            json.textOrNull("source", method.source());
        });
        PlateFormat format = assay.layout().format();
        json.object("layout", () -> {
            json.text("name", assay.layout().name());
            json.number("rows", format.rows());
            json.number("columns", format.columns());
        });
    }

    private void acceptance() throws IOException {
        Assessment assessment = report.assessment();
        json.text("state", Acceptance.state(assessment).words());
        json.text("sentence", assessment.sentence());
        json.objects("checks", assessment.checks(), this::check);
        json.objects("observations", assessment.observations(), this::check);
    }

    private void check(Check check) throws IOException {
        json.text("name", check.name());
        json.textOrNull("limit", check.limit());
        json.textOrNull("found", check.found());
        json.text("state", check.state().words());
        json.textOrNull("source", check.source());
    }

    private void results() throws IOException {
        json.beginArray("results");
        for (Judgement judgement : report.assessment().judgements()) {
            json.object(() -> ResultPart.write(report, judgement, json));
        }
        for (JudgedDifference judged : report.assessment().differences()) {
            json.object(() -> ResultPart.write(report, judged, json));
        }
        json.endArray();
    }

    /** What a person chose, one entry a reason. */
    private void choices() throws IOException {
        json.objects("exclusions", grouped(assay.exclusions()).entrySet(), each -> {
            json.texts("wells", each.getValue());
            json.text("reason", each.getKey().reason());
            json.textOrNull("by", each.getKey().by());
        });
        json.objects("finishedFrom", grouped(assay.finishedFrom()).entrySet(), each -> {
            json.texts("wells", each.getValue());
            json.number("timeS", each.getKey().timeS());
            json.text("reason", each.getKey().reason());
            json.textOrNull("by", each.getKey().by());
        });
    }

    private static <T> Map<T, List<String>> grouped(Map<Well, T> byWell) {
        Map<T, List<String>> grouped = new LinkedHashMap<>();
        new TreeMap<>(byWell)
                .forEach((well, each) ->
                        grouped.computeIfAbsent(each, key -> new ArrayList<>()).add(well.toString()));
        return grouped;
    }

    private void input(InputFile input) throws IOException {
        json.text("role", input.role());
        json.text("name", input.name());
        json.text("sha256", input.sha256());
    }
}
