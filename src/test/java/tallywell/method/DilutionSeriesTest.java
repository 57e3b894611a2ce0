package tallywell.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import tallywell.quantity.Dilution;

/** By hand. */
class DilutionSeriesTest {
    private static final DilutionSeries FOURS = new DilutionSeries(List.of(1.0, 4.0, 16.0, 64.0));

    @Test
    void theNearestIsNearestByRatioAmongThoseThatWillDo() {
        // 8 is the geometric mean of 4 and 16.
        assertThat(FOURS.nearest(7.9, 1)).contains(new Dilution(4));
        assertThat(FOURS.nearest(8.1, 1)).contains(new Dilution(16));
        assertThat(FOURS.nearest(7.9, 5)).contains(new Dilution(16));
        assertThat(FOURS.nearest(1000, 60)).contains(new Dilution(64));
    }

    @Test
    void whatNoStepReachesIsMadeOfSeveralOneAfterAnother() {
        assertThat(FOURS.next(64)).isEqualTo(new Dilution(64));
        assertThat(FOURS.next(65)).isEqualTo(new Dilution(256));
        assertThat(FOURS.nearest(300, 65)).contains(new Dilution(256));
        // 64 · 64 · 64, and a fourth dilution would pass 1 000 000.
        assertThat(FOURS.largest()).isEqualTo(262144);
        assertThat(FOURS.nearest(1e6, 300000)).isEmpty();
        assertThat(FOURS.next(300000)).isEqualTo(new Dilution(300000));
        // Of 2 alone there are four: 2 · 2 · 2 · 2.
        assertThat(new DilutionSeries(List.of(2.0)).largest()).isEqualTo(16);
    }

    @Test
    void undilutedAloneReachesNothing() {
        DilutionSeries one = new DilutionSeries(List.of(1.0));
        assertThat(one.largest()).isEqualTo(1);
        assertThat(one.nearest(3, 2)).isEmpty();
        assertThat(one.next(5)).isEqualTo(new Dilution(5));
        assertThatThrownBy(() -> new DilutionSeries(List.of())).hasMessageContaining("steps");
    }

    @Test
    void withoutOnesOwnTheUsualOnesHold() {
        assertThat(DilutionSeries.of(Planning.USUAL).steps())
                .startsWith(1.0, 2.0, 5.0, 10.0)
                .endsWith(500000.0, 1e6);
        assertThat(DilutionSeries.USUAL.largest()).isEqualTo(1e6);
    }
}
