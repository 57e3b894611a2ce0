package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Point;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import tallywell.desk.Shown;
import tallywell.desk.TraceLook;

/** The traces of the selected wells. The start of the finished part and the trigger can be dragged. */
final class TracePanel extends JPanel {

    private final Shown shown;
    private final Drag drag;
    private List<TraceLook> traces = List.of();
    private Optional<DraggedChart> panel = Optional.empty();
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
     * @param movable whether the trigger can be dragged
     */
    void show(List<TraceLook> looks, boolean movable) {
        traces = looks;
        triggerMoves = movable;
        if (looks.isEmpty()) {
            removeAll();
            panel = Optional.empty();
            revalidate();
            repaint();
            return;
        }
        JFreeChart chart = TraceChart.of(looks, new Axes(shown, Palette.now()));
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

    /** Shows what a drag would come to, on the axes as they are. */
    void preview(List<TraceLook> looks) {
        if (looks.isEmpty() || panel.isEmpty()) {
            return;
        }
        JFreeChart chart = TraceChart.of(looks, new Axes(shown, Palette.now()));
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

    List<TraceLook> traces() {
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
            show(traces, triggerMoves);
        }
    }
}
