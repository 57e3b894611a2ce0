package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.well;
import static tallywell.desk.DeskFixture.wells;

import org.junit.jupiter.api.Test;
import tallywell.plate.PlateFormat;

class SelectionTest {
    private final Selection selection = new Selection(PlateFormat.P96);

    @Test
    void aDragSelectsTheRectangleAndShrinksAgain() {
        selection.start(well("B2"), false);
        selection.extend(well("D4"));
        assertThat(selection.wells()).hasSize(9);
        selection.extend(well("B3"));
        assertThat(selection.wells()).containsExactlyElementsOf(wells("B2", "B3"));
    }

    @Test
    void controlAddsAndTakesAway() {
        selection.start(well("A1"), false);
        selection.start(well("C3"), true);
        assertThat(selection.wells()).containsExactlyElementsOf(wells("A1", "C3"));
        selection.start(well("A1"), true);
        assertThat(selection.wells()).containsExactlyElementsOf(wells("C3"));
    }

    @Test
    void headingsSelectLines() {
        selection.columns(2, 1, false);
        assertThat(selection.wells()).hasSize(16).contains(well("A2"), well("H3"));
        selection.rows(7, 7, true);
        assertThat(selection.wells()).hasSize(26);
    }

    @Test
    void arrowsStopAtTheEdgeAndStretchWithShift() {
        selection.only(wells("A1"));
        selection.move(-1, 0, false);
        assertThat(selection.wells()).containsExactly(well("A1"));
        selection.move(1, 0, true);
        selection.move(0, 1, true);
        assertThat(selection.wells()).containsExactlyElementsOf(wells("A1", "A2", "B1", "B2"));
        assertThat(selection.cursor()).isEqualTo(well("B2"));
    }

    @Test
    void wholeLinesAreTakenOfWhatIsSelectedOrOfTheCursor() {
        selection.only(wells("B2", "D5"));
        selection.wholeRows();
        assertThat(selection.wells()).hasSize(24).contains(well("B1"), well("D12"));
        selection.none();
        selection.go(0, 3);
        selection.wholeColumns();
        assertThat(selection.wells())
                .hasSize(8)
                .contains(well("A" + (selection.cursor().column() + 1)));
    }

    @Test
    void theCursorGoesElsewhereWithoutLosingTheSelection() {
        selection.only(wells("A1"));
        selection.go(2, 2);
        assertThat(selection.wells()).containsExactly(well("A1"));
        selection.start(selection.cursor(), true);
        selection.move(0, 1, true);
        assertThat(selection.wells()).containsExactlyElementsOf(wells("A1", "C3", "C4"));
    }

    @Test
    void anotherPlateKeepsWhatItHas() {
        selection.only(wells("A1", "H12"));
        selection.format(new PlateFormat(2, 3));
        assertThat(selection.wells()).containsExactly(well("A1"));
    }

    @Test
    void itIsSaidInWords() {
        selection.only(wells("E4", "F4"));
        assertThat(selection.words()).isEqualTo("E4, F4");
        selection.rows(0, 0, false);
        assertThat(selection.words()).isEqualTo("12 wells, A1 to A12");
        selection.columns(3, 4, false);
        assertThat(selection.words()).isEqualTo("16 wells, A4 to H5");
    }

    @Test
    void whatIsNoRectangleIsNamedBlockByBlock() {
        selection.columns(1, 1, false);
        selection.start(well("E1"), true);
        selection.extend(well("H1"));
        assertThat(selection.words()).isEqualTo("12 wells: E1 to H1, A2 to H2");
        selection.rows(1, 1, false);
        selection.rows(4, 5, true);
        selection.start(well("H12"), true);
        assertThat(selection.words()).isEqualTo("37 wells: B1 to B12, E1 to F12, H12");
        selection.only(wells("A1", "B2", "C3", "D4", "E5"));
        assertThat(selection.words()).isEqualTo("5 wells: A1, B2, C3, D4 …");
    }
}
