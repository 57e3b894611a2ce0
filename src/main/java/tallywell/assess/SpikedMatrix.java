package tallywell.assess;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.method.SpikeScope;
import tallywell.plate.Content;
import tallywell.workup.Analysis;
import tallywell.workup.Result;

/**
 * The samples that a spike speaks for. Where its recovery is out, what is doubtful first is the matrix that was spiked, not
 * every sample that shares the plate.
 */
final class SpikedMatrix {
    private final Analysis analysis;

    SpikedMatrix(Analysis analysis) {
        this.analysis = analysis;
    }

    /** Keys of the samples that a spike which fails its criterion speaks for. */
    Set<String> inDoubt() {
        Set<String> keys = new HashSet<>();
        for (Result result : analysis.results()) {
            if (result.role().equals("spike") && Recoveries.fails(analysis, result)) {
                spokenFor(result).forEach(each -> keys.add(each.key()));
            }
        }
        return keys;
    }

    /** Whether the recovery decides over all samples, as that of a control does. */
    boolean decidesForAll(Result result) {
        return !result.role().equals("spike") || scope(result) == SpikeScope.BATCH;
    }

    /** Which samples a spike speaks for, in words. */
    String words(Result spike) {
        return switch (scope(spike)) {
            case SAMPLE -> "'" + spike.name() + "'";
            case GROUP -> {
                String group = group(spike);
                yield group.isEmpty() ? "all samples without a group" : "all samples of group '" + group + "'";
            }
            case BATCH -> "all samples";
        };
    }

    private List<Result> spokenFor(Result spike) {
        return analysis.results().stream()
                .filter(each -> each.role().equals("sample") && each.step() == spike.step())
                .filter(each -> speaksFor(spike, each))
                .toList();
    }

    private boolean speaksFor(Result spike, Result sample) {
        return switch (scope(spike)) {
            case SAMPLE -> sample.slot().orElse(0) == spiked(spike);
            case GROUP -> group(sample).equals(group(spike));
            case BATCH -> true;
        };
    }

    private SpikeScope scope(Result spike) {
        return analysis.stepOf(spike).step().limits().spikeScope();
    }

    private int spiked(Result spike) {
        return analysis.assay().layout().at(spike.wells().get(0)) instanceof Content.Spike content ? content.of() : 0;
    }

    private String group(Result result) {
        return analysis.stepOf(result).where(well -> result.wells().contains(well.well())).stream()
                .map(well -> well.trace().group())
                .distinct()
                .collect(Collectors.joining(" "));
    }
}
