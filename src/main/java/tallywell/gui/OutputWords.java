package tallywell.gui;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;
import tallywell.notice.OutputException;

/** Says why a file could not be written, and what helps. */
final class OutputWords {
    private OutputWords() {}

    static String of(OutputException e) {
        return e.getMessage() + ". " + Text.of("output." + help(e));
    }

    private static String help(OutputException e) {
        Throwable cause = e.getCause();
        String text = String.valueOf(cause == null ? e.getMessage() : cause.getMessage())
                .toLowerCase(Locale.ROOT);
        if (text.contains("no space") || text.contains("not enough space") || text.contains("quota")) {
            return "full";
        }
        if (cause instanceof NoSuchFileException
                || text.contains("does not exist")
                || text.contains("not a directory")) {
            return "folder";
        }
        if (cause instanceof AccessDeniedException || text.contains("read-only")) {
            return "denied";
        }
        return cause instanceof IOException ? "locked" : "other";
    }
}
