package tallywell.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.Creep;
import tallywell.method.Reagent;
import tallywell.method.SignalFormula;
import tallywell.method.StaggerFrom;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.plan.Plan.Action;
import tallywell.quantity.Numbers;

/** What is done when; minutes count from the end of mixing in the samples. */
final class Schedule {
    private static final double S_PER_MIN = 60;

    private final AssayMethod method;
    private final List<Action> actions = new ArrayList<>();
    private double minutes;
    private int reads;

    Schedule(AssayMethod method) {
        this.method = method;
    }

    List<Action> all() {
        prepare();
        int trigger = 0;
        for (int i = 0; i < method.steps().size(); i++) {
            Step step = method.steps().get(i);
            if (i == 0) {
                wait(step.timing().beforeS());
                read("before the first trigger");
            }
            for (int k = 1; k <= step.signalFormula().triggers(); k++) {
                trigger(step, ++trigger, k == step.signalFormula().triggers());
            }
        }
        return actions;
    }

    private void prepare() {
        before("Bring reagents to the temperature of the reader; make the dilutions and the mixes below.");
        String unit = " µL";
        double sample =
                method.steps().get(0).volumes().map(each -> each.sampleUl()).orElse(0.0);
        double treatment = method.bench().volumeUl(Reagent.Into.TREATMENT, 0);
        double mix = method.bench().volumeUl(Reagent.Into.MIX, 0);
        if (treatment > 0) {
            before("Pipette " + plain(sample) + unit + " of sample, blank or standard, then " + plain(treatment) + unit
                    + " of the treatment; mix, and let it react as the reagent says.");
            before("Pipette " + plain(mix) + unit
                    + " of the mix into every well; mix without bubbles. Start the clock.");
            return;
        }
        if (mix > 0) {
            before("Pipette " + plain(mix) + unit + " of the mix into every well in use.");
        }
        before("Pipette " + (sample > 0 ? plain(sample) + unit + " of " : "")
                + "sample, standard or control, into blanks as much water; mix without bubbles. Start the clock.");
    }

    private void wait(OptionalDouble seconds) {
        minutes += seconds.orElse(0) / S_PER_MIN;
    }

    private void read(String when) {
        at("Read A" + reads + " (" + when + ")"
                + method.steps().get(0).signal().wavelengthNm().stream()
                        .mapToObj(nm -> ", " + plain(nm) + " nm")
                        .findFirst()
                        .orElse("")
                + ".");
        reads++;
    }

    private void trigger(Step step, int trigger, boolean ofAnalyte) {
        Timing timing = step.timing();
        double volume = method.bench().volumeUl(Reagent.Into.TRIGGER, trigger);
        String names = String.join(
                ", ",
                method.bench().into(Reagent.Into.TRIGGER, trigger).stream()
                        .map(Reagent::name)
                        .toList());
        String from = timing.staggerFrom() == StaggerFrom.LEFT ? "left" : "right";
        at("Add the trigger" + (names.isEmpty() ? "" : " (" + names + ")")
                + (volume > 0 ? ", " + plain(volume) + " µL" : "") + ", column by column from the " + from
                + (timing.staggerPerColumnS() > 0 ? ", " + plain(timing.staggerPerColumnS()) + " s apart" : "")
                + "; none into wells without trigger, as much water instead. Mix"
                + (timing.triggerToFirstReadS() > 0
                        ? "; first reading " + plain(timing.triggerToFirstReadS()) + " s after the first column."
                        : "."));
        boolean coupled = step.signalFormula() == SignalFormula.EQUILIBRIUM_COUPLED;
        // The equilibrium of a coupled step settles as long as the baseline does.
        wait(ofAnalyte || !coupled ? timing.afterS() : timing.beforeS());
        read(
                ofAnalyte
                        ? "after the reaction of " + step.analyte().name()
                        : "with the equilibrium settled, before the next trigger");
        if (ofAnalyte && step.creep() != Creep.NONE) {
            at("Read on every 2 to 5 min, 5 to 6 readings in all, until the change per minute is constant.");
        }
    }

    private void before(String text) {
        actions.add(new Action(OptionalDouble.empty(), text));
    }

    private void at(String text) {
        actions.add(new Action(OptionalDouble.of(minutes), text));
    }

    private static String plain(double value) {
        return Numbers.plain(value);
    }
}
