package tallywell.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import tallywell.trace.SimulatedTrace;
import tallywell.trace.SimulatedTrace.Fault;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.SimulatedTrace.Lag;

/** The cells of the study of creep: all combinations of the values below, of which a seeded draw is taken. */
final class StudyGrid {
    private static final double INTERVAL_S = 15;
    private static final int BASELINE_READINGS = 13;
    private static final double BEFORE = 0.15;

    private static final double[] RATES = {0.004, 0.008, 0.015, 0.03, 0.05};
    private static final double[] KM = {0.02, 0.1, 0.3, 1};
    private static final double[] VMAX = {0.001, 0.003, 0.01};
    private static final double[] LAGS = {0, 20, 60};
    private static final double[] CREEPS = {-0.001, 0, 0.001, 0.005};
    private static final double[] NOISES = {0.0003, 0.001};
    private static final double[] CARRIES = {0, 0.5};
    private static final double[] MINUTES = {8, 15, 30};
    private static final double[] CHANGES = {0.02, 0.1, 0.5, 2};

    private StudyGrid() {}

    /** One choice of the law of the reaction. */
    private record Law(Kinetics kinetics, double first, double vmax) {}

    private static List<Law> laws(Kinetics saturating) {
        List<Law> laws = new ArrayList<>();
        // Each family of laws gets about the same number of cells.
        for (int times = 0; times < 2; times++) {
            for (double rate : RATES) {
                laws.add(new Law(Kinetics.FIRST_ORDER, rate, 0));
            }
        }
        for (double km : KM) {
            for (double vmax : VMAX) {
                laws.add(new Law(saturating, km, vmax));
            }
        }
        return laws;
    }

    /** A draw of cells in which the model is right, without replacement. */
    static List<SimulatedTrace> right(int cells, long seed) {
        List<SimulatedTrace> all = new ArrayList<>();
        for (Lag lag : List.of(Lag.COUPLED, Lag.INDUCTION)) {
            all.addAll(combinations(Kinetics.MICHAELIS_MENTEN, lag, Fault.NONE));
        }
        return drawn(all, cells, seed);
    }

    /** A draw of cells in which something is wrong. */
    static List<SimulatedTrace> wrong(Wrong wrong, int cells, long seed) {
        Kinetics kinetics =
                wrong == Wrong.PRODUCT_INHIBITION ? Kinetics.PRODUCT_INHIBITION : Kinetics.MICHAELIS_MENTEN;
        Lag lag = wrong == Wrong.TWO_STEP_LAG ? Lag.TWO_STEPS : Lag.COUPLED;
        List<SimulatedTrace> all = new ArrayList<>();
        for (SimulatedTrace cell : combinations(kinetics, lag, wrong.fault)) {
            boolean idle = wrong == Wrong.TWO_STEP_LAG && cell.lagS() == 0
                    || wrong == Wrong.SATURATING_CREEP && cell.creepPerMin() == 0
                    || wrong == Wrong.PRODUCT_INHIBITION && cell.kinetics() == Kinetics.FIRST_ORDER;
            if (!idle) {
                all.add(cell);
            }
        }
        return drawn(all, cells, seed);
    }

    /** What may be wrong with a trace. */
    enum Wrong {
        SATURATING_CREEP(Fault.SATURATING_CREEP),
        PRODUCT_INHIBITION(Fault.NONE),
        TWO_STEP_LAG(Fault.NONE),
        LAMP_DRIFT(Fault.LAMP_DRIFT),
        JUMP(Fault.JUMP);

        private final Fault fault;

        Wrong(Fault fault) {
            this.fault = fault;
        }
    }

    private static List<SimulatedTrace> drawn(List<SimulatedTrace> all, int cells, long seed) {
        Collections.shuffle(all, new Random(seed));
        return all.subList(0, Math.min(cells, all.size()));
    }

    private static List<SimulatedTrace> combinations(Kinetics saturating, Lag lag, Fault fault) {
        List<SimulatedTrace> all = new ArrayList<>();
        for (Law law : laws(saturating)) {
            for (double lagS : LAGS) {
                for (double creep : CREEPS) {
                    for (double noise : NOISES) {
                        for (double carry : CARRIES) {
                            for (double minutes : MINUTES) {
                                for (double change : CHANGES) {
                                    all.add(new SimulatedTrace(
                                            law.kinetics, change, law.first, law.vmax, lag, lagS, creep, noise, carry,
                                            minutes, INTERVAL_S, BASELINE_READINGS, BEFORE, fault));
                                }
                            }
                        }
                    }
                }
            }
        }
        return all;
    }
}
