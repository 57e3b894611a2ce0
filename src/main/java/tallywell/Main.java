package tallywell;

/** Starts the program. */
public final class Main {
    private Main() {}
}
