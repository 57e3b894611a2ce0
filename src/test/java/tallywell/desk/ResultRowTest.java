package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.CIDER;
import static tallywell.desk.DeskFixture.wells;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tallywell.assess.Verdict;
import tallywell.notice.InputException;
import tallywell.plate.Well;

class ResultRowTest {
    private final RunDraft draft;

    ResultRowTest() throws InputException {
        draft = new RunStore().open(CIDER.resolve("run.yaml"));
    }

    private static List<ResultRow> rows(RunDraft of, Shown shown) {
        Worked worked = Worked.of(of);
        return ResultRow.of(worked.analysis().orElseThrow(), worked.assessment().orElseThrow(), shown);
    }

    private static ResultRow slot(List<ResultRow> rows, int slot) {
        return rows.stream()
                .filter(row -> row.result().slot().equals(java.util.OptionalInt.of(slot)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aSampleBeyondTheStandardsShowsTheBoundWithItsUnitAndTheDilutionInBothSpellings() {
        // Slot 16 was diluted 1+9; the highest standard is 0.4 g/L.
        ResultRow row = slot(rows(draft, Shown.POINT), 16);
        assertThat(row.valueWithUnit()).isEqualTo("> 4.00 g/L");
        assertThat(row.uncertainty()).isEmpty();
        assertThat(row.verdict()).isEqualTo(Verdict.REPEAT);
        assertThat(row.next()).matches("repeat at dilution ([\\d.]+) \\(1\\+[\\d.]+\\): above the highest standard");
        assertThat(row.needsAttention()).isTrue();
        assertThat(slot(rows(draft, new Shown(',')), 16).value()).isEqualTo("> 4,00");
    }

    /** Milk: the products have rows of their own, after the halves, and the sum of a product names both halves. */
    @Test
    void productsByDifferenceHaveRowsAndSums() throws InputException {
        Worked worked = Worked.of(new RunStore().open(Path.of("samples/dairy-lactose/run.yaml")));
        List<ResultRow> rows = ResultRow.of(
                worked.analysis().orElseThrow(), worked.assessment().orElseThrow(), Shown.POINT);
        ResultRow milk = named(rows, "19  Raw milk, farm 1 · lactose");
        assertThat(milk.wells()).hasSize(4);
        assertThat(milk.value()).startsWith("46.");
        assertThat(milk.uncertainty()).isNotEmpty();
        ResultRow free = named(rows, "31  Lactose-free milk 1 · lactose");
        assertThat(free.valueWithUnit()).matches("< 0\\.\\d+ g/L");
        assertThat(free.uncertainty()).isEmpty();
        assertThat(free.verdict()).isEqualTo(Verdict.CHECK);
        assertThat(named(rows, "36  Coffee milk · lactose").next())
                .startsWith("the total half: repeat at dilution 100");
        assertThat(Sum.of(worked, milk.result(), Shown.POINT))
                .anyMatch(line -> line.startsWith("free") && line.contains("below the lowest standard"))
                .anyMatch(line -> line.startsWith("Value = 1.9"));
    }

    private static ResultRow named(List<ResultRow> rows, String name) {
        return rows.stream().filter(row -> row.name().equals(name)).findFirst().orElseThrow();
    }

    @Test
    void creepOfASingleReadingIsSaidNotToBeMeasured() {
        assertThat(slot(rows(draft, Shown.POINT), 1).creep()).isEqualTo("not measured");
    }

    @Test
    void oneWellLeftSaysWhereItsUncertaintyIsFrom() {
        List<Well> wells = slot(rows(draft, Shown.POINT), 1).wells();
        assertThat(slot(rows(draft, Shown.POINT), 1).next()).isEmpty();
        RunDraft excluded = draft.exclude(wells(wells.get(0).toString()), "bubble", "J. Vale");
        ResultRow row = slot(rows(excluded, Shown.POINT), 1);
        assertThat(row.result().n()).isEqualTo(1);
        assertThat(row.uncertainty()).isNotEmpty();
        assertThat(row.next()).contains("± U is from the scatter of the other replicates");
    }

    @Test
    void whatNeedsAttentionIsWhatIsNotSimplyReported() {
        List<ResultRow> rows = rows(draft, Shown.POINT);
        assertThat(rows.stream().filter(ResultRow::needsAttention))
                .extracting(row -> row.result().slot().getAsInt())
                .containsExactly(16, 23);
    }
}
