package tallywell.plate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * The readings of one plate at one wavelength: for each well that was read a series in time order. An end point is a
 * series of one reading without a time.
 *
 * <p>Values are stored in plain arrays, since a kinetic plate holds some ten thousand of them; wells usually share one
 * array of times. A reading that carries a mark has no value: asking for it is a fault of the caller.
 */
public final class ReadingSeries {
    private final PlateFormat format;
    private final boolean timed;
    private final double[] @Nullable [] times;
    private final double[] @Nullable [] values;
    private final Mark[] @Nullable [] marks;

    private ReadingSeries(Builder builder) {
        format = builder.format;
        timed = builder.timed;
        times = builder.times;
        values = builder.values;
        marks = builder.marks;
    }

    /** Starts a series of readings with times. */
    public static Builder timed(PlateFormat format) {
        return new Builder(format, true);
    }

    /** Starts a plate of end points, one reading a well, without times. */
    public static Builder endPoint(PlateFormat format) {
        return new Builder(format, false);
    }

    /** The plate. */
    public PlateFormat format() {
        return format;
    }

    /** Whether the readings have times. */
    public boolean isTimed() {
        return timed;
    }

    /** Whether anything stands in the export for this well, be it a mark. */
    public boolean has(Well well) {
        return format.holds(well) && values[format.indexOf(well)] != null;
    }

    /** The wells that were read, in row order. */
    public List<Well> wells() {
        return format.all().stream().filter(this::has).toList();
    }

    /** How many readings the well has; 0 if it was not read. */
    public int size(Well well) {
        return has(well) ? series(values, well).length : 0;
    }

    /**
     * Time of a reading in s, as the export counts.
     *
     * @throws IllegalStateException if the readings have no times
     */
    public double timeS(Well well, int index) {
        if (!timed) {
            throw new IllegalStateException("an end point has no time");
        }
        return series(times, well)[index];
    }

    /** What the reader said of a reading. */
    public Mark mark(Well well, int index) {
        Mark[] of = marks[format.indexOf(well)];
        return of == null ? Mark.NONE : of[index];
    }

    /**
     * The absorbance of a reading.
     *
     * @throws IllegalStateException if the reading carries a mark instead
     */
    public double absorbance(Well well, int index) {
        if (mark(well, index) != Mark.NONE) {
            throw new IllegalStateException(well + " was not read as a number");
        }
        return series(values, well)[index];
    }

    private static double[] series(double[] @Nullable [] of, PlateFormat format, Well well) {
        double[] series = of[format.indexOf(well)];
        if (series == null) {
            throw new IllegalArgumentException("well must have been read but was " + well);
        }
        return series;
    }

    private double[] series(double[] @Nullable [] of, Well well) {
        return series(of, format, well);
    }

    /** The same readings seen through another placing of the wells, such as a plate put in the wrong way round. */
    public ReadingSeries moved(IntFunction<Well> target) {
        Builder moved = new Builder(format, timed);
        for (int i = 0; i < format.wells(); i++) {
            int to = format.indexOf(target.apply(i));
            moved.times[to] = times[i];
            moved.values[to] = values[i];
            moved.marks[to] = marks[i];
        }
        return moved.build();
    }

    /** Collects readings well by well. */
    public static final class Builder {
        private final PlateFormat format;
        private final boolean timed;
        private final double[] @Nullable [] times;
        private final double[] @Nullable [] values;
        private final Mark[] @Nullable [] marks;

        private Builder(PlateFormat format, boolean timed) {
            this.format = format;
            this.timed = timed;
            int wells = format.wells();
            times = new double[wells][];
            values = new double[wells][];
            marks = new Mark[wells][];
        }

        /** Whether the well has its readings already. */
        public boolean has(Well well) {
            return values[format.indexOf(well)] != null;
        }

        /**
         * Sets the series of a well. The arrays are kept as they are and must not change any more; wells may share one
         * array of times.
         *
         * @param well a well without readings so far
         * @param timesS times in s, ascending, as long as the absorbances; ignored for end points
         * @param absorbance the readings; what stands where a mark is set does not matter
         * @param marks as long as the absorbances; null if each is a number
         * @throws IllegalArgumentException if lengths differ, times run backwards, a number is not finite, the series is
         *     empty, or the well has its readings already
         */
        public Builder add(Well well, double[] timesS, double[] absorbance, Mark @Nullable [] marks) {
            int index = format.indexOf(well);
            if (values[index] != null) {
                throw new IllegalArgumentException("well must be new but was " + well);
            }
            if (!(absorbance.length >= 1)
                    || timed && timesS.length != absorbance.length
                    || !timed && absorbance.length != 1
                    || marks != null && marks.length != absorbance.length) {
                throw new IllegalArgumentException(
                        "lengths must agree but were " + timesS.length + " times, " + absorbance.length + " readings");
            }
            for (int i = 0; i < absorbance.length; i++) {
                boolean number = marks == null || marks[i] == Mark.NONE;
                if (number && !(Math.abs(absorbance[i]) <= Double.MAX_VALUE)) {
                    throw new IllegalArgumentException("absorbance must be finite but was " + absorbance[i]);
                }
                if (timed && i > 0 && !(timesS[i] > timesS[i - 1])) {
                    throw new IllegalArgumentException(
                            "times must ascend but " + timesS[i] + " follows " + timesS[i - 1]);
                }
            }
            values[index] = absorbance;
            times[index] = timed ? timesS : null;
            this.marks[index] =
                    marks != null && Arrays.stream(marks).anyMatch(mark -> mark != Mark.NONE) ? marks : null;
            return this;
        }

        /** Sets the one reading of a well of an end point. */
        public Builder add(Well well, double absorbance) {
            return add(well, new double[] {0}, new double[] {absorbance}, null);
        }

        /** Sets the one reading of a well of an end point to a mark. */
        public Builder add(Well well, Mark mark) {
            return add(well, new double[] {0}, new double[] {0}, new Mark[] {mark});
        }

        /** The wells that have readings so far. */
        public List<Well> wells() {
            List<Well> wells = new ArrayList<>();
            for (Well well : format.all()) {
                if (has(well)) {
                    wells.add(well);
                }
            }
            return wells;
        }

        /** The readings; the builder must not be used any more. */
        public ReadingSeries build() {
            return new ReadingSeries(this);
        }
    }
}
