package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.chart.DrawnTrace;
import tallywell.chart.TracePlot;
import tallywell.desk.Shown;
import tallywell.plate.Well;
import tallywell.report.SampleRuns;
import tallywell.workup.Analysis;
import tallywell.workup.WellResult;
import tallywell.workup.Workup;

/** The window shows the traces that pictures and documents show. */
class ShownTracesTest {
    private static final TracePanel.Drag NO_DRAG = new TracePanel.Drag() {
        @Override
        public void dragging(TracePanel.Handle handle, double min) {
            throw new AssertionError("nobody drags here");
        }

        @Override
        public void dropped(TracePanel.Handle handle, double min) {
            throw new AssertionError("nobody drags here");
        }

        @Override
        public void cancelled() {
            throw new AssertionError("nobody drags here");
        }
    };

    private static Analysis kinetic(String rule) throws Exception {
        UnaryOperator<String> method = text -> text.replace("correct: extrapolate", "correct: " + rule);
        return new Workup().analyse(SampleRuns.assay("cider-malic-kinetic", method));
    }

    private static List<XYPlot> shown(List<DrawnTrace> traces) {
        return plots(new TracePanel(Shown.POINT, NO_DRAG).chart(traces));
    }

    private static List<XYPlot> plots(JFreeChart chart) {
        return ((CombinedDomainXYPlot) chart.getPlot()).getSubplots();
    }

    /** Every point of a field, with the name of what it belongs to. */
    private static List<String> points(XYPlot plot) {
        List<String> points = new ArrayList<>();
        for (int d = 0; d < plot.getDatasetCount(); d++) {
            XYDataset set = plot.getDataset(d);
            for (int s = 0; s < set.getSeriesCount(); s++) {
                for (int i = 0; i < set.getItemCount(s); i++) {
                    points.add(set.getSeriesKey(s) + " " + set.getXValue(s, i) + " " + set.getYValue(s, i));
                }
            }
        }
        return points;
    }

    @ParameterizedTest
    @ValueSource(strings = {"extrapolate", "progress-curve", "none"})
    void everyWellIsDrawnAsInPicturesWhateverTheRuleForCreep(String rule) throws Exception {
        Analysis analysis = kinetic(rule);
        for (WellResult well : analysis.steps().get(0).wells()) {
            List<DrawnTrace> traces = DrawnTrace.of(analysis, 1, List.of(well.well()));
            List<XYPlot> window = shown(traces);
            List<XYPlot> picture = plots(TracePlot.of(traces, "absorbance", ChartView.style(Shown.POINT)));
            assertThat(window).hasSameSizeAs(picture).hasSize(2);
            for (int i = 0; i < 2; i++) {
                assertThat(points(window.get(i))).isEqualTo(points(picture.get(i)));
            }
        }
    }

    @Test
    void aWellWorkedUpByProgressCurveShowsItsCurveItsFinishedLineAndItsResiduals() throws Exception {
        Analysis analysis = kinetic("progress-curve");
        int wells = 0;
        for (WellResult well : analysis.steps().get(0).wells()) {
            assertThat(well.trace().change().orElseThrow().curve()).isPresent();
            List<XYPlot> window = shown(DrawnTrace.of(analysis, 1, List.of(well.well())));
            assertThat(points(window.get(0)))
                    .anyMatch(point -> point.startsWith("progress curve "))
                    .anyMatch(point -> point.startsWith("the curve's finished line, carried back "));
            assertThat(points(window.get(1))).anyMatch(point -> point.startsWith("ΔA rests on these "));
            wells++;
        }
        assertThat(wells).isEqualTo(96);
    }

    @Test
    void wellsShownTogetherKeepTheirOwnReadingsAndLines() throws Exception {
        Analysis analysis = kinetic("extrapolate");
        List<Well> wells =
                List.of(Well.parse("D1").orElseThrow(), Well.parse("D7").orElseThrow());
        XYPlot together = shown(DrawnTrace.of(analysis, 1, wells)).get(0);
        List<String> alone = new ArrayList<>();
        for (Well well : wells) {
            XYPlot one = shown(DrawnTrace.of(analysis, 1, List.of(well))).get(0);
            points(one).forEach(point -> alone.add(withoutName(point)));
        }
        assertThat(points(together).stream().map(ShownTracesTest::withoutName))
                .containsExactlyInAnyOrderElementsOf(alone);
    }

    private static String withoutName(String point) {
        String[] words = point.split(" ");
        return String.join(" ", Arrays.copyOfRange(words, words.length - 2, words.length));
    }

    @Test
    void readingsWithoutTimesStandBeforeAndAfterTheTrigger() throws Exception {
        Analysis analysis = new Workup().analyse(SampleRuns.assay("cider-l-malic"));
        Well well = analysis.steps().get(0).wells().get(0).well();
        List<DrawnTrace> traces = DrawnTrace.of(analysis, 1, List.of(well));
        assertThat(traces.get(0).timed()).isFalse();
        assertThat(traces.get(0).minutes()).containsExactly(-1.0, 1.0);
        assertThat(shown(traces)).hasSize(1);
    }
}
