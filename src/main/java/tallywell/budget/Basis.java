package tallywell.budget;

import java.util.Collection;

/**
 * What a reported uncertainty rests on. Where it is scatter only, value ± U says how well the result repeats; it cannot say
 * that the true value lies within, since a pipette, an absorptivity or a standard may be off by more than U.
 *
 * <p>This is the one place that decides: a result rests on scatter only if no source that the method states acts on it. A
 * source that is stated and does not act, such as the absorptivity where standards make the calibration, does not count.
 */
public enum Basis {
    /** No stated source acts: scatter of wells and course of traces are all that it holds. */
    SCATTER_ONLY("scatter only"),
    /** Scatter, and at least one stated source that acts. */
    BUDGET("budget"),
    /** Precision and bias as the validation of the method found them. */
    VALIDATION("validation");

    private final String word;

    Basis(String word) {
        this.word = word;
    }

    /** The word in files and reports. */
    public String word() {
        return word;
    }

    /** By whether a stated source acts. */
    static Basis of(boolean statedActs) {
        return statedActs ? BUDGET : SCATTER_ONLY;
    }

    /** The basis of a budget from its contributions, each of which acts. */
    static Basis of(Collection<Contribution> contributions) {
        return of(contributions.stream()
                .anyMatch(each -> each.source().estimate() == Estimate.STATED && each.effect() != 0));
    }
}
