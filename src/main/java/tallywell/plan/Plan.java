package tallywell.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.PlannedRun;
import tallywell.method.Sample;
import tallywell.notice.Notice;
import tallywell.plate.Layout;

/**
 * A run planned: what goes where, how much of it, and when.
 *
 * @param title of the run, or empty
 * @param operator or empty
 * @param method how it will be done
 * @param layout what stands where
 * @param samples by slot
 * @param standards one a level, in the order of the layout
 * @param controls one a control, in the order of the layout
 * @param stocks one an analyte that has standards
 * @param parts what is mixed, in the order of addition
 * @param steps what is done, in order
 * @param wells how many wells are filled
 * @param notices what the user should be told
 */
public record Plan(
        String title,
        String operator,
        AssayMethod method,
        Layout layout,
        List<PlannedSample> samples,
        List<PlannedStandard> standards,
        List<PlannedControl> controls,
        List<Stock> stocks,
        List<Part> parts,
        List<Action> steps,
        int wells,
        List<Notice> notices) {
    /** What a plan file keeps of it. */
    public PlannedRun record() {
        return new PlannedRun(
                method.id(),
                layout.name(),
                wells,
                samples.stream()
                        .map(each -> new PlannedRun.Slot(
                                each.sample().slot(),
                                each.sample().name(),
                                each.sample().dilution(),
                                each.sample().volumeUl(),
                                each.sample().treatment()))
                        .toList(),
                Departures.prepared(layout),
                method.steps().stream().map(PlannedRun.StepPlan::of).toList());
    }

    /** What to watch out for on the bench: substances first, then what the method says, then what decides. */
    public List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        method.bench().hazards().forEach(each -> cautions.add(each.text()));
        cautions.addAll(method.cautions());
        if (cautions.stream().noneMatch(each -> each.contains("safety data sheets"))) {
            cautions.add("Local rules and the suppliers' safety data sheets come first.");
        }
        return cautions;
    }

    /** Keeps copies that cannot change. */
    public Plan {
        samples = List.copyOf(samples);
        standards = List.copyOf(standards);
        controls = List.copyOf(controls);
        stocks = List.copyOf(stocks);
        parts = List.copyOf(parts);
        steps = List.copyOf(steps);
        notices = List.copyOf(notices);
    }

    /**
     * A sample in its slot.
     *
     * @param sample with the dilution to make
     * @param wells how many wells it fills, sample blanks and spikes included
     * @param scheme how it is diluted
     * @param totalUl volume made in each step, in µL
     * @param expectedDeltaA net ΔA expected in the middle, where the method can tell
     * @param waterUl water to add to its wells, where its volume is smaller than that of the method, in µL
     */
    public record PlannedSample(
            Sample sample,
            int wells,
            DilutionScheme scheme,
            double totalUl,
            OptionalDouble expectedDeltaA,
            double waterUl) {}

    /**
     * A level of a standard.
     *
     * @param word of the layout
     * @param level as the layout says it
     * @param wells how many wells it fills
     * @param totalUl volume made, in µL
     * @param takes what is taken of each stock or predilution
     * @param waterUl water to make it up
     */
    public record PlannedStandard(
            String word, String level, int wells, double totalUl, List<Take> takes, double waterUl) {
        /** Keeps a copy that cannot change. */
        public PlannedStandard {
            takes = List.copyOf(takes);
        }
    }

    /**
     * What is taken for a standard.
     *
     * @param analyte which stock
     * @param predilution dilution of the stock that it is taken from; 1 for the stock itself
     * @param takeUl in µL
     */
    public record Take(String analyte, double predilution, double takeUl) {}

    /**
     * A control.
     *
     * @param word of the layout
     * @param name of the control
     * @param wells how many wells it fills
     * @param scheme how it is diluted
     * @param totalUl volume made in each step, in µL
     */
    public record PlannedControl(String word, String name, int wells, DilutionScheme scheme, double totalUl) {}

    /**
     * A stock of standard.
     *
     * @param analyte of the standard
     * @param gPerL concentration in g/L
     * @param proposed whether the run did not give it
     * @param weigh how it is made, where the method knows the substance: in words
     */
    public record Stock(String analyte, double gPerL, boolean proposed, Optional<String> weigh) {}

    /**
     * Something mixed beforehand and pipetted into wells.
     *
     * @param name in words
     * @param perWellUl into each well, in µL
     * @param wells how many wells get it
     * @param components what goes into it, in the order of addition
     * @param totalUl what is made, in µL
     */
    public record Part(String name, double perWellUl, int wells, List<Component> components, double totalUl) {
        /** Keeps a copy that cannot change. */
        public Part {
            components = List.copyOf(components);
        }
    }

    /**
     * One reagent of a part.
     *
     * @param name of the reagent
     * @param holds its composition, or empty
     * @param perWellUl in each well, in µL
     * @param totalUl to take, in µL
     */
    public record Component(String name, String holds, double perWellUl, double totalUl) {}

    /**
     * Something to do.
     *
     * @param atMin minutes after the samples were pipetted; empty before that
     * @param text what to do
     */
    public record Action(OptionalDouble atMin, String text) {}
}
