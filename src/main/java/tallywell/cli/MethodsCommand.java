package tallywell.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tallywell.notice.InputException;
import tallywell.task.CheckMethod;
import tallywell.task.ShowMethods;

/** {@code tallywell methods}. */
@Command(
        name = "methods",
        mixinStandardHelpOptions = true,
        description = "Lists the built-in methods, prints one as a file to start from, or checks method files.")
final class MethodsCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "0..1", paramLabel = "ID", description = "Which method to print.")
    private @Nullable String id;

    @Option(
            names = "--check",
            paramLabel = "FILE",
            description = "Check a method file: factor, working range, and what each setting does to a result.")
    private List<Path> check = new ArrayList<>();

    @Spec
    private CommandSpec spec;

    MethodsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException {
        if (!check.isEmpty()) {
            if (id != null) {
                throw new ParameterException(
                        spec.commandLine(), "found '" + id + "' beside --check; expected one of both");
            }
            return Showing.all(console, check, new CheckMethod()::show);
        }
        ShowMethods methods = new ShowMethods();
        console.out().print(id == null ? methods.list() : methods.file(id));
        console.out().flush();
        return ExitStatus.DONE;
    }
}
