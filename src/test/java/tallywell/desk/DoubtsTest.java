package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.NOW;
import static tallywell.desk.DeskFixture.drop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.files.LayoutReader;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.workup.Result;

/** Slips of the bench, made with the sample runs: their true layouts and wavelengths are known. */
class DoubtsTest {
    private static final Path LAYOUTS = Path.of("plate-layouts");
    private static final Path KINETIC = Path.of("samples/cider-malic-kinetic/run.yaml");

    @TempDir
    private Path folder;

    private static RunDesk desk(RunDraft draft) {
        return new RunDesk(draft, NOW, NOW, new LayoutShelf(List.of(LAYOUTS)));
    }

    private static RunDraft run(String name) throws InputException {
        return new RunStore().open(Path.of("samples", name, "run.yaml"));
    }

    private static List<String> words(Doubt doubt) {
        return doubt.cures().stream().map(Doubt.Cure::words).toList();
    }

    private static void take(RunDesk desk, int cure) {
        desk.cure((Doubt.Edit) desk.doubts().get(0).cures().get(cure));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cider-l-malic",
                "cider-malic-kinetic",
                "cuvette-typed",
                "juice-glucose-fructose",
                "puree-citric-solids"
            })
    void aRunWithItsOwnLayoutRaisesNoDoubt(String name) throws InputException {
        assertThat(desk(run(name)).doubts()).isEmpty();
    }

    @Test
    void aDilutionLeftOutAmongOthersIsDoubtedUntilItIsSaid() throws IOException, InputException {
        Path list = folder.resolve("samples.csv");
        Files.writeString(list, "slot,sample,dilution\n1,Tank 1,1+19\n2,Tank 2,\n3,Tank 3,5\n");
        RunDesk desk = desk(run("cider-malic-kinetic"));
        drop(desk, list);
        Doubt doubt = desk.doubts().get(0);
        assertThat(doubt.text()).contains("no dilution for 1 of its 3 samples (Tank 2)");
        take(desk, 0);
        assertThat(desk.doubts()).isEmpty();
        assertThat(desk.draft().sampleList().in(2).orElseThrow().dilution().factor())
                .isEqualTo(1);
        assertThat(Files.readString(list)).endsWith("2,Tank 2,\n3,Tank 3,5\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"slot,sample\n1,Tank 1\n2,Tank 2\n", "slot,sample,dilution\n1,Tank 1,1\n2,Tank 2,1\n"})
    void dilutionsForAllOrForNoneRaiseNoDoubt(String text) throws IOException, InputException {
        Path list = folder.resolve("samples.csv");
        Files.writeString(list, text);
        RunDesk desk = desk(run("cider-malic-kinetic"));
        drop(desk, list);
        assertThat(desk.doubts()).isEmpty();
    }

    static Stream<Path> layoutsOf96() throws IOException {
        try (Stream<Path> files = Files.list(LAYOUTS)) {
            return files
                    .filter(each -> !each.getFileName().toString().matches("(24|384).*"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("layoutsOf96")
    void theLayoutOfAnotherPlateIsDoubtedAndTheRightOneOffered(Path other) throws InputException {
        RunDraft kinetic = new RunStore().open(KINETIC);
        Layout right = kinetic.layout().orElseThrow().value();
        Layout wrong = new LayoutReader().read(other);
        RunDesk desk = desk(kinetic.withSamples(Optional.empty()).withLayout(Origin.file(other, wrong)));
        if (wrong.equals(right)) {
            assertThat(desk.doubts()).isEmpty();
            return;
        }
        assertThat(desk.doubts()).hasSize(1);
        assertThat(desk.doubts().get(0).text()).startsWith("Is \"" + wrong.name() + "\" the layout of this plate?");
        assertThat(words(desk.doubts().get(0))).contains("Use \"" + right.name() + "\"");
        take(desk, words(desk.doubts().get(0)).indexOf("Use \"" + right.name() + "\""));
        assertThat(desk.doubts()).isEmpty();
        assertThat(desk.draft().layout().orElseThrow().value()).isEqualTo(right);
    }

    @Test
    void aPlateThatLayTheWrongWayRoundIsCuredByATurnedCopyThatTheRunKeeps() throws InputException, OutputException {
        RunDraft right = new RunStore().open(KINETIC);
        Layout layout = right.layout().orElseThrow().value();
        // The layout turned instead of the readings: the same mistake seen from the other side.
        Layout upside = LayoutFit.turned(layout, layout.name());
        RunDesk desk = desk(right.withLayout(Origin.unsaved("upside", upside)));
        assertThat(desk.doubts()).hasSize(1);
        assertThat(desk.doubts().get(0).text()).contains("turned by 180°");
        take(desk, 0);
        assertThat(desk.doubts()).isEmpty();
        assertThat(values(desk)).isEqualTo(values(desk(right)));
        RunDraft saved = new RunStore().saveInFolder(desk.draft(), folder);
        assertThat(saved.layout().orElseThrow().file().orElseThrow().getFileName())
                .hasToString("thirty-six-samples-in-duplicate-turned-by-180-degrees.yaml");
        assertThat(values(desk(new RunStore().open(folder.resolve("run.yaml")))))
                .isEqualTo(values(desk(right)));
    }

    private static Map<String, String> values(RunDesk desk) {
        Map<String, String> values = new java.util.TreeMap<>();
        for (Result each : desk.worked().analysis().orElseThrow().results()) {
            values.put(each.name(), each.value().toString());
        }
        return values;
    }

    @Test
    void aLayoutThatLooksTheSameTurnedRaisesNoDoubtWhenTurned() throws InputException {
        RunDraft cider = run("cider-l-malic");
        Layout layout = cider.layout().orElseThrow().value();
        Layout turned = LayoutFit.turned(layout, "turned");
        assertThat(turned.wells()).isEqualTo(layout.wells());
        assertThat(desk(cider.withLayout(Origin.unsaved("turned", turned))).doubts())
                .isEmpty();
    }

    /** Wells given at random: neither as it is nor turned can the layout be right. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void shuffledWellsAreDoubted(long seed) throws InputException {
        RunDraft kinetic = new RunStore().open(KINETIC);
        Layout layout = kinetic.layout().orElseThrow().value();
        List<Well> order = new ArrayList<>(layout.format().all());
        Collections.shuffle(order, new java.util.Random(seed));
        List<Well> all = layout.format().all();
        Layout shuffled =
                new Layout("shuffled", WellMap.of(layout.format(), well -> layout.at(order.get(all.indexOf(well)))));
        RunDesk desk = desk(kinetic.withLayout(Origin.unsaved("shuffled", shuffled)));
        assertThat(desk.doubts()).hasSize(1);
        assertThat(desk.doubts().get(0).text()).contains("do not rise with their level");
        assertThat(words(desk.doubts().get(0))).containsExactly("Use \"" + layout.name() + "\"");
    }

    @Test
    void wellsThatShouldBeEmptyAndReactedAreNamed() throws InputException {
        RunDraft kinetic = new RunStore().open(KINETIC);
        Layout layout = kinetic.layout().orElseThrow().value();
        Layout fewer = new Layout(
                "fewer",
                WellMap.of(
                        layout.format(),
                        well -> layout.at(well) instanceof Content.Sample sample && sample.slot() > 30
                                ? new Content.Unused()
                                : layout.at(well)));
        RunDesk desk = desk(kinetic.withSamples(Optional.empty()).withLayout(Origin.unsaved("fewer", fewer)));
        assertThat(desk.doubts()).hasSize(1);
        assertThat(desk.doubts().get(0).text()).contains("should be unused and reacted");
        assertThat(words(desk.doubts().get(0))).containsExactly("Use \"" + layout.name() + "\"");
    }

    @Test
    void swappedReadingsAreSwappedBackWithOneClick() throws InputException {
        RunDesk desk = desk(run("cider-l-malic"));
        desk.reverseReadings();
        assertThat(desk.doubts()).hasSize(1);
        assertThat(desk.doubts().get(0).text()).contains("probably swapped");
        take(desk, 0);
        assertThat(desk.doubts()).isEmpty();
        assertThat(desk.worked().analysis()).isPresent();
    }

    private Path export(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static String block(int nm, double of) {
        StringBuilder text = new StringBuilder("Wavelength: " + nm + " nm\n<>,1,2,3\n");
        for (char row = 'A'; row <= 'B'; row++) {
            text.append(row);
            for (int i = 0; i < 3; i++) {
                text.append(',').append(Math.round(1000 * of * (1 + i + 3 * (row - 'A'))) / 1000.0);
            }
            text.append('\n');
        }
        return text + "\n";
    }

    private RunDesk malic() throws InputException {
        return new RunDesk(
                RunDraft.EMPTY.withMethod(new RunStore().builtIn("l-malic-340")), NOW, NOW, new LayoutShelf(List.of()));
    }

    @Test
    void readingsAtAnotherWavelengthAreNotWorkedUpUntilSomeoneSaysSo() throws InputException, IOException {
        RunDesk desk = malic();
        drop(desk, export("before.csv", block(365, 0.01)), export("after.csv", block(365, 0.05)));
        Layout layout = LayoutEdits.paint(
                LayoutEdits.empty("six", new tallywell.plate.PlateFormat(2, 3)),
                DeskFixture.wells("A1", "A2"),
                LayoutEdits.blank());
        desk.history().edit(desk.draft().withLayout(Origin.unsaved("six", layout)), "layout");
        assertThat(desk.worked().analysis()).isEmpty();
        assertThat(desk.worked().problems())
                .anySatisfy(notice -> assertThat(notice.text()).contains("found readings at 365 nm; expected 340 nm"));
        assertThat(desk.doubts().get(0).text()).contains("was read at 365 nm; the method asks for 340 nm");
        assertThat(words(desk.doubts().get(0))).containsExactly("Use what was read at 365 nm");
        take(desk, 0);
        assertThat(desk.draft().readings())
                .allSatisfy(each -> assertThat(each.choice().wavelengthNm()).hasValue(365));
        assertThat(desk.worked().problems())
                .noneSatisfy(notice -> assertThat(notice.text()).contains("365 nm"));
    }

    @Test
    void aBlockAtTheRightWavelengthIsOffered() throws InputException, IOException {
        RunDesk desk = malic();
        Path two = export("two.csv", block(340, 0.01) + block(405, 0.03));
        drop(desk, two);
        assertThat(desk.draft().readings().get(0).block().number()).isEqualTo(1);
        desk.removeReading(0);
        desk.choose(new tallywell.readings.Importer().read(two, tallywell.readings.Choice.none()), 2);
        assertThat(Wavelengths.wrong(desk.draft())).hasSize(1);
        assertThat(desk.doubts().get(0).text()).contains("405 nm");
        assertThat(words(desk.doubts().get(0)).get(0)).isEqualTo("Take block 1, read at 340 nm");
        take(desk, 0);
        assertThat(desk.draft().readings().get(0).block().wavelengthNm()).hasValue(340);
        assertThat(desk.doubts()).isEmpty();
    }

    @Test
    void theMethodFormIsOfferedWhereTheAbsorptivityCounts() throws InputException, IOException {
        RunDesk desk = new RunDesk(
                RunDraft.EMPTY.withMethod(new RunStore().builtIn("citric-340")), NOW, NOW, new LayoutShelf(List.of()));
        drop(desk, export("before.csv", block(365, 0.05)), export("after.csv", block(365, 0.01)));
        boolean byAbsorptivity =
                desk.draft().method().orElseThrow().value().steps().get(0).calibration()
                        instanceof tallywell.method.CalibrationRule.ByAbsorptivity;
        assertThat(desk.doubts().get(0).cures().stream().anyMatch(Doubt.MethodForm.class::isInstance))
                .isEqualTo(byAbsorptivity);
    }

    @Test
    void theSameReadingsUnderAnotherNameAreSaidAndLeftOut() throws InputException, IOException {
        RunDesk desk = malic();
        RunDesk.Drop drop = drop(desk, export("one.csv", block(340, 0.01)), export("copy.csv", block(340, 0.01)));
        assertThat(drop.notices())
                .anySatisfy(notice -> assertThat(notice.text()).contains("in already, number for number"));
        assertThat(desk.draft().readings()).hasSize(1);
    }
}
