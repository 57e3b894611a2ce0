package tallywell.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import tallywell.budget.NoisyPlate;
import tallywell.budget.PlateBudget;
import tallywell.budget.SimulatedPlate;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;

/** The budgets of a plate of 96 wells with a straight line, and 100 000 draws of it. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class BudgetBenchmark {
    private static final int DRAWS = 100_000;

    private Analysis analysis;
    private PlateBudget budget;

    /** Runs both. */
    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(BudgetBenchmark.class.getSimpleName())
                        .build())
                .run();
    }

    /** Makes the plate up: 36 samples in duplicate, standards, blanks. */
    @Setup
    public void plate() throws IOException, InputException {
        String layout = Files.readString(Path.of("plate-layouts/thirty-six-in-duplicate.yaml"))
                .lines()
                .filter(line -> !line.startsWith("#"))
                .collect(Collectors.joining("\n"));
        String method = NoisyPlate.method(
                "{by: standards, model: line}",
                "uncertainty: {standard: {expanded: 1 %}, plate: {standard: 0.3 %}, creep: {standard: 0.001}}");
        analysis = NoisyPlate.of(method, layout, List.of(), c -> 2.1 * c, 0.002, 0.006)
                .analyse();
        budget = PlateBudget.of(analysis);
    }

    @Benchmark
    public PlateBudget budgets() {
        return PlateBudget.of(analysis);
    }

    @Benchmark
    public SimulatedPlate draws() {
        return SimulatedPlate.of(budget, DRAWS, 1);
    }
}
