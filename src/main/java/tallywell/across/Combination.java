package tallywell.across;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tallywell.method.RepeatRule;
import tallywell.notice.InputException;

/**
 * One result a sample from several runs, by the laboratory's rule.
 *
 * @param runs paths of the run files as typed
 * @param rule how results are combined
 * @param withChecks whether results with the verdict {@code check} count
 * @param results one a sample, control or difference, and analyte
 * @param shared in words, the sources that counted as the same on several plates
 */
public record Combination(
        List<String> runs, RepeatRule rule, boolean withChecks, List<CombinedResult> results, Set<String> shared) {
    /** Keeps copies that cannot change. */
    public Combination {
        runs = List.copyOf(runs);
        results = List.copyOf(results);
        shared = java.util.Collections.unmodifiableSet(new TreeSet<>(shared));
    }

    /**
     * Combines.
     *
     * @param runs two or more
     * @throws InputException if the runs do not go together
     */
    public static Combination of(List<RunResults> runs, RepeatRule rule, boolean withChecks) throws InputException {
        List<Linking.Link> links = Linking.of(runs);
        Combining combining = new Combining(rule, withChecks);
        Set<String> shared = new TreeSet<>();
        for (Linking.Link link : links) {
            Set<Common> seen = new java.util.HashSet<>();
            for (Found each : link.found()) {
                each.parts()
                        .ifPresent(parts -> parts.common().keySet().forEach(source -> {
                            if (!seen.add(source)) {
                                shared.add(source.words());
                            }
                        }));
            }
        }
        return new Combination(
                runs.stream().map(RunResults::run).toList(),
                rule,
                withChecks,
                links.stream().map(combining::combine).toList(),
                shared);
    }

    /** How many samples have results that do not go together. */
    public long inconsistent() {
        return results.stream().filter(CombinedResult::isInconsistent).count();
    }

    /** The combination in one sentence. */
    public String sentence() {
        long values = results.stream().filter(each -> each.value().isPresent()).count();
        long single = results.stream().filter(each -> each.n() == 1).count();
        return values + " of " + results.size() + " results combined from " + runs.size() + " runs (" + rule.text()
                + "), "
                + single + " of them from one run only; " + inconsistent()
                + (inconsistent() == 1 ? " has" : " have") + " repeats that do not go together.";
    }
}
