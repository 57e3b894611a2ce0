package tallywell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tallywell.plate.PlateFormat;
import tallywell.plate.WellMap;
import tallywell.trace.AfterRule;
import tallywell.trace.TraceFlag;

class PlateOfTracesTest {
    private static final AfterRule LINE = new AfterRule.Extrapolate(OptionalDouble.empty());

    /** Two flagged wells, H12 not in use. */
    private static WellMap<Optional<TracedWell>> plate(PlateFormat format) {
        return WellMap.of(format, well -> {
            if (well.equals(format.last())) {
                return Optional.empty();
            }
            boolean flagged = well.row() == 0 && well.column() < 2;
            return Optional.of(
                    flagged
                            ? TracePictureTest.well(well.toString(), LINE, 0.05, TraceFlag.SPIKE.text())
                            : TracePictureTest.well(well.toString(), LINE, 0));
        });
    }

    private static int count(Document svg, String text) {
        NodeList all = svg.getElementsByTagName("text");
        int count = 0;
        for (int i = 0; i < all.getLength(); i++) {
            count += ((Element) all.item(i)).getTextContent().equals(text) ? 1 : 0;
        }
        return count;
    }

    @Test
    void flaggedWellsAreMarkedByASignAndAWord() throws Exception {
        Document svg = TracePictureTest.parsed(new PlateOfTraces("Plate 1", plate(PlateFormat.P96)).svg(1300, 800));

        assertThat(count(svg, "!")).isEqualTo(2);
        assertThat(count(svg, "spike")).isEqualTo(2);
        assertThat(svg.getDocumentElement().getTextContent()).contains("Plate 1", "▲ flagged: 2 wells");
    }

    @Test
    void axesAreCommonAndHoldEveryReading() {
        PlateOfTraces picture = new PlateOfTraces("Plate 1", plate(PlateFormat.P96));

        assertThat(picture.minutes()).containsExactly(-2.25, 15);
        assertThat(picture.absorbances()[0]).isLessThan(0.1);
        assertThat(picture.absorbances()[1]).isGreaterThan(0.58);
    }

    @Test
    void rowsAndColumnsAreNamed() throws Exception {
        Document svg = TracePictureTest.parsed(new PlateOfTraces("Plate 1", plate(PlateFormat.P96)).svg(1300, 800));

        assertThat(count(svg, "H")).isEqualTo(1);
        assertThat(count(svg, "12")).isEqualTo(1);
        assertThat(count(svg, "minutes from the trigger")).isEqualTo(1);
    }

    @Test
    void plateOfManyWellsKeepsSignsAndDropsWords() throws Exception {
        PlateFormat format = new PlateFormat(16, 24);
        Document svg = TracePictureTest.parsed(new PlateOfTraces("Plate 1", plate(format)).svg(1300, 600));

        assertThat(count(svg, "!")).isEqualTo(2);
        assertThat(count(svg, "spike")).isZero();
    }

    @Test
    void plateWithoutReadingsSaysSo() throws Exception {
        WellMap<Optional<TracedWell>> nothing = WellMap.of(PlateFormat.P96, well -> Optional.empty());

        String text = TracePictureTest.parsed(new PlateOfTraces("Plate 1", nothing).svg(900, 600))
                .getDocumentElement()
                .getTextContent();

        assertThat(text).contains("no well of this plate has readings");
        assertThat(new PlateOfTraces("Plate 1", nothing).png(300, 200)).isNotEmpty();
    }
}
