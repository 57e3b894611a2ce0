package tallywell.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tallywell.notice.InputException;
import tallywell.task.ShowMethods;

/** {@code tallywell methods}. */
@Command(
        name = "methods",
        mixinStandardHelpOptions = true,
        description = "Lists the built-in methods, or prints one as a file to start from.")
final class MethodsCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "0..1", paramLabel = "ID", description = "Which method to print.")
    private @Nullable String id;

    MethodsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException {
        ShowMethods methods = new ShowMethods();
        console.out().print(id == null ? methods.list() : methods.file(id));
        console.out().flush();
        return ExitStatus.DONE;
    }
}
