package tallywell.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Assay;

/** What a person decided about single wells, with reason and name, in words. */
public final class DecisionWords {
    private static final double MINUTE = 60;

    private DecisionWords() {}

    /** Wells that were excluded, and finished parts that were set; one sentence for those decided alike. */
    public static List<String> of(Assay assay) {
        List<String> words = new ArrayList<>(alike(
                assay.layout(),
                assay.exclusions(),
                each -> "does not count: " + each.reason() + by(each.by()),
                each -> "do not count: " + each.reason() + by(each.by())));
        words.addAll(alike(
                assay.layout(),
                assay.finishedFrom(),
                each -> from(each.timeS()) + each.reason() + by(each.by()),
                each -> from(each.timeS()) + each.reason() + by(each.by())));
        return words;
    }

    private static String from(double timeS) {
        return "finished part set from " + Numbers.rounded(timeS / MINUTE, 3) + " min on: ";
    }

    private static String by(String name) {
        return name.isEmpty() ? "." : " (" + name + ").";
    }

    private static <T> List<String> alike(
            Layout layout, Map<Well, T> decided, Function<T, String> one, Function<T, String> several) {
        Map<String, List<Well>> wells = new LinkedHashMap<>();
        Map<String, T> what = new LinkedHashMap<>();
        new TreeMap<>(decided).forEach((well, each) -> {
            wells.computeIfAbsent(one.apply(each), key -> new ArrayList<>()).add(well);
            what.put(one.apply(each), each);
        });
        List<String> words = new ArrayList<>();
        wells.forEach((key, all) ->
                words.add(all.stream().map(well -> named(layout, well)).collect(Collectors.joining(", ")) + " "
                        + (all.size() == 1 ? one : several).apply(what.get(key))));
        return words;
    }

    private static String named(Layout layout, Well well) {
        Content content = layout.at(well);
        return well + " (" + content.role().replace('-', ' ') + (content.word().isEmpty() ? "" : " " + content.word())
                + ")";
    }
}
