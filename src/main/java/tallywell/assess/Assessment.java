package tallywell.assess;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tallywell.budget.PlateBudget;

/**
 * Whether a batch and its results can stand.
 *
 * @param judgements one a result, in the order of the results
 * @param checks the criteria for the batch
 * @param observations further checks, most of them statistical, that decide nothing but should be looked at where failed
 * @param budget how sure the results are, in their order
 * @param differences the results by difference
 */
public record Assessment(
        List<Judgement> judgements,
        List<Check> checks,
        List<Check> observations,
        PlateBudget budget,
        List<JudgedDifference> differences) {
    /** Keeps copies that cannot change. */
    public Assessment {
        judgements = List.copyOf(judgements);
        checks = List.copyOf(checks);
        observations = List.copyOf(observations);
        differences = List.copyOf(differences);
    }

    /** Whether no criterion failed. */
    public boolean passed() {
        return count(Check.State.FAILED) == 0;
    }

    /** Whether no criterion failed, and more of them passed than were left open: what is green should have been looked at. */
    public boolean isMostlyAssessed() {
        return passed()
                && count(Check.State.PASSED) > 0
                && count(Check.State.PASSED) >= count(Check.State.NOT_ASSESSED);
    }

    /** How many checks went that way. */
    public long count(Check.State state) {
        return checks.stream().filter(check -> check.state() == state).count();
    }

    /** How many results of samples got a verdict; of a result by difference that counts, and its halves do not. */
    public long count(Verdict verdict) {
        Set<String> halves = new HashSet<>();
        for (JudgedDifference each : differences) {
            halves.add(each.difference().total().key());
            halves.add(each.difference().free().key());
        }
        long plain = judgements.stream()
                .filter(each -> each.result().role().equals("sample") && each.verdict() == verdict)
                .filter(each -> !halves.contains(each.result().key()))
                .count();
        return plain
                + differences.stream().filter(each -> each.verdict() == verdict).count();
    }

    /** The batch in one sentence. */
    public String sentence() {
        long failed = count(Check.State.FAILED);
        long passed = count(Check.State.PASSED);
        long open = count(Check.State.NOT_ASSESSED);
        if (failed + passed == 0) {
            return "The batch was not assessed: the method sets no limit that could be held against it.";
        }
        // All checks are counted against one total, so that no two counts seem to contradict each other.
        List<String> counts = new ArrayList<>();
        if (failed > 0) {
            counts.add(failed + " of " + checks.size() + " checks failed");
        }
        if (passed > 0) {
            counts.add(failed > 0 ? passed + " passed" : passed + " of " + checks.size() + " checks passed");
        }
        if (open > 0) {
            counts.add(open + " not assessed");
        }
        return (failed == 0 ? "The batch passes its acceptance: " : "The batch fails its acceptance: ")
                + String.join(", ", counts) + ".";
    }
}
