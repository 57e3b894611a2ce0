package tallywell;

/** Starts the program. */
public final class Main {
    private Main() {}

    /**
     * Runs a command and ends the process with its exit status.
     *
     * @param args the words of the command line
     */
    public static void main(String[] args) {
        System.exit(0);
    }
}
