package tallywell.workup;

import java.util.List;
import tallywell.method.Direction;
import tallywell.plate.Content;

/**
 * Whether the traces of a plate break where the trigger is written.
 *
 * <p>Where the trigger was later than written, readings after it still lie on the baseline, and the next is far off. A lag does
 * not look like that: under it the signal comes up as t² or t³, so that the next reading is no more than the cube of the ratio
 * of their times farther from the baseline than this one. Where the trigger was earlier than written, the last reading before it
 * has left the baseline. One well may have a bubble; seven tenths of the wells that react by much say that it is the trigger.
 */
final class TriggerBreak {
    /** Scatter of a reading, in absorbance, that readers stay below at common levels (common practice, no source). */
    private static final double SCATTER = 0.0005;

    /** A reading within so many times the scatter lies on the baseline; on both sides of the trigger. */
    private static final double ON = 4;

    /** A reading so many times the scatter off has left the baseline for good. */
    private static final double OFF = 40;

    /** The last of the baseline is off by less, since little of the burst may be over. */
    private static final double LEFT = 10;

    /** No law of a lag that is known here comes up faster: two intermediates give t³. */
    private static final double POWER = 3;

    private static final int FEWEST_BEFORE = 4;
    private static final int FEWEST_WELLS = 3;
    private static final double MOST_WELLS = 0.7;

    private final double sign;
    private int early;
    private int late;
    private int atTrigger;
    private int steady;

    private TriggerBreak(double sign) {
        this.sign = sign;
    }

    /** The same wells, all that are in use marked if the traces break elsewhere. */
    static List<WellTrace> marked(List<WellTrace> traces, Direction direction) {
        TriggerBreak found = new TriggerBreak(direction.sign());
        traces.stream().filter(TriggerBreak::tells).forEach(found::count);
        if (!isMost(found.early, found.atTrigger) && !isMost(found.late, found.steady)) {
            return traces;
        }
        return traces.stream()
                .map(trace -> trace.used() && trace.change().isPresent() ? trace.with(Flag.TRIGGER_ELSEWHERE) : trace)
                .toList();
    }

    private static boolean isMost(int some, int others) {
        return some >= FEWEST_WELLS && some >= MOST_WELLS * (some + others);
    }

    private static boolean tells(WellTrace trace) {
        return trace.used()
                && !(trace.content() instanceof Content.Blank)
                && !(trace.content() instanceof Content.SampleBlank)
                && trace.deltaA().orElse(0) > OFF * SCATTER
                && trace.readings().isTimed();
    }

    private void count(WellTrace trace) {
        double scatter = Math.max(
                SCATTER, trace.change().orElseThrow().baseline().scatter().orElse(0));
        countAfter(trace, scatter);
        countBefore(trace, scatter);
    }

    private void countAfter(WellTrace trace, double scatter) {
        List<WellReadings.Point> after = trace.readings().after();
        int on = 0;
        while (on < after.size() && Math.abs(off(trace, after.get(on))) < ON * scatter) {
            on++;
        }
        if (on == 0) {
            atTrigger++;
        } else if (on < after.size() && after.get(on - 1).timeS() > 0) {
            double ratio = after.get(on).timeS() / after.get(on - 1).timeS();
            double most = Math.max(OFF, ON * Math.pow(ratio, POWER)) * scatter;
            if (off(trace, after.get(on)) > most) {
                early++;
            }
        }
    }

    private void countBefore(WellTrace trace, double scatter) {
        List<WellReadings.Point> before = trace.readings().baseline();
        if (before.size() < FEWEST_BEFORE) {
            return;
        }
        double off = off(trace, before.get(before.size() - 1));
        if (off > LEFT * scatter) {
            late++;
        } else if (Math.abs(off) < ON * scatter) {
            steady++;
        }
    }

    /** How far a reading lies from the baseline as read, positive the way the signal goes. */
    private double off(WellTrace trace, WellReadings.Point point) {
        return sign * (point.absorbance() - trace.before().orElseThrow());
    }
}
