package tallywell.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tallywell.workup.Flag;

/** A round badge with a sign for what is special about a well; the first that applies is drawn. */
enum Badge {
    /** A person took the well out. */
    EXCLUDED("excluded", EnumSet.of(Flag.EXCLUDED)),
    /** The reaction still runs. */
    RUNNING("still running at the end", EnumSet.of(Flag.REACTION_INCOMPLETE)),
    /** More than can be measured. */
    HIGH(
            "too high for the range",
            EnumSet.of(Flag.ABOVE_STANDARDS, Flag.ABOVE_WINDOW, Flag.ABSORBANCE_HIGH, Flag.OVER_RANGE)),
    /** The form of the trace. */
    TRACE(
            "unusual trace: jump, bubble, gap, drift or misfit",
            EnumSet.complementOf(EnumSet.of(
                    Flag.EXCLUDED,
                    Flag.REACTION_INCOMPLETE,
                    Flag.ABOVE_STANDARDS,
                    Flag.ABOVE_WINDOW,
                    Flag.ABSORBANCE_HIGH,
                    Flag.OVER_RANGE,
                    Flag.BELOW_STANDARDS,
                    Flag.BELOW_WINDOW,
                    Flag.BELOW_DETECTION,
                    Flag.BELOW_QUANTIFICATION))),
    /** Less than can be measured. */
    LOW(
            "too low for the range",
            EnumSet.of(Flag.BELOW_STANDARDS, Flag.BELOW_WINDOW, Flag.BELOW_DETECTION, Flag.BELOW_QUANTIFICATION));

    private final String words;

    @SuppressWarnings("ImmutableEnumChecker") // nobody but this class holds it
    private final Set<Flag> flags;

    Badge(String words, Set<Flag> flags) {
        this.words = words;
        this.flags = flags;
    }

    /** The badge of a well with these flags; empty without flags. */
    static Optional<Badge> of(Set<Flag> flags) {
        return Stream.of(values())
                .filter(badge -> badge.flags.stream().anyMatch(flags::contains))
                .findFirst();
    }

    /** What it means. */
    String words() {
        return words;
    }

    /** Draws the badge around a point. */
    void draw(Graphics2D g, double x, double y, double r) {
        g.setPaint(Ink.CARD);
        g.fill(disc(x, y, 1.2 * r));
        g.setPaint(Ink.ATTENTION);
        g.fill(disc(x, y, r));
        g.setPaint(Color.WHITE);
        double a = 0.45 * r;
        g.setStroke(Ink.pen(0.32 * r));
        switch (this) {
            case EXCLUDED -> {
                g.draw(new Line2D.Double(x - a, y - a, x + a, y + a));
                g.draw(new Line2D.Double(x - a, y + a, x + a, y - a));
            }
            case RUNNING -> {
                for (int i = -1; i <= 1; i++) {
                    g.fill(disc(x + i * 0.5 * r, y, 0.19 * r));
                }
            }
            case HIGH -> g.fill(triangle(x, y, 0.6 * r));
            case LOW -> g.fill(triangle(x, y, -0.6 * r));
            case TRACE -> {
                g.draw(new Line2D.Double(x, y - 0.55 * r, x, y + 0.1 * r));
                g.fill(disc(x, y + 0.52 * r, 0.19 * r));
            }
        }
    }

    private static Shape disc(double x, double y, double r) {
        return new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r);
    }

    private static Shape triangle(double x, double y, double r) {
        Path2D path = new Path2D.Double();
        path.moveTo(x, y - r);
        path.lineTo(x + Math.abs(r), y + 0.7 * r);
        path.lineTo(x - Math.abs(r), y + 0.7 * r);
        path.closePath();
        return path;
    }
}
