package tallywell.assess;

import java.util.List;
import tallywell.budget.PlateBudget;

/**
 * Whether a batch and its results can stand.
 *
 * @param judgements one a result, in the order of the results
 * @param checks the criteria for the batch
 * @param observations further checks, most of them statistical, that decide nothing but should be looked at where failed
 * @param budget how sure the results are, in their order
 */
public record Assessment(List<Judgement> judgements, List<Check> checks, List<Check> observations, PlateBudget budget) {
    /** Keeps copies that cannot change. */
    public Assessment {
        judgements = List.copyOf(judgements);
        checks = List.copyOf(checks);
        observations = List.copyOf(observations);
    }

    /** The results by difference, judged by the two results that each follows from. */
    public List<JudgedDifference> differences() {
        return JudgedDifference.of(judgements, budget);
    }

    /** Whether no criterion failed. */
    public boolean passed() {
        return count(Check.State.FAILED) == 0;
    }

    /** How many checks went that way. */
    public long count(Check.State state) {
        return checks.stream().filter(check -> check.state() == state).count();
    }

    /** How many sample results got a verdict. */
    public long count(Verdict verdict) {
        return judgements.stream()
                .filter(each -> each.result().role().equals("sample") && each.verdict() == verdict)
                .count();
    }

    /** The batch in one sentence. */
    public String sentence() {
        long failed = count(Check.State.FAILED);
        long assessed = checks.size() - count(Check.State.NOT_ASSESSED);
        if (assessed == 0) {
            return "The batch was not assessed: the method sets no limit that could be held against it.";
        }
        String open =
                count(Check.State.NOT_ASSESSED) == 0 ? "" : " " + count(Check.State.NOT_ASSESSED) + " not assessed.";
        return (failed == 0
                        ? "The batch passes its acceptance: " + assessed + " of " + assessed + " checks passed."
                        : "The batch fails its acceptance: " + failed + " of " + assessed + " checks failed.")
                + open;
    }
}
