package tallywell.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import tallywell.method.AssayMethod;
import tallywell.method.DilutionSeries;
import tallywell.method.Planning;
import tallywell.method.Sample;
import tallywell.method.Treatment;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plan.Plan.PlannedControl;
import tallywell.plan.Plan.PlannedSample;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/** Plans a run: slots, dilutions, volumes and times. A pure function of what is wanted. */
public final class Planner {
    /** Smallest volume where neither run nor method says (own choice). */
    private static final double LEAST_UL = 10;

    private static final int MOST_NAMED = 12;

    private final Wanted wanted;
    private final List<Notice> faults = new ArrayList<>();
    private final List<Notice> notices = new ArrayList<>();
    /** What is to be said of samples, each once for all that it is said of. */
    private final Map<String, List<String>> remarks = new LinkedHashMap<>();

    private final DilutionSeries dilutions;
    private final double leastUl;
    private final Feasibility feasibility;

    /**
     * What is to be planned.
     *
     * @param name run file as typed, for messages
     * @param title of the run, or empty
     * @param operator or empty
     * @param method how it will be done
     * @param layout what stands where
     * @param samples what is to be measured, in the order of the list; empty for every slot of the layout
     * @param earlier results of an earlier run
     * @param planning how the laboratory plans
     */
    public record Wanted(
            String name,
            String title,
            String operator,
            AssayMethod method,
            Layout layout,
            List<WantedSample> samples,
            List<EarlierResult> earlier,
            Planning planning) {
        /** Keeps copies that cannot change. */
        public Wanted {
            samples = List.copyOf(samples);
            earlier = List.copyOf(earlier);
        }
    }

    private Planner(Wanted wanted) {
        this.wanted = wanted;
        this.dilutions = DilutionSeries.of(wanted.planning());
        this.leastUl = wanted.planning()
                .pipetteLeastUl()
                .orElse(wanted.method().bench().smallestUl().orElse(LEAST_UL));
        this.feasibility = new Feasibility(wanted, leastUl, this::fault);
    }

    /**
     * Plans a run.
     *
     * @throws InputException with every fault, each with what would make it possible
     */
    public static Plan plan(Wanted wanted) throws InputException {
        return new Planner(wanted).plan();
    }

    private Plan plan() throws InputException {
        feasibility.volumes();
        feasibility.molarMasses();
        stop();
        List<WantedSample> placed = placed();
        Map<Integer, WantedSample> bySlot = new TreeMap<>();
        placed.forEach(each -> bySlot.put(each.sample().slot(), each));
        Map<Well, Content> wells = used(bySlot);
        List<PlannedSample> samples = new ArrayList<>();
        DilutionChoice choice = new DilutionChoice(wanted, dilutions);
        for (WantedSample each : bySlot.values()) {
            sample(each, wells, choice).ifPresent(samples::add);
        }
        remarks.forEach((text, names) -> notices.add(Notice.attention(place(), named(names) + ": " + text)));
        List<PlannedControl> controls = controls(wells);
        stop();
        StandardSeries series = new StandardSeries(wanted.method(), wanted.planning(), leastUl, place());
        List<Plan.PlannedStandard> standards = series.of(wanted.layout());
        Map<Integer, Boolean> totals = new HashMap<>();
        placed.forEach(each -> totals.put(each.sample().slot(), each.sample().treatment() == Treatment.TOTAL));
        Preparations preparations =
                new Preparations(wanted.method().bench(), wanted.planning().overage(), wells, totals);
        if (wanted.method().bench().reagents().isEmpty()) {
            notices.add(Notice.information(
                    place(),
                    "the method '" + wanted.method().id()
                            + "' lists no reagents, so no mixes are planned; expected 'reagents:' in the method"));
        }
        List<Plan.Part> parts = preparations.all(wanted.method().triggers());
        feasibility.parts(parts);
        stop();
        return new Plan(
                wanted.title(),
                wanted.operator(),
                wanted.method(),
                wanted.layout(),
                samples,
                standards,
                controls,
                series.stocks(),
                parts,
                new Schedule(wanted.method()).all(),
                wells.size(),
                notices);
    }

    private Place place() {
        return new Place.InFile(wanted.name(), "");
    }

    private void fault(String text) {
        faults.add(Notice.error(place(), text));
    }

    private void stop() throws InputException {
        if (!faults.isEmpty()) {
            throw new InputException(faults);
        }
    }

    /** Each sample in a slot: its own, or the next free one. */
    private List<WantedSample> placed() throws InputException {
        List<Integer> slots = wanted.layout().slots();
        List<WantedSample> samples = wanted.samples().isEmpty()
                ? slots.stream()
                        .map(slot -> new WantedSample(Sample.plain(slot), false, "", ""))
                        .toList()
                : wanted.samples();
        if (samples.size() > slots.size()) {
            fault("found " + samples.size() + " samples for the " + slots.size() + " slots of the layout '"
                    + wanted.layout().name() + "'; expected at most " + slots.size()
                    + ": take a layout with fewer replicates, or put "
                    + (samples.size() - slots.size()) + " into a second run");
            stop();
        }
        List<Integer> free = new ArrayList<>(slots);
        for (WantedSample each : samples) {
            if (each.hasSlot() && !free.remove((Integer) each.sample().slot())) {
                fault(each.place() + ": the layout '" + wanted.layout().name() + "' has no slot "
                        + each.sample().slot() + "; expected one of its slots, or none, to have one chosen");
            }
        }
        stop();
        List<WantedSample> placed = new ArrayList<>();
        for (WantedSample each : samples) {
            placed.add(each.hasSlot() ? each : each.inSlot(free.remove(0)));
        }
        return placed;
    }

