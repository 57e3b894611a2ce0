package tallywell.files;

import java.util.Map;
import java.util.TreeMap;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.quantity.Numbers;

/** Writes layout files ({@code tallywell: layout/1}); {@link LayoutReader} reads the same layout back. */
public final class LayoutWriter {
    /**
     * The text of a layout file.
     *
     * @throws IllegalArgumentException if one legend word stands for two contents
     */
    public String text(Layout layout) {
        Map<String, Content> legend = legend(layout);
        StringBuilder text = new StringBuilder("tallywell: layout/1\n");
        text.append("name: ").append(YamlText.quoted(layout.name())).append('\n');
        text.append("plate: ").append(layout.format().wells()).append('\n');
        rows(layout, text);
        if (!legend.isEmpty()) {
            text.append("legend:\n");
            legend.forEach((word, content) -> text.append("  ")
                    .append(word)
                    .append(": ")
                    .append(entry(content))
                    .append('\n'));
        }
        return text.toString();
    }

    private static Map<String, Content> legend(Layout layout) {
        Map<String, Content> legend = new TreeMap<>();
        layout.wells().forEach((well, content) -> {
            if (content instanceof Content.Unused || content instanceof Content.Sample) {
                return;
            }
            Content before = legend.putIfAbsent(content.word(), content);
            if (before != null && !before.equals(content)) {
                throw new IllegalArgumentException(
                        "legend words must stand for one content each but '" + content.word() + "' stands for two");
            }
        });
        return legend;
    }

    private static void rows(Layout layout, StringBuilder text) {
        int rows = layout.format().rows();
        int columns = layout.format().columns();
        int letters = Well.rowName(rows - 1).length();
        int width = Integer.toString(columns).length();
        for (Well well : layout.format().all()) {
            width = Math.max(width, layout.at(well).word().length());
        }
        text.append("wells:\n  #").append(" ".repeat(letters));
        for (int column = 1; column <= columns; column++) {
            text.append(' ').append(padded(Integer.toString(column), width));
        }
        text.append('\n');
        for (int row = 0; row < rows; row++) {
            String name = Well.rowName(row);
            text.append("  ").append(name).append(':').append(" ".repeat(letters - name.length()));
            for (int column = 0; column < columns; column++) {
                text.append(' ').append(padded(layout.at(new Well(row, column)).word(), width));
            }
            text.append('\n');
        }
    }

    private static String padded(String word, int width) {
        return " ".repeat(width - word.length()) + word;
    }

    private static String entry(Content content) {
        YamlText.Braces braces = new YamlText.Braces().add("role", content.role());
        if (content instanceof Content.Blank blank && !blank.triggered()) {
            braces.add("trigger", "none");
        } else if (content instanceof Content.Standard standard) {
            quantities(braces, standard.level(), "level", "levels");
        } else if (content instanceof Content.Control control) {
            control(braces, control);
        } else if (content instanceof Content.SampleBlank blank) {
            braces.add("of", Integer.toString(blank.of()));
        } else if (content instanceof Content.Spike spike) {
            braces.add("of", Integer.toString(spike.of()));
            quantities(braces, spike.added(), "added", "added");
            if (spike.fraction() != 0) {
                braces.add("fraction", Numbers.plain(spike.fraction()));
            }
        }
        if (!content.group().isEmpty()) {
            braces.add("group", YamlText.quoted(content.group()));
        }
        return braces.toString();
    }

    private static void control(YamlText.Braces braces, Content.Control control) {
        if (!control.name().equals(control.word())) {
            braces.add("name", YamlText.quoted(control.name()));
        }
        quantities(braces, control.assigned(), "assigned", "assigned");
        control.tolerance().ifPresent(tolerance -> braces.add("tolerance", tolerance.toString()));
        if (!control.dilution().equals(Dilution.NONE)) {
            braces.add("dilution", control.dilution().toString());
        }
    }

    private static void quantities(YamlText.Braces braces, PerAnalyte quantities, String single, String several) {
        if (quantities.isEmpty()) {
            return;
        }
        if (quantities.isSingle()) {
            braces.add(single, quantities.of("").orElseThrow().toString());
            return;
        }
        YamlText.Braces inner = new YamlText.Braces();
        new TreeMap<>(quantities.byName())
                .forEach((analyte, quantity) -> inner.add(YamlText.key(analyte), quantity.toString()));
        braces.add(several, inner.toString());
    }
}
