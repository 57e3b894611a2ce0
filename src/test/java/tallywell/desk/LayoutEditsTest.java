package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tallywell.desk.DeskFixture.well;
import static tallywell.desk.DeskFixture.wells;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

class LayoutEditsTest {
    private final Layout empty = LayoutEdits.empty("x", new PlateFormat(4, 6));

    private static Filling filling(Filling.Order order, int count, Replicates place) {
        return new Filling(order, count, place, true);
    }

    /** The words of rows, dots for unused. */
    private static String words(Layout layout) {
        return LayoutEdits.copy(layout, layout.format().all())
                .strip()
                .replace('\t', ' ')
                .replace('\n', '/');
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            COLUMNS | 2 | BELOW    | 1 3 5 7 9 11/1 3 5 7 9 11/2 4 6 8 10 12/2 4 6 8 10 12
            COLUMNS | 2 | BESIDE   | 1 1 5 5 9 9/2 2 6 6 10 10/3 3 7 7 11 11/4 4 8 8 12 12
            ROWS    | 2 | BESIDE   | 1 1 2 2 3 3/4 4 5 5 6 6/7 7 8 8 9 9/10 10 11 11 12 12
            ROWS    | 3 | BELOW    | 1 2 3 4 5 6/1 2 3 4 5 6/1 2 3 4 5 6/. . . . . .
            COLUMNS | 2 | MIRRORED | 1 5 9 12 8 4/2 6 10 11 7 3/3 7 11 10 6 2/4 8 12 9 5 1
            ROWS    | 1 | BELOW    | 1 2 3 4 5 6/7 8 9 10 11 12/13 14 15 16 17 18/19 20 21 22 23 24
            """)
    void samplesFillThePlateAsAsked(Filling.Order order, int count, Replicates place, String expected) {
        Layout filled = LayoutEdits.fillSamples(empty, empty.format().all(), 1, filling(order, count, place));
        assertThat(words(filled)).isEqualTo(expected);
    }

    @Test
    void wellsInUseAreKeptOrNot() {
        Layout blank = LayoutEdits.paint(empty, wells("A1"), LayoutEdits.blank());
        Filling keep = filling(Filling.Order.ROWS, 1, Replicates.BELOW);
        Filling over = new Filling(Filling.Order.ROWS, 1, Replicates.BELOW, false);
        assertThat(LayoutEdits.fillSamples(blank, wells("A1", "A2"), 5, keep).at(well("A2")))
                .isEqualTo(new Content.Sample(5));
        assertThat(LayoutEdits.fillSamples(blank, wells("A1", "A2"), 5, over).at(well("A1")))
                .isEqualTo(new Content.Sample(5));
    }

    @Test
    void theSameContentHasOneWordAndAnotherAnother() {
        Layout one = LayoutEdits.paint(empty, wells("A1"), LayoutEdits.blank());
        Layout two = LayoutEdits.paint(one, wells("B1"), LayoutEdits.blank());
        Layout three = LayoutEdits.paint(two, wells("C1"), new Content.Blank("", "late", true));
        assertThat(two.at(well("A1"))).isEqualTo(two.at(well("B1")));
        assertThat(three.at(well("C1")).word())
                .isNotEqualTo(three.at(well("A1")).word());
    }

    @Test
    void manyStandardsAllGetWordsOfTheirOwn() {
        PlateFormat big = new PlateFormat(16, 24);
        List<Quantity> levels = LayoutEdits.series(Quantity.of(4, Unit.GRAM_PER_LITRE), 40, 1);
        Layout layout = LayoutEdits.fillStandards(
                LayoutEdits.empty("x", big), big.all(), levels, "", filling(Filling.Order.ROWS, 2, Replicates.BESIDE));
        assertThat(layout.where(Content.Standard.class::isInstance)).hasSize(80);
        assertThat(layout.where(Content.Standard.class::isInstance).stream()
                        .map(well -> layout.at(well).word())
                        .distinct())
                .hasSize(40);
    }

    @Test
    void whatIsCopiedCanBePastedElsewhere() throws InputException {
        Layout drawn = LayoutEdits.fillSamples(
                LayoutEdits.paint(empty, wells("A1", "B1"), LayoutEdits.blank()),
                wells("A2", "B2"),
                3,
                filling(Filling.Order.COLUMNS, 1, Replicates.BELOW));
        String copied = LayoutEdits.copy(drawn, wells("A1", "A2", "B1", "B2"));
        Layout pasted = LayoutEdits.paste(drawn, well("C4"), copied);
        assertThat(pasted.at(well("C4"))).isEqualTo(drawn.at(well("A1")));
        assertThat(pasted.at(well("D5"))).isEqualTo(new Content.Sample(4));
    }

    @Test
    void aSpreadsheetMaySayLevelsAndBlanks() throws InputException {
        Layout pasted = LayoutEdits.paste(empty, well("A1"), "blank\t0.2 g/L\t7\n\t.\t12\n");
        assertThat(pasted.at(well("A1"))).isInstanceOf(Content.Blank.class);
        assertThat(pasted.at(well("A2")))
                .isInstanceOfSatisfying(
                        Content.Standard.class,
                        standard ->
                                assertThat(standard.level().of("")).hasValue(Quantity.of(0.2, Unit.GRAM_PER_LITRE)));
        assertThat(pasted.at(well("B1"))).isInstanceOf(Content.Unused.class);
        assertThat(pasted.at(well("B3"))).isEqualTo(new Content.Sample(12));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            A1 | wat         | found 'wat'; expected a sample number
            A1 | 0,2 g/L     | found '0,2 g/L'
            D6 | 1 2         | found '2' for D7, which is not on a plate of 24
            A1 | 5000        | found '5000'
            """)
    void whatNoWellCanHoldIsRefusedByName(String at, String cells, String message) {
        String text = at.equals("D6") ? cells.replace(' ', '\t') : cells;
        assertThatThrownBy(() -> LayoutEdits.paste(empty, well(at), text)).hasMessageContaining(message);
    }

