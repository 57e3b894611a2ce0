package tallywell.task;

/** A fault of the program while it worked one run up: nothing that the user did wrong, as far as it can tell. */
final class RunFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Names the run.
     *
     * @param run as its messages call it
     */
    RunFault(String run, Throwable cause) {
        super(
                run + ": "
                        + (cause instanceof OutOfMemoryError
                                ? "the memory given to Java does not suffice; start Java with a larger -Xmx"
                                : "a fault of the program, not of your files: " + cause),
                cause);
    }
}
