package tallywell.gui;

import java.awt.geom.Rectangle2D;
import java.util.Optional;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** Where the wells of a plate stand in a window. */
final class PlateGeometry {
    private static final double GAP_PART = 0.1;
    private static final double WIDEST = 78;
    private static final double FLATTEST = 0.46;

    private final PlateFormat format;
    private final double left;
    private final double top;
    private final double pitchX;
    private final double pitchY;

    PlateGeometry(PlateFormat format, double width, double height, double rowHead, double columnHead) {
        this.format = format;
        double across = Math.max(1, width - rowHead - 4);
        double down = Math.max(1, height - columnHead - 4);
        double x = Math.min(across / format.columns(), WIDEST * 8.0 / Math.min(8, format.columns()));
        double y = Math.min(down / format.rows(), x);
        // Wells may be wider than high, so that two lines of text have room, but not more than that.
        x = Math.min(x, y / FLATTEST);
        pitchX = x;
        pitchY = y;
        left = rowHead + Math.max(0, (across - x * format.columns()) / 2);
        top = columnHead;
    }

    double left() {
        return left;
    }

    double top() {
        return top;
    }

    double pitchX() {
        return pitchX;
    }

    double pitchY() {
        return pitchY;
    }

    /** The square of a well, without the gap round it. */
    Rectangle2D.Double well(Well well) {
        double gap = Math.max(1, Math.min(pitchX, pitchY) * GAP_PART);
        return new Rectangle2D.Double(
                left + well.column() * pitchX + gap / 2,
                top + well.row() * pitchY + gap / 2,
                pitchX - gap,
                pitchY - gap);
    }

    /** The well at a point, gaps included. */
    Optional<Well> at(double x, double y) {
        int column = (int) Math.floor((x - left) / pitchX);
        int row = (int) Math.floor((y - top) / pitchY);
        return column >= 0 && row >= 0 && column < format.columns() && row < format.rows()
                ? Optional.of(new Well(row, column))
                : Optional.empty();
    }

    /** The well nearest to a point, for drags that leave the plate. */
    Well nearest(double x, double y) {
        int column = (int) Math.floor((x - left) / pitchX);
        int row = (int) Math.floor((y - top) / pitchY);
        return new Well(
                Math.max(0, Math.min(format.rows() - 1, row)), Math.max(0, Math.min(format.columns() - 1, column)));
    }
}
