package tallywell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;
import tallywell.curve.Calibration;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.report.SampleRuns;
import tallywell.workup.StepAnalysis;
import tallywell.workup.Workup;

/** What the drawing of a calibration shows, by its data. */
class CalibrationPlotTest {
    private static StepAnalysis step(String run, UnaryOperator<String> samples) throws Exception {
        return new Workup()
                .analyse(SampleRuns.assay(run, UnaryOperator.identity(), UnaryOperator.identity(), samples))
                .steps()
                .get(0);
    }

    private static List<XYPlot> plots(StepAnalysis step, Set<Well> selected) {
        return ((CombinedDomainXYPlot) CalibrationPlot.of(step, "L-malic acid", selected, ChartStyle.print())
                        .getPlot())
                .getSubplots();
    }

    private static List<double[]> series(XYDataset set, String name) {
        List<double[]> points = new ArrayList<>();
        int s = set.indexOf(name);
        for (int i = 0; s >= 0 && i < set.getItemCount(s); i++) {
            points.add(new double[] {set.getXValue(s, i), set.getYValue(s, i)});
        }
        return points;
    }

    /** A well with another volume of sample has another concentration, but its net ΔA is still on the curve. */
    @Test
    void everyWellLiesOnTheCurveWhateverItsOwnVolume() throws Exception {
        UnaryOperator<String> halves = text -> text.replace("sample,dilution", "sample,dilution,volume")
                .replaceAll("(?m)^(\\d+,[^,]*,\\d+)$", "$1,10 µL");
        StepAnalysis step = step("cider-malic-kinetic", halves);
        assertThat(step.wells())
                .filteredOn(each -> each.content() instanceof Content.Sample)
                .allMatch(each -> each.trace().sample().orElseThrow().volumeUl().isPresent());
        Calibration calibration = step.calibration().orElseThrow();
        List<double[]> shown = series(plots(step, Set.of()).get(0).getDataset(1), "well of a sample, control or spike");
        assertThat(shown).hasSizeGreaterThan(60).allSatisfy(point -> {
            assertThat(calibration.curve().at(point[0])).isCloseTo(point[1], within(1e-9));
            assertThat(point[0]).isBetween(calibration.lowest(), calibration.highest());
        });
    }

    @Test
    void selectedWellsStandOutAndNoneIsShownTwice() throws Exception {
        StepAnalysis step = step("cider-malic-kinetic", UnaryOperator.identity());
        Set<Well> two = new HashSet<>(
                List.of(Well.parse("D1").orElseThrow(), Well.parse("D7").orElseThrow()));
        XYDataset none = plots(step, Set.of()).get(0).getDataset(1);
        XYDataset some = plots(step, two).get(0).getDataset(1);
        assertThat(series(some, "selected")).hasSize(2);
        assertThat(series(none, "selected")).isEmpty();
        String others = "well of a sample, control or spike";
        assertThat(series(some, others)).hasSize(series(none, others).size() - 2);
    }

    /** Of a least-squares line with a free constant the residuals sum to nothing. */
    @Test
    void residualsAreThoseOfTheStandardsInMilliabsorbance() throws Exception {
        StepAnalysis step = step("cider-malic-kinetic", UnaryOperator.identity());
        List<double[]> residuals = series(plots(step, Set.of()).get(1).getDataset(0), "standard");
        assertThat(residuals).hasSize(16);
        assertThat(residuals.stream().mapToDouble(each -> each[1]).sum()).isCloseTo(0, within(1e-8));
        double squares =
                residuals.stream().mapToDouble(each -> each[1] * each[1]).sum();
        assertThat(Math.sqrt(squares / (16 - 2)) / 1000)
                .isCloseTo(step.calibration().orElseThrow().residualSd().orElseThrow(), within(1e-12));
    }

    @Test
    void stepWithoutStandardsIsRefused() throws Exception {
        StepAnalysis step = step("vinegar-acetic-coupled", UnaryOperator.identity());
        assertThat(step.calibration()).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> plots(step, Set.of()))
                .withMessageContaining("must have a calibration");
    }
}
