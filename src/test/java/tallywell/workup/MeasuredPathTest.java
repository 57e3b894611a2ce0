package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tallywell.method.PathReading;
import tallywell.method.Run;
import tallywell.method.Spread;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.Mark;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/** Light paths measured by the absorption of water; what is expected is worked by hand beside each check. */
class MeasuredPathTest {
    /** 1 cm: 0.341 at the peak and 0.158 beside it, made up; the difference is 0.183. */
    private static final double ONE = 0.183;

    private static final double BESIDE = 0.06;

    private static String method(String area, String calibration) {
        return """
                tallywell: method/1
                id: small
                signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
                light-path: {beam: measured, well-area: %s}
                calibration: %s
                report: {unit: g/L}
                steps:
                  - analyte: {name: malic acid, molar-mass: 134.087 g/mol}
                    volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                """.formatted(area, calibration);
    }

    private static final String BY_ABSORPTIVITY = "{by: absorptivity}";

    /** Readings of the light path that give the paths in cm; NaN is a missing reading, infinity one over the range. */
    static MeasuredPath paths(double... cm) {
        ReadingSeries.Builder peak = ReadingSeries.endPoint(new PlateFormat(2, 3));
        ReadingSeries.Builder beside = ReadingSeries.endPoint(new PlateFormat(2, 3));
        for (int i = 0; i < cm.length; i++) {
            Well well = new Well(i / 3, i % 3);
            beside.add(well, BESIDE);
            if (Double.isNaN(cm[i])) {
                peak.add(well, Mark.MISSING);
            } else if (Double.isInfinite(cm[i])) {
                peak.add(well, Mark.OVER);
            } else {
                peak.add(well, BESIDE + ONE * cm[i]);
            }
        }
        return new MeasuredPath(
                new PathReading(picked(), picked(), 0.341, 0.158, Spread.standard(0.01)),
                new Taken("peak", false, List.of(), OptionalDouble.empty(), peak.build()),
                new Taken("beside", false, List.of(), OptionalDouble.empty(), beside.build()));
    }

