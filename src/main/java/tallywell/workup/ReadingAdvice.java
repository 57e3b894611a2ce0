package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.plate.Content;
import tallywell.quantity.Numbers;
import tallywell.trace.EndPointSchedule;
import tallywell.trace.ReadingScatter;

/**
 * How often the wells of a step should be read for their readings to show whether the reaction was over.
 *
 * @param schedule number of readings and time between them; empty where none of the list does
 * @param scatter of a reading, in absorbance
 * @param ofPlate whether the plate shows that scatter; else it is taken as 1 mA
 * @param change smallest ΔA that it holds for, in absorbance
 * @param firstS first reading after the trigger, in s
 */
public record ReadingAdvice(
        Optional<EndPointSchedule> schedule, double scatter, boolean ofPlate, double change, double firstS) {
    /** What a reader scatters by where the plate shows nothing of it, in absorbance: the noisier of the study in docs/creep.md. */
    private static final double USUAL = 0.001;

    /** Smaller changes are not worth planning for, in absorbance: the least of the study in docs/creep.md. */
    private static final double LEAST_CHANGE = 0.05;

    private static final double FIRST_S = 300;

    /** The advice for a step, by its own scatter and its smallest ΔA. */
    public static ReadingAdvice of(StepAnalysis step) {
        List<WellResult> used = step.where(
                well -> well.used() && !well.trace().readings().after().isEmpty());
        Optional<ReadingScatter> found = scatter(step, used);
        double change = used.stream()
                .filter(well -> !isBlank(well.content()))
                .flatMapToDouble(well -> well.netDeltaA().stream())
                .filter(net -> net >= LEAST_CHANGE)
                .min()
                .orElse(LEAST_CHANGE);
        double first = used.stream()
                .filter(well -> well.trace().readings().isTimed())
                .mapToDouble(well -> well.trace().readings().after().get(0).timeS())
                .filter(time -> time > 0)
                .min()
                .orElse(FIRST_S);
        ReadingScatter scatter = found.orElse(new ReadingScatter(USUAL, 1));
        return new ReadingAdvice(
                EndPointSchedule.of(scatter, change, first), scatter.sd(), found.isPresent(), change, first);
    }

    /** Number and spacing in words; empty where none of the list does. */
    public Optional<String> words() {
        return schedule.map(each -> each.count() + " readings " + Numbers.plain(each.everyS() / 60) + " min apart");
    }

    private static Optional<ReadingScatter> scatter(StepAnalysis step, List<WellResult> used) {
        int sign = step.step().signal().direction().sign();
        List<ReadingScatter.Followed> followed = new ArrayList<>();
        for (WellResult well : used) {
            if (well.trace().readings().isTimed()) {
                followed.add(new ReadingScatter.Followed(
                        Traces.after(well.trace().readings()), isBlank(well.content()) ? 0 : sign));
            }
        }
        return Optional.ofNullable(ReadingScatter.of(followed));
    }

    private static boolean isBlank(Content content) {
        return content instanceof Content.Blank || content instanceof Content.SampleBlank;
    }
}
