package tallywell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tallywell.report.Report;
import tallywell.report.SampleRuns;

/** What the picture of a trace shows, by its data and its words. */
class TracePictureTest {
    private static StepTraces step;

    @BeforeAll
    static void workUp() throws Exception {
        step = Drawn.step(Drawn.kinetic());
    }

    private static JFreeChart chart(StepTraces of, String well) {
        return TracePicture.of(of, Drawn.well(of, well)).chart();
    }

    private static XYPlot plot(JFreeChart chart, int index) {
        return ((CombinedDomainXYPlot) chart.getPlot()).getSubplots().get(index);
    }

    private static List<double[]> series(XYDataset set, String name) {
        List<double[]> points = new ArrayList<>();
        for (int s = 0; s < set.getSeriesCount(); s++) {
            for (int i = 0; set.getSeriesKey(s).equals(name) && i < set.getItemCount(s); i++) {
                points.add(new double[] {set.getXValue(s, i), set.getYValue(s, i)});
            }
        }
        return points;
    }

    private static List<String> titles(JFreeChart chart) {
        List<String> texts = new ArrayList<>(List.of(chart.getTitle().getText()));
        chart.getSubtitles().forEach(each -> {
            if (each instanceof TextTitle title) {
                texts.add(title.getText());
            }
        });
        return texts;
    }

    @Test
    void axesSayWhatTheyShowAndInWhichUnit() {
        JFreeChart chart = chart(step, "E8");
        assertThat(((CombinedDomainXYPlot) chart.getPlot()).getDomainAxis().getLabel())
                .isEqualTo("minutes from the trigger");
        assertThat(plot(chart, 0).getRangeAxis().getLabel()).isEqualTo("absorbance, 340 nm");
        assertThat(plot(chart, 1).getRangeAxis().getLabel()).isEqualTo("");
    }

    /** The tests run in German, where a number would have a comma. */
    @Test
    void numbersOfAxesHaveADecimalPointInEveryLanguage() {
        NumberAxis axis = (NumberAxis) plot(chart(step, "E8"), 0).getRangeAxis();
        NumberTickUnit unit = (NumberTickUnit) axis.getStandardTickUnits().getCeilingTickUnit(0.04);
        assertThat(unit.valueToString(0.15)).isEqualTo("0.15");
        assertThat(unit.valueToString(-0.15)).isEqualTo("−0.15");
    }

    @Test
    void everyReadingOfTheFileIsShownAtItsTimeFromTheTrigger() throws Exception {
        List<String> lines = Files.readAllLines(Path.of("samples/cider-malic-kinetic/trace.csv"));
        int column = List.of(lines.get(0).split(",")).indexOf("E8");
        XYPlot plot = plot(chart(step, "E8"), 0);
        List<double[]> shown = new ArrayList<>(series(plot.getDataset(0), "before the trigger"));
        for (String part : List.of("after it, not in the fit", "ΔA rests on these", "off the trace, left out")) {
            shown.addAll(series(plot.getDataset(0), part));
        }
        assertThat(shown).hasSize(lines.size() - 1);
        for (String line : lines.subList(1, lines.size())) {
            String[] words = line.split(",");
            double minutes = (Double.parseDouble(words[0]) - 225) / 60;
            assertThat(shown).anySatisfy(point -> {
                assertThat(point[0]).isEqualTo(minutes, within(1e-9));
                assertThat(point[1]).isEqualTo(Double.parseDouble(words[column]));
            });
        }
    }

    @Test
    void readingsLeftOutAreMarkedByAnotherShape() {
        XYPlot plot = plot(chart(step, "E8"), 0);
        assertThat(series(plot.getDataset(0), "off the trace, left out"))
                .singleElement()
                .satisfies(point -> assertThat(point[0]).isEqualTo(13.0, within(1e-9)));
        int off = plot.getDataset(0).indexOf("off the trace, left out");
        int used = plot.getDataset(0).indexOf("ΔA rests on these");
        assertThat(plot.getRenderer(0).getSeriesShape(off).getBounds2D())
                .isNotEqualTo(plot.getRenderer(0).getSeriesShape(used).getBounds2D());
    }

