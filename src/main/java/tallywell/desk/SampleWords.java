package tallywell.desk;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.plate.Layout;

/**
 * A sample list in words, and whether it fits the layout.
 *
 * @param text such as {@code 36 samples, dilutions 5 to 20}
 * @param fits whether every sample of the list has a number on the plate
 */
public record SampleWords(String text, boolean fits) {
    private static final int MOST_NAMED = 4;

    /** The words of a list beside the layout, where there is one. */
    public static SampleWords of(SampleList list, Optional<Layout> layout, Shown shown) {
        TreeSet<Integer> slots = new TreeSet<>(layout.map(Layout::slots).orElseGet(List::of));
        List<Integer> strange = list.bySlot().keySet().stream()
                .filter(slot -> layout.isPresent() && !slots.contains(slot))
                .toList();
        if (!strange.isEmpty()) {
            return new SampleWords("not on the plate: " + numbers(strange), false);
        }
        int samples = list.bySlot().size();
        boolean some = layout.isPresent() && samples < slots.size();
        String counted = some ? samples + " of " + slots.size() + " samples" : samples + " samples";
        return new SampleWords(counted + named(list) + ", " + dilutions(list, shown), true);
    }

    private static String numbers(List<Integer> slots) {
        String first = slots.stream().limit(MOST_NAMED).map(String::valueOf).collect(Collectors.joining(", "));
        return slots.size() > MOST_NAMED ? first + " …" : first;
    }

    /** A sample that is called by its number has no name. */
    private static String named(SampleList list) {
        long named = list.bySlot().values().stream()
                .filter(each -> !each.name().equals(Integer.toString(each.slot())))
                .count();
        if (named == list.bySlot().size()) {
            return "";
        }
        return named == 0 ? " by number" : ", " + named + " with names";
    }

    private static String dilutions(SampleList list, Shown shown) {
        double least = factors(list).min().orElse(1);
        double most = factors(list).max().orElse(1);
        if (least == most) {
            return least == 1 ? "undiluted" : "dilution " + shown.plain(least);
        }
        return "dilutions " + shown.plain(least) + " to " + shown.plain(most);
    }

    private static java.util.stream.DoubleStream factors(SampleList list) {
        return list.bySlot().values().stream().map(Sample::dilution).mapToDouble(each -> each.factor());
    }
}
