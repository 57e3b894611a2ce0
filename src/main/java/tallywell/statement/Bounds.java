package tallywell.statement;

import java.util.OptionalDouble;
import java.util.Set;
import tallywell.assess.JudgedDifference;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.ResultScale;

/** What can be said of results that lie outside the standards. */
public final class Bounds {
    private static final String NONE = "no value";
    private static final String NOT_KNOWN = "not known";

    private Bounds() {}

    /** What can be said of a difference without a value that is to be stated: with 95 %, no more than this is there. */
    public static String words(JudgedDifference judged) {
        return judged.atMost().isPresent()
                ? "< " + Stated.brief(judged.atMost().getAsDouble())
                : hidesAnalyte(judged.flags()) ? NOT_KNOWN : NONE;
    }

    /**
     * The lowest or highest standard in the original sample with its sign, such as {@code > 1.25}; else that there is no value.
     * A change that may be smaller than that of the analyte gives no upper bound: what it comes to is not known.
     */
    public static String words(Analysis analysis, Result result) {
        boolean above = result.flags().contains(Flag.ABOVE_STANDARDS);
        boolean below = result.flags().contains(Flag.BELOW_STANDARDS);
        if (!above && hidesAnalyte(result.flags())) {
            return NOT_KNOWN;
        }
        OptionalDouble bound = above == below ? OptionalDouble.empty() : new ResultScale(analysis, result).bound(above);
        return bound.isEmpty() ? NONE : (above ? "> " : "< ") + Stated.brief(bound.getAsDouble());
    }

    private static boolean hidesAnalyte(Set<Flag> flags) {
        return flags.stream().anyMatch(Flag::hidesAnalyte);
    }
}
