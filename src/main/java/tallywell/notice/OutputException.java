package tallywell.notice;

import java.nio.file.Path;

/** Output that could not be written. Nothing half-written is left behind. */
public final class OutputException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Stops the writing of a file. */
    public OutputException(Path path, String text) {
        super(path + ": " + text);
    }

    /** Stops the writing of a file because of something the system reported. */
    public OutputException(Path path, String text, Throwable cause) {
        super(path + ": " + text, cause);
    }
}
