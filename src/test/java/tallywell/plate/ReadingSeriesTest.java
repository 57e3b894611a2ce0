package tallywell.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class ReadingSeriesTest {
    private static final Well A1 = new Well(0, 0);

    @Test
    void markedReadingHasNoNumber() {
        ReadingSeries series =
                ReadingSeries.endPoint(PlateFormat.P96).add(A1, Mark.OVER).build();
        assertThat(series.mark(A1, 0)).isEqualTo(Mark.OVER);
        assertThatThrownBy(() -> series.absorbance(A1, 0)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void wellThatWasNotReadIsNotThere() {
        ReadingSeries series =
                ReadingSeries.endPoint(PlateFormat.P96).add(A1, 0.5).build();
        assertThat(series.has(new Well(0, 1))).isFalse();
        assertThat(series.size(new Well(0, 1))).isZero();
        assertThat(series.has(new Well(20, 1))).isFalse();
    }

    @Test
    void timesMustAscendAndNumbersBeFinite() {
        assertThatThrownBy(() ->
                        ReadingSeries.timed(PlateFormat.P96).add(A1, new double[] {0, 0}, new double[] {1, 2}, null))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ReadingSeries.endPoint(PlateFormat.P96).add(A1, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void wellCannotBeReadTwice() {
        assertThatThrownBy(
                        () -> ReadingSeries.endPoint(PlateFormat.P96).add(A1, 1).add(A1, 2))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
