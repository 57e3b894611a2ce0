package tallywell.cli;

import java.nio.file.Path;
import java.util.List;
import tallywell.notice.InputException;

/** Shows several files, or nothing if any is refused: standard output never carries half an answer. */
final class Showing {
    /** Makes the text of one file. */
    interface Show {
        String of(Path file) throws InputException;
    }

    private Showing() {}

    static int all(Console console, List<Path> files, Show show) {
        StringBuilder text = new StringBuilder();
        boolean refused = false;
        for (Path file : files) {
            try {
                text.append(text.isEmpty() ? "" : "\n").append(show.of(file));
            } catch (InputException e) {
                console.refuse(e);
                refused = true;
            }
        }
        if (refused) {
            return ExitStatus.INPUT;
        }
        console.out().print(text);
        console.out().flush();
        return ExitStatus.DONE;
    }
}
