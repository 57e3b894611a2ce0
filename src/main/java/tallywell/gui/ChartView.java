package tallywell.gui;

import java.awt.Graphics;
import javax.swing.UIManager;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import tallywell.chart.ChartStyle;
import tallywell.desk.Shown;

/** A chart in a window: a drag enlarges, the wheel too, Ctrl and a drag pan; a drag to the left shows all again. */
class ChartView extends ChartPanel {
    /** Lines of text below which a chart has no room for a legend. */
    private static final double LEAST_LINES_FOR_LEGEND = 18;

    private static final float TEXT = 0.9f;

    private final Runnable redraw;

    /**
     * Shows a chart.
     *
     * @param redraw makes the chart anew, on the axes that it began with
     */
    ChartView(JFreeChart chart, Runnable redraw) {
        super(chart, 300, 200, 50, 50, 6000, 6000, false, true, false, false, true, false);
        this.redraw = redraw;
        setMouseWheelEnabled(true);
        setBackground(Palette.now().card());
    }

    /** How charts look in the look that is on. */
    static ChartStyle style(Shown shown) {
        var font = UIManager.getFont("Label.font");
        return new ChartStyle(Palette.now().ofCharts(), font.deriveFont(TEXT * font.getSize2D()), shown.mark());
    }

    @Override
    public void restoreAutoBounds() {
        redraw.run();
    }

    @Override
    public void paintComponent(Graphics graphics) {
        double lines = getHeight() / UIManager.getFont("Label.font").getSize2D();
        boolean room = lines >= LEAST_LINES_FOR_LEGEND;
        // Every setting repaints.
        if (getChart().getLegend().isVisible() != room) {
            getChart().getLegend().setVisible(room);
        }
        super.paintComponent(graphics);
    }
}
