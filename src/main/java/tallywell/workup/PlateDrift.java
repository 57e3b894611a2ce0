package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.trace.CommonDrift;
import tallywell.trace.Series;

/**
 * Looks at the traces of a plate together, and marks the wells to which a common drift may matter.
 *
 * <p>A drift is flagged, not taken out. What the wells show of it is only what their lines could not follow; the rest is in
 * their creep and their ΔA, and nothing on the plate tells it from either. The blanks carry the same, so that it cancels in
 * net ΔA as far as their finished parts are alike.
 */
final class PlateDrift {
    private PlateDrift() {}

    /** What the wells have in common; empty where too few have traces. */
    static Optional<CommonDrift> of(List<WellTrace> traces) {
        int most = traces.stream()
                .flatMap(trace -> trace.readings().after().stream())
                .mapToInt(point -> point.ref().index() + 1)
                .max()
                .orElse(0);
        List<CommonDrift.Followed> wells = new ArrayList<>();
        for (WellTrace trace : traces) {
            boolean drawn = trace.change()
                    .filter(change ->
                            change.finished().isPresent() || change.curve().isPresent())
                    .isPresent();
            if (drawn && trace.readings().after().size() >= CommonDrift.FEWEST) {
                wells.add(followed(trace, most));
            }
        }
        return CommonDrift.of(wells);
    }

    private static CommonDrift.Followed followed(WellTrace trace, int most) {
        List<WellReadings.Point> before = trace.readings().baseline();
        List<WellReadings.Point> after = trace.readings().after();
        boolean timed = !before.isEmpty() && before.stream().allMatch(WellReadings.Point::timed);
        List<Integer> passes = after.stream()
                .map(point -> point.ref().taken() * most + point.ref().index())
                .toList();
        return new CommonDrift.Followed(
                timed ? Optional.of(series(before)) : Optional.empty(),
                series(after),
                trace.change().orElseThrow(),
                passes);
    }

    private static Series series(List<WellReadings.Point> points) {
        return Series.of(
                points.stream().mapToDouble(WellReadings.Point::timeS).toArray(),
                points.stream().mapToDouble(WellReadings.Point::absorbance).toArray());
    }

    /** The same wells, those to which the drift may matter marked. */
    static List<WellTrace> marked(List<WellTrace> traces, Optional<CommonDrift> drift) {
        if (drift.isEmpty() || !drift.get().isSeen()) {
            return traces;
        }
        return traces.stream()
                .map(trace -> trace.uDeltaA().isPresent()
                                && drift.get().mattersTo(trace.uDeltaA().getAsDouble())
                        ? trace.with(Flag.PLATE_DRIFTS)
                        : trace)
                .toList();
    }
}
