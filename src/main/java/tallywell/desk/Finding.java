package tallywell.desk;

import java.util.List;
import tallywell.plate.Well;

/**
 * Something noticed while editing.
 *
 * @param tone how it is meant
 * @param title in a few words
 * @param text what it means, or what would be right; may be empty
 * @param wells which wells it is about; may be none
 */
public record Finding(Tone tone, String title, String text, List<Well> wells) {
    /** How a finding is meant. */
    public enum Tone {
        /** All is well. */
        GOOD,
        /** Right or wrong by what only the person at work knows. */
        NOTE,
        /** Worth a look. */
        LOOK
    }

    /** Keeps a copy that cannot change. */
    public Finding {
        wells = List.copyOf(wells);
    }

    /** Whether it is worth a look. */
    public boolean needsLook() {
        return tone == Tone.LOOK;
    }

    static Finding good(String title, String text) {
        return new Finding(Tone.GOOD, title, text, List.of());
    }

    static Finding note(String title, String text) {
        return new Finding(Tone.NOTE, title, text, List.of());
    }

    static Finding look(String title, String text, List<Well> wells) {
        return new Finding(Tone.LOOK, title, text, wells);
    }
}
