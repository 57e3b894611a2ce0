package tallywell.files;

import java.util.List;
import java.util.stream.Collectors;
import tallywell.method.PathReading;
import tallywell.method.Run;
import tallywell.method.Spread;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/** Writes run files ({@code tallywell: run/1}); {@link RunReader} reads the same run back, line numbers apart. */
public final class RunWriter {
    private static final double PERCENT = 100;

    /** The text of a run file. */
    public String text(Run run) {
        StringBuilder text = new StringBuilder("tallywell: run/1\n");
        optional(text, "title", run.title());
        text.append("method: ").append(YamlText.quoted(run.method())).append('\n');
        text.append("layout: ").append(YamlText.quoted(run.layout())).append('\n');
        run.samples()
                .ifPresent(samples -> text.append("samples: ")
                        .append(YamlText.quoted(samples))
                        .append('\n'));
        optional(text, "operator", run.operator());
        if (!run.readings().isEmpty()) {
            text.append("readings:\n");
            run.readings().forEach(reading -> item(text, reading(reading)));
        }
        if (!run.exclusions().isEmpty()) {
            text.append("exclude:\n");
            run.exclusions()
                    .forEach(each -> item(
                            text,
                            said(new YamlText.Braces().add("wells", wells(each.wells())), each.reason(), each.by())));
        }
        if (!run.finishedFrom().isEmpty()) {
            text.append("finished-from:\n");
            run.finishedFrom()
                    .forEach(each -> item(
                            text,
                            said(
                                    new YamlText.Braces()
                                            .add("wells", wells(each.wells()))
                                            .add("time", seconds(each.timeS())),
                                    each.reason(),
                                    each.by())));
        }
        run.pathReading()
                .ifPresent(
                        path -> text.append("path-reading: ").append(path(path)).append('\n'));
        run.plan().ifPresent(plan -> optional(text, "plan", plan));
        String planning = PlanningWriter.text(run.planning());
        if (!planning.isEmpty()) {
            text.append("planning: ").append(planning).append('\n');
        }
        return text.toString();
    }

    private static YamlText.Braces reading(Run.Reading reading) {
        YamlText.Braces braces = new YamlText.Braces().add("file", YamlText.quoted(reading.file()));
        if (reading.triggerBefore()) {
            braces.add("trigger", "before");
        }
        if (reading.triggerAtS().size() == 1) {
            braces.add("trigger-at", seconds(reading.triggerAtS().get(0)));
        } else if (!reading.triggerAtS().isEmpty()) {
            braces.add(
                    "trigger-at",
                    reading.triggerAtS().stream().map(RunWriter::seconds).collect(Collectors.joining(", ", "[", "]")));
        }
        reading.plate().ifPresent(plate -> braces.add("plate", YamlText.quoted(plate)));
        reading.block().ifPresent(block -> braces.add("block", Integer.toString(block)));
        braces.add("wavelength", reading.wavelengthNm(), " nm");
        braces.add("time", reading.timeS(), " s");
        reading.samePlate().ifPresent(reason -> braces.add("same-plate", YamlText.quoted(reason)));
        return braces;
    }

    private static YamlText.Braces path(PathReading path) {
        boolean tolerance = path.spread().shape() == Spread.Shape.RECTANGULAR;
        return new YamlText.Braces()
                .add("peak", reading(path.peak()).toString())
                .add("beside", reading(path.beside()).toString())
                .add(
                        "one-centimetre",
                        new YamlText.Braces()
                                .add("peak", Numbers.plain(path.peakOfOneCm()))
                                .add("beside", Numbers.plain(path.besideOfOneCm()))
                                .toString())
                .add(
                        "uncertainty",
                        new YamlText.Braces()
                                .add(
                                        tolerance ? "tolerance" : "standard",
                                        Numbers.plain(PERCENT * path.spread().halfWidth()) + " %")
                                .toString());
    }

    private static YamlText.Braces said(YamlText.Braces braces, String reason, String by) {
        braces.add("reason", YamlText.quoted(reason));
        return by.isEmpty() ? braces : braces.add("by", YamlText.quoted(by));
    }

    private static void optional(StringBuilder text, String key, String value) {
        if (!value.isEmpty()) {
            text.append(key).append(": ").append(YamlText.quoted(value)).append('\n');
        }
    }

    private static void item(StringBuilder text, YamlText.Braces braces) {
        text.append("  - ").append(braces).append('\n');
    }

    private static String seconds(double time) {
        return Numbers.plain(time) + " s";
    }

    private static String wells(List<Well> wells) {
        return YamlText.quoted(wells.stream().map(Well::toString).collect(Collectors.joining(" ")));
    }
}
