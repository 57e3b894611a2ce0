package tallywell.desk;

import java.util.List;
import tallywell.plate.Well;

/**
 * Something noticed while editing.
 *
 * @param good whether all is well
 * @param title in a few words
 * @param text what it means, or what would be right; may be empty
 * @param wells which wells it is about; may be none
 */
public record Finding(boolean good, String title, String text, List<Well> wells) {
    /** Keeps a copy that cannot change. */
    public Finding {
        wells = List.copyOf(wells);
    }

    static Finding good(String title, String text) {
        return new Finding(true, title, text, List.of());
    }

    static Finding look(String title, String text, List<Well> wells) {
        return new Finding(false, title, text, wells);
    }
}
