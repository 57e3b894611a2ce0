package tallywell.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Treatment;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.quantity.Dilution;
import tallywell.workup.Assay;
import tallywell.workup.Result;

/**
 * What a plate leaves to be repeated, as the list of samples for the next plate of the same layout: each sample that a
 * verdict says to repeat, or whose spike is to be repeated, at the dilution that is advised, else at that which it had. Of
 * a result by difference both halves are repeated, since it follows from two results of one plate.
 *
 * <p>Where the analytes of a sample want different dilutions it has a row for each. A sample with a sample blank or a spike
 * in the layout keeps its slot, and has one row, at the highest of the dilutions; the others get the free slots in order.
 */
public final class Repeats {
    private final Assay assay;
    private final Set<Integer> bound;
    private final Map<Integer, SortedSet<Dilution>> dilutions = new TreeMap<>();

    private Repeats(Assay assay) {
        this.assay = assay;
        bound = assay.layout().format().all().stream()
                .map(assay.layout()::at)
                .filter(content -> content instanceof Content.SampleBlank || content instanceof Content.Spike)
                .map(Repeats::sampleOf)
                .collect(Collectors.toSet());
    }

    /**
     * The samples to be repeated; none if every result can stand.
     *
     * @throws InputException if they do not fit into the slots of the layout
     */
    public static SampleList of(Assessment assessment) throws InputException {
        Repeats repeats = new Repeats(assessment.budget().analysis().assay());
        assessment.judgements().stream().filter(Repeats::isOfSample).forEach(repeats::add);
        repeats.addOtherHalves();
        return SampleList.of(repeats.placed());
    }

    /** Whether there is anything to repeat. */
    public static boolean isAny(Assessment assessment) {
        return assessment.judgements().stream().anyMatch(Repeats::isOfSample);
    }

    /** Controls stand in the layout of the next plate as they do in this. */
    private static boolean isOfSample(Judgement judgement) {
        return judgement.verdict() == Verdict.REPEAT
                && !judgement.result().role().equals("control");
    }

    private void add(Judgement judgement) {
        Result result = judgement.result();
        int slot = result.slot()
                .orElseGet(() -> sampleOf(assay.layout().at(result.wells().get(0))));
        Dilution dilution = judgement.advice() instanceof Advice.Dilute advice ? advice.dilution() : result.dilution();
        dilutionsOf(slot).add(dilution);
    }

    private SortedSet<Dilution> dilutionsOf(int slot) {
        return dilutions.computeIfAbsent(slot, key -> new TreeSet<>(Comparator.comparingDouble(Dilution::factor)));
    }

    private static int sampleOf(Content content) {
        if (content instanceof Content.Spike spike) {
            return spike.of();
        }
        if (content instanceof Content.SampleBlank blank) {
            return blank.of();
        }
        throw new IllegalArgumentException("content must belong to a sample but was " + content);
    }

    private void addOtherHalves() {
        if (assay.method().differences().isEmpty()) {
            return;
        }
        Set<String> names = dilutions.keySet().stream()
                .map(this::sample)
                .filter(sample -> sample.treatment() != Treatment.NONE)
                .map(Sample::name)
                .collect(Collectors.toSet());
        for (Sample sample : assay.samples().bySlot().values()) {
            if (sample.treatment() != Treatment.NONE
                    && names.contains(sample.name())
                    && !dilutions.containsKey(sample.slot())) {
                dilutionsOf(sample.slot()).add(sample.dilution());
            }
        }
    }

    private Sample sample(int slot) {
        return assay.samples().in(slot).orElseThrow();
    }

    private List<Sample> placed() throws InputException {
        List<Integer> free = new ArrayList<>(assay.layout().slots());
        free.removeAll(bound);
        Map<Integer, Sample> placed = new HashMap<>();
        int rows = 0;
        for (Map.Entry<Integer, SortedSet<Dilution>> each : dilutions.entrySet()) {
            int slot = each.getKey();
            // Both halves of a difference need one row each, as the work-up wants them.
            boolean single = bound.contains(slot) || sample(slot).treatment() != Treatment.NONE;
            for (Dilution dilution : single ? List.of(each.getValue().last()) : each.getValue()) {
                rows++;
                if (bound.contains(slot) || !free.isEmpty()) {
                    int to = bound.contains(slot) ? slot : free.remove(0);
                    placed.put(to, sample(slot).inSlot(to).at(dilution));
                }
            }
        }
        if (placed.size() < rows) {
            throw new InputException(
                    new Place.InFile(assay.name(), ""),
                    "found " + rows + " rows to repeat, since analytes of one sample want different dilutions, for the "
                            + assay.layout().slots().size() + " slots of the layout '"
                            + assay.layout().name() + "'; expected at most as many as slots: repeat in two runs");
        }
        return List.copyOf(placed.values());
    }
}
