package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;

/** A table of four rows: a fixed number, then three open columns. */
class CellsTest {
    private final Cells cells = new Cells(
            List.of(
                    List.of("1", "a", "", ""),
                    List.of("2", "b", "", ""),
                    List.of("3", "", "", ""),
                    List.of("4", "", "", "")),
            1,
            Set.of());

    private static String shown(Cells cells) {
        return String.join(
                "/", cells.rows().stream().map(row -> String.join(",", row)).toList());
    }

    private static Cells.Block block(String edges) {
        String[] parts = edges.strip().split(" ");
        return new Cells.Block(
                Integer.parseInt(parts[0]),
                Integer.parseInt(parts[1]),
                Integer.parseInt(parts[2]),
                Integer.parseInt(parts[3]));
    }

    /** Edges are top, left, bottom, right; in what is pasted, commas stand for tabs and slashes for new lines. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1 2 1 2 | 10        | 1,a,,/2,b,10,/3,,,/4,,,
            0 2 3 2 | 10        | 1,a,10,/2,b,10,/3,,10,/4,,10,
            0 2 3 2 | 10/       | 1,a,10,/2,b,10,/3,,10,/4,,10,
            0 2 3 2 | 5/10      | 1,a,5,/2,b,10,/3,,5,/4,,10,
            0 2 2 2 | 5/10      | 1,a,5,/2,b,10,/3,,,/4,,,
            0 2 3 3 | 10        | 1,a,10,10/2,b,10,10/3,,10,10/4,,10,10
            0 1 0 1 | x,2/y,3   | 1,x,2,/2,y,3,/3,,,/4,,,
            3 3 3 3 | 7,8/9     | 1,a,,/2,b,,/3,,,/4,,,7
            0 0 0 0 | 9,x       | 1,x,,/2,b,,/3,,,/4,,,
            0 1 0 1 | /y        | 1,,,/2,y,,/3,,,/4,,,
            """)
    void whatIsPastedGoesWhereASpreadsheetWouldPutIt(String at, String text, String expected) {
        cells.paste(block(at), text.replace(',', '\t').replace('/', '\n'));
        assertThat(shown(cells)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0 1 3 1 | 1,a,,/2,a,,/3,a,,/4,a,,
            1 1 2 2 | 1,a,,/2,b,,/3,b,,/4,,,
            2 1 2 1 | 1,a,,/2,b,,/3,b,,/4,,,
            0 1 0 1 | 1,a,,/2,b,,/3,,,/4,,,
            """)
    void fillingDownTakesTheFirstSelectedCellOrTheOneAbove(String at, String expected) {
        cells.fillDown(block(at));
        assertThat(shown(cells)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"Tank 9, Tank 11", "Tank 009, Tank 011", "7, 9", "Must, Must"})
    void fillingDownCountsUpWhereColumnsCount(String first, String third) {
        Cells names = new Cells(List.of(List.of("1", first), List.of("2", ""), List.of("3", "")), 1, Set.of(1));
        names.fillDown(new Cells.Block(0, 1, 2, 1));
        assertThat(names.rows().get(0).get(1)).isEqualTo(first);
        assertThat(names.rows().get(2).get(1)).isEqualTo(third);
        assertThat(names.history().undoable()).isPresent();
    }

    @Test
    void theSameGoesIntoAllRowsOrIntoThoseThatHoldAnything() {
        assertThat(cells.held()).isEqualTo(2);
        cells.same(2, "1+9", false);
        assertThat(shown(cells)).isEqualTo("1,a,1+9,/2,b,1+9,/3,,,/4,,,");
        Cells none = new Cells(List.of(List.of("1", "", ""), List.of("2", "", "")), 1, Set.of());
        none.same(2, "10", true);
        assertThat(shown(none)).isEqualTo("1,,10/2,,10");
    }

    @Test
    void everyEditIsUndoneAndDoneAgain() {
        String before = shown(cells);
        cells.set(2, 1, " c ");
        cells.clear(block("0 1 1 1"));
        assertThat(shown(cells)).isEqualTo("1,,,/2,,,/3,c,,/4,,,");
        cells.history().undo();
        cells.history().undo();
        assertThat(shown(cells)).isEqualTo(before);
        cells.history().redo();
        assertThat(cells.rows().get(2).get(1)).isEqualTo("c");
    }

    @Test
    void whatIsCopiedIsWhatASpreadsheetTakes() {
        assertThat(cells.copy(block("0 0 1 1"))).isEqualTo("1\ta\n2\tb\n");
        cells.paste(block("2 1 2 1"), cells.copy(block("0 1 1 1")));
        assertThat(shown(cells)).isEqualTo("1,a,,/2,b,,/3,a,,/4,b,,");
    }

    @Test
    void aDilutionForAllMustBeOne() throws InputException {
        assertThat(SampleRows.dilution(" 1+9 ", Shown.POINT)).isEqualTo("1+9");
        assertThat(SampleRows.dilution("2,5", new Shown(','))).isEqualTo("2,5");
        assertThatThrownBy(() -> SampleRows.dilution("1:10", Shown.POINT)).hasMessageContaining("1:10");
    }
}
