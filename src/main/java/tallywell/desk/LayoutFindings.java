package tallywell.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.quantity.Quantity;

/** Looks a layout over while it is drawn. */
public final class LayoutFindings {
    private final Layout layout;
    private final List<Finding> findings = new ArrayList<>();

    private LayoutFindings(Layout layout) {
        this.layout = layout;
    }

    /** What is to be said of a layout, in the order blanks, standards, samples, controls, the rest. */
    public static List<Finding> of(Layout layout) {
        LayoutFindings look = new LayoutFindings(layout);
        look.blanks();
        look.standards();
        look.samples();
        look.controls();
        look.orphans();
        return List.copyOf(look.findings);
    }

    private void blanks() {
        int blanks = layout.where(content -> content instanceof Content.Blank blank && blank.triggered())
                .size();
        findings.add(
                blanks == 0
                        ? Finding.look("No blank", "every plate needs one; two or more show their scatter", List.of())
                        : blanks == 1
                                ? Finding.look(
                                        "1 blank",
                                        "nothing shows its scatter; two or more are better",
                                        layout.where(Content.Blank.class::isInstance))
                                : Finding.good(blanks + " blanks", "taken off every other well"));
        Map<String, List<Well>> groups = new TreeMap<>();
        for (Well well : layout.where(content -> !content.group().isEmpty())) {
            groups.computeIfAbsent(layout.at(well).group(), group -> new ArrayList<>())
                    .add(well);
        }
        groups.forEach((group, wells) -> {
            boolean has = wells.stream()
                    .anyMatch(well -> layout.at(well) instanceof Content.Blank blank && blank.triggered());
            if (!has) {
                findings.add(
                        Finding.look("No blank in group " + group, "a group takes off its own blanks only", wells));
            }
        });
    }

    private void standards() {
        Map<Quantity, List<Well>> levels = new LinkedHashMap<>();
        for (Well well : layout.where(Content.Standard.class::isInstance)) {
            Content.Standard standard = (Content.Standard) layout.at(well);
            for (Quantity level : standard.level().quantities()) {
                levels.computeIfAbsent(level, key -> new ArrayList<>()).add(well);
            }
        }
        if (levels.isEmpty()) {
            findings.add(Finding.note("No standards", "right only where the method calculates by absorptivity"));
            return;
        }
        if (levels.size() == 1) {
            findings.add(Finding.look(
                    "A single level",
                    "enough for a single standard; a line needs two, and three show whether it is straight",
                    levels.values().iterator().next()));
            return;
        }
        TreeSet<Quantity> ascending = new TreeSet<>(java.util.Comparator.comparingDouble(Quantity::base));
        ascending.addAll(levels.keySet());
        findings.add(Finding.good(levels.size() + " levels", ascending.first() + " to " + ascending.last()));
        uneven(levels.values(), "Standards in unequal numbers", "some levels have fewer wells than others");
    }

    private void samples() {
        Map<Integer, List<Well>> slots = new TreeMap<>();
        for (Well well : layout.where(Content.Sample.class::isInstance)) {
            slots.computeIfAbsent(((Content.Sample) layout.at(well)).slot(), slot -> new ArrayList<>())
                    .add(well);
        }
        if (slots.isEmpty()) {
            findings.add(Finding.look("No samples", "choose Sample and fill the free wells", List.of()));
            return;
        }
        int most = slots.values().stream().mapToInt(List::size).max().orElseThrow();
        String each = most == 1 ? "one well each" : "up to " + most + " wells each";
        findings.add(Finding.good(slots.size() + (slots.size() == 1 ? " sample" : " samples"), each));
        uneven(slots.values(), "A replicate is missing", "other samples have more wells than these");
        if (most == 1) {
            findings.add(Finding.look("Single wells", "nothing shows how well a result repeats", List.of()));
        }
        int last = slots.keySet().stream().mapToInt(Integer::intValue).max().orElseThrow();
        if (last != slots.size()) {
            findings.add(
                    Finding.look("Numbers with gaps", slots.size() + " samples, numbered up to " + last, List.of()));
        }
    }

    private void uneven(java.util.Collection<List<Well>> groups, String title, String text) {
        int most = groups.stream().mapToInt(List::size).max().orElse(0);
        List<Well> fewer = groups.stream()
                .filter(group -> group.size() < most)
                .flatMap(List::stream)
                .toList();
        if (!fewer.isEmpty()) {
            findings.add(Finding.look(title, text, fewer));
        }
    }

    private void controls() {
        List<Well> controls = layout.where(Content.Control.class::isInstance);
        findings.add(
                controls.isEmpty()
                        ? Finding.look(
                                "No control", "without one nothing outside the plate vouches for the batch", List.of())
                        : Finding.good(
                                controls.size() + (controls.size() == 1 ? " control well" : " control wells"), ""));
    }

    private void orphans() {
        List<Integer> slots = layout.slots();
        List<Well> orphans =
                layout.where(content -> content instanceof Content.SampleBlank blank && !slots.contains(blank.of())
                        || content instanceof Content.Spike spike && !slots.contains(spike.of()));
        if (!orphans.isEmpty()) {
            findings.add(Finding.look(
                    "Belongs to a sample that is not here",
                    "a sample blank or spike needs its sample on the plate; it cannot be saved so",
                    orphans));
        }
    }
}
