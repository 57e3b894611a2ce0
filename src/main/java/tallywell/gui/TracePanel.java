package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Cursor;
import java.awt.Point;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import org.jspecify.annotations.Nullable;
import tallywell.desk.Shown;
import tallywell.desk.TraceLook;

/** The traces of the selected wells. The start of the finished part and the trigger can be dragged. */
final class TracePanel extends JPanel {
    private static final int GRIP = 7;

    private final Shown shown;
    private final Drag drag;
    private List<TraceLook> traces = List.of();
    private Optional<DragPanel> panel = Optional.empty();
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
        DragPanel made = new DragPanel(chart);
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

    List<TraceLook> traces() {
        return traces;
    }

    /** Whether something is being dragged. */
    boolean isDragging() {
        return panel.map(each -> each.held != null).orElse(false);
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

    /** Lets trigger and finished part be dragged; elsewhere a drag zooms, the wheel too, Ctrl and a drag pan. */
    private final class DragPanel extends ChartPanel {
        private @Nullable Handle held;

        DragPanel(JFreeChart chart) {
            super(chart, 300, 200, 50, 50, 6000, 6000, false, true, false, false, true, false);
            setMouseWheelEnabled(true);
            setBackground(Palette.now().card());
            setFillZoomRectangle(true);
            getAccessibleContext().setAccessibleName(Text.of("trace.title"));
        }

        private @Nullable Rectangle2D area() {
            var info = getChartRenderingInfo().getPlotInfo();
            return info.getSubplotCount() == 0 ? null : info.getSubplotInfo(0).getDataArea();
        }

        private Point onScreen(double min) {
            Rectangle2D area = area();
            if (area == null) {
                throw new IllegalStateException("the chart has not been drawn yet");
            }
            Point point = new Point((int) Math.round(x(min, area)), (int) area.getCenterY());
            SwingUtilities.convertPointToScreen(point, this);
            return point;
        }

        private double x(double min, Rectangle2D area) {
            CombinedDomainXYPlot plot = (CombinedDomainXYPlot) getChart().getXYPlot();
            return plot.getDomainAxis().valueToJava2D(min, area, plot.getDomainAxisEdge());
        }

        private double min(MouseEvent event, Rectangle2D area) {
            CombinedDomainXYPlot plot = (CombinedDomainXYPlot) getChart().getXYPlot();
            return plot.getDomainAxis().java2DToValue(event.getX(), area, plot.getDomainAxisEdge());
        }

        /** What lies under the mouse; of two the nearer. */
        private @Nullable Handle under(MouseEvent event) {
            Rectangle2D area = area();
            if (area == null || traces.isEmpty() || !area.contains(area.getCenterX(), event.getY())) {
                return null;
            }
            OptionalDouble from = traces.get(0).finishedFromMin();
            double toFinished = from.isPresent() ? Math.abs(x(from.getAsDouble(), area) - event.getX()) : GRIP + 1;
            double toTrigger = triggerMoves ? Math.abs(x(traces.get(0).triggerMin(), area) - event.getX()) : GRIP + 1;
            if (Math.min(toFinished, toTrigger) > GRIP) {
                return null;
            }
            return toFinished <= toTrigger ? Handle.FINISHED : Handle.TRIGGER;
        }

        @Override
        public void mouseMoved(MouseEvent event) {
            boolean over = under(event) != null;
            setCursor(Cursor.getPredefinedCursor(over ? Cursor.E_RESIZE_CURSOR : Cursor.DEFAULT_CURSOR));
            super.mouseMoved(event);
        }

        @Override
        public void mousePressed(MouseEvent event) {
            held = SwingUtilities.isLeftMouseButton(event) ? under(event) : null;
            if (held == null) {
                super.mousePressed(event);
            }
        }

        @Override
        public void mouseDragged(MouseEvent event) {
            Rectangle2D area = area();
            if (held == null) {
                super.mouseDragged(event);
            } else if (area != null) {
                drag.dragging(held, min(event, area));
            }
        }

        @Override
        public void mouseReleased(MouseEvent event) {
            Handle dropped = held;
            Rectangle2D area = area();
            held = null;
            if (dropped == null) {
                super.mouseReleased(event);
            } else if (area != null) {
                drag.dropped(dropped, min(event, area));
            }
        }
    }
}
