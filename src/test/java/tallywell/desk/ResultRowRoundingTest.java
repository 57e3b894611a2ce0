package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.CIDER;

import java.util.List;
import org.junit.jupiter.api.Test;
import tallywell.notice.InputException;

/** Results in the window are rounded as the report rounds them. */
class ResultRowRoundingTest {
    /** JCGM 100:2008, 7.2.6: U = 0.00996 has two digits as 0.010, and its value ends there. */
    @Test
    void anUncertaintyThatCarriesIntoAFurtherDigitHasTwo() throws InputException {
        Worked worked = Worked.of(new RunStore().open(CIDER.resolve("run.yaml")));
        List<ResultRow> rows = ResultRow.of(
                worked.analysis().orElseThrow(), worked.assessment().orElseThrow(), Shown.POINT);
        ResultRow tank = rows.stream()
                .filter(row -> row.name().startsWith("13  "))
                .findFirst()
                .orElseThrow();
        assertThat(tank.value()).isEqualTo("0.932");
        assertThat(tank.uncertainty()).isEqualTo("0.010");
    }
}
