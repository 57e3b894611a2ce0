package tallywell.desk;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * States of something that is edited, each an immutable value, with undo and redo without limit. For the event thread
 * only.
 *
 * @param <T> the state
 */
public final class History<T> {
    /** A state, and what led to it in the words of a menu. */
    private record Edit<T>(T state, String what) {}

    private final Deque<Edit<T>> done = new ArrayDeque<>();
    private final Deque<Edit<T>> undone = new ArrayDeque<>();
    private final List<Runnable> listeners = new ArrayList<>();
    private Edit<T> current;
    private T saved;

    /** Begins with a state that needs no saving. */
    public History(T state) {
        current = new Edit<>(state, "");
        saved = state;
    }

    /** The state now. */
    public T now() {
        return current.state();
    }

    /** Calls back after every change of the state, and after saving. */
    public void onChange(Runnable listener) {
        listeners.add(listener);
    }

    /**
     * Goes on to a new state; a state equal to the present one is no edit.
     *
     * @param what in the words of a menu, such as {@code exclude E4}
     */
    public void edit(T state, String what) {
        if (state.equals(now())) {
            return;
        }
        done.push(current);
        undone.clear();
        current = new Edit<>(state, what);
        tell();
    }

    /** What would be undone, if anything. */
    public Optional<String> undoable() {
        return done.isEmpty() ? Optional.empty() : Optional.of(current.what());
    }

    /** What would be redone, if anything. */
    public Optional<String> redoable() {
        return undone.isEmpty() ? Optional.empty() : Optional.of(undone.peek().what());
    }

    /** Goes one edit back, if there is one. */
    public void undo() {
        if (!done.isEmpty()) {
            undone.push(current);
            current = done.pop();
            tell();
        }
    }

    /** Goes one edit forward again, if there is one. */
    public void redo() {
        if (!undone.isEmpty()) {
            done.push(current);
            current = undone.pop();
            tell();
        }
    }

    /** Begins anew with a state that needs no saving. */
    public void reset(T state) {
        done.clear();
        undone.clear();
        current = new Edit<>(state, "");
        saved = state;
        tell();
    }

    /** Puts another value in place of the present state without an edit, such as the path it was saved under. */
    public void savedAs(T state) {
        current = new Edit<>(state, current.what());
        saved = state;
        tell();
    }

    /** Whether the state differs from the one last saved. */
    public boolean isUnsaved() {
        return !now().equals(saved);
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
