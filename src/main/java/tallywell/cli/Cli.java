package tallywell.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.Version;

/** The command line: words to a task, its outcome to messages and an exit status. */
public final class Cli {
    private Cli() {}

    /**
     * Runs one command.
     *
     * @param console where it speaks
     * @param args the words of the command line
     * @return the exit status
     */
    public static int run(Console console, String... args) {
        Root root = new Root();
        CommandLine line = new CommandLine(root)
                .addSubcommand("workup", new WorkupCommand(console))
                .addSubcommand("plan", new PlanCommand(console))
                .addSubcommand("recheck", new RecheckCommand(console))
                .addSubcommand("read", new ReadCommand(console))
                .addSubcommand("layout", new LayoutCommand(console))
                .addSubcommand("methods", new MethodsCommand(console))
                .addSubcommand("compare", new CompareCommand(console))
                .addSubcommand("combine", new CombineCommand(console))
                .addSubcommand("review", new ReviewCommand(console));
        line.setOut(writer(console, true));
        line.setErr(writer(console, false));
        line.setUsageHelpWidth(100);
        line.setParameterExceptionHandler(Cli::wrongUsage);
        line.setExecutionExceptionHandler((fault, command, parsed) -> failed(console, root, fault));
        int status;
        try {
            status = line.execute(args);
        } catch (StackOverflowError | OutOfMemoryError | LinkageError e) {
            status = failed(console, root, e);
        }
        return console.isWhole() ? status : ExitStatus.INPUT;
    }

    private static PrintWriter writer(Console console, boolean out) {
        return new PrintWriter(out ? console.out() : console.err(), true, StandardCharsets.UTF_8);
    }

    private static int wrongUsage(ParameterException fault, String[] args) {
        CommandLine command = fault.getCommandLine();
        String name = command.getCommandSpec().qualifiedName();
        command.getErr().println("tallywell: " + fault.getMessage());
        command.getErr().println("See '" + name + " --help'.");
        return ExitStatus.USAGE;
    }

    private static int failed(Console console, Root root, Throwable fault) {
        if (root.debug) {
            fault.printStackTrace(console.err());
        }
        if (fault instanceof InputException input) {
            console.refuse(input);
            return ExitStatus.INPUT;
        }
        if (fault instanceof OutputException) {
            console.message(String.valueOf(fault.getMessage()));
            return ExitStatus.INPUT;
        }
        if (fault instanceof OutOfMemoryError) {
            console.message(
                    "the memory given to Java does not suffice; nothing was written. Start Java with a larger -Xmx");
            return ExitStatus.FAULT;
        }
        console.message("a fault of the program, not of your files: " + fault
                + "; nothing was written. Please report it with what 'tallywell --debug ...' prints");
        return ExitStatus.FAULT;
    }

    /** The program itself. */
    @Command(
            name = "tallywell",
            mixinStandardHelpOptions = true,
            versionProvider = Versions.class,
            description = "From readings of enzymatic end-point assays on microplates to concentrations in the"
                    + " original samples.",
            footer = {
                "",
                "Exit status: 0 done, batch accepted or without criteria; 1 input cannot be worked up, nothing",
                "written; 2 wrong usage; 3 worked up and written, but the batch fails its acceptance (recheck:",
                "differs); 70 fault of the program; 130 interrupted.",
                "Results for label or safety decisions need review by a qualified person. Not for diagnosis."
            })
    private static final class Root implements Runnable {
        @Option(names = "--debug", description = "Print where a fault happened.", scope = CommandLine.ScopeType.INHERIT)
        private boolean debug;

        @Spec
        private CommandSpec spec;

        @Override
        public void run() {
            throw new ParameterException(
                    spec.commandLine(),
                    "found no command; expected one of workup, plan, recheck, read, layout, methods, compare, "
                            + "combine, review");
        }
    }

    /** Version and Java, for reports of faults. */
    private static final class Versions implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {
                "tallywell " + Version.text(),
                String.format(
                        Locale.ROOT,
                        "Java %s (%s)",
                        System.getProperty("java.version"),
                        System.getProperty("java.vendor"))
            };
        }
    }
}
