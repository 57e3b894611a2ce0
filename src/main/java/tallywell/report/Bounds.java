package tallywell.report;

import java.util.OptionalDouble;
import tallywell.assess.JudgedDifference;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.ResultScale;

/** What can be said of results that lie outside the standards. */
public final class Bounds {
    private static final String NONE = "no value";

    private Bounds() {}

    /** What can be said of a difference without a value that is to be stated: with 95 %, no more than this is there. */
    public static String words(JudgedDifference judged) {
        return judged.atMost().isPresent() ? "< " + Stated.brief(judged.atMost().getAsDouble()) : NONE;
    }

    /** The lowest or highest standard in the original sample with its sign, such as {@code > 1.25}; else that there is no value. */
    public static String words(Analysis analysis, Result result) {
        boolean above = result.flags().contains(Flag.ABOVE_STANDARDS);
        boolean below = result.flags().contains(Flag.BELOW_STANDARDS);
        OptionalDouble bound = above == below ? OptionalDouble.empty() : new ResultScale(analysis, result).bound(above);
        return bound.isEmpty() ? NONE : (above ? "> " : "< ") + Stated.brief(bound.getAsDouble());
    }
}
