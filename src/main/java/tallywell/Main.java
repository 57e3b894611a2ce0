package tallywell;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import tallywell.cli.Cli;
import tallywell.cli.Console;
import tallywell.gui.Desktop;

/** Starts the program. */
public final class Main {
    private static final int BUFFER = 1 << 13;
    private static final int WRONG_USAGE = 2;

    private Main() {}

    /**
     * Without words opens the desktop program; else runs a command and ends the process with its exit status.
     *
     * @param args the words of the command line
     */
    public static void main(String[] args) {
        if (args.length == 0) {
            desktop();
            return;
        }
        Console console = new Console(stream(FileDescriptor.out), stream(FileDescriptor.err), isTerminal());
        System.exit(Cli.run(console, args));
    }

    /** No class of the windows is loaded before this. */
    private static void desktop() {
        if (!Desktop.isPossible()) {
            stream(FileDescriptor.err)
                    .println("the desktop program needs a screen, and there is none here; "
                            + "for the command line see: tallywell --help");
            System.exit(WRONG_USAGE);
        }
        String home = System.getProperty("tallywell.home", "");
        Desktop.open(
                home.isEmpty() ? Path.of(System.getProperty("user.home", "."), "Tallywell") : Path.of(home),
                Locale.getDefault(Locale.Category.FORMAT));
    }

    /** Up to Java 21 there is a console only at a terminal; from 22 on there is always one, which knows. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean isTerminal() {
        java.io.Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return Boolean.TRUE.equals(
                    java.io.Console.class.getMethod("isTerminal").invoke(console));
        } catch (NoSuchMethodException e) {
            return true;
        } catch (ReflectiveOperationException e) {
            return false;
        }
    }

    /** UTF-8 on every system, whatever its own encoding is. */
    private static PrintStream stream(FileDescriptor descriptor) {
        return new PrintStream(
                new BufferedOutputStream(new FileOutputStream(descriptor), BUFFER), true, StandardCharsets.UTF_8);
    }
}
