package tallywell.gui;

import tallywell.desk.History;
import tallywell.desk.LayoutDesk;
import tallywell.desk.RunDesk;

/** Says what would be lost: which run or layout, and what was done to it last. */
final class Unsaved {
    private Unsaved() {}

    static String words(RunDesk desk) {
        return words("leave.run", desk.draft().title(), desk.history());
    }

    static String words(LayoutDesk desk) {
        return words("leave.layout", LayoutSaving.title(desk.layout()), desk.history());
    }

    private static String words(String key, String title, History<?> history) {
        String which = title.isBlank() ? Text.of(key + ".untitled") : Text.of(key, title);
        return history.undoable()
                .filter(last -> !last.isBlank())
                .map(last -> which + "\n" + Text.of("leave.last", last))
                .orElse(which);
    }
}
