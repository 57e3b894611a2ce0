package tallywell.task;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tallywell.files.LayoutReader;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.Well;
import tallywell.quantity.Quantity;

/** Checks layouts and prints them as plates. */
public final class ShowLayouts {
    /**
     * One layout as text: name, plate, legend with counts.
     *
     * @throws InputException if the file is no sound layout
     */
    public String show(Path file) throws InputException {
        Layout layout = new LayoutReader().read(file);
        StringBuilder text = new StringBuilder();
        text.append(layout.name()).append('\n').append(layout.format()).append("\n\n");
        plate(layout, text);
        text.append('\n');
        legend(layout, text);
        return text.toString();
    }

    private static void plate(Layout layout, StringBuilder text) {
        int columns = layout.format().columns();
        int width = Integer.toString(columns).length();
        for (Well well : layout.format().all()) {
            width = Math.max(width, layout.at(well).word().length());
        }
        int letters = Well.rowName(layout.format().rows() - 1).length();
        text.append(" ".repeat(letters));
        for (int column = 1; column <= columns; column++) {
            text.append(' ').append(right(Integer.toString(column), width));
        }
        text.append('\n');
        for (int row = 0; row < layout.format().rows(); row++) {
            text.append(right(Well.rowName(row), letters));
            for (int column = 0; column < columns; column++) {
                text.append(' ').append(right(layout.at(new Well(row, column)).word(), width));
            }
            text.append('\n');
        }
    }

    private static void legend(Layout layout, StringBuilder text) {
        Map<String, Content> words = new TreeMap<>();
        Map<String, List<Well>> wells = new LinkedHashMap<>();
        for (Well well : layout.format().all()) {
            Content content = layout.at(well);
            if (!(content instanceof Content.Sample) && !(content instanceof Content.Unused)) {
                words.putIfAbsent(content.word(), content);
                wells.computeIfAbsent(
                        content.word(), word -> layout.where(each -> each.word().equals(word)));
            }
        }
        List<Integer> slots = layout.slots();
        int width = words.keySet().stream().mapToInt(String::length).max().orElse(1);
        for (Map.Entry<String, Content> each : words.entrySet()) {
            List<Well> own = wells.getOrDefault(each.getKey(), List.of());
            text.append(each.getKey())
                    .append(" ".repeat(width - each.getKey().length() + 2))
                    .append(describe(each.getValue()))
                    .append(": ")
                    .append(count(own.size(), "well"))
                    .append(" (")
                    .append(own.stream().map(Well::toString).collect(Collectors.joining(" ")))
                    .append(")\n");
        }
        if (!slots.isEmpty()) {
            text.append(count(slots.size(), "sample slot"))
                    .append(": ")
                    .append(replicates(layout, slots))
                    .append('\n');
        }
        int unused = layout.where(content -> content instanceof Content.Unused).size();
        if (unused > 0) {
            text.append(count(unused, "well")).append(" unused\n");
        }
    }

    private static String replicates(Layout layout, List<Integer> slots) {
        Map<Integer, Integer> counts = new TreeMap<>();
        for (int slot : slots) {
            int wells = layout.where(content -> content instanceof Content.Sample sample && sample.slot() == slot)
                    .size();
            counts.merge(wells, 1, Integer::sum);
        }
        return counts.entrySet().stream()
                .map(each -> (counts.size() == 1 ? "each" : Integer.toString(each.getValue())) + " in "
                        + count(each.getKey(), "well"))
                .collect(Collectors.joining(", "));
    }

    private static String describe(Content content) {
        String group = content.group().isEmpty() ? "" : ", group " + content.group();
        if (content instanceof Content.Blank blank) {
            return (blank.triggered() ? "blank" : "blank without trigger enzyme") + group;
        }
        if (content instanceof Content.Standard standard) {
            return "standard " + quantities(standard.level()) + group;
        }
        if (content instanceof Content.Control control) {
            return "control '" + control.name() + "'"
                    + (control.assigned().isEmpty() ? "" : ", assigned " + quantities(control.assigned()))
                    + control.tolerance().map(tolerance -> " ± " + tolerance).orElse("")
                    + (control.dilution().factor() > 1 ? ", dilution " + control.dilution() : "") + group;
        }
        if (content instanceof Content.SampleBlank blank) {
            return "sample blank of " + blank.of() + group;
        }
        Content.Spike spike = (Content.Spike) content;
        return "spike on " + spike.of() + ", added " + quantities(spike.added()) + group;
    }

    private static String quantities(PerAnalyte quantities) {
        return new TreeMap<>(quantities.byName())
                .entrySet().stream()
                        .map(each -> named(each.getKey(), each.getValue()))
                        .collect(Collectors.joining(", "));
    }

    private static String named(String analyte, Quantity quantity) {
        return analyte.isEmpty() ? quantity.toString() : analyte + " " + quantity;
    }

    private static String count(int n, String noun) {
        return n + " " + noun + (n == 1 ? "" : "s");
    }

    private static String right(String text, int width) {
        return " ".repeat(Math.max(0, width - text.length())) + text;
    }
}
