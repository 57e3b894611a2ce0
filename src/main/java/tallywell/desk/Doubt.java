package tallywell.desk;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Something that looks wrong with what has gone into a run, with what would cure it.
 *
 * @param text what was found, as one or two sentences
 * @param cures what can be done, the likeliest first; may be empty
 */
public record Doubt(String text, List<Cure> cures) {
    /** Keeps a copy that cannot change. */
    public Doubt {
        cures = List.copyOf(cures);
    }

    /** One thing that can be done. */
    public sealed interface Cure {
        /** In the words of a button. */
        String words();
    }

    /**
     * A change of the run.
     *
     * @param words of the button
     * @param edit the change
     * @param what in the words of undo
     */
    public record Edit(String words, UnaryOperator<RunDraft> edit, String what) implements Cure {}

    /**
     * Looking at the method in its form.
     *
     * @param words of the button
     */
    public record MethodForm(String words) implements Cure {}
}
