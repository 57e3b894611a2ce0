package tallywell.assess;

import java.util.Set;
import java.util.stream.Collectors;
import tallywell.method.Sample;
import tallywell.workup.Analysis;
import tallywell.workup.Result;

/** The results whose dilution may have been forgotten in the sample list: samples, and spikes on them. */
final class ForgottenDilutions {
    private ForgottenDilutions() {}

    /** Their keys. */
    static Set<String> keys(Analysis analysis) {
        Set<Sample> forgotten =
                Set.copyOf(analysis.assay().samples().forgotten(analysis.assay().method()));
        return analysis.results().stream()
                .filter(result -> !analysis.stepOf(result)
                        .where(well -> result.wells().contains(well.well())
                                && well.trace()
                                        .sample()
                                        .map(forgotten::contains)
                                        .orElse(false))
                        .isEmpty())
                .map(Result::key)
                .collect(Collectors.toSet());
    }
}
