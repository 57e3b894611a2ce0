package tallywell.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.ui.RectangleInsets;
import tallywell.workup.StepAnalysis;

/**
 * The calibration of a step as {@link CalibrationPlot} draws it.
 *
 * @param step that is calibrated by standards
 * @param analyte what it measures
 */
public record CalibrationPicture(StepAnalysis step, String analyte) implements Picture {
    private static final double WIDTH = 700;
    private static final double HEIGHT = 430;

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
        ChartStyle style = ChartStyle.print();
        JFreeChart chart = CalibrationPlot.of(step, analyte, Set.of(), style);
        chart.setPadding(new RectangleInsets(4, 4, 4, 10));
        new Axes(style).title(chart, "Calibration, " + analyte, 1.24);
        chart.draw(to, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    }
}
