package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tallywell.desk.DeskFixture.CIDER;
import static tallywell.desk.DeskFixture.LAYOUT;
import static tallywell.desk.DeskFixture.drop;
import static tallywell.desk.DeskFixture.wells;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.chart.DrawnTrace;
import tallywell.notice.InputException;
import tallywell.workup.Result;

/** The main stories of a run, without windows. */
class RunDeskTest {
    @TempDir
    private Path folder;

    private RunDesk desk;

    @BeforeEach
    void begin() {
        desk = DeskFixture.empty();
    }

    /** Values by slot from the independent script docs/checks/expected-results.R. */
    private static Map<Integer, Double> expected() throws IOException {
        Map<Integer, Double> values = new HashMap<>();
        List<String> lines = Files.readAllLines(CIDER.resolve("expected.csv")).stream()
                .filter(line -> !line.startsWith("#") && !line.contains("\""))
                .toList();
        List<String> header = List.of(lines.get(0).split(","));
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            String slot = cells[header.indexOf("slot")];
            String value = cells[header.indexOf("value")];
            if (!slot.isEmpty() && !value.isEmpty()) {
                values.put(Integer.parseInt(slot), Double.parseDouble(value));
            }
        }
        return values;
    }

    private static OptionalDouble value(RunDesk desk, int slot) {
        return desk.worked().analysis().orElseThrow().results().stream()
                .filter(result -> result.slot().orElse(0) == slot)
                .findFirst()
                .map(Result::value)
                .orElseThrow();
    }

    private void dropAll() {
        drop(
                desk,
                CIDER.resolve("after.csv"),
                LAYOUT,
                CIDER.resolve("samples.csv"),
                CIDER.resolve("before.csv"),
                CIDER.resolve("method.yaml"));
    }

    @Test
    void aListIsHeldAgainstTheLayoutThatCameWithIt() {
        RunDesk desk = DeskFixture.empty();
        Path list = CIDER.resolve("samples.csv");
        RunDesk.Drop fitting = drop(desk, list, LAYOUT);
        assertThat(fitting.notices()).isEmpty();
        RunDesk.Drop strange = drop(desk, Path.of("plate-layouts/24-nine-in-duplicate.yaml"), list);
        assertThat(strange.notices())
                .singleElement()
                .asString()
                .contains("samples.csv")
                .contains("not on the plate: 10, 11");
    }

    @Test
    void filesDroppedInAnyOrderGiveTheExpectedResults() throws IOException {
        dropAll();
        assertThat(desk.worked().problems()).isEmpty();
        Map<Integer, Double> expected = expected();
        assertThat(expected).hasSizeGreaterThan(30);
        expected.forEach((slot, value) ->
                assertThat(value(desk, slot).orElseThrow()).as("slot " + slot).isCloseTo(value, within(1e-9 * value)));
    }

    @Test
    void whatIsMissingIsNamedOneAfterTheOther() {
        assertThat(desk.draft().needs())
                .containsExactly(RunDraft.Need.METHOD, RunDraft.Need.LAYOUT, RunDraft.Need.READINGS);
        drop(desk, CIDER.resolve("before.csv"));
        drop(desk, LAYOUT, CIDER.resolve("method.yaml"));
        assertThat(desk.draft().needs()).containsExactly(RunDraft.Need.AFTER);
        drop(desk, CIDER.resolve("after.csv"));
        assertThat(desk.draft().isComplete()).isTrue();
        assertThat(desk.worked().analysis()).isPresent();
    }

    @Test
    void beforeAndAfterAreGuessedAndSwappedWithOneClick() {
        dropAll();
        assertThat(desk.draft().readings()).extracting(Intake::name).containsExactly("before.csv", "after.csv");
        desk.reverseReadings();
        assertThat(desk.worked().problems())
                .anySatisfy(notice -> assertThat(notice.text()).contains("probably swapped"));
        desk.reverseReadings();
        assertThat(desk.worked().analysis()).isPresent();
    }

    @Test
    void aFallingSignalIsOrderedTheOtherWay() {
        Path puree = Path.of("samples/puree-citric-solids");
        RunDraft citric = DeskFixture.empty().draft();
        try {
            citric = citric.withMethod(new RunStore().builtIn("citric-340"));
        } catch (InputException e) {
            throw new AssertionError(e);
        }
        RunDesk falling = new RunDesk(citric, DeskFixture.NOW, DeskFixture.NOW);
        drop(falling, puree.resolve("after.csv"), puree.resolve("before.csv"));
        assertThat(falling.draft().readings()).extracting(Intake::name).containsExactly("before.csv", "after.csv");
    }

    @Test
    void theTriggerOfASeriesIsGuessedWithinOneRead() throws InputException {
        desk = new RunDesk(
                RunDraft.EMPTY.withMethod(new RunStore().builtIn("l-malic-340")), DeskFixture.NOW, DeskFixture.NOW);
        RunDesk.Drop drop = drop(desk, Path.of("samples/cider-malic-kinetic/trace.csv"));
        assertThat(drop.guessed()).isTrue();
        double at = desk.draft().readings().get(0).triggerAtS().get(0);
        // The sample run says 225 s; it is read every 15 s.
        assertThat(at).isCloseTo(225, within(15.0));
    }

    @Test
    void theSameExportTwiceIsSaidAndLeftOut() {
        drop(desk, CIDER.resolve("before.csv"));
        RunDesk.Drop second = drop(desk, CIDER.resolve("before.csv"));
        assertThat(second.notices())
                .anySatisfy(notice -> assertThat(notice.text()).contains("in already"));
        assertThat(desk.draft().readings()).hasSize(1);
    }

    @Test
    void aFileThatIsNothingWeKnowChangesNothing() throws IOException {
        Path poem = Files.writeString(folder.resolve("poem.txt"), "Roses are red\nViolets are blue\n");
        RunDesk.Drop drop = drop(desk, poem, folder.resolve("gone.csv"));
        assertThat(drop.notices()).hasSizeGreaterThanOrEqualTo(2);
        assertThat(desk.draft()).isEqualTo(RunDraft.EMPTY);
        assertThat(desk.history().undoable()).isEmpty();
    }

    @Test
    void ofAFileThatIsNothingWeKnowThatIsSaidFirst() throws IOException {
        Path note = Files.writeString(folder.resolve("note.txt"), "Order more enzyme\nA1 B2 were spilled\n");
        assertThat(drop(desk, note).notices().get(0).toString())
                .startsWith("note.txt was not understood as readings, a sample list, a layout, a method or a run."
                        + " Tried as readings: ")
                .doesNotContain(folder.toString());
        Path method = Files.writeString(folder.resolve("m.yaml"), "tallywell: method/1\nid: x\n");
        assertThat(drop(desk, method).notices())
                .noneSatisfy(notice -> assertThat(notice.text()).contains("was not understood"));
        assertThat(drop(desk, folder.resolve("gone.csv")).notices())
                .noneSatisfy(notice -> assertThat(notice.text()).contains("was not understood"));
    }

    @Test
    void aSampleListWithAFaultIsNamedAsOne() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "slot,sample,dilution\n1,Tank,1:10\n");
        assertThat(new Router().route(list))
                .isInstanceOfSatisfying(
                        Dropped.Refused.class,
                        refused -> assertThat(refused.why().get(0).text()).contains("1:10"));
    }

    @Test
    void aLayoutThatDoesNotFitTheExportIsSaid() {
        drop(desk, Path.of("plate-layouts/384-one-hundred-sixty-in-duplicate.yaml"));
        RunDesk.Drop drop = drop(desk, CIDER.resolve("before.csv"));
        assertThat(drop.notices())
                .anySatisfy(notice -> assertThat(notice.text()).contains("a plate of 96 wells; the layout has 384"));
    }

    @Test
    void excludingRecomputesAndUndoBringsBack() {
        dropAll();
        OptionalDouble before = value(desk, 23);
        desk.selection().only(wells("G5"));
        desk.exclude("bubble", "J. Vale");
        assertThat(desk.draft().excluded()).containsKey(DeskFixture.well("G5"));
        assertThat(value(desk, 23)).isNotEqualTo(before);
        assertThat(desk.history().undoable()).hasValue("exclude G5");
        desk.history().undo();
        assertThat(value(desk, 23)).isEqualTo(before);
        desk.history().redo();
        desk.putBack();
        assertThat(desk.draft().exclusions()).isEmpty();
        assertThat(value(desk, 23)).isEqualTo(before);
    }

    @Test
    void theFinishedPartSetByHandCountsAndIsFlagged() throws InputException {
        desk = new RunDesk(
                new RunStore().open(Path.of("samples/cider-malic-kinetic/run.yaml")), DeskFixture.NOW, DeskFixture.NOW);
        OptionalDouble before = value(desk, 3);
        desk.finishFrom(wells("D1", "D7"), 720, "slow", "J. Vale");
        assertThat(value(desk, 3).orElseThrow()).isNotEqualTo(before.orElseThrow());
        assertThat(value(desk, 3).orElseThrow()).isCloseTo(before.orElseThrow(), within(0.02 * before.orElseThrow()));
        DrawnTrace look = DrawnTrace.of(desk.worked().analysis().orElseThrow(), 1, wells("D1"))
                .get(0);
        assertThat(look.finishedFromMin().orElseThrow()).isCloseTo(12, within(0.25));
    }

    @Test
    void onlyTheLatestOfManyEditsIsWorkedUp() {
        DeskFixture.Later back = new DeskFixture.Later();
        RunDesk slow = new RunDesk(RunDraft.EMPTY, back, DeskFixture.NOW);
        slow.history().edit(RunDraft.EMPTY.withTitle("one"), "1");
        slow.history().edit(RunDraft.EMPTY.withTitle("two"), "2");
        assertThat(slow.isBusy()).isTrue();
        back.goOn();
        assertThat(slow.isBusy()).isFalse();
        assertThat(slow.worked().draft().title()).isEqualTo("two");
    }

    @Test
    void myOwnFilesKeepMethodAndLayoutOfTheExample() throws InputException {
        RunDraft example = new RunStore().open(CIDER.resolve("run.yaml"));
        RunDraft own = example.onlyMethodAndLayout();
        assertThat(own.method()).isEqualTo(example.method());
        assertThat(own.layout()).isEqualTo(example.layout());
        assertThat(own.needs()).containsExactly(RunDraft.Need.READINGS);
        assertThat(own.file()).isEmpty();
    }
}
