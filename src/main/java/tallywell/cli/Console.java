package tallywell.cli;

import java.io.PrintStream;
import java.util.List;
import tallywell.notice.InputException;
import tallywell.notice.Notice;

/**
 * Where a command speaks: data on standard output, messages on standard error.
 *
 * @param out standard output, UTF-8
 * @param err standard error, UTF-8
 * @param terminal whether a person is watching, so that progress may be shown
 */
public record Console(PrintStream out, PrintStream err, boolean terminal) {
    void message(String text) {
        err.println("tallywell: " + text);
    }

    /** Whether all data have left on standard output; else that is said. */
    boolean isWhole() {
        if (out.checkError()) {
            message("standard output could not be written to its end (is the disk full, or the reader gone?); what"
                    + " arrived is incomplete");
            return false;
        }
        return true;
    }

    void refuse(InputException e) {
        e.notices().forEach(this::notice);
    }

    void notice(Notice notice) {
        message(notice.toString());
    }

    void notices(List<Notice> notices) {
        notices.forEach(this::notice);
    }
}
