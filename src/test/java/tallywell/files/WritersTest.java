package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.method.AssayMethod;
import tallywell.method.PathReading;
import tallywell.method.Planning;
import tallywell.method.Run;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Spread;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Dilution;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/** What the writers write reads back equal. */
class WritersTest {
    @TempDir
    private Path folder;

    static Stream<Path> layouts() throws IOException {
        return Files.list(Path.of("plate-layouts")).sorted();
    }

    static Stream<Path> methods() {
        return Stream.of("samples/cider-l-malic/method.yaml", "samples/cuvette-typed/method.yaml")
                .map(Path::of);
    }

    static Stream<Path> runs() throws IOException {
        return Files.find(Path.of("samples"), 2, (path, is) -> path.endsWith("run.yaml"))
                .sorted();
    }

    static Stream<Path> lists() throws IOException {
        return Files.find(Path.of("samples"), 2, (path, is) -> path.endsWith("samples.csv"))
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("layouts")
    void everyLayoutOfTheProjectComesBack(Path file) throws InputException {
        Layout layout = new LayoutReader().read(file);
        assertThat(again(layout)).isEqualTo(layout);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void methodsOfTheSamplesComeBack(Path file) throws InputException, IOException {
        AssayMethod method = new MethodReader().read(file);
        String text = new MethodText(Files.readString(file)).text();
        assertThat(new MethodReader().parse(file, text)).isEqualTo(method);
    }

    @Test
    void everyBuiltInMethodComesBack() throws InputException {
        MethodLibrary library = new MethodLibrary();
        assertThat(library.ids()).isNotEmpty();
        for (String id : library.ids()) {
            String text = new MethodText(library.file(id).orElseThrow()).text();
            assertThat(new MethodReader().parse(Path.of(id), text))
                    .isEqualTo(library.find(id).orElseThrow());
        }
    }

    @Test
    void aChangedValueIsFoundWhereItCounts() throws InputException {
        MethodText text = new MethodText(new MethodLibrary().file("l-malic-340").orElseThrow());
        text.set(List.of("id"), "mine");
        text.set(List.of("reagents"), "");
        text.setOfStep(0, List.of("volumes", "sample"), "25 µL");
        text.setOfStep(0, List.of("accept", "delta-a", "least"), "0.08");
        text.setOfStep(0, List.of("accept", "absorbance", "most"), "");
        text.setOfStep(0, List.of("signal", "absorptivity"), "6220 L/mol/cm");
        AssayMethod changed = new MethodReader().parse(Path.of("mine"), text.text());
        Step step = changed.steps().get(0);
        assertThat(changed.id()).isEqualTo("mine");
        assertThat(step.volumes().orElseThrow().sampleUl()).isEqualTo(25);
        assertThat(step.limits().deltaALeast()).hasValue(0.08);
        assertThat(step.limits().absorbanceMost()).isEmpty();
        assertThat(step.signal().absorptivity()).hasValue(6220);
    }

    @Test
    void aStepOfSeveralIsChangedAlone() throws InputException {
        MethodText text = new MethodText(
                new MethodLibrary().file("d-glucose-d-fructose-340").orElseThrow());
        text.setOfStep(1, List.of("report", "unit"), "mg/L");
        AssayMethod changed = new MethodReader().parse(Path.of("mine"), text.text());
        assertThat(changed.steps().get(0).report().unit()).isEqualTo(Unit.GRAM_PER_LITRE);
        assertThat(changed.steps().get(1).report().unit()).isEqualTo(Unit.MILLIGRAM_PER_LITRE);
    }

    @ParameterizedTest
    @MethodSource("runs")
    void runsOfTheSamplesComeBack(Path file) throws InputException {
        Run run = new RunReader().read(file);
        assertThat(again(run)).isEqualTo(unlined(run));
    }

    @Test
    void aRunWithEverythingComesBack() throws InputException {
        Run run = new Run(
                "Pressing: \"late\" # 3\\4",
                "C:\\methods\\l-malic.yaml",
                "../my layout.yaml",
                Optional.of("samples, new.csv"),
                "J. Doe",
                List.of(
                        new Run.Reading(
                                "trace 1.csv",
                                false,
                                List.of(225.5, 900.0),
                                Optional.of("Plate 2"),
                                OptionalInt.of(3),
                                OptionalDouble.of(340),
                                OptionalDouble.empty(),
                                0),
                        new Run.Reading(
                                "late.csv",
                                true,
                                List.of(),
                                Optional.empty(),
                                OptionalInt.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.of(0.1 + 0.2),
                                0)),
                List.of(new Run.Exclusion(List.of(new Well(2, 4), new Well(31, 47)), "bubble: big", "J. Doe", 0)),
                List.of(new Run.FinishedFrom(List.of(new Well(0, 0)), 541.25, "dust", "", 0)));
        assertThat(again(run)).isEqualTo(run);
    }

    @Test
    void aMeasuredLightPathComesBack() throws InputException {
        for (Spread spread : List.of(Spread.standard(0.01), Spread.tolerance(0.02))) {
            Run.Reading peak = new Run.Reading(
                    "nir, all.csv",
                    false,
                    List.of(),
                    Optional.of("Plate 2"),
                    OptionalInt.of(3),
                    OptionalDouble.of(977),
                    OptionalDouble.empty(),
                    0,
                    Optional.of("a new label"));
            Run.Reading beside = Run.Reading.of("beside.csv", false, List.of());
            Run run = new Run(
                    "",
                    "m.yaml",
                    "l.yaml",
                    Optional.empty(),
                    "",
                    List.of(Run.Reading.of("a.csv", false, List.of()), Run.Reading.of("b.csv", true, List.of())),
                    List.of(),
                    List.of(),
                    Optional.empty(),
                    Planning.USUAL,
                    Optional.of(new PathReading(peak, beside, 0.341, 0.158, spread)));
            PathReading back = new RunReader()
                    .read(FilesFixture.file(folder, "r.yaml", new RunWriter().text(run)))
                    .pathReading()
                    .orElseThrow();
            assertThat(back)
                    .usingRecursiveComparison()
                    .ignoringFields("peak.line", "beside.line")
                    .isEqualTo(run.pathReading().orElseThrow());
        }
    }

    @ParameterizedTest
    @MethodSource("lists")
    void sampleListsOfTheSamplesComeBack(Path file) throws InputException {
        SampleList list = new SampleListReader().read(file);
        assertThat(again(list)).isEqualTo(list);
    }

    @Test
    void aSampleWithEverythingComesBack() throws InputException {
        SampleList list = SampleList.of(List.of(
                Sample.plain(2),
                new Sample(
                        7,
                        "=Tank, \"old\"; 3",
                        Dilution.parse("3+7"),
                        OptionalDouble.of(12.5),
                        Optional.of(new Sample.Extraction(1.0 / 3, 50)),
                        OptionalDouble.of(1.05),
                        "g2",
                        "000123",
                        "cloudy, foams")));
        assertThat(again(list)).isEqualTo(list);
    }

    @Test
    void randomLayoutsOfEveryRoleAndPlateComeBack() throws InputException {
        for (int seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            PlateFormat format = PlateFormat.KNOWN.get(random.nextInt(PlateFormat.KNOWN.size()));
            List<Content> contents = contents(random);
            Layout layout = new Layout(
                    "seed: " + seed,
                    WellMap.of(
                            format,
                            well -> format.indexOf(well) == 0
                                    ? new Content.Sample(1)
                                    : contents.get(random.nextInt(contents.size()))));
            assertThat(again(layout)).as("seed " + seed).isEqualTo(layout);
        }
    }

    private static List<Content> contents(Random random) {
        List<Content> contents = new ArrayList<>();
        Quantity some = Quantity.of(random.nextDouble(), Unit.GRAM_PER_LITRE);
        contents.add(new Content.Unused());
        contents.add(new Content.Sample(1 + random.nextInt(1536)));
        contents.add(new Content.Blank("o", "", true));
        contents.add(new Content.Blank("n", "no, 1", false));
        contents.add(new Content.Standard("a", "", PerAnalyte.single(some)));
        contents.add(new Content.Standard("b", "2", new PerAnalyte(Map.of("D-glucose", some, "acid: all", some))));
        contents.add(new Content.Control(
                "q1", "", "cider: \"dry\"", PerAnalyte.single(some), Optional.of(some), Dilution.parse("1+2.5")));
        contents.add(new Content.Control("q2", "", "q2", PerAnalyte.none(), Optional.empty(), Dilution.NONE));
        contents.add(new Content.SampleBlank("s", "", 1));
        contents.add(new Content.Spike("p", "", 1, PerAnalyte.single(some), random.nextDouble()));
        return contents;
    }

    @Test
    void oneWordForTwoContentsIsRefused() {
        Layout layout = new Layout(
                "x", WellMap.of(new PlateFormat(1, 2), well -> new Content.Blank("o", "", well.column() == 0)));
        assertThatThrownBy(() -> new LayoutWriter().text(layout)).hasMessageContaining("'o' stands for two");
    }

    private Layout again(Layout layout) throws InputException {
        return new LayoutReader().read(FilesFixture.file(folder, "l.yaml", new LayoutWriter().text(layout)));
    }

    private Run again(Run run) throws InputException {
        return unlined(new RunReader().read(FilesFixture.file(folder, "r.yaml", new RunWriter().text(run))));
    }

    private SampleList again(SampleList list) throws InputException {
        return new SampleListReader().read(FilesFixture.file(folder, "s.csv", new SampleListWriter().text(list)));
    }

    /** Lines serve messages; they are no part of what a run says. */
    private static Run unlined(Run run) {
        return new Run(
                run.title(),
                run.method(),
                run.layout(),
                run.samples(),
                run.operator(),
                run.readings().stream()
                        .map(each -> new Run.Reading(
                                each.file(),
                                each.triggerBefore(),
                                each.triggerAtS(),
                                each.plate(),
                                each.block(),
                                each.wavelengthNm(),
                                each.timeS(),
                                0))
                        .toList(),
                run.exclusions().stream()
                        .map(each -> new Run.Exclusion(each.wells(), each.reason(), each.by(), 0))
                        .toList(),
                run.finishedFrom().stream()
                        .map(each -> new Run.FinishedFrom(each.wells(), each.timeS(), each.reason(), each.by(), 0))
                        .toList());
    }
}
