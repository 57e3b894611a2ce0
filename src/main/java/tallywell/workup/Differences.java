package tallywell.workup;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.method.Difference;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.method.Treatment;
import tallywell.notice.Notice;
import tallywell.quantity.Kind;

/**
 * Results by difference: each sample that stands in the list once as {@code free} and once as {@code total}.
 *
 * <pre>{@code
 * c = (M2 / M1) / released / yield · (c total - c free)     by mass
 * c =         1 / released / yield · (c total - c free)     by amount of substance
 * }</pre>
 *
 * <p>Volume, dilution and blanks are in each of the two results already.
 */
final class Differences {
    private final Assay assay;

    Differences(Assay assay) {
        this.assay = assay;
    }

    /** The results by difference, by analyte and slot of the total. */
    List<DifferenceResult> of(List<Half> halves) {
        List<DifferenceResult> all = new ArrayList<>();
        for (Difference rule : assay.method().differences()) {
            int step = stepOf(rule);
            for (Sample total : treated(Treatment.TOTAL).values()) {
                Sample free = treated(Treatment.FREE).get(total.name());
                if (free != null) {
                    pair(rule, step, halves, total, free).ifPresent(all::add);
                }
            }
        }
        return all;
    }

    private Optional<DifferenceResult> pair(Difference rule, int step, List<Half> halves, Sample total, Sample free) {
        Optional<Half> all = half(halves, step, total.slot());
        Optional<Half> some = half(halves, step, free.slot());
        return all.isPresent() && some.isPresent()
                ? Optional.of(new DifferenceResult(
                        rule, all.get(), some.get(), factor(rule, all.get().reported()), total.name()))
                : Optional.empty();
    }

    private static Optional<Half> half(List<Half> halves, int step, int slot) {
        return halves.stream()
                .filter(each -> each.reported().role().equals("sample")
                        && each.reported().step() == step
                        && each.reported().slot().orElse(0) == slot)
                .findFirst();
    }

    private int stepOf(Difference rule) {
        List<Step> steps = assay.method().steps();
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).analyte().name().equals(rule.of())) {
                return i + 1;
            }
        }
        throw new AssertionError("no step measures " + rule.of());
    }

    private double factor(Difference rule, Result result) {
        Step step = assay.method().steps().get(result.step() - 1);
        double amounts = 1 / rule.released() / rule.yield();
        double measured = step.analyte().molarMass().orElseThrow();
        if (result.unit().kind() == Kind.AMOUNT_CONCENTRATION) {
            return amounts / step.report().as().map(form -> form.perAnalyte()).orElse(1.0);
        }
        // Where the measured analyte is stated in another form, that is undone first.
        double form = step.report().as().map(each -> each.massRatio(measured)).orElse(1.0);
        return amounts * rule.analyte().molarMass().orElseThrow() / measured / form;
    }

    /** The samples of a treatment by name; of two with one name the first. */
    private Map<String, Sample> treated(Treatment treatment) {
        Map<String, Sample> treated = new LinkedHashMap<>();
        for (Sample sample : assay.samples().bySlot().values()) {
            if (sample.treatment() == treatment) {
                treated.putIfAbsent(sample.name(), sample);
            }
        }
        return treated;
    }

    /** What the sample list says of treatments that cannot be: each is an error. */
    List<String> faults() {
        List<String> faults = new ArrayList<>();
        if (assay.method().differences().isEmpty()) {
            return faults;
        }
        for (Treatment treatment : List.of(Treatment.FREE, Treatment.TOTAL)) {
            Map<String, Sample> first = treated(treatment);
            for (Sample sample : assay.samples().bySlot().values()) {
                Sample other = first.getOrDefault(sample.name(), sample);
                if (sample.treatment() == treatment && other.slot() != sample.slot()) {
                    faults.add(
                            "the sample list has '" + sample.name() + "' twice as " + treatment.word() + " (slots "
                                    + other.slot() + " and " + sample.slot()
                                    + "); expected each sample once as free and once as total: replicates are wells with one slot");
                }
            }
        }
        treated(Treatment.TOTAL).forEach((name, total) -> {
            Sample free = treated(Treatment.FREE).get(name);
            if (free != null && free.solid().isPresent() != total.solid().isPresent()) {
                faults.add("the sample '" + name + "' has a mass in only one of its rows free (slot " + free.slot()
                        + ") and total (slot " + total.slot()
                        + "); expected both or neither, since their units must be the same");
            }
        });
        return faults;
    }

    /** What is odd about treatments but harms nothing. */
    List<Notice> remarks() {
        List<Notice> remarks = new ArrayList<>();
        Map<String, Sample> free = treated(Treatment.FREE);
        Map<String, Sample> total = treated(Treatment.TOTAL);
        if (assay.method().differences().isEmpty()) {
            if (!free.isEmpty() || !total.isEmpty()) {
                remarks.add(Notice.attention(
                        assay.place(),
                        "the sample list has treatments, but the method '"
                                + assay.method().id() + "' gives nothing by difference; they have no effect"));
            }
            return remarks;
        }
        String analyte = assay.method().differences().get(0).analyte().name();
        total.keySet().stream()
                .filter(name -> !free.containsKey(name))
                .forEach(name -> remarks.add(alone(name, "total", "free", analyte)));
        free.keySet().stream()
                .filter(name -> !total.containsKey(name))
                .forEach(name -> remarks.add(alone(name, "free", "total", analyte)));
        return remarks;
    }

    private Notice alone(String name, String is, String lacks, String analyte) {
        return Notice.attention(
                assay.place(),
                "the sample '" + name + "' stands in the list as " + is + ", not as " + lacks + ": there is no "
                        + analyte + " by difference; expected a second row of the same name with the treatment "
                        + lacks);
    }
}
