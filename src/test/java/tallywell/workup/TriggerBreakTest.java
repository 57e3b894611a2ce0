package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tallywell.notice.InputException;

/** Plates whose trigger is written where it was, or elsewhere. */
class TriggerBreakTest {
    private static final int PLATES = Integer.getInteger("plates", 12);

    /** How the signal comes up. */
    private enum Onset {
        AT_ONCE,
        COUPLED,
        TWO_STEPS
    }

    private static double share(double written, Onset onset, double lagS, double everyS) throws InputException {
        DrawnPlate plate = DrawnPlate.of(DrawnPlate.SAMPLES, "{by: absorptivity}", "creep: {correct: extrapolate}")
                .read(20, everyS)
                .written(written);
        int flagged = 0;
        for (int i = 0; i < PLATES; i++) {
            Random random = new Random(400 + i);
            Assay assay = plate.drawn(
                    (pair, well) -> {
                        double change = pair < 3 ? 0.004 : 0.1 + 0.9 * random.nextDouble();
                        double k = 0.008 + 0.03 * random.nextDouble();
                        return t -> change * converted(onset, k, lagS, t) + 0.005 * t / 60;
                    },
                    10,
                    random);
            StepAnalysis step = new Workup().analyse(assay).steps().get(0);
            Set<Flag> flags = step.where(well -> well.well().row() == 2).get(0).flags();
            flagged += flags.contains(Flag.TRIGGER_ELSEWHERE) ? 1 : 0;
        }
        return (double) flagged / PLATES;
    }

    /** First order followed by none, one or two intermediates of first order, by Euler's method in steps of 0.2 s. */
    private static double converted(Onset onset, double k, double lagS, double timeS) {
        if (onset == Onset.AT_ONCE) {
            return -Math.expm1(-k * timeS);
        }
        double step = 0.2;
        double first = 0;
        double second = 0;
        double seen = 0;
        double left = 1;
        boolean two = onset == Onset.TWO_STEPS;
        double rate = (two ? 2 : 1) / lagS;
        for (double t = 0; t < timeS; t += step) {
            double reacts = k * left * step;
            double on = rate * first * step;
            double off = two ? rate * second * step : on;
            left -= reacts;
            first += reacts - on;
            second += two ? on - off : 0;
            seen += off;
        }
        return seen;
    }

    @Test
    void triggerWrittenTooEarlyOrTooLateIsSeen() throws InputException {
        for (double everyS : new double[] {15, 30}) {
            for (double off : new double[] {-120, -60, -40, 40, 60}) {
                double found = share(180 + off, Onset.AT_ONCE, 0, everyS);
                if (PLATES > 100) {
                    System.out.println("trigger off by " + off + " every " + everyS + ": " + found);
                }
                assertThat(found)
                        .as("off by " + off + " s, read every " + everyS + " s")
                        .isGreaterThan(0.9);
            }
        }
    }

    @Test
    void lagIsNoTriggerElsewhere() throws InputException {
        for (double everyS : new double[] {15, 60}) {
            for (Onset onset : Onset.values()) {
                for (double lag : new double[] {20, 60}) {
                    double found = share(180, onset, lag, everyS);
                    if (PLATES > 100) {
                        System.out.println(onset + " lag " + lag + " every " + everyS + ": " + found);
                    }
                    assertThat(found)
                            .as(onset + " of " + lag + " s, read every " + everyS + " s")
                            .isLessThanOrEqualTo(0.01);
                }
            }
        }
    }
}
