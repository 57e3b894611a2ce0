package tallywell.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tallywell.task.ShowLayouts;

/** {@code tallywell layout}. */
@Command(name = "layout", mixinStandardHelpOptions = true, description = "Checks layouts and prints them as plates.")
final class LayoutCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Layout files.")
    private List<Path> files = new ArrayList<>();

    LayoutCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        return Showing.all(console, files, new ShowLayouts()::show);
    }
}
