package tallywell.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.ui.RectangleInsets;
import tallywell.workup.WellResult;

/** The trace of one well in one step as {@link TracePlot} draws it, with its numbers, flags and verdict in words. */
public final class TracePicture implements Picture {
    private static final double WIDTH = 700;
    private static final double HEIGHT = 500;

    private final StepTraces step;
    private final WellResult well;

    private TracePicture(StepTraces step, WellResult well) {
        this.step = step;
        this.well = well;
    }

    /**
     * The picture of a well.
     *
     * @param step the step that the well was worked up in
     * @param well a well that has a trace
     */
    public static TracePicture of(StepTraces step, WellResult well) {
        if (!StepTraces.isTrace(well)) {
            throw new IllegalArgumentException("well must have a trace but was " + well.well() + " without");
        }
        return new TracePicture(step, well);
    }

    @Override
    public double width() {
        return WIDTH;
    }

    @Override
    public double height() {
        return HEIGHT;
    }

    @Override
    public void draw(Graphics2D to) {
        chart().draw(to, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    }

    JFreeChart chart() {
        ChartStyle style = ChartStyle.print();
        Axes axes = new Axes(style);
        TraceWords words = new TraceWords(step, well);
        JFreeChart chart = TracePlot.of(List.of(DrawnTrace.of(well)), step.absorbance(), style);
        chart.setPadding(new RectangleInsets(8, 10, 6, 14));
        axes.title(
                chart,
                words.title(),
                1.43,
                axes.words(words.numbers(), style.colours().soft()),
                axes.words(
                        (words.flags() + " " + words.verdict()).strip(),
                        style.colours().text()));
        return chart;
    }
}
