package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tallywell.desk.DeskFixture.CIDER;
import static tallywell.desk.DeskFixture.wells;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.method.AssayMethod;
import tallywell.method.BatchLimits;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.plate.Layout;
import tallywell.task.Progress;
import tallywell.task.Wanted;
import tallywell.workup.Result;

class RunStoreTest {
    @TempDir
    private Path folder;

    private final RunStore store = new RunStore();

    private static List<Result> results(RunDraft draft) {
        return Worked.of(draft).analysis().orElseThrow().results();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cider-l-malic",
                "cuvette-typed",
                "juice-glucose-fructose",
                "puree-citric-solids",
                "cider-malic-kinetic",
                "nectar-sucrose",
                "dairy-lactose",
                "vinegar-acetic-coupled"
            })
    void aRunSavedInAFolderOfItsOwnGivesTheSameResults(String name) throws InputException, OutputException {
        RunDraft draft = store.open(Path.of("samples", name, "run.yaml"));
        RunDraft saved = store.saveInFolder(draft, folder.resolve("mine"));
        RunDraft again = store.open(folder.resolve("mine/run.yaml"));
        assertThat(results(again)).isEqualTo(results(draft));
        assertThat(saved.readings()).allMatch(each -> each.file().startsWith(folder));
        assertThat(again.title()).isEqualTo(draft.title());
    }

    @Test
    void exclusionsAndFinishedPartsAreSavedWithReasonAndName() throws InputException, OutputException {
        RunDraft draft = store.open(Path.of("samples/cider-malic-kinetic/run.yaml"))
                .exclude(wells("G5"), "bubble: \"big\"", "J. Vale")
                .finishFrom(wells("D1", "D7"), 720, "slow", "");
        store.saveInFolder(draft, folder);
        RunDraft again = store.open(folder.resolve("run.yaml"));
        assertThat(again.exclusions().get(0).reason()).isEqualTo("bubble: \"big\"");
        assertThat(again.finishedFrom().get(0).timeS()).isEqualTo(720);
        assertThat(results(again)).isEqualTo(results(draft));
    }

    @Test
    void whatWasTypedIsPutIntoFilesBesideTheRun() throws InputException, OutputException, IOException {
        RunDraft draft = store.open(CIDER.resolve("run.yaml"));
        List<List<String>> rows =
                SampleRows.of(draft.layout().orElseThrow().value().slots(), draft.sampleList(), Shown.POINT);
        rows.get(0).set(1, "Tank, new");
        SampleList typed = SampleRows.list(rows, Shown.POINT);
        MethodForm form = new MethodForm(draft.method().orElseThrow().value(), Shown.POINT);
        Map<String, String> fields = new LinkedHashMap<>(form.fields());
        fields.put("id", "my own");
        fields.put("1.limit.cv", "7.5 %");
        Origin<AssayMethod> method = form.method(store.text(draft.method().orElseThrow()), fields);
        store.saveInFolder(
                draft.withSamples(Optional.of(Origin.unsaved("typed", typed))).withMethod(method), folder);
        RunDraft again = store.open(folder.resolve("run.yaml"));
        assertThat(again.sampleList()).isEqualTo(typed);
        assertThat(again.method().orElseThrow().value().id()).isEqualTo("my-own");
        assertThat(again.method().orElseThrow().value().steps().get(0).limits().replicateCv())
                .hasValue(0.075);
        assertThat(Files.list(folder).map(each -> each.getFileName().toString()))
                .contains("run.yaml", "method.yaml", "samples.csv", "before.csv", "after.csv");
    }

    @Test
    void theSummaryIsWrittenBesideTheRunAndReplacedTheNextTime() throws InputException, OutputException, IOException {
        RunDraft saved = store.saveInFolder(store.open(CIDER.resolve("run.yaml")), folder);
        Path run = saved.file().orElseThrow();
        Path summary = folder.resolve("run.xlsx");
        Instant now = Instant.parse("2026-01-01T10:00:00Z");
        List<Path> written = store.export(
                run,
                Wanted.summary(summary).withTables(folder.resolve("tables")).overwriting(),
                now,
                ZoneOffset.UTC,
                Progress.SILENT);
        assertThat(written).allMatch(Files::isRegularFile);
        assertThat(written).hasSize(3);
        Files.writeString(summary, "theirs");
        assertThatThrownBy(() ->
                        store.export(run, Wanted.summary(summary).overwriting(), now, ZoneOffset.UTC, Progress.SILENT))
                .hasMessageContaining("not written by this program");
        Files.delete(summary);
        store.export(run, Wanted.summary(summary).overwriting(), now, ZoneOffset.UTC, Progress.SILENT);
        store.export(run, Wanted.summary(summary).overwriting(), now, ZoneOffset.UTC, Progress.SILENT);
        assertThat(Files.size(summary)).isGreaterThan(1000);
    }

    @Test
    void picturesOfTracesAreWrittenToo() throws InputException, OutputException {
        RunDraft kinetic = store.open(Path.of("samples/cider-malic-kinetic/run.yaml"));
        Path run = store.saveInFolder(kinetic, folder).file().orElseThrow();
        List<Path> written = store.export(
                run,
                new Wanted(
                        Optional.of(folder.resolve("run.xlsx")),
                        Optional.empty(),
                        Optional.of(folder.resolve("charts")),
                        Optional.of(folder.resolve("run.pdf")),
                        Optional.empty(),
                        true),
                Instant.EPOCH,
                ZoneOffset.UTC,
                Progress.SILENT);
        assertThat(written).allMatch(Files::isRegularFile);
        assertThat(written).contains(folder.resolve("run.pdf"));
        assertThat(written).anyMatch(each -> each.startsWith(folder.resolve("charts")));
    }

    @Test
    void aPlaceThatCannotBeWrittenIsSaidAndNothingIsLost() throws InputException, IOException {
        RunDraft draft = store.open(CIDER.resolve("run.yaml"));
        Path file = Files.writeString(folder.resolve("taken"), "x");
        assertThatThrownBy(() -> store.saveInFolder(draft, file))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("cannot be copied");
        assertThat(Files.readString(file)).isEqualTo("x");
    }

    @Test
    void aCrashLosesNothingOfARun() throws InputException, OutputException {
        Recovery recovery = new Recovery(folder.resolve("unsaved"));
        assertThat(recovery.run()).isEmpty();
        RunDraft draft = store.open(Path.of("samples/cider-malic-kinetic/run.yaml"))
                .exclude(wells("G5"), "bubble", "J. Vale")
                .withTitle("Late \"pressing\"");
        recovery.keep(draft);
        RunDraft back = new Recovery(folder.resolve("unsaved")).run().orElseThrow();
        assertThat(back.title()).isEqualTo("Late \"pressing\"");
        assertThat(back.file()).isEqualTo(draft.file());
        assertThat(back.exclusions()).isEqualTo(draft.exclusions());
        assertThat(results(back)).isEqualTo(results(draft));
        recovery.forget();
        assertThat(recovery.run()).isEmpty();
    }

    @Test
    void aRunOfWhichLittleIsThereIsKeptToo() throws InputException, OutputException {
        Recovery recovery = new Recovery(folder);
        recovery.keep(RunDraft.EMPTY.withTitle("begun").withMethod(store.builtIn("l-malic-340")));
        RunDraft back = recovery.run().orElseThrow();
        assertThat(back.title()).isEqualTo("begun");
        assertThat(back.method().orElseThrow().value().id()).isEqualTo("l-malic-340");
        assertThat(back.readings()).isEmpty();
    }

    @Test
    void aCrashLosesNothingOfALayout() throws InputException, OutputException {
        Recovery recovery = new Recovery(folder);
        Layout layout = LayoutEdits.paint(
                LayoutEdits.empty("half drawn", tallywell.plate.PlateFormat.P96), wells("A1"), LayoutEdits.blank());
        recovery.keep(layout);
        assertThat(recovery.layout()).hasValue(layout);
    }

    @Test
    void examplesAreLaidOutAsFilesThatOpen() throws InputException, OutputException {
        Examples examples = new Examples(folder);
        assertThat(examples.names()).contains(Examples.FIRST, "cider-l-malic");
        for (String name : examples.names()) {
            assertThat(results(store.open(examples.layOut(name)))).isNotEmpty();
        }
    }

    @Test
    void typedReadingsAreReadLikeAnyExport() throws InputException, OutputException {
        RunDraft draft = store.open(CIDER.resolve("run.yaml"));
        List<tallywell.plate.Well> wells = TypedPlate.wells(draft.layout().map(Origin::value), draft.format());
        List<String> typed = new ArrayList<>();
        wells.forEach(well -> typed.add("0," + (100 + wells.indexOf(well))));
        Path file = TypedPlate.file(folder, "before", TypedPlate.csv(wells, typed, new Shown(',')));
        assertThat(new Router().route(file))
                .isInstanceOfSatisfying(
                        Dropped.OfReadings.class,
                        readings -> assertThat(readings.export()
                                        .blocks()
                                        .get(0)
                                        .series()
                                        .absorbance(wells.get(5), 0))
                                .isEqualTo(0.105));
        typed.set(3, "a lot");
        assertThatThrownBy(() -> TypedPlate.csv(wells, typed, new Shown(','))).hasMessageContaining("a lot");
    }

    @Test
    void pastedSamplesNameTheirMistakes() {
        List<List<String>> rows = SampleRows.of(List.of(1, 2), SampleList.plain(List.of(1, 2)), Shown.POINT);
        Cells cells = new Cells(rows, 1, java.util.Set.of());
        cells.paste(new Cells.Block(0, 1, 0, 1), "Tank 1\t10\nTank 2\t1:10\n");
        assertThatThrownBy(() -> SampleRows.list(cells.rows(), Shown.POINT))
                .hasMessageContaining("sample 2, dilution")
                .hasMessageContaining("1:10");
    }

    /** A forgotten dilution would make a value too low by its factor, and nothing would show it. */
    @Test
    void aDilutionForgottenAmongOthersIsRefused() throws InputException {
        List<Integer> slots = List.of(1, 2, 3);
        Cells cells = new Cells(SampleRows.of(slots, SampleList.of(List.of()), Shown.POINT), 1, java.util.Set.of());
        cells.paste(new Cells.Block(0, 1, 0, 1), "Tank 1\t10\nTank 2\t\n");
        assertThatThrownBy(() -> SampleRows.list(cells.rows(), Shown.POINT))
                .hasMessageContaining("sample 2, dilution: found no dilution for sample 2, while others have one");
        cells.set(1, 2, "1");
        assertThat(SampleRows.list(cells.rows(), Shown.POINT).bySlot()).hasSize(2);
        cells.set(0, 2, "");
        cells.set(1, 2, "");
        assertThat(SampleRows.list(cells.rows(), Shown.POINT)
                        .in(2)
                        .orElseThrow()
                        .dilution())
                .isEqualTo(tallywell.quantity.Dilution.NONE);
    }

    @Test
    void theFormNamesTheFieldThatIsWrong() throws InputException {
        Origin<AssayMethod> origin = store.builtIn("l-malic-340");
        MethodForm form = new MethodForm(origin.value(), Shown.POINT);
        Map<String, String> fields = new LinkedHashMap<>(form.fields());
        assertThat(form.method(store.text(origin), fields).value()).isEqualTo(origin.value());
        fields.put("1.volume.sample", "20");
        assertThatThrownBy(() -> form.method(store.text(origin), fields))
                .hasMessageContaining("1.volume.sample")
                .hasMessageContaining("without a unit");
    }

    @Test
    void theFormHoldsEveryLimitThatTheChecksMayMiss() throws InputException {
        Origin<AssayMethod> origin = store.builtIn("l-malic-340");
        MethodForm form = new MethodForm(origin.value(), new Shown(','));
        Map<String, String> fields = new LinkedHashMap<>(form.fields());
        fields.put("1.limit.blank-sd", "0,004");
        fields.put("1.limit.standard.least", "92 %");
        fields.put("1.limit.standard.most", "108 %");
        fields.put("1.limit.slope.least", "90 %");
        fields.put("1.limit.slope.most", "110 %");
        fields.put("1.limit.left", "0,2");
        AssayMethod changed = form.method(store.text(origin), fields).value();
        BatchLimits limits = changed.steps().get(0).limits().batch();
        assertThat(limits)
                .isEqualTo(new BatchLimits(
                        OptionalDouble.of(0.004),
                        OptionalDouble.of(0.92),
                        OptionalDouble.of(1.08),
                        OptionalDouble.of(0.9),
                        OptionalDouble.of(1.1),
                        OptionalDouble.of(0.2),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()));
        assertThat(new MethodForm(changed, new Shown(',')).fields()).containsAllEntriesOf(fields);
        fields.put("1.limit.left", "much");
        assertThatThrownBy(() -> form.method(store.text(origin), fields))
                .hasMessageContaining("1.limit.left")
                .hasMessageContaining("expected a number");
    }

    @Test
    void theSumEndsInTheValueOfTheResult() throws InputException {
        for (String name : List.of("cider-l-malic", "puree-citric-solids", "juice-glucose-fructose", "cuvette-typed")) {
            RunDraft draft = store.open(Path.of("samples", name, "run.yaml"));
            Worked worked = Worked.of(draft);
            for (Result result : worked.analysis().orElseThrow().results()) {
                List<String> lines = Sum.of(worked, result, Shown.POINT);
                String last = lines.stream()
                        .filter(line -> line.startsWith("Value") || line.startsWith("No value"))
                        .findFirst()
                        .orElseThrow();
                if (result.value().isPresent()) {
                    assertThat(last)
                            .endsWith("= "
                                    + tallywell.quantity.Numbers.rounded(
                                            result.value().getAsDouble(), 6)
                                    + " " + result.unit());
                } else {
                    assertThat(last).startsWith("No value");
                }
            }
        }
    }

    @Test
    void theSumSaysWhereTheUncertaintyIsFromAndWhatIsNotInIt() throws InputException {
        Worked worked = Worked.of(store.open(CIDER.resolve("run.yaml")));
        Result first = worked.analysis().orElseThrow().results().get(0);
        String text = String.join("\n", Sum.of(worked, first, Shown.POINT));
        var parts = java.util.regex.Pattern.compile("k · u = ([\\d.]+) · ([\\d.]+) = ([\\d.]+) g/L")
                .matcher(text);
        assertThat(parts.find()).isTrue();
        assertThat(Double.parseDouble(parts.group(1)) * Double.parseDouble(parts.group(2)))
                .isCloseTo(Double.parseDouble(parts.group(3)), org.assertj.core.api.Assertions.withinPercentage(1.0));
        assertThat(text).contains("calibration").contains("repeatability");
    }

    /** Each difference in the text is what its own two numbers give: the reader can follow with a calculator. */
    @Test
    void theDifferencesInTheSumComeOutAsPrinted() throws InputException {
        Worked worked = Worked.of(store.open(CIDER.resolve("run.yaml")));
        Result first = worked.analysis().orElseThrow().results().get(0);
        int checked = 0;
        for (String line : Sum.of(worked, first, Shown.POINT)) {
            var parts = java.util.regex.Pattern.compile("= ([\\d.]+) − ([\\d.]+) = (-?[\\d.]+)$")
                    .matcher(line);
            if (parts.find()) {
                double difference = Double.parseDouble(parts.group(1)) - Double.parseDouble(parts.group(2));
                assertThat(difference)
                        .isCloseTo(Double.parseDouble(parts.group(3)), org.assertj.core.api.Assertions.within(1.5e-6));
                checked++;
            }
        }
        assertThat(checked).isEqualTo(4);
    }
}