    private Map<Well, Content> used(Map<Integer, WantedSample> bySlot) {
        Map<Well, Content> used = new LinkedHashMap<>();
        wanted.layout().wells().forEach((well, content) -> {
            if (isFilled(content, bySlot.keySet())) {
                used.put(well, content);
            }
        });
        return used;
    }

    /** Whether something goes into a well, where these slots hold samples. */
    static boolean isFilled(Content content, Set<Integer> slots) {
        int slot = slotOf(content);
        return !(content instanceof Content.Unused) && (slot == 0 || slots.contains(slot));
    }

    private static int slotOf(Content content) {
        if (content instanceof Content.Sample sample) {
            return sample.slot();
        }
        if (content instanceof Content.SampleBlank blank) {
            return blank.of();
        }
        return content instanceof Content.Spike spike ? spike.of() : 0;
    }

    private Optional<PlannedSample> sample(WantedSample each, Map<Well, Content> wells, DilutionChoice choice) {
        Sample sample = each.sample();
        int count = (int) wells.values().stream()
                .filter(content -> slotOf(content) == sample.slot())
                .count();
        double methodUl =
                wanted.method().steps().get(0).volumes().map(v -> v.sampleUl()).orElse(0.0);
        double own = sample.volumeUl().orElse(methodUl);
        if (!feasibility.fits(sample, own, methodUl)) {
            return Optional.empty();
        }
        Optional<DilutionChoice.Chosen> chosen;
        try {
            chosen = choice.of(each);
        } catch (IllegalArgumentException e) {
            faults.add(Notice.error(place(), each.place() + ": " + e.getMessage()));
            return Optional.empty();
        }
        chosen.flatMap(DilutionChoice.Chosen::remark).ifPresent(text -> remark(text, sample));
        double factor = chosen.map(DilutionChoice.Chosen::factor)
                .orElse(sample.dilution().factor());
        if (chosen.isEmpty() && !each.hasDilution()) {
            remark("nothing is expected of it and the list gives no dilution, so it is planned undiluted", sample);
        }
        double total = Volumes.made(wanted.planning(), count * own);
        Optional<DilutionScheme> scheme = DilutionScheme.of(factor, total, leastUl, dilutions);
        if (scheme.isEmpty()) {
            fault("'" + sample.label() + "' would need a dilution of " + Numbers.brief(factor, 6)
                    + ", which four steps with " + Numbers.plain(leastUl) + " µL in " + Numbers.plain(total)
                    + " µL do not reach; expected a larger 'dilute-to' or a smaller 'pipette-least' under 'planning'");
            return Optional.empty();
        }
        return Optional.of(new PlannedSample(
                withDilution(sample, factor),
                count,
                scheme.get(),
                total,
                chosen.map(DilutionChoice.Chosen::deltaA).orElse(OptionalDouble.empty()),
                Math.max(0, methodUl - own)));
    }

    private static String named(List<String> names) {
        return names.size() <= MOST_NAMED
                ? String.join(", ", names)
                : String.join(", ", names.subList(0, MOST_NAMED)) + " and " + (names.size() - MOST_NAMED) + " more";
    }

    private void remark(String text, Sample sample) {
        remarks.computeIfAbsent(text, key -> new ArrayList<>()).add("'" + sample.label() + "'");
    }

    private static Sample withDilution(Sample sample, double factor) {
        return new Sample(
                sample.slot(),
                sample.name(),
                new tallywell.quantity.Dilution(factor),
                sample.volumeUl(),
                sample.solid(),
                sample.densityGPerMl(),
                sample.group(),
                sample.id(),
                sample.note(),
                sample.treatment());
    }

    private List<PlannedControl> controls(Map<Well, Content> wells) {
        Map<String, List<Content.Control>> byWord = new LinkedHashMap<>();
        for (Content content : wells.values()) {
            if (content instanceof Content.Control control) {
                byWord.computeIfAbsent(control.word(), word -> new ArrayList<>())
                        .add(control);
            }
        }
        double sampleUl =
                wanted.method().steps().get(0).volumes().map(v -> v.sampleUl()).orElse(0.0);
        List<PlannedControl> planned = new ArrayList<>();
        byWord.values().stream()
                .sorted(Comparator.comparing(each -> each.get(0).word()))
                .forEach(each -> control(each, sampleUl, planned));
        return planned;
    }

    private void control(List<Content.Control> wells, double sampleUl, List<PlannedControl> planned) {
        Content.Control control = wells.get(0);
        double total = Volumes.made(wanted.planning(), wells.size() * sampleUl);
        Optional<DilutionScheme> scheme = DilutionScheme.of(control.dilution().factor(), total, leastUl, dilutions);
        if (scheme.isPresent()) {
            planned.add(new PlannedControl(control.word(), control.name(), wells.size(), scheme.get(), total));
        } else {
            fault("the control '" + control.name() + "' has a dilution of " + control.dilution()
                    + ", which four steps do not reach; expected a larger 'dilute-to' under 'planning'");
        }
    }
}
