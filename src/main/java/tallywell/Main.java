package tallywell;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import tallywell.cli.Cli;
import tallywell.cli.Console;

/** Starts the program. */
public final class Main {
    private Main() {}

    /**
     * Runs a command and ends the process with its exit status.
     *
     * @param args the words of the command line
     */
    public static void main(String[] args) {
        boolean terminal = System.console() != null;
        Console console = new Console(stream(FileDescriptor.out), stream(FileDescriptor.err), terminal);
        System.exit(Cli.run(console, args));
    }

    /** UTF-8 on every system, whatever its own encoding is. */
    private static PrintStream stream(FileDescriptor descriptor) {
        return new PrintStream(
                new java.io.BufferedOutputStream(new FileOutputStream(descriptor), 1 << 13),
                true,
                StandardCharsets.UTF_8);
    }
}
