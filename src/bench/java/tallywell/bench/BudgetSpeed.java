package tallywell.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tallywell.budget.NoisyPlate;
import tallywell.budget.PlateBudget;
import tallywell.budget.PlateSimulation;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;

/** How long the budgets of a plate of 96 wells take, and 100 000 draws of it. */
public final class BudgetSpeed {
    private static final int WARM_UP = 300;
    private static final int ROUNDS = 200;

    private BudgetSpeed() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException, InputException {
        String layout = Files.readString(Path.of("plate-layouts/thirty-six-in-duplicate.yaml"))
                .lines()
                .filter(line -> !line.startsWith("#"))
                .collect(Collectors.joining("\n"));
        String method = NoisyPlate.method(
                "{by: standards, model: line}",
                "uncertainty: {standard: {expanded: 1 %}, plate: {standard: 0.3 %}, creep: {standard: 0.001}}");
        Analysis analysis = NoisyPlate.of(method, layout, List.of(), c -> 2.1 * c, 0.002, 0.006)
                .analyse();
        int budgets = 0;
        for (int i = 0; i < WARM_UP; i++) {
            budgets += PlateBudget.of(analysis).results().size();
        }
        long start = System.nanoTime();
        for (int i = 0; i < ROUNDS; i++) {
            budgets += PlateBudget.of(analysis).results().size();
        }
        print("budgets of a plate", (System.nanoTime() - start) / 1e6 / ROUNDS, "ms (" + budgets + " in all)");
        PlateBudget budget = PlateBudget.of(analysis);
        for (int round = 1; round <= 3; round++) {
            start = System.nanoTime();
            PlateSimulation.run(budget, 100_000, round);
            print("100 000 draws, round " + round, (System.nanoTime() - start) / 1e9, "s");
        }
    }

    private static void print(String what, double value, String unit) {
        System.out.println(String.format(Locale.ROOT, "%s: %.3f %s", what, value, unit));
    }
}