    @Test
    void renumberingClosesGapsAndTakesSpikesAlong() {
        Layout drawn = LayoutEdits.paint(empty, wells("A1"), new Content.Sample(4));
        drawn = LayoutEdits.paint(drawn, wells("A2"), new Content.Sample(9));
        drawn = LayoutEdits.paint(drawn, wells("A3"), new Content.SampleBlank("", "", 9));
        Layout numbered = LayoutEdits.renumber(drawn);
        assertThat(numbered.slots()).containsExactly(1, 2);
        assertThat(((Content.SampleBlank) numbered.at(well("A3"))).of()).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1   | 0.1 0.2 0.3 0.4
            2   | 0.05 0.1 0.2 0.4
            10  | 0.0004 0.004 0.04 0.4
            """)
    void aSeriesIsTypedOnce(double factor, String expected) {
        assertThat(LayoutEdits.series(Quantity.of(0.4, Unit.GRAM_PER_LITRE), 4, factor).stream()
                        .map(level -> level.toString().replace(" g/L", ""))
                        .toList())
                .isEqualTo(List.of(expected.split(" ")));
    }

    @Test
    void levelsStandInOneLineWithTheirUnit() throws InputException {
        assertThat(LayoutEdits.levels("0.05 0.1  0.2 g/L"))
                .extracting(Quantity::toString)
                .containsExactly("0.05 g/L", "0.1 g/L", "0.2 g/L");
        assertThatThrownBy(() -> LayoutEdits.levels("0.05 0.1")).hasMessageContaining("without a unit");
        assertThatThrownBy(() -> LayoutEdits.levels("some g/L")).isInstanceOf(InputException.class);
    }

    @Test
    void findingsNameTheWellsTheyAreAbout() {
        Layout drawn = LayoutEdits.fillSamples(
                empty, wells("A1", "B1", "C1"), 1, filling(Filling.Order.COLUMNS, 1, Replicates.BELOW));
        drawn = LayoutEdits.paint(drawn, wells("D1"), new Content.Sample(1));
        drawn = LayoutEdits.paint(drawn, wells("D2"), new Content.SampleBlank("", "", 17));
        List<Finding> findings = LayoutFindings.of(drawn);
        assertThat(findings).extracting(Finding::title).contains("No blank", "A replicate is missing", "No control");
        assertThat(findings.stream()
                        .filter(each -> each.title().equals("A replicate is missing"))
                        .findFirst()
                        .map(Finding::wells))
                .hasValue(wells("B1", "C1"));
        assertThat(findings.stream()
                        .filter(each -> each.title().startsWith("Belongs to"))
                        .findFirst()
                        .map(Finding::wells))
                .hasValue(wells("D2"));
    }

    @Test
    void aSoundLayoutGivesNoCauseToLook() throws InputException {
        Layout sound = new tallywell.files.LayoutReader().read(DeskFixture.LAYOUT);
        assertThat(LayoutFindings.of(sound)).allMatch(finding -> finding.tone() == Finding.Tone.GOOD);
    }

    @Test
    void aPlateWithoutStandardsIsNotCalledGoodForThat() {
        assertThat(LayoutFindings.of(empty))
                .filteredOn(finding -> finding.title().equals("No standards"))
                .extracting(Finding::tone)
                .containsExactly(Finding.Tone.NOTE);
    }

    @Test
    void aControlWithoutANameIsCalledAfterItsWord() {
        Content control =
                new Content.Control("", "", "", PerAnalyte.none(), Optional.empty(), tallywell.quantity.Dilution.NONE);
        Layout drawn = LayoutEdits.paint(empty, wells("A1"), control);
        assertThat(((Content.Control) drawn.at(well("A1"))).name()).isEqualTo("q1");
    }
}
