package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.workup.Flag;

/** Slow standards beside fast samples: the curve is too flat, and every result read off it too high. */
class StandardsUnfinishedTest {
    private static EndPointPlate plate(double rate, double standards, int count, double first, double every) {
        double[] t = IntStream.range(0, count)
                .mapToDouble(i -> 60 * (first + i * every))
                .toArray();
        return new EndPointPlate("standards, model: line", rate, 0.0005, t).withStandards(standards);
    }

    @ParameterizedTest
    @CsvSource({
        "0.05, 0.008, 3, 3, 3",
        "0.03, 0.005, 3, 5, 5",
        "0.05, 0.008, 4, 5, 2",
        "0.05, 0.008, 5, 5, 2",
        "0.03, 0.005, 6, 5, 5",
        "0.05, 0.008, 8, 3, 2",
        "0.03, 0.005, 12, 2, 1",
        "0.03, 0.005, 60, 0.25, 0.25"
    })
    void slowStandardsDoNotPassTheirErrorOnInSilence(
            double rate, double standards, int count, double first, double every) throws InputException {
        EndPointPlate.Outcome outcome =
                plate(rate, standards, count, first, every).draw(4, 20260501);

        assertThat(outcome.wrong()).isLessThan(0.05);
    }

    @Test
    void theRowSaysWhatItRestsOn() throws InputException {
        Assessment assessment = plate(0.05, 0.008, 4, 5, 2).assessed(20260502);

        assertThat(assessment.judgements()).anySatisfy(each -> {
            assertThat(each.result().flags()).contains(Flag.STANDARDS_UNFINISHED);
            assertThat(each.verdict()).isEqualTo(Verdict.CHECK);
        });
        assertThat(assessment.checks())
                .filteredOn(each -> each.name().equals("reactions of the standards were over"))
                .singleElement()
                .extracting(Check::state)
                .isEqualTo(Check.State.FAILED);
    }

    @ParameterizedTest
    @CsvSource({"6, 5, 5", "8, 3, 2", "12, 2, 1", "60, 0.25, 0.25"})
    void standardsThatWereOverFlagNothing(int count, double first, double every) throws InputException {
        EndPointPlate.Outcome outcome = plate(0.05, 0.05, count, first, every).draw(4, 20260503);

        assertThat(outcome.restsOnUnfinished()).isLessThan(0.03);
    }

    /** What noise alone leaves open in blanks must not flag the results of a plate that was over. */
    @ParameterizedTest
    @CsvSource({"0.0003, 3, 5, 5", "0.001, 4, 5, 5", "0.001, 6, 5, 5", "0.001, 8, 3, 2", "0.001, 12, 2, 1"})
    void blanksFlagNothing(double noise, int count, double first, double every) throws InputException {
        double[] t = IntStream.range(0, count)
                .mapToDouble(i -> 60 * (first + i * every))
                .toArray();

        EndPointPlate.Outcome outcome = new EndPointPlate("absorptivity", 0.05, noise, t).draw(4, 20260504);

        assertThat(outcome.restsOnUnfinished()).isZero();
        assertThat(outcome.wrong()).isLessThan(0.05);
    }

    /** One reading: by standards the published routine, by absorptivity nothing makes up for what it does not show. */
    @Test
    void oneReadingByAbsorptivityIsChecked() throws InputException {
        Assessment byAbsorptivity = new EndPointPlate("absorptivity", 0.05, 0.0005, 900).assessed(1);
        Assessment byStandards = new EndPointPlate("standards, model: line", 0.05, 0.0005, 900).assessed(1);

        assertThat(byAbsorptivity.judgements())
                .allSatisfy(each -> assertThat(each.verdict()).isEqualTo(Verdict.CHECK));
        assertThat(byStandards.judgements())
                .filteredOn(each -> each.verdict() == Verdict.REPORT)
                .hasSizeGreaterThan(20)
                .allSatisfy(each -> assertThat(each.result().flags()).contains(Flag.CREEP_NOT_MEASURED));
    }
}
