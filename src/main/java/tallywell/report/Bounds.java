package tallywell.report;

import java.io.IOException;
import java.util.OptionalDouble;
import tallywell.assess.Judgement;
import tallywell.workup.Flag;

/** What can be said of results that lie outside the standards. */
public final class Bounds {
    private static final String NONE = "no value";

    private final Draft draft;

    private Bounds(Draft draft) {
        this.draft = draft;
    }

    /** The bounds of a report. */
    public static Bounds of(Report report) throws IOException {
        return new Bounds(Draft.of(report));
    }

    /** The lowest or highest standard in the original sample with its sign, such as {@code > 1.25}; else that there is no value. */
    public String words(Judgement judgement) {
        return words(draft, judgement);
    }

    static String words(Draft draft, Judgement judgement) {
        boolean above = judgement.result().flags().contains(Flag.ABOVE_STANDARDS);
        boolean below = judgement.result().flags().contains(Flag.BELOW_STANDARDS);
        OptionalDouble bound = above == below ? OptionalDouble.empty() : new ResultScale(draft, judgement).bound(above);
        return bound.isEmpty() ? NONE : (above ? "> " : "< ") + Stated.brief(bound.getAsDouble());
    }
}
