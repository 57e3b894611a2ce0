package tallywell.gui;

import java.awt.Cursor;
import java.awt.Graphics;
import java.awt.Point;
import java.awt.event.ActionEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.util.OptionalDouble;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jspecify.annotations.Nullable;
import tallywell.chart.DrawnTrace;
import tallywell.gui.TracePanel.Handle;

/** Lets trigger and finished part be dragged; elsewhere a drag zooms, the wheel too, Ctrl and a drag pan. */
final class DraggedChart extends ChartView {
    private static final int GRIP = 7;
    private static final int FOCUS_CORNER = 10;

    /** Times in min that differ by less are the same reading. */
    private static final double SAME = 1e-6;

    private final TracePanel owner;
    private final TracePanel.Drag drag;
    private @Nullable Handle held;
    private Handle next = Handle.FINISHED;
    private boolean byKeys;
    private double at;

    DraggedChart(JFreeChart chart, TracePanel owner, TracePanel.Drag drag) {
        super(chart, owner::redraw);
        this.owner = owner;
        this.drag = drag;
        setFillZoomRectangle(true);
        getAccessibleContext().setAccessibleName(Text.of("trace.title"));
        getAccessibleContext().setAccessibleDescription(Text.of("trace.keys"));
        keys();
    }

    /** What a drag does, by keys: arrows go from reading to reading, Enter lets go, Escape gives up. */
    private void keys() {
        setFocusable(true);
        key(KeyEvent.VK_LEFT, () -> step(-1));
        key(KeyEvent.VK_RIGHT, () -> step(1));
        key(KeyEvent.VK_T, this::otherHandle);
        key(KeyEvent.VK_ENTER, () -> letGo(at));
        key(KeyEvent.VK_ESCAPE, this::giveUp);
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent event) {
                repaint();
            }

            @Override
            public void focusLost(FocusEvent event) {
                if (byKeys) {
                    giveUp();
                }
                repaint();
            }
        });
    }

    private void key(int code, Runnable action) {
        KeyStroke stroke = KeyStroke.getKeyStroke(code, 0);
        getInputMap(WHEN_FOCUSED).put(stroke, stroke.toString());
        getActionMap().put(stroke.toString(), new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                action.run();
            }
        });
    }

    private double stands(Handle handle) {
        DrawnTrace first = owner.traces().get(0);
        return handle == Handle.TRIGGER
                ? first.triggerMin()
                : first.finishedFromMin().orElseThrow();
    }

    private boolean canMove(Handle handle) {
        boolean there = !owner.traces().isEmpty() && owner.traces().get(0).timed();
        return there
                && (handle == Handle.TRIGGER
                        ? owner.triggerMoves()
                        : owner.traces().get(0).finishedFromMin().isPresent());
    }

    private void step(int direction) {
        if (!byKeys) {
            if (!canMove(next)) {
                next = next == Handle.FINISHED ? Handle.TRIGGER : Handle.FINISHED;
            }
            if (!canMove(next)) {
                return;
            }
            held = next;
            at = stands(next);
            byKeys = true;
        }
        Handle moved = held;
        if (moved == null) {
            return;
        }
        at = owner.traces().get(0).minutes().stream()
                .filter(time -> direction > 0 ? time > at + SAME : time < at - SAME)
                .reduce((one, other) -> direction > 0 ? Math.min(one, other) : Math.max(one, other))
                .orElse(at);
        drag.dragging(moved, at);
    }

    private void otherHandle() {
        giveUp();
        next = next == Handle.FINISHED ? Handle.TRIGGER : Handle.FINISHED;
    }

    /** Whether something is being dragged. */
    boolean isDragging() {
        return held != null;
    }

    private void letGo(double min) {
        Handle dropped = held;
        held = null;
        byKeys = false;
        if (dropped != null) {
            drag.dropped(dropped, min);
        }
    }

    private void giveUp() {
        if (held != null) {
            held = null;
            byKeys = false;
            drag.cancelled();
        }
    }

    @Override
    public void paintComponent(Graphics graphics) {
        super.paintComponent(graphics);
        if (isFocusOwner()) {
            graphics.setColor(Palette.now().accent());
            graphics.drawRoundRect(0, 0, getWidth() - 1, getHeight() - 1, FOCUS_CORNER, FOCUS_CORNER);
        }
    }

    private @Nullable Rectangle2D area() {
        var info = getChartRenderingInfo().getPlotInfo();
        return info.getSubplotCount() == 0 ? null : info.getSubplotInfo(0).getDataArea();
    }

    Point onScreen(double min) {
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
        if (area == null || owner.traces().isEmpty() || !area.contains(area.getCenterX(), event.getY())) {
            return null;
        }
        OptionalDouble from = owner.traces().get(0).finishedFromMin();
        double toFinished = from.isPresent() ? Math.abs(x(from.getAsDouble(), area) - event.getX()) : GRIP + 1;
        double toTrigger =
                owner.triggerMoves() ? Math.abs(x(owner.traces().get(0).triggerMin(), area) - event.getX()) : GRIP + 1;
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
        giveUp();
        requestFocusInWindow();
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
        Rectangle2D area = area();
        if (held == null || area == null) {
            held = null;
            super.mouseReleased(event);
        } else {
            letGo(min(event, area));
        }
    }
}