    private static Run.Reading picked() {
        return new Run.Reading(
                "after.csv",
                false,
                List.of(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                3);
    }

    private static Plates plate(String method) {
        return Plates.small()
                .method(method)
                .layout("o 1 1", "o 2 2", "o: {role: blank}")
                .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                .read(true, "0.16 0.6 0.6 0.16 0.4 0.4");
    }

    private static WellResult well(Analysis analysis, String name) {
        return analysis.steps().get(0).wells().stream()
                .filter(each -> each.well().toString().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void eachChangeIsDividedByItsOwnPathBeforeTheBlankIsTakenOff() throws InputException {
        Analysis analysis = new Workup()
                .analyse(plate(method("33.2 mm2", BY_ABSORPTIVITY))
                        .assay()
                        .withPath(paths(0.85, 0.80, 0.90, 0.85, 0.87, 0.87)));
        // By hand: (0.5 / 0.80 - 0.06 / 0.85) per cm · 290 µL · 134.087 g/mol / (6300 L/mol/cm · 20 µL) = 0.1710986
        // g/L.
        assertThat(well(analysis, "A2").value().orElseThrow()).isCloseTo(0.1710986, within(1e-7));
        // With one path for sample and blank it would be 0.169737 g/L.
        assertThat(well(analysis, "A2").trace().path().orElseThrow().cm()).isCloseTo(0.80, within(1e-12));
        assertThat(well(analysis, "A2").trace().after()).hasValue(0.6);
    }

    @Test
    void areaOfTheWellCancels() throws InputException {
        for (String area : List.of("31 mm2", "33.2 mm2", "36 mm2")) {
            Analysis analysis = new Workup()
                    .analyse(plate(method(area, BY_ABSORPTIVITY))
                            .assay()
                            .withPath(paths(0.85, 0.80, 0.90, 0.85, 0.87, 0.87)));
            assertThat(well(analysis, "A2").value().orElseThrow()).isCloseTo(0.1710986, within(1e-7));
        }
    }

    @Test
    void standardsAndSamplesInDifferentPathsAgree() throws InputException {
        double[] cm = {0.85, 0.80, 0.90, 0.83, 0.87, 0.78};
        // Every well makes 0.5 per cm for each g/L; the blank makes 0.1 per cm of its own.
        double[] levels = {0, 0.4, 0.8, 1.2, 0.6, 1.0};
        StringBuilder after = new StringBuilder();
        for (int i = 0; i < cm.length; i++) {
            after.append(0.1 + cm[i] * (0.1 + 0.5 * levels[i])).append(' ');
        }
        Analysis analysis = new Workup()
                .analyse(Plates.small()
                        .method(method("33.2 mm2", "{by: standards, model: line-through-zero}"))
                        .layout(
                                "o a b",
                                "c 1 2",
                                "o: {role: blank}\na: {role: standard, level: 0.4 g/L}\nb: {role: standard, level: 0.8 g/L}\n"
                                        + "c: {role: standard, level: 1.2 g/L}\n")
                        .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                        .read(true, after.toString())
                        .assay()
                        .withPath(paths(cm)));
        assertThat(well(analysis, "B2").value().orElseThrow()).isCloseTo(0.6, within(1e-9));
        assertThat(well(analysis, "B3").value().orElseThrow()).isCloseTo(1.0, within(1e-9));
    }

    @Test
    void whatATraceKnowsOfItsChangeHoldsItsPathToo() throws InputException {
        double[] times = {0, 60, 120, 180, 240, 300, 360, 420, 480, 540};
        double[] blank = {0.100, 0.101, 0.099, 0.160, 0.161, 0.160, 0.161, 0.160, 0.161, 0.160};
        double[] one = {0.100, 0.102, 0.100, 0.501, 0.500, 0.502, 0.501, 0.500, 0.501, 0.502};
        Plates plate = Plates.small()
                .method(method("33.2 mm2", BY_ABSORPTIVITY) + "creep: {correct: extrapolate}\n")
                .layout("o 1 2", "3 4 5", "o: {role: blank}")
                .series(false, List.of(170.0), times, blank, one, one, one, one, one);
        double[] cm = {0.86, 0.88, 0.84, 0.87, 0.85, 0.86};
        Analysis measured = new Workup().analyse(plate.assay().withPath(paths(cm)));
        WellTrace trace = well(measured, "A2").trace();
        // By hand: mean 0.86, squares of the distances 0, 4, 4, 1, 1, 0 · 1e-4, so SD = √(0.001 / 5) = 0.0141421 cm.
        double relative = 0.0141421 / 0.86;
        double scale = 290 / 33.2 / 10 / 0.88;
        double alone = trace.change().orElseThrow().uDeltaA().orElseThrow();
        double change = trace.change().orElseThrow().deltaA();
        assertThat(trace.deltaA().orElseThrow()).isCloseTo(change * scale, within(1e-12));
        assertThat(trace.uDeltaA().orElseThrow()).isCloseTo(scale * Math.hypot(alone, change * relative), within(1e-7));
        assertThat(trace.creepPerMin()).isEqualTo(trace.change().orElseThrow().creepPerMin());
    }

    @Test
    void aWellWithoutAPathHasNoChangeAndThatIsSaid() throws InputException {
        for (double lost : new double[] {Double.NaN, Double.POSITIVE_INFINITY, 0, -0.1}) {
            Analysis analysis = new Workup()
                    .analyse(plate(method("33.2 mm2", BY_ABSORPTIVITY))
                            .assay()
                            .withPath(paths(0.85, lost, 0.90, 0.85, 0.87, 0.87)));
            assertThat(well(analysis, "A2").deltaA()).isEmpty();
            assertThat(well(analysis, "A2").flags()).contains(Flag.READINGS_MISSING);
            assertThat(analysis.notices())
                    .extracting(Notice::text)
                    .anyMatch(text -> text.startsWith("the light path of A2 cannot be measured"));
            assertThat(analysis.results().get(0).flags()).contains(Flag.READINGS_MISSING);
        }
    }

    @Test
    void aPathThatNoMeniscusExplainsIsFlagged() throws InputException {
        // By hand: 290 / 33.2 / 10 = 0.87349 cm; R = √(33.2 / π) = 3.2508 mm; least 0.87349 · 0.908 - 0.10836 = 0.68477
        // cm,
        // most 0.87349 · 1.092 = 0.95386 cm.
        Analysis analysis = new Workup()
                .analyse(plate(method("33.2 mm2", BY_ABSORPTIVITY))
                        .assay()
                        .withPath(paths(0.85, 0.684, 0.686, 0.85, 0.953, 0.955)));
        assertThat(well(analysis, "A2").flags()).contains(Flag.PATH_DOUBTFUL);
        assertThat(well(analysis, "A3").flags()).doesNotContain(Flag.PATH_DOUBTFUL);
        assertThat(well(analysis, "B2").flags()).doesNotContain(Flag.PATH_DOUBTFUL);
        assertThat(well(analysis, "B3").flags()).contains(Flag.PATH_DOUBTFUL);
        assertThat(analysis.notices())
                .extracting(Notice::text)
                .anyMatch(text -> text.contains("A2, B3") && text.contains("expected 0.685 to 0.954 cm"));
    }

    @Test
    void whatDoesNotFitTogetherIsRefused() throws InputException {
        Assay measured = plate(method("33.2 mm2", BY_ABSORPTIVITY)).assay();
        assertThatThrownBy(() -> new Workup().analyse(measured))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("expected 'path-reading' in the run file");
        Assay vertical = plate(method("33.2 mm2", BY_ABSORPTIVITY).replace("measured", "vertical"))
                .assay();
        MeasuredPath paths = paths(0.85, 0.80, 0.90, 0.85, 0.87, 0.87);
        assertThatThrownBy(() -> new Workup().analyse(vertical.withPath(paths)))
                .hasMessageContaining("the method does not use it");
        MeasuredPath twice = new MeasuredPath(paths.reading(), paths.peak(), paths.peak());
        assertThatThrownBy(() -> new Workup().analyse(measured.withPath(twice)))
                .hasMessageContaining("the two readings of the light path are the same");
        Taken series = new Taken(
                "kinetic",
                false,
                List.of(),
                OptionalDouble.empty(),
                ReadingSeries.timed(new PlateFormat(2, 3))
                        .add(new Well(0, 0), new double[] {0, 1}, new double[] {0.2, 0.2}, null)
                        .build());
        assertThatThrownBy(() -> new Workup()
                        .analyse(measured.withPath(new MeasuredPath(paths.reading(), series, paths.beside()))))
                .hasMessageContaining("found 2 readings a well for the light path in kinetic");
    }
}
