package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.files.RunReader;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.method.Treatment;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.plate.Layout;

/** From typed expectations to a plan and back into the run. */
class RunPlansTest {
    private static final Path LAYOUT = Path.of("plate-layouts/thirty-six-in-duplicate.yaml");

    @TempDir
    private Path folder;

    private final RunStore store = new RunStore();
    private RunDraft draft;

    @BeforeEach
    void begin() throws InputException {
        Layout layout = new tallywell.files.LayoutReader().read(LAYOUT);
        draft = RunDraft.EMPTY.withMethod(store.builtIn("l-malic-340")).withLayout(Origin.file(LAYOUT, layout));
    }

    private Origin<SampleList> typed(Shown shown, String... expected) throws InputException {
        List<List<String>> rows = SampleTable.of(draft, shown);
        for (int i = 0; i < expected.length; i++) {
            rows.get(i).set(1, "Tank " + (i + 1));
            rows.get(i).set(SampleRows.COLUMNS.indexOf("expected"), expected[i]);
        }
        return SampleTable.list("typed", rows, shown);
    }

    @Test
    void whatIsExpectedIsTypedSavedAndPlanned() throws InputException, OutputException {
        RunDraft wanted = draft.withSamples(Optional.of(typed(new Shown(','), "2,5 g/L", "0,1 g/L", "")));
        RunDraft saved = store.saveInFolder(wanted, folder);
        PlanLook plan = new RunPlans().plan(saved.file().orElseThrow(), new Shown(','));
        assertThat(plan.planned().bySlot()).hasSize(3);
        // The standards of the layout end at 0.4 g/L, so 2.5 g/L has to be diluted at least 6.25 times; 0.1 g/L fits.
        double strong = plan.planned().in(1).orElseThrow().dilution().factor();
        assertThat(2.5 / strong).isBetween(0.05, 0.4);
        assertThat(plan.planned().in(2).orElseThrow().dilution().factor()).isEqualTo(1);
        assertThat(plan.samples().get(0).lines().get(0).name()).isEqualTo("1  Tank 1");
        assertThat(plan.samples().get(0).lines().get(0).text()).startsWith("dilution ");
        assertThat(plan.samples().get(0).lines().get(1).text()).isEqualTo("as it is");
        assertThat(plan.steps().get(0).lines()).isNotEmpty();
        List<List<String>> again = SampleTable.of(saved, new Shown(','));
        assertThat(again.get(0)).contains("Tank 1", "2.5 g/L");
    }

    @Test
    void theBenchSheetAndThePlanAreWrittenBesideTheRun() throws InputException, OutputException {
        Path run = store.saveInFolder(draft.withSamples(Optional.of(typed(Shown.POINT, "1 g/L"))), folder)
                .file()
                .orElseThrow();
        assertThat(new RunPlans().write(run, Instant.EPOCH, ZoneOffset.UTC).written())
                .containsExactly(
                        folder.resolve("run-bench.xlsx"),
                        folder.resolve("run-plan.yaml"),
                        folder.resolve("run-bench.pdf"))
                .allMatch(Files::isRegularFile);
    }

    @Test
    void whatIsToBeRepeatedIsANewRunThatCanBePlanned() throws InputException, OutputException {
        Worked worked = Worked.of(store.open(DeskFixture.CIDER.resolve("run.yaml")));
        assertThat(worked.hasRepeats()).isTrue();
        RunDraft next = worked.repeats("Cider, repeats", "repeats");
        assertThat(next.readings()).isEmpty();
        assertThat(next.file()).isEmpty();
        assertThat(next.layout()).isEqualTo(worked.draft().layout());
        PlanLook plan =
                new RunPlans().plan(store.saveInFolder(next, folder).file().orElseThrow(), Shown.POINT);
        assertThat(plan.planned()).isEqualTo(next.sampleList());
        assertThat(plan.samples().get(0).lines())
                .extracting(PlanLook.Line::name)
                .containsExactly("1  Tank 16 day 20", "2  Tank 23 day 34");
        assertThat(plan.samples().get(0).lines().get(0).text()).startsWith("dilution 20");
    }

    @Test
    void aRunWithoutResultsHasNothingToRepeat() {
        assertThat(Worked.of(draft).hasRepeats()).isFalse();
    }

    @Test
    void aRunWithoutReadingsIsSavedForPlanningButStillNeedsThem() throws InputException, OutputException {
        Path run = store.saveInFolder(draft, folder).file().orElseThrow();
        assertThat(new RunReader().readBefore(run).readings()).isEmpty();
        assertThatThrownBy(() -> store.open(run))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("readings");
    }

