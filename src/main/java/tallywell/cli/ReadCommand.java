package tallywell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tallywell.task.ShowReadings;

/** {@code tallywell read}. */
@Command(
        name = "read",
        mixinStandardHelpOptions = true,
        description = "Shows what was understood of exports; works nothing up.")
final class ReadCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Exports of a reader.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--csv", description = "Print every reading as a line of CSV.")
    private boolean csv;

    @Option(names = "--block", paramLabel = "N", description = "Which block of a file with several, from 1.")
    private @Nullable Integer block;

    @Spec
    private CommandSpec spec;

    ReadCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        if (block != null && block < 1) {
            throw new ParameterException(spec.commandLine(), "found --block " + block + "; expected 1 or more");
        }
        OptionalInt chosen = block == null ? OptionalInt.empty() : OptionalInt.of(block);
        ShowReadings readings = new ShowReadings(chosen);
        if (!csv) {
            return Showing.all(console, files, readings::explain);
        }
        boolean refused = !readings.read(files, console::refuse);
        if (refused) {
            return ExitStatus.INPUT;
        }
        readings.writeCsv(console.out());
        return ExitStatus.DONE;
    }
}
