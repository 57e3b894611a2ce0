package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReportTest {
    @ParameterizedTest
    @CsvSource({
        "Autumn cider, samples/cider/run.yaml, Autumn cider",
        "'', samples/cider/run.yaml, cider",
        "'', 'C:\\lab\\juice, 12 March\\run.yaml', 'juice, 12 March'",
        "'', runs/juice.yaml, juice",
        "'', run.yaml, run",
        "'', ../run.yaml, run",
        "'', ./run.yaml, run"
    })
    void aRunWithoutATitleIsCalledByItsFolderOrFile(String title, String run, String expected) {
        assertThat(Report.titleOf(title, run)).isEqualTo(expected);
    }
}
