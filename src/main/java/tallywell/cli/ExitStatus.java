package tallywell.cli;

/** What the exit status of the process means. */
final class ExitStatus {
    static final int DONE = 0;
    static final int INPUT = 1;
    static final int USAGE = 2;
    static final int FAILED_ACCEPTANCE = 3;
    static final int FAULT = 70;
    static final int INTERRUPTED = 130;

    private ExitStatus() {}
}
