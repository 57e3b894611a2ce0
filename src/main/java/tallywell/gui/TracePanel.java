package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Point;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import tallywell.chart.DrawnTrace;
import tallywell.chart.TracePlot;
import tallywell.desk.Shown;

/** The traces of the selected wells. The start of the finished part and the trigger can be dragged. */
final class TracePanel extends JPanel {
    private static final float EDGE = 1.4f;

    private final Shown shown;
    private final Drag drag;
    private List<DrawnTrace> traces = List.of();
    private Optional<DraggedChart> panel = Optional.empty();
    private String absorbance = "";
    private boolean triggerMoves;

    /** What can be dragged. */
    enum Handle {
        /** The start of the finished part. */
        FINISHED,
        /** The trigger. */
        TRIGGER
    }

    /** Hears of something being dragged. */
    interface Drag {
        /** It stands at this time now, in min from the trigger as it was. */
        void dragging(Handle handle, double min);

        /** It was let go at this time. */
        void dropped(Handle handle, double min);

        /** It is to stay where it was. */
        void cancelled();
    }

    TracePanel(Shown shown, Drag drag) {
        super(new BorderLayout());
        this.shown = shown;
        this.drag = drag;
        setOpaque(false);
        setName("trace");
    }

    /**
     * Shows traces.
     *
     * @param measured what was measured, as the axis says it
     * @param movable whether the trigger can be dragged
     */
    void show(List<DrawnTrace> looks, String measured, boolean movable) {
        traces = looks;
        absorbance = measured;
        triggerMoves = movable;
        if (looks.isEmpty()) {
            removeAll();
            panel = Optional.empty();
            revalidate();
            repaint();
            return;
        }
        JFreeChart chart = chart(looks);
        if (panel.isPresent()) {
            panel.get().setChart(chart);
            return;
        }
        DraggedChart made = new DraggedChart(chart, this, drag);
        panel = Optional.of(made);
        add(made, BorderLayout.CENTER);
        revalidate();
        repaint();
    }

    /** Shows the same on the axes that it began with. */
    void redraw() {
        show(traces, absorbance, triggerMoves);
    }

    /** The drawing that pictures and documents show, with the edge that can be dragged. */
    JFreeChart chart(List<DrawnTrace> looks) {
        JFreeChart chart = TracePlot.of(looks, absorbance, ChartView.style(shown));
        XYPlot main = ((CombinedDomainXYPlot) chart.getXYPlot()).getSubplots().get(0);
        looks.get(0)
                .finishedFromMin()
                .ifPresent(from -> main.addDomainMarker(
                        new ValueMarker(from, Palette.now().accent(), new BasicStroke(EDGE)), Layer.BACKGROUND));
        return chart;
    }

    /** Shows what a drag would come to, on the axes as they are. */
    void preview(List<DrawnTrace> looks) {
        if (looks.isEmpty() || panel.isEmpty()) {
            return;
        }
        JFreeChart chart = chart(looks);
        keepAxes((CombinedDomainXYPlot) panel.get().getChart().getXYPlot(), (CombinedDomainXYPlot) chart.getXYPlot());
        panel.get().setChart(chart);
    }

    private static void keepAxes(CombinedDomainXYPlot from, CombinedDomainXYPlot to) {
        keep(from.getDomainAxis(), to.getDomainAxis());
        List<XYPlot> old = from.getSubplots();
        List<XYPlot> anew = to.getSubplots();
        for (int i = 0; i < Math.min(old.size(), anew.size()); i++) {
            keep(old.get(i).getRangeAxis(), anew.get(i).getRangeAxis());
        }
    }

    private static void keep(ValueAxis from, ValueAxis to) {
        Range range = from.getRange();
        to.setRange(range);
    }

    /** Whoever asks for the focus means the chart; without one there is nothing to do here by keys. */
    @Override
    public boolean requestFocusInWindow() {
        return panel.map(DraggedChart::requestFocusInWindow).orElse(false);
    }

    List<DrawnTrace> traces() {
        return traces;
    }

    /** Whether the trigger can be dragged. */
    boolean triggerMoves() {
        return triggerMoves;
    }

    /** Whether something is being dragged. */
    boolean isDragging() {
        return panel.map(DraggedChart::isDragging).orElse(false);
    }

    /** Where a time stands on the screen, in the middle of the chart. */
    Point onScreen(double min) {
        return panel.orElseThrow().onScreen(min);
    }

    @Override
    public void updateUI() {
        super.updateUI();
        // The constructor of the superclass calls this before the fields are set.
        if (traces != null && !traces.isEmpty()) {
            removeAll();
            panel = Optional.empty();
            redraw();
        }
    }
}