    @Test
    void lineIsCarriedBackToTheTriggerAndItsHeightThereIsDeltaA() {
        XYPlot plot = plot(chart(step, "E8"), 0);
        double[] line = series(plot.getDataset(1), TraceLines.LINE).get(0);
        List<double[]> baseline = series(plot.getDataset(1), TraceLines.BASELINE);
        double[] foot = baseline.get(baseline.size() - 1);
        assertThat(line[0]).isZero();
        assertThat(foot[0]).isZero();
        assertThat(line[1] - foot[1]).isEqualTo(Drawn.well(step, "E8").deltaA().getAsDouble(), within(1e-12));
        assertThat(plot.getAnnotations()).hasSize(1).first().isInstanceOf(Measure.class);
    }

    /** Of a least-squares line the residuals sum to nothing, and so do their products with time. */
    @Test
    void residualsAreThoseOfALeastSquaresLineInMilliabsorbance() {
        List<double[]> residuals = series(plot(chart(step, "A1"), 1).getDataset(0), "ΔA rests on these");
        double size = residuals.stream().mapToDouble(each -> Math.abs(each[1])).sum();
        assertThat(residuals.size()).isGreaterThan(20);
        // The noise of the sample is 0.5 mA.
        assertThat(size / residuals.size()).isBetween(0.1, 1.0);
        assertThat(residuals.stream().mapToDouble(each -> each[1]).sum()).isEqualTo(0, within(1e-8));
        assertThat(residuals.stream().mapToDouble(each -> each[0] * each[1]).sum())
                .isEqualTo(0, within(1e-7));
    }

    @Test
    void finishedPartIsShadedFromItsFirstReading() {
        JFreeChart chart = chart(step, "E8");
        double first = series(plot(chart, 0).getDataset(0), "ΔA rests on these").get(0)[0];
        for (int i = 0; i < 2; i++) {
            java.util.Collection<?> markers = plot(chart, i).getDomainMarkers(Layer.BACKGROUND);
            assertThat(markers.size()).isEqualTo(1);
            IntervalMarker marker = (IntervalMarker) markers.iterator().next();
            assertThat(marker.getStartValue()).isEqualTo(first, within(1e-12));
        }
    }

    @Test
    void titleNamesWellAndSampleAndFlagsStandInWords() {
        assertThat(titles(chart(step, "H2")))
                .anyMatch(text -> text.equals("H2 · Lees 12 · L-malic acid"))
                .anyMatch(text -> text.contains("the reaction may not be over at the end of the readings")
                        && text.contains("Verdict on Lees 12: repeat, reading longer."));
        assertThat(titles(chart(step, "A1")))
                .anyMatch(text -> text.equals("A1 · blank · L-malic acid"))
                .contains("Nothing is flagged in this well.");
    }

    @Test
    void readingsOutOfRangeStandAtTheTopOfTheScale() throws Exception {
        StepTraces over = Drawn.step(Drawn.over(Drawn.kinetic(), "E4", 30, 34));
        XYPlot plot = plot(chart(over, "E4"), 0);
        List<double[]> shown = series(plot.getDataset(0), "over the range of the reader");
        assertThat(shown).hasSize(4);
        assertThat(shown.get(0)[0]).isEqualTo((30 * 15 - 225) / 60.0, within(1e-9));
        assertThat(shown.get(0)[1]).isGreaterThan(plot.getRangeAxis().getUpperBound() - 0.1);
    }

    @Test
    void standardIsNotFlaggedForLyingBeyondTheStandards() {
        assertThat(StepTraces.flagsOf(Drawn.well(step, "F5"))).isEmpty();
        assertThat(step.flagged())
                .extracting(each -> each.well().toString())
                .contains("E8", "H2", "H8")
                .doesNotContain("F5", "F9");
    }

    @Test
    void endPointsAreNoTrace() throws Exception {
        Report report = SampleRuns.report("cider-l-malic");
        StepTraces none =
                new StepTraces(report.analysis(), report.assessment(), 1, "L-malic acid", OptionalDouble.empty());
        assertThat(none.hasTraces()).isFalse();
        assertThat(none.absorbance()).isEqualTo("absorbance");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TracePicture.of(none, none.wells().get(0)))
                .withMessageContaining("must have a trace");
        assertThatIllegalArgumentException().isThrownBy(() -> PlateOfTraces.of(none));
    }
}
