package tallywell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.method.PlannedRun;
import tallywell.method.Treatment;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;

/** Plan files ({@code tallywell: plan/1}), both ways. */
public final class PlanFile {
    private static final int MOST = 1536;

    /** The text of a plan file. */
    public String text(PlannedRun plan) {
        StringBuilder text = new StringBuilder("tallywell: plan/1\n");
        text.append("method: ").append(quoted(plan.method())).append('\n');
        text.append("layout: ").append(quoted(plan.layout())).append('\n');
        text.append("wells: ").append(plan.wells()).append('\n');
        text.append("samples:\n");
        for (PlannedRun.Slot each : plan.samples()) {
            text.append("  - {slot: ").append(each.slot());
            text.append(", sample: ").append(quoted(each.sample()));
            text.append(", dilution: ").append(each.dilution());
            each.volumeUl()
                    .ifPresent(volume -> text.append(", volume: ")
                            .append(Numbers.plain(volume))
                            .append(" µL"));
            if (each.treatment() != Treatment.NONE) {
                text.append(", treatment: ").append(each.treatment().word());
            }
            text.append("}\n");
        }
        text.append("prepared:").append(plan.prepared().isEmpty() ? " []" : "").append('\n');
        for (PlannedRun.Prepared each : plan.prepared()) {
            text.append("  - {word: ").append(each.word());
            text.append(", what: ").append(quoted(each.what())).append("}\n");
        }
        text.append("steps:\n");
        for (PlannedRun.StepPlan each : plan.steps()) {
            text.append("  - {analyte: ").append(quoted(each.analyte()));
            number(text, "sample", each.sampleUl(), "µL");
            number(text, "total", each.totalUl(), "µL");
            number(text, "after", each.afterS(), "s");
            text.append("}\n");
        }
        return text.toString();
    }

    private static void number(StringBuilder text, String key, OptionalDouble value, String unit) {
        value.ifPresent(number -> text.append(", ")
                .append(key)
                .append(": ")
                .append(Numbers.plain(number))
                .append(' ')
                .append(unit));
    }

    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.chars().forEach(c -> {
            if (c == '"' || c == '\\') {
                quoted.append('\\').append((char) c);
            } else if (c < ' ') {
                quoted.append(' ');
            } else {
                quoted.append((char) c);
            }
        });
        return quoted.append('"').toString();
    }

    /** Reads a plan file. */
    public PlannedRun read(Path path) throws InputException {
        YamlMapping top =
                YamlDocument.read(path, "plan/1", "method", "layout", "wells", "samples", "prepared", "steps");
        List<PlannedRun.Slot> samples = new ArrayList<>();
        for (YamlNode item : top.need("samples", "'samples:' as 'tallywell plan' writes them")
                .list("one sample an item")) {
            samples.add(slot(item));
        }
        return new PlannedRun(
                top.need("method", "'method: \"l-malic-340\"'").text(),
                top.need("layout", "'layout: \"name of the layout\"'").text(),
                top.need("wells", "'wells: 96'").count(MOST),
                samples,
                prepared(top),
                steps(top));
    }

    private static List<PlannedRun.Prepared> prepared(YamlMapping top) throws InputException {
        List<PlannedRun.Prepared> prepared = new ArrayList<>();
        if (top.has("prepared")) {
            for (YamlNode item : top.need("prepared", "").list("one standard or control an item")) {
                YamlMapping keys = item.mapping("a standard or control, such as {word: a, what: \"0.1 g/L\"}")
                        .only("word", "what");
                prepared.add(new PlannedRun.Prepared(
                        keys.need("word", "'word: a'").text(),
                        keys.need("what", "'what: \"0.1 g/L\"'").text()));
            }
        }
        return prepared;
    }

    private static List<PlannedRun.StepPlan> steps(YamlMapping top) throws InputException {
        List<PlannedRun.StepPlan> steps = new ArrayList<>();
        if (top.has("steps")) {
            for (YamlNode item : top.need("steps", "").list("one step an item")) {
                YamlMapping keys = item.mapping("a step, such as {analyte: \"L-malic acid\", sample: 20 µL}")
                        .only("analyte", "sample", "total", "after");
                steps.add(new PlannedRun.StepPlan(
                        keys.need("analyte", "'analyte: \"L-malic acid\"'").text(),
                        quantity(keys, "sample", Kind.VOLUME),
                        quantity(keys, "total", Kind.VOLUME),
                        quantity(keys, "after", Kind.TIME)));
            }
        }
        return steps;
    }

    private static OptionalDouble quantity(YamlMapping keys, String key, Kind kind) throws InputException {
        return keys.has(key) ? OptionalDouble.of(keys.need(key, "").positive(kind)) : OptionalDouble.empty();
    }

    private static PlannedRun.Slot slot(YamlNode item) throws InputException {
        YamlMapping keys = item.mapping("a sample, such as {slot: 1, sample: \"Tank 1\", dilution: 10}")
                .only("slot", "sample", "dilution", "volume", "treatment");
        YamlNode dilution = keys.need("dilution", "'dilution: 10'");
        try {
            return new PlannedRun.Slot(
                    keys.need("slot", "'slot: 1'").count(MOST),
                    keys.need("sample", "'sample: \"Tank 1\"'").text(),
                    Dilution.parse(dilution.text()),
                    keys.has("volume")
                            ? OptionalDouble.of(keys.need("volume", "").positive(Kind.VOLUME))
                            : OptionalDouble.empty(),
                    keys.has("treatment") ? keys.need("treatment", "").word(Treatment.class) : Treatment.NONE);
        } catch (IllegalArgumentException e) {
            throw dilution.wrong(e);
        }
    }
}