    @Test
    void whatARunSaysAboutItsPlanningSurvivesSavingAndRecovery() throws InputException, OutputException, IOException {
        Path old = Files.createDirectories(folder.resolve("old"));
        store.saveInFolder(store.open(DeskFixture.CIDER.resolve("run.yaml")), old);
        Path run = old.resolve("run.yaml");
        Files.writeString(old.resolve("results.csv"), "role,sample,analyte,value,unit,advice\n");
        String planning = "plan: \"run-plan.yaml\"\nplanning: {series: [1, 4, 16], overage: 15 %, pipette-least: 5 µL,"
                + " dilute-to: 2 mL, stock: 8 g/L, stock-volume: 50 mL, earlier: \"results.csv\"}\n";
        Files.writeString(run, Files.readString(run) + planning);
        new RunPlans().write(run, Instant.EPOCH, ZoneOffset.UTC);
        Run before = new RunReader().read(run);
        RunDraft opened = store.open(run);
        store.saveInFolder(opened, folder.resolve("new"));
        Run after = new RunReader().read(folder.resolve("new/run.yaml"));
        assertThat(after.planning()).isEqualTo(before.planning());
        assertThat(after.plan()).isEqualTo(before.plan());
        assertThat(folder.resolve("new/results.csv")).isRegularFile();
        Recovery recovery = new Recovery(folder.resolve("kept"));
        recovery.keep(opened.withTitle("changed"));
        Bench kept = recovery.run().orElseThrow().bench();
        assertThat(kept.planning().series()).containsExactly(1.0, 4.0, 16.0);
        assertThat(kept.plan().orElseThrow()).exists();
        assertThat(kept.earlier().orElseThrow()).exists();
    }

    @Test
    void treatmentsSurviveTheTableAndTheFile() throws InputException, OutputException {
        List<List<String>> rows = SampleTable.of(draft, Shown.POINT);
        int treatment = SampleRows.COLUMNS.indexOf("treatment");
        for (int i = 0; i < 2; i++) {
            rows.get(i).set(1, "Juice");
            rows.get(i).set(treatment, i == 0 ? "free" : "total");
        }
        RunDraft saved = store.saveInFolder(
                draft.withSamples(Optional.of(SampleTable.list("typed", rows, Shown.POINT))), folder);
        SampleList read = new tallywell.files.SampleListReader()
                .read(saved.samples().orElseThrow().file().orElseThrow());
        assertThat(read.in(1).orElseThrow().treatment()).isEqualTo(Treatment.FREE);
        assertThat(read.in(2).orElseThrow().treatment()).isEqualTo(Treatment.TOTAL);
        assertThat(SampleTable.of(saved, Shown.POINT).get(1).get(treatment)).isEqualTo("total");
        rows.get(0).set(treatment, "half");
        assertThatThrownBy(() -> SampleTable.list("typed", rows, Shown.POINT))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found 'half'; expected free, total, or nothing");
    }

    @Test
    void nothingThatIsInTheFolderAlreadyIsWrittenOver() throws InputException, OutputException, IOException {
        Path own = Files.writeString(folder.resolve("thirty-six-samples-in-duplicate.yaml"), "mine");
        Layout drawn = draft.layout().orElseThrow().value();
        store.saveInFolder(draft.withLayout(Origin.unsaved("drawn", drawn)), folder);
        assertThat(own).hasContent("mine");
        assertThat(folder.resolve("2-thirty-six-samples-in-duplicate.yaml")).isRegularFile();
    }

    @Test
    void aListWithoutNumbersIsPutIntoTheNumbersOfTheLayout() throws InputException, OutputException, IOException {
        Path list = Files.writeString(
                folder.resolve("wanted.csv"), "sample,expected\nPear must,2-4 g/L\nQuince must,0.2 g/L\n");
        RunDesk desk = new RunDesk(draft, DeskFixture.NOW, DeskFixture.NOW);
        RunDesk.Drop drop = DeskFixture.drop(desk, list);
        assertThat(drop.notices()).isEmpty();
        assertThat(desk.draft().sampleList().in(2).orElseThrow().name()).isEqualTo("Quince must");
        Path run =
                store.saveInFolder(desk.draft(), folder.resolve("run")).file().orElseThrow();
        SampleList planned = new RunPlans().plan(run, Shown.POINT).planned();
        assertThat(planned.in(1).orElseThrow().dilution().factor()).isGreaterThanOrEqualTo(10);
        assertThat(planned.in(2).orElseThrow().dilution().factor()).isEqualTo(1);
        String many = "sample,expected\n" + "x,1 g/L\n".repeat(37);
        RunDesk.Drop tooMany = DeskFixture.drop(desk, Files.writeString(folder.resolve("many.csv"), many));
        assertThat(tooMany.notices().get(0).text()).contains("found 37 samples for the 36 numbers of the layout");
    }
}
