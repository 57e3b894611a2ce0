package tallywell.workup;

import java.util.List;

/**
 * One half of a result by difference: what is reported of it, and what counts for the difference.
 *
 * <p>The two differ only below the lowest standard. There nothing is reported, and a difference still needs how much it is
 * that is taken off: see {@code docs/uncertainty.md}, "Differences".
 *
 * @param reported the result as reported; without a value below the lowest standard
 * @param counted the same with the value that counts for the difference, where there is one
 * @param below how that value came about
 * @param wells those wells that lie below the lowest standard, with the level that counts; at the lowest standard where only
 *     an interval is known; empty unless something was followed
 */
public record Half(Result reported, Result counted, Below below, List<WellResult> wells) {
    /** How a half without a reported value comes by the value that counts. */
    public enum Below {
        /** It has a reported value, or none at all. */
        NOT,
        /** The curve is followed from the lowest standard to the blank. */
        CURVE,
        /** The curve says nothing there: anything from nothing to the lowest standard, so the middle. */
        INTERVAL
    }

    /** Keeps a copy that cannot change. */
    public Half {
        wells = List.copyOf(wells);
    }

    /** A half that counts as it is reported. */
    public static Half of(Result reported) {
        return new Half(reported, reported, Below.NOT, List.of());
    }

    /** The same with further flags on what is reported. */
    Half flagged(Result flagged) {
        return new Half(flagged, counted, below, wells);
    }
}
