package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class HistoryTest {
    private final History<String> history = new History<>("a");

    @Test
    void goesBackAndForthWithoutLimit() {
        for (int i = 0; i < 1000; i++) {
            history.edit("state " + i, "edit " + i);
        }
        for (int i = 0; i < 1000; i++) {
            history.undo();
        }
        assertThat(history.now()).isEqualTo("a");
        assertThat(history.undoable()).isEmpty();
        for (int i = 0; i < 1000; i++) {
            history.redo();
        }
        assertThat(history.now()).isEqualTo("state 999");
        assertThat(history.redoable()).isEmpty();
    }

    @Test
    void saysWhatWouldBeUndoneAndRedone() {
        history.edit("b", "paint");
        history.edit("c", "clear");
        assertThat(history.undoable()).hasValue("clear");
        history.undo();
        assertThat(history.undoable()).hasValue("paint");
        assertThat(history.redoable()).hasValue("clear");
    }

    @Test
    void aNewEditForgetsWhatWasUndone() {
        history.edit("b", "1");
        history.undo();
        history.edit("c", "2");
        history.redo();
        assertThat(history.now()).isEqualTo("c");
    }

    @Test
    void isUnsavedUntilItIsWhatWasSavedAgain() {
        history.edit("b", "1");
        assertThat(history.isUnsaved()).isTrue();
        history.savedAs("b");
        assertThat(history.isUnsaved()).isFalse();
        history.undo();
        assertThat(history.isUnsaved()).isTrue();
        history.redo();
        assertThat(history.isUnsaved()).isFalse();
    }

    @Test
    void theSameStateIsNoEdit() {
        List<String> heard = new ArrayList<>();
        history.onChange(() -> heard.add(history.now()));
        history.edit("a", "nothing");
        history.edit("b", "something");
        assertThat(heard).containsExactly("b");
    }

    @Test
    void whatWasEditedWhileItWasSavedStaysAndIsUnsaved() {
        History<String> history = new History<>("a");
        history.edit("b", "to b");
        history.edit("c", "to c");
        history.saved("b", "b in a file");
        assertThat(history.now()).isEqualTo("c");
        assertThat(history.isUnsaved()).isTrue();
        history.saved("c", "c in a file");
        assertThat(history.now()).isEqualTo("c in a file");
        assertThat(history.isUnsaved()).isFalse();
    }
}
