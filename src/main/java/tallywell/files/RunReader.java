package tallywell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Run;
import tallywell.notice.InputException;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.Wells;
import tallywell.quantity.Kind;

/** Reads run files ({@code tallywell: run/1}). */
public final class RunReader {
    /** Wells are checked against the run's own plate when its layout is known. */
    private static final PlateFormat LARGEST = new PlateFormat(32, 48);

    /** Reads a run that has been done: it names its readings. */
    public Run read(Path path) throws InputException {
        return read(path, true);
    }

    /** Reads a run that may still be to come: readings may be absent. */
    public Run readBefore(Path path) throws InputException {
        return read(path, false);
    }

    private static Run read(Path path, boolean done) throws InputException {
        YamlMapping top = YamlDocument.read(
                path,
                "run/1",
                "title",
                "method",
                "layout",
                "samples",
                "operator",
                "readings",
                "exclude",
                "finished-from",
                "plan",
                "planning",
                "path-reading");
        return new Run(
                free(top, "title"),
                top.need("method", "'method: l-malic-340' or a path").text().strip(),
                top.need("layout", "'layout: my-layout.yaml'").text().strip(),
                text(top, "samples"),
                free(top, "operator"),
                done || top.has("readings") ? readings(top) : List.of(),
                exclusions(top),
                finishedFrom(top),
                text(top, "plan"),
                PlanningReader.planning(top),
                PathReadingReader.of(top));
    }

    private static List<Run.Reading> readings(YamlMapping top) throws InputException {
        YamlNode node = top.need("readings", "'readings:' with one '- {file: ...}' an export");
        List<Run.Reading> readings = new ArrayList<>();
        for (YamlNode item : node.list("the exports in the order they were taken")) {
            readings.add(reading(item));
        }
        if (readings.isEmpty()) {
            throw node.wrong("found no readings; expected one '- {file: ...}' an export");
        }
        return readings;
    }

    private static Run.Reading reading(YamlNode item) throws InputException {
        YamlMapping keys = item.mapping("a reading, such as {file: before.csv}")
                .only("file", "trigger", "trigger-at", "plate", "block", "wavelength", "time", "same-plate");
        boolean triggerBefore = false;
        if (keys.has("trigger")) {
            YamlNode trigger = keys.need("trigger", "");
            if (!trigger.text().equals("before")) {
                throw trigger.wrong(
                        "found 'trigger: " + trigger.text() + "'; expected 'trigger: before', or no such key");
            }
            triggerBefore = true;
        }
        PathReadingReader.Picked picked = PathReadingReader.Picked.of(keys);
        Optional<YamlNode> time = keys.find("time");
        return new Run.Reading(
                picked.file(),
                triggerBefore,
                triggerAt(keys),
                picked.plate(),
                picked.block(),
                picked.wavelengthNm(),
                time.isPresent() ? OptionalDouble.of(time.get().notNegative(Kind.TIME)) : OptionalDouble.empty(),
                item.line(),
                picked.samePlate());
    }

    private static List<Double> triggerAt(YamlMapping keys) throws InputException {
        Optional<YamlNode> node = keys.find("trigger-at");
        if (node.isEmpty()) {
            return List.of();
        }
        if (!node.get().isList()) {
            return List.of(node.get().notNegative(Kind.TIME));
        }
        List<Double> times = new ArrayList<>();
        for (YamlNode item : node.get().list("the moments of the triggers")) {
            double time = item.notNegative(Kind.TIME);
            if (!times.isEmpty() && !(time > times.get(times.size() - 1))) {
                throw item.wrong("found '" + item.text() + "' after a later trigger; expected ascending times");
            }
            times.add(time);
        }
        if (times.isEmpty()) {
            throw node.get().wrong("found an empty list; expected times, such as [225 s, 900 s]");
        }
        return times;
    }

    private static List<Run.Exclusion> exclusions(YamlMapping top) throws InputException {
        List<Run.Exclusion> exclusions = new ArrayList<>();
        if (top.has("exclude")) {
            for (YamlNode item : top.need("exclude", "").list("the wells that do not count")) {
                YamlMapping keys = item.mapping("wells with a reason").only("wells", "reason", "by");
                exclusions.add(new Run.Exclusion(wells(keys), reason(keys), free(keys, "by"), item.line()));
            }
        }
        return exclusions;
    }

    private static List<Run.FinishedFrom> finishedFrom(YamlMapping top) throws InputException {
        List<Run.FinishedFrom> choices = new ArrayList<>();
        if (top.has("finished-from")) {
            for (YamlNode item : top.need("finished-from", "").list("the wells whose finished part was chosen")) {
                YamlMapping keys =
                        item.mapping("wells with a time and a reason").only("wells", "time", "reason", "by");
                double time = keys.need("time", "'time: 9 min'").notNegative(Kind.TIME);
                choices.add(new Run.FinishedFrom(wells(keys), time, reason(keys), free(keys, "by"), item.line()));
            }
        }
        return choices;
    }

    private static List<Well> wells(YamlMapping keys) throws InputException {
        YamlNode node = keys.need("wells", "'wells: \"C5 D1-D3\"'");
        try {
            return Wells.parse(node.text(), LARGEST);
        } catch (IllegalArgumentException e) {
            throw node.wrong(e);
        }
    }

    private static String reason(YamlMapping keys) throws InputException {
        return keys.need("reason", "'reason: \"bubble\"'").freeText();
    }

    private static String free(YamlMapping keys, String key) throws InputException {
        Optional<YamlNode> node = keys.find(key);
        return node.isPresent() ? node.get().freeText() : "";
    }

    private static Optional<String> text(YamlMapping keys, String key) throws InputException {
        Optional<YamlNode> node = keys.find(key);
        return node.isPresent() ? Optional.of(node.get().text().strip()) : Optional.empty();
    }
}
