package tallywell.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.Recheck;

/** {@code tallywell recheck}. */
@Command(
        name = "recheck",
        mixinStandardHelpOptions = true,
        description = {
            "Works a summary up again from what it carries, and compares every number, text and formula.",
            "It shows accident, not intent: who changes the inputs in a workbook and all that follows from them makes"
                    + " one that is identical. Colours, pictures and charts are not compared."
        },
        footer = {
            "",
            "Exit status: 0 identical; 3 differs, with a line on standard output for each difference; 1 not a",
            "workbook of ours, or what it takes to work it up again is not in it."
        })
final class RecheckCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "1", paramLabel = "REPORT.xlsx", description = "A summary that 'workup' wrote.")
    private Path report = Path.of("");

    @Option(
            names = "--against",
            paramLabel = "DIR",
            description = "Compare the SHA-256 of the original files, too: DIR is the folder of the run file.")
    private @Nullable Path against;

    @Option(names = "--quiet", description = "Say only what differs.")
    private boolean quiet;

    RecheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException, OutputException {
        System.setProperty("java.awt.headless", "true");
        Recheck.Outcome outcome = new Recheck().run(report, Optional.ofNullable(against));
        console.notices(outcome.notices());
        outcome.lines().forEach(console.out()::println);
        if (!quiet) {
            console.message(report + ": " + outcome.sentence());
            console.message("this shows accident, not intent: a workbook whose inputs were changed together with all"
                    + " that follows from them is identical to itself");
        }
        return outcome.isIdentical() ? ExitStatus.DONE : ExitStatus.FAILED_ACCEPTANCE;
    }
}
