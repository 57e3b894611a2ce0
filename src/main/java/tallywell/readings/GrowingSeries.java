package tallywell.readings;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.plate.Mark;

/** The series of one well while it grows. */
final class GrowingSeries {
    double[] times = new double[0];
    private double[] values = new double[0];
    private Mark @Nullable [] marks;
    int size;

    void extend(int more, double[] moreTimes) {
        if (size == 0) {
            times = moreTimes;
            values = new double[more];
        } else {
            times = Arrays.copyOf(times, size + more);
            System.arraycopy(moreTimes, 0, times, size, more);
            values = Arrays.copyOf(values, size + more);
            if (marks != null) {
                int before = marks.length;
                marks = Arrays.copyOf(marks, size + more);
                Arrays.fill(marks, before, marks.length, Mark.NONE);
            }
        }
        size += more;
    }

    void read(Piece piece, int well, int reading, Interpretation as, int at) throws InputException {
        Mark mark = piece.read(well, reading, as.mark(), values, at);
        if (mark != Mark.NONE) {
            if (marks == null) {
                marks = new Mark[size];
                Arrays.fill(marks, Mark.NONE);
            }
            marks[at] = mark;
        }
    }

    double[] times() {
        return times;
    }

    double[] values() {
        return values;
    }

    Mark @Nullable [] marks() {
        return marks;
    }
}
