package tallywell.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.MakePlan;

/** {@code tallywell plan}. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = {
            "Plans a run before it is done: dilutions, mixes, times, and a sheet for the bench.",
            "The run file needs no readings yet. What is expected of a sample stands in the column 'expected' of the"
                    + " sample list; samples without a slot get the next free one."
        })
final class PlanCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "1", paramLabel = "RUN.yaml", description = "Run file.")
    private Path run = Path.of("");

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE.xlsx",
            description = "Where the bench sheet goes. Default: beside the run file, ending in -bench.xlsx.")
    private @Nullable Path output;

    @Option(
            names = "--pdf",
            paramLabel = "FILE.pdf",
            description = "Write the bench sheet as a PDF page to print, too.")
    private @Nullable Path pdf;

    @Option(
            names = "--plan",
            paramLabel = "FILE.yaml",
            description = "Where the plan file goes, for 'plan:' in the run. Default: beside the run file, ending in"
                    + " -plan.yaml.")
    private @Nullable Path plan;

    @Option(names = "--samples", paramLabel = "FILE.csv", description = "Write the sample list as planned there, too.")
    private @Nullable Path samples;

    @Option(
            names = "--repeats",
            description =
                    "Work the run up, and plan only what it leaves to be repeated, at the dilutions it advises. The"
                            + " sample list is written, too; names end in -repeats-bench.xlsx, -repeats-plan.yaml, -repeats.csv.")
    private boolean repeats;

    @Option(names = "--force", description = "Replace existing outputs.")
    private boolean force;

    @Option(names = "--quiet", description = "Say only what is wrong.")
    private boolean quiet;

    PlanCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException, OutputException {
        // Colour profiles need no screen, and on some systems would look for one.
        System.setProperty("java.awt.headless", "true");
        MakePlan.Outcome outcome = new MakePlan()
                .run(new MakePlan.Request(
                        run,
                        Optional.ofNullable(output),
                        Optional.ofNullable(plan),
                        Optional.ofNullable(samples),
                        force,
                        Instant.now(),
                        ZoneId.systemDefault(),
                        Optional.ofNullable(pdf),
                        repeats));
        console.notices(outcome.notices());
        if (!quiet) {
            console.message(outcome.line());
            outcome.written().forEach(path -> console.message("written: " + path));
        }
        return ExitStatus.DONE;
    }
}
