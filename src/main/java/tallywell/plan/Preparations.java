package tallywell.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import tallywell.method.Bench;
import tallywell.method.Reagent;
import tallywell.plan.Plan.Component;
import tallywell.plan.Plan.Part;
import tallywell.plate.Content;
import tallywell.plate.Well;

/** What is mixed for all wells, with some to spare. */
final class Preparations {
    private final Bench bench;
    private final double overage;
    private final Map<Well, Content> wells;
    private final Map<Integer, Boolean> totals;

    /**
     * Prepares for some wells.
     *
     * @param wells the wells in use
     * @param totals by slot whether the sample is the total of a result by difference; empty slots are neither
     */
    Preparations(Bench bench, double overage, Map<Well, Content> wells, Map<Integer, Boolean> totals) {
        this.bench = bench;
        this.overage = overage;
        this.wells = new TreeMap<>(wells);
        this.totals = totals;
    }

    List<Part> all(int triggers) {
        List<Part> parts = new ArrayList<>();
        treatment(parts);
        part(parts, "Mix", bench.into(Reagent.Into.MIX, 0), wells.size());
        int triggered = count(content -> isTriggered(content));
        for (int trigger = 1; trigger <= triggers; trigger++) {
            part(
                    parts,
                    triggers == 1 ? "Trigger" : "Trigger " + trigger,
                    bench.into(Reagent.Into.TRIGGER, trigger),
                    triggered);
        }
        return parts;
    }

    /** Wells without trigger enzyme get as much of what it is dissolved in. */
    static boolean isTriggered(Content content) {
        return !(content instanceof Content.SampleBlank)
                && !(content instanceof Content.Blank blank && !blank.triggered());
    }

    private void treatment(List<Part> parts) {
        List<Reagent> reagents = bench.into(Reagent.Into.TREATMENT, 0);
        if (!reagents.isEmpty()) {
            int treated = count(this::isTotal);
            part(parts, "Treatment, wells of total", reagents, treated);
            part(parts, "Treatment without enzyme, other wells", reagents, wells.size() - treated);
        }
    }

    /** Blanks, standards and controls take the side that their group or word names; without one they count as free. */
    private boolean isTotal(Content content) {
        if (content instanceof Content.Sample sample) {
            return totals.getOrDefault(sample.slot(), false);
        }
        if (content instanceof Content.SampleBlank blank) {
            return totals.getOrDefault(blank.of(), false);
        }
        if (content instanceof Content.Spike spike) {
            return totals.getOrDefault(spike.of(), false);
        }
        return content.group().equals("total");
    }

    private int count(Predicate<Content> test) {
        return (int) wells.values().stream().filter(test).count();
    }

    private void part(List<Part> parts, String name, List<Reagent> reagents, int count) {
        if (reagents.isEmpty() || count == 0) {
            return;
        }
        List<Component> components = reagents.stream()
                .map(each -> new Component(
                        each.name(), each.holds(), each.volumeUl(), count * each.volumeUl() * (1 + overage)))
                .toList();
        double perWell = reagents.stream().mapToDouble(Reagent::volumeUl).sum();
        parts.add(new Part(name, perWell, count, components, count * perWell * (1 + overage)));
    }
}
