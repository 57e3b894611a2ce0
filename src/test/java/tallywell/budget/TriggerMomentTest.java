package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.workup.DrawnPlate;
import tallywell.workup.Workup;

/** The moment of the trigger against plates worked up with the trigger written elsewhere. */
class TriggerMomentTest {
    private static final double[] CHANGES = {0, 0.1, 0.25, 0.5, 0.75, 0.2, 0.3, 0.35, 0.4, 0.45, 0.55, 0.65};

    private static PlateBudget budget(String layout, String calibration, double writtenS) throws InputException {
        DrawnPlate plate = DrawnPlate.of(
                        layout,
                        calibration,
                        "creep: {correct: extrapolate}",
                        "uncertainty: {trigger-moment: {standard: 5 s}}")
                .written(writtenS);
        return PlateBudget.of(new Workup()
                .analyse(plate.drawn(
                        (pair, well) -> t -> CHANGES[pair] * -Math.expm1(-0.03 * t)
                                + 0.001 * (pair * 7 % 5) * (t + 5 * well.column()) / 60,
                        10,
                        new Random(3))));
    }

    @ParameterizedTest
    @CsvSource({"false, {by: absorptivity}", "true, '{by: standards, model: line}'"})
    void valuesMoveWithTheTriggerAsTheBudgetSays(boolean standards, String calibration) throws InputException {
        String layout = standards ? DrawnPlate.STANDARDS : DrawnPlate.SAMPLES;
        PlateBudget written = budget(layout, calibration, 180);
        PlateBudget later = budget(layout, calibration, 182);
        PlateBudget earlier = budget(layout, calibration, 178);
        int compared = 0;
        for (int i = 0; i < written.results().size(); i++) {
            if (written.results().get(i).isEmpty()) {
                continue;
            }
            ResultBudget each = written.results().get(i).orElseThrow();
            Optional<Contribution> moment = each.contributions().stream()
                    .filter(part -> part.source().label().equals("moment of the trigger"))
                    .findFirst();
            double moved = (later.analysis().results().get(i).value().orElseThrow()
                            - earlier.analysis().results().get(i).value().orElseThrow())
                    / 4;
            double size = Math.abs(each.result().value().orElseThrow());
            assertThat(moment.map(Contribution::sensitivity).orElse(0.0))
                    .as("result " + i)
                    .isCloseTo(moved, within(0.03 * Math.abs(moved) + 2e-6 * size));
            moment.ifPresent(part -> assertThat(part.standardUncertainty()).isEqualTo(5));
            compared++;
        }
        assertThat(compared).isGreaterThanOrEqualTo(6);
        var drawn = PlateSimulation.run(written, 20000, 5);
        for (int i = 0; i < drawn.size(); i++) {
            if (drawn.get(i).isPresent()) {
                double u = written.results().get(i).orElseThrow().byBudget();
                assertThat(drawn.get(i).get().standardUncertainty())
                        .as("draws " + i)
                        .isCloseTo(u, within(0.05 * u));
            }
        }
    }
}
