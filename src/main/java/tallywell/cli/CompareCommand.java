package tallywell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.CompareRuns;

/** {@code tallywell compare}. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = {
            "Lays two runs of the same samples side by side and judges each difference against its uncertainty.",
            "Samples are linked by the id of the sample list, else by name. What both plates share, such as the"
                    + " standards, is taken out of the uncertainty of the difference."
        })
final class CompareCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", arity = "1", paramLabel = "FIRST.yaml", description = "Run file of the original.")
    private Path first = Path.of("");

    @Parameters(index = "1", arity = "1", paramLabel = "SECOND.yaml", description = "Run file of the repeat.")
    private Path second = Path.of("");

    @Mixin
    private AcrossOptions options = new AcrossOptions();

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException, OutputException, IOException {
        CompareRuns.Request request = options.request(() -> CompareRuns.Request.of(
                first,
                second,
                options.output(),
                options.force(),
                Instant.now(),
                ZoneId.systemDefault(),
                options.shared(),
                options.apart()));
        CompareRuns.Outcome outcome = new CompareRuns().run(request);
        options.show(console, outcome.notices(), options.csv() ? outcome.csv() : outcome.text());
        return ExitStatus.DONE;
    }
}
