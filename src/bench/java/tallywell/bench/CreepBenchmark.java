package tallywell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import tallywell.trace.AfterRule;
import tallywell.trace.DeltaA;
import tallywell.trace.SimulatedTrace;
import tallywell.trace.SimulatedTrace.Fault;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.SimulatedTrace.Lag;

/** A plate of 96 wells, 13 readings before and 81 after the trigger each, on all processors as a run works it up. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class CreepBenchmark {
    /** Lag in s: with one, a law of two enzymes is tried beside the others. */
    @Param({"0", "30"})
    public double lagS;

    private final List<SimulatedTrace.Drawn> plate = new ArrayList<>();

    /** Runs all. */
    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(CreepBenchmark.class.getSimpleName())
                        .build())
                .run();
    }

    /** Makes the plate up. */
    @Setup
    public void plate() {
        Random random = new Random(1);
        for (int well = 0; well < 96; well++) {
            double change = 0.05 + 0.5 * random.nextDouble();
            plate.add(new SimulatedTrace(
                            Kinetics.MICHAELIS_MENTEN, change, 0.1, 0.002, Lag.COUPLED, lagS, 0.001, 0.0006, 0, 20.25, 15,
                            13, 0.15, Fault.NONE)
                    .source()
                    .draw(random));
        }
    }

    private double sum(AfterRule rule) {
        return plate.parallelStream()
                .mapToDouble(well -> DeltaA.of(well.baseline(), well.after(), rule).deltaA())
                .sum();
    }

    @Benchmark
    public double extrapolate() {
        return sum(new AfterRule.Extrapolate(OptionalDouble.empty()));
    }

    @Benchmark
    public double progressCurve() {
        return sum(new AfterRule.ProgressCurve(OptionalDouble.empty()));
    }
}
