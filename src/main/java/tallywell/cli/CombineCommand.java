package tallywell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.CombineRuns;

/** {@code tallywell combine}. */
@Command(
        name = "combine",
        mixinStandardHelpOptions = true,
        description = {
            "Makes one result of each sample from several runs, by a rule that the laboratory stated beforehand.",
            "Samples are linked by the id of the sample list, else by name. Results with the verdict repeat never"
                    + " count; those with the verdict check count with --accept-checks."
        })
final class CombineCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "2..*", paramLabel = "RUN.yaml", description = "Run files, two or more.")
    private List<Path> runs = new ArrayList<>();

    @Option(
            names = "--rule",
            paramLabel = "RULE",
            description = {
                "Default: what the method says under 'repeats', else mean.",
                "mean: of all results that may stand.",
                "weighted: by 1/u² of what is each result's own.",
                "median: of all results that may stand.",
                "critical-range: ISO 5725-6, 5.2: the mean if the range is small enough, else two more results, and then"
                        + " the median."
            })
    private @Nullable String rule;

    @Option(
            names = "--accept-checks",
            description = "A person has looked at the results with the verdict check and lets them stand.")
    private boolean acceptChecks;

    @Mixin
    private AcrossOptions options = new AcrossOptions();

    CombineCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException, OutputException, IOException {
        CombineRuns.Request request = options.request(() -> CombineRuns.Request.of(
                runs,
                Optional.ofNullable(rule),
                acceptChecks,
                options.output(),
                options.force(),
                Instant.now(),
                ZoneId.systemDefault(),
                options.shared(),
                options.apart()));
        CombineRuns.Outcome outcome = new CombineRuns().run(request);
        options.show(console, outcome.notices(), options.csv() ? outcome.csv() : outcome.text());
        return ExitStatus.DONE;
    }
}
