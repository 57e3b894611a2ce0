package tallywell.desk;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/**
 * By how much each well changed from the readings before the trigger to the last ones after it: rough, as read, without a
 * layout. It serves to guess whether a layout belongs to a plate, never to report anything.
 */
final class Reacted {
    private Reacted() {}

    /** The change of each well that has both; turned round where most of the plate falls. Empty for fewer than two reads. */
    static Map<Well, Double> of(List<Intake> readings) {
        Map<Well, Double> changes = new HashMap<>();
        if (readings.isEmpty()) {
            return changes;
        }
        ReadingSeries first = readings.get(0).block().series();
        ReadingSeries last = readings.get(readings.size() - 1).block().series();
        double triggerS = readings.get(0).triggerAtS().stream()
                .mapToDouble(Double::doubleValue)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
        for (Well well : first.wells()) {
            OptionalDouble before = before(Readings.points(first, well), readings.size() == 1, triggerS);
            List<double[]> ends = Readings.points(last, well);
            if (before.isPresent() && !ends.isEmpty()) {
                changes.put(well, ends.get(ends.size() - 1)[1] - before.getAsDouble());
            }
        }
        double sum = changes.values().stream().mapToDouble(Double::doubleValue).sum();
        if (sum < 0) {
            changes.replaceAll((well, change) -> -change);
        }
        return changes;
    }

    private static OptionalDouble before(List<double[]> points, boolean single, double triggerS) {
        if (points.isEmpty() || single && points.size() < 2) {
            return OptionalDouble.empty();
        }
        OptionalDouble mean = points.stream()
                .filter(point -> !single || point[0] < triggerS)
                .limit(single && triggerS == Double.POSITIVE_INFINITY ? 1 : points.size())
                .mapToDouble(point -> point[1])
                .average();
        return mean.isPresent() ? mean : OptionalDouble.of(points.get(0)[1]);
    }
}
