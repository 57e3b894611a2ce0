package tallywell.curve;

import java.util.List;

/**
 * Standards that no calibration can be made from. The message is for the user (found, then expected) and names no
 * wells: the caller knows which wells the points are.
 */
public final class StandardsException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Integer> points;

    /**
     * Refuses the standards.
     *
     * @param points indices of the points concerned, in the order in which they were given; empty if none in particular
     * @param text found, then expected; a sentence without a full stop
     */
    StandardsException(List<Integer> points, String text) {
        super(text);
        this.points = List.copyOf(points);
    }

    /** Indices of the points concerned, from 0, in the order in which they were given; empty if there are none. */
    public List<Integer> points() {
        return points;
    }
}
