package tallywell.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.PlannedRun;
import tallywell.method.Planning;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;

/** Where a run departs from its plan, one thing at a time. */
class DeparturesTest {
    private static final String SMALL = """
            tallywell: layout/1
            name: small
            plate: 12
            wells:
              A: o 1 2 .
              B: a 1 2 q
              C: a o q .
            legend:
              o: {role: blank}
              a: {role: standard, level: 0.2 g/L}
              q: {role: control, name: check, assigned: 1 g/L, dilution: 10}
            """;

    @TempDir
    private Path folder = Path.of("");

    private PlannedRun plan;

    private Layout layout(String text) throws InputException, IOException {
        Path file = folder.resolve("layout.yaml");
        Files.writeString(file, text);
        return new LayoutReader().read(file);
    }

    @BeforeEach
    void aPlan() throws InputException, IOException {
        AssayMethod method = new MethodLibrary().find("l-malic-340").orElseThrow();
        plan = Planner.plan(new Planner.Wanted(
                        "run.yaml",
                        "",
                        "",
                        method,
                        layout(SMALL),
                        List.of(),
                        List.of(),
                        new Planning(
                                List.of(),
                                0.10,
                                OptionalDouble.empty(),
                                1000,
                                java.util.Map.of(),
                                100,
                                OptionalDouble.of(300),
                                java.util.Optional.empty())))
                .record();
    }

    private List<String> departures(AssayMethod method, Layout layout, OptionalDouble lastS) {
        SampleList samples = SampleList.plain(layout.slots());
        return Departures.of(plan, new Departures.Done(method, layout, samples, List.of(lastS)));
    }

    private List<String> departures(String from, String to) throws InputException, IOException {
        assertThat(SMALL).contains(from);
        return departures(
                new MethodLibrary().find("l-malic-340").orElseThrow(),
                layout(SMALL.replace(from, to)),
                OptionalDouble.empty());
    }

    @Test
    void runAsPlannedDepartsInNothing() throws InputException, IOException {
        assertThat(departures("o 1 2", "o 1 2")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            level: 0.2 g/L      | level: 0.3 g/L | 'a' was planned with 0.2 g/L, the layout says 0.3 g/L
            dilution: 10        | dilution: 20   | 'q' was planned with dilution 10, the layout says dilution 20
            C: a o q .          | C: a o q o     | the plan fills 10 wells, the run 11
            """)
    void changedLayoutIsTold(String from, String to, String told) throws InputException, IOException {
        assertThat(departures(from, to)).containsExactly(told);
    }

    @Test
    void standardThatCameOrWentIsTold() throws InputException, IOException {
        String more = SMALL.replace("C: a o q .", "C: b o q .") + "  b: {role: standard, level: 0.4 g/L}\n";
        assertThat(departures(
                        new MethodLibrary().find("l-malic-340").orElseThrow(), layout(more), OptionalDouble.empty()))
                .containsExactly("'b' (0.4 g/L) is in the layout and was not planned");
    }

    /** The method plans 10 min; a tenth less is as planned (own choice), and later never departs. */
    @ParameterizedTest
    @CsvSource({"541, ''", "1200, ''", "360, the last reading is 6 min after it"})
    void earlyReadingIsTold(double lastS, String told) throws InputException, IOException {
        List<String> departures = departures(
                new MethodLibrary().find("l-malic-340").orElseThrow(), layout(SMALL), OptionalDouble.of(lastS));
        if (told.isEmpty()) {
            assertThat(departures).isEmpty();
        } else {
            assertThat(departures)
                    .containsExactly("step 'L-malic acid' was planned to be read 10 min after its trigger, " + told);
        }
    }

    @Test
    void otherVolumesAreTold() throws InputException, IOException {
        String text = new MethodLibrary()
                .file("l-malic-340")
                .orElseThrow()
                .replace(
                        "before-trigger: 270 µL, after-trigger: 290 µL",
                        "before-trigger: 260 µL, after-trigger: 280 µL")
                .replace("\"water\", volume: 74 µL", "\"water\", volume: 64 µL");
        AssayMethod smaller = new MethodReader().parse(Path.of("method.yaml"), text);
        assertThat(departures(smaller, layout(SMALL), OptionalDouble.empty()))
                .containsExactly(
                        "step 'L-malic acid' was planned with 290 µL in a well in the end, the method says 280 µL");
    }
}
