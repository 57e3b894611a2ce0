package tallywell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import tallywell.trace.AfterRule;
import tallywell.trace.Baseline;
import tallywell.trace.BeforeRule;
import tallywell.trace.Change;
import tallywell.trace.DeltaA;
import tallywell.trace.Series;
import tallywell.trace.TraceFlag;

/** What stands in the pictures is checked, not how it is rendered. */
class TracePictureTest {
    private static final AfterRule LINE = new AfterRule.Extrapolate(OptionalDouble.empty());
    private static final AfterRule CURVE = new AfterRule.ProgressCurve(OptionalDouble.empty());

    static TracedWell well(String name, AfterRule rule, double spike, String... flags) {
        Random random = new Random(7);
        double[] tb = new double[10];
        double[] yb = new double[10];
        for (int i = 0; i < 10; i++) {
            tb[i] = -15.0 * (9 - i);
            yb[i] = 0.1 + 0.0004 * random.nextGaussian();
        }
        double[] t = new double[60];
        double[] y = new double[60];
        for (int i = 0; i < 60; i++) {
            t[i] = 15.0 * (i + 1);
            y[i] = 0.1 + 0.4 * -Math.expm1(-0.015 * t[i]) + 4e-5 * t[i] + 0.0004 * random.nextGaussian();
        }
        y[50] += spike;
        Series before = Series.of(tb, yb);
        Series after = Series.of(t, y);
        Change change = DeltaA.of(new Baseline.Read(before, BeforeRule.MEAN), after, rule);
        return new TracedWell(name, "Orchard, tank 3", Optional.of(before), after, change, List.of(flags));
    }

    private static CombinedDomainXYPlot plots(TracedWell well) {
        return (CombinedDomainXYPlot) new TracePicture(well).chart().getPlot();
    }

    static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg)));
    }

    @Test
    void axesSayWhatTheyAre() {
        CombinedDomainXYPlot plots = plots(well("E4", LINE, 0));

        assertThat(plots.getDomainAxis().getLabel()).isEqualTo("minutes from the trigger");
        assertThat(((XYPlot) plots.getSubplots().get(0)).getRangeAxis().getLabel())
                .isEqualTo("absorbance");
        assertThat(((XYPlot) plots.getSubplots().get(1)).getRangeAxis().getLabel())
                .isEqualTo("residual, mA");
    }

    @Test
    void readingsAreDrawnAndTheOneLeftOutStandsApart() {
        XYSeriesCollection points = new TracePicture(well("E4", LINE, 0.05)).points();

        assertThat(points.getSeries("baseline").getItemCount()).isEqualTo(10);
        assertThat(points.getSeries("readings").getItemCount()).isEqualTo(59);
        assertThat(points.getSeries("left out").getItemCount()).isEqualTo(1);
        assertThat(points.getSeries("left out").getX(0).doubleValue()).isCloseTo(51 * 0.25, within(1e-12));
    }

    @Test
    void finishedLineIsCarriedBackToTheTrigger() {
        TracedWell well = well("E4", LINE, 0);
        XYSeriesCollection lines = new TracePicture(well).lines();
        XYSeries back = lines.getSeries("carried back");

        assertThat(back.getX(0).doubleValue()).isZero();
        assertThat(back.getY(0).doubleValue()).isCloseTo(well.change().after(), within(1e-12));
        assertThat(lines.getSeries("finished line").getX(1).doubleValue()).isEqualTo(15);
        assertThat(lines.getSeries("curve").getItemCount()).isZero();
    }

    @Test
    void progressCurveIsDrawnFromTheTriggerToTheLastReading() {
        XYSeries curve = new TracePicture(well("E4", CURVE, 0)).lines().getSeries("curve");

        assertThat(curve.getX(0).doubleValue()).isZero();
        assertThat(curve.getY(0).doubleValue()).isCloseTo(0.1, within(0.001));
        assertThat(curve.getMaxX()).isEqualTo(15);
    }

    @Test
    void residualsAreThoseOfTheReadingsUsedInMilliabsorbance() {
        TracedWell well = well("E4", LINE, 0);
        XYSeries residuals = new TracePicture(well).residuals();
        int from = well.change().finished().orElseThrow().from();

        assertThat(residuals.getItemCount()).isEqualTo(60 - from);
        double first = well.after().absorbance(from)
                - well.change().finished().orElseThrow().at(well.after().timeS(from));
        assertThat(residuals.getY(0).doubleValue()).isCloseTo(1000 * first, within(1e-9));
    }

    @Test
    void singleReadingHasNoResidualsAndStillIsAPicture() {
        Change change = DeltaA.of(
                new Baseline.Given(0.1, 0), Series.untimed(0.5), new AfterRule.None(OptionalDouble.empty()));
        TracedWell well = new TracedWell("A1", "", Optional.empty(), Series.untimed(0.5), change, List.of());

        assertThat(plots(well).getSubplots()).hasSize(1);
        assertThat(new TracePicture(well).png(400, 300)).isNotEmpty();
    }

    @Test
    void pixelsAreTwiceTheSizeAskedFor() throws Exception {
        byte[] png = new TracePicture(well("E4", LINE, 0)).png(400, 300);

        assertThat(ImageIO.read(new ByteArrayInputStream(png)).getWidth()).isEqualTo(800);
        assertThat(ImageIO.read(new ByteArrayInputStream(png)).getHeight()).isEqualTo(600);
    }

    @Test
    void vectorsAreWellFormedAndSayWellChangeAndFlagInLetters() throws Exception {
        String flag = TraceFlag.SPIKE.text() + " & more <so>";
        Document svg = parsed(new TracePicture(well("E4", LINE, 0.05, flag)).svg(700, 500));

        String letters = svg.getDocumentElement().getTextContent();
        assertThat(letters).contains("E4", "Orchard, tank 3", "ΔA 0.4", "trigger", "mA/min");
        assertThat(letters).contains("▲ readings off the trace", "& more", "<so>");
        assertThat(svg.getDocumentElement().getAttribute("viewBox")).isEqualTo("0 0 700 500");
    }

    @Test
    void samePictureIsTheSameText() {
        TracedWell well = well("E4", CURVE, 0);

        assertThat(new TracePicture(well).svg(700, 500)).isEqualTo(new TracePicture(well).svg(700, 500));
    }
}
