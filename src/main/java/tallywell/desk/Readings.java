package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/** Plain facts of readings, to guess their order from. */
final class Readings {
    private Readings() {}

    static OptionalDouble mean(ReadingSeries series) {
        double sum = 0;
        int count = 0;
        for (Well well : series.wells()) {
            for (int i = 0; i < series.size(well); i++) {
                if (series.mark(well, i) == Mark.NONE) {
                    sum += series.absorbance(well, i);
                    count++;
                }
            }
        }
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
    }

    /** The readings of a well that are numbers, as pairs of time and absorbance; an end point stands at time 0. */
    static List<double[]> points(ReadingSeries series, Well well) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < series.size(well); i++) {
            if (series.mark(well, i) == Mark.NONE) {
                points.add(new double[] {series.isTimed() ? series.timeS(well, i) : 0, series.absorbance(well, i)});
            }
        }
        return points;
    }

    /** The longest series of any well. */
    static int length(ReadingSeries series) {
        return series.wells().stream().mapToInt(series::size).max().orElse(0);
    }

    /** The time between two reads where the mean changes most: a first guess at the trigger; empty for few readings. */
    static OptionalDouble steepest(ReadingSeries series) {
        if (!series.isTimed() || series.wells().isEmpty() || length(series) < 4) {
            return OptionalDouble.empty();
        }
        Well first = series.wells().get(0);
        double largest = 0;
        OptionalDouble at = OptionalDouble.empty();
        for (int i = 1; i < series.size(first); i++) {
            double change = 0;
            for (Well well : series.wells()) {
                boolean both = i < series.size(well)
                        && series.mark(well, i) == Mark.NONE
                        && series.mark(well, i - 1) == Mark.NONE;
                change += both ? series.absorbance(well, i) - series.absorbance(well, i - 1) : 0;
            }
            if (Math.abs(change) > largest) {
                largest = Math.abs(change);
                at = OptionalDouble.of(series.timeS(first, i - 1));
            }
        }
        return at;
    }
}
