package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;
import tallywell.workup.Flag;
import tallywell.workup.Plates;
import tallywell.workup.Workup;

/**
 * How often rows of one sample are said to disagree, on plates made from known errors: two blanks and two rows in duplicate, the
 * fewest wells there can be. By theory 1 plate in 100, by the definition of a test at 1 %.
 */
class SameSampleSimulationTest {
    private static final int PLATES = 400;
    private static final double SCATTER = 0.004;

    private static final String METHOD = """
            tallywell: method/1
            id: by-hand
            signal: {absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acid, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static Sample row(int slot, String dilution, boolean solid) {
        return new Sample(
                slot,
                "Perry",
                Dilution.parse(dilution),
                OptionalDouble.empty(),
                solid ? Optional.of(new Sample.Extraction(1, 100)) : Optional.empty(),
                OptionalDouble.empty(),
                "",
                "",
                "");
    }

    private static List<Judgement> judged(String sources, String dilution, boolean solid, double[] after)
            throws InputException {
        String text = Arrays.stream(after)
                .mapToObj(each -> String.format(Locale.ROOT, "%.4f", each))
                .collect(Collectors.joining(" "));
        Plates plate = Plates.small()
                .method(METHOD + sources)
                .layout("o o 1", "1 2 2", "o: {role: blank}")
                .sample(row(1, "2", false))
                .sample(row(2, dilution, solid))
                .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                .read(true, text);
        return new Assessor().assess(new Workup().analyse(plate.assay())).judgements();
    }

    /** Wells of one content, in the second row diluted by a factor more; errors of the plate, of dilutions and of wells. */
    private static double[] drawn(double factor, double shared, double dilution, Random random) {
        double plate = 1 + shared * random.nextGaussian();
        double[] change = {
            0,
            0.6 * plate * (1 + dilution * random.nextGaussian()),
            0.6 / factor * plate * (1 + dilution * random.nextGaussian())
        };
        double[] after = new double[6];
        for (int i = 0; i < after.length; i++) {
            after[i] = 0.1 + change[i / 2] + SCATTER * random.nextGaussian();
        }
        return after;
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "scatter alone | 2 | 0 | 0 | ''",
                "a shared error of 5 %, which cancels | 2 | 0.05 | 0 | 'uncertainty: {absorptivity: {standard: 5 %}}'",
                "two dilutions, each wrong by 2 % | 4 | 0 | 0.02 | 'uncertainty: {dilution: {standard: 2 %}}'"
            })
    void rowsOfOneContentAreSaidToDisagreeOnceInAHundredPlates(
            String what, int dilution, double shared, double each, String sources) throws InputException {
        Random random = new Random(31);
        int said = 0;
        for (int i = 0; i < PLATES; i++) {
            double[] after = drawn(dilution / 2.0, shared, each, random);
            said += judged(sources, Integer.toString(dilution), false, after).stream()
                            .anyMatch(one -> one.result().flags().contains(Flag.SAMPLES_DISAGREE))
                    ? 1
                    : 0;
        }
        // Three standard errors of a count of 1 % of the plates are 1.5 %.
        assertThat(said / (double) PLATES).as(what).isLessThan(0.025);
    }

    @Test
    void rowsThatDifferByTwentyPercentAreFound() throws InputException {
        Random random = new Random(32);
        List<Boolean> found = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            found.add(judged("", "2", false, drawn(1 / 1.2, 0, 0, random)).stream()
                    .allMatch(one -> one.result().flags().contains(Flag.SAMPLES_DISAGREE)));
        }
        assertThat(found).filteredOn(each -> each).hasSizeGreaterThan(94);
    }

    @Test
    void rowsInUnitsThatCannotBeComparedAreNot() throws InputException {
        assertThat(judged("", "2", true, new double[] {0.1, 0.1, 0.7, 0.701, 0.3, 0.301}))
                .noneMatch(each -> each.result().flags().contains(Flag.SAMPLES_DISAGREE));
    }
}
