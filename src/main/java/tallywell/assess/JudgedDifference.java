package tallywell.assess;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.budget.DifferenceBudget;
import tallywell.workup.DifferenceResult;
import tallywell.workup.Flag;
import tallywell.workup.Result;

/**
 * A result by difference with what to do about it, judged by its own uncertainty.
 *
 * @param difference the result, its halves with all their flags
 * @param budget how sure it is, where both halves have a budget
 * @param flags what is special about it: its own, and faults of a half that it takes over
 * @param verdict whether it can stand
 * @param advice what to do next with the half that is named
 * @param adviceFor the half that the advice is for
 */
public record JudgedDifference(
        DifferenceResult difference,
        Optional<DifferenceBudget> budget,
        Set<Flag> flags,
        Verdict verdict,
        Advice advice,
        For adviceFor) {
    /** Which half an advice is for. */
    public enum For {
        /** There is no advice. */
        NONE(""),
        /** The half without the treatment. */
        FREE("free"),
        /** The half after the treatment. */
        TOTAL("total"),
        /** Both; where they need different things the rows of the halves say what. */
        BOTH("both");

        private final String word;

        For(String word) {
            this.word = word;
        }

        /** The word as files spell it; empty if there is no advice. */
        public String word() {
            return word;
        }
    }

    /** Keeps a copy that cannot change. */
    public JudgedDifference {
        EnumSet<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        flags = Collections.unmodifiableSet(copy);
    }

    /** The row of results. */
    public Result row() {
        return difference.row(flags);
    }

    /**
     * What stands in place of a value that is not to be told from none: with 95 %, no more than this is there.
     * Nothing where a half may hold more than it shows.
     */
    public OptionalDouble atMost() {
        return budget.isPresent()
                        && flags.contains(Flag.BELOW_DETECTION)
                        && flags.stream().noneMatch(Flag::hidesAnalyte)
                ? OptionalDouble.of(budget.get().atMost())
                : OptionalDouble.empty();
    }
}
