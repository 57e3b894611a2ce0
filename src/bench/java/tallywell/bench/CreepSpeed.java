package tallywell.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import tallywell.trace.AfterRule;
import tallywell.trace.DeltaA;
import tallywell.trace.SimulatedTrace;
import tallywell.trace.SimulatedTrace.Fault;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.SimulatedTrace.Lag;

/**
 * How long a plate of 96 wells takes: 13 readings before and 81 after the trigger each, the machine warm.
 *
 * <p>Prints the median of wall time on all processors and of processor time on one thread; the latter does not suffer from
 * what else the machine does.
 */
public final class CreepSpeed {
    private static final int WARM_UP = 400;
    private static final int ROUNDS = 200;

    private CreepSpeed() {}

    /** Measures. */
    public static void main(String[] arguments) {
        for (double lagS : new double[] {0, 30}) {
            List<SimulatedTrace.Drawn> plate = plate(lagS);
            measure("extrapolate, lag " + lagS + " s", plate, new AfterRule.Extrapolate(OptionalDouble.empty()));
            measure("progress-curve, lag " + lagS + " s", plate, new AfterRule.ProgressCurve(OptionalDouble.empty()));
        }
    }

    private static List<SimulatedTrace.Drawn> plate(double lagS) {
        Random random = new Random(1);
        List<SimulatedTrace.Drawn> plate = new ArrayList<>();
        for (int well = 0; well < 96; well++) {
            double change = 0.05 + 0.5 * random.nextDouble();
            plate.add(new SimulatedTrace(
                            Kinetics.MICHAELIS_MENTEN, change, 0.1, 0.002, Lag.COUPLED, lagS, 0.001, 0.0006, 0, 20.25, 15,
                            13, 0.15, Fault.NONE)
                    .source()
                    .draw(random));
        }
        return plate;
    }

    private static void measure(String name, List<SimulatedTrace.Drawn> plate, AfterRule rule) {
        double check = 0;
        double[] wall = new double[ROUNDS];
        double[] cpu = new double[ROUNDS];
        for (int round = -WARM_UP; round < ROUNDS; round++) {
            long wallStart = System.nanoTime();
            check += plate.parallelStream()
                    .mapToDouble(well -> DeltaA.of(well.baseline(), well.after(), rule).deltaA())
                    .sum();
            long wallEnd = System.nanoTime();
            long cpuStart = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            for (SimulatedTrace.Drawn well : plate) {
                check += DeltaA.of(well.baseline(), well.after(), rule).deltaA();
            }
            long cpuEnd = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            if (round >= 0) {
                wall[round] = (wallEnd - wallStart) / 1e6;
                cpu[round] = (cpuEnd - cpuStart) / 1e6;
            }
        }
        Arrays.sort(wall);
        Arrays.sort(cpu);
        System.out.printf(
                Locale.ROOT,
                "%-28s %7.3f ms on %d processors, %7.3f ms of one processor (mean ΔA %.4f)%n",
                name,
                wall[ROUNDS / 2],
                Runtime.getRuntime().availableProcessors(),
                cpu[ROUNDS / 2],
                check / (2.0 * 96 * (WARM_UP + ROUNDS)));
    }
}
