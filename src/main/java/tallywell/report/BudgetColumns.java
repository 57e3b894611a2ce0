package tallywell.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.budget.SimulatedPlate;
import tallywell.budget.Simulation;

/** Which columns the sheet Budget has, and where they stand: sources that nothing is uncertain from have none. */
final class BudgetColumns {
    private static final List<String> PLAIN = List.of("u", "degrees of freedom", "k", "U", "U in %");
    private static final List<String> DRAWS = List.of("u", "95 % from", "to", "u against budget in %");

    private final boolean several;
    private final boolean validated;
    private final List<String> labels;
    private final Optional<SimulatedPlate> draws;
    private final boolean lost;

    BudgetColumns(Report report) {
        PlateBudget budget = report.assessment().budget();
        several = report.analysis().steps().size() > 1;
        List<ResultBudget> known =
                budget.results().stream().flatMap(Optional::stream).toList();
        validated = known.stream().anyMatch(each -> each.byValidation().isPresent());
        Map<String, Double> sums = new HashMap<>();
        known.forEach(each -> each.shares().forEach((label, share) -> sums.merge(label, share, Double::sum)));
        labels = sums.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .toList();
        draws = report.simulated();
        lost = draws.stream()
                .flatMap(each -> each.outputs().stream())
                .flatMap(Optional::stream)
                .mapToInt(Simulation.Output::lost)
                .anyMatch(each -> each > 0);
    }

    /** Whether there are several analytes, so that each row names its own. */
    boolean several() {
        return several;
    }

    /** Whether an uncertainty from validation stands beside the budget. */
    boolean validated() {
        return validated;
    }

    /** The sources, the one that matters most over all results first. */
    List<String> labels() {
        return labels;
    }

    /** The draws, where asked for. */
    Optional<SimulatedPlate> draws() {
        return draws;
    }

    /** Whether a draw came to no value, so that a column says how many. */
    boolean lost() {
        return lost;
    }

    int value() {
        return several ? 3 : 2;
    }

    int u() {
        return value() + 2;
    }

    int validation() {
        return u() + PLAIN.size();
    }

    int firstPart() {
        return validation() + (validated ? 1 : 0);
    }

    int lastPart() {
        return firstPart() + labels.size() - 1;
    }

    int firstDraw() {
        return lastPart() + 1;
    }

    int lastDraw() {
        return firstDraw() + (draws.isEmpty() ? 0 : DRAWS.size() + (lost ? 1 : 0)) - 1;
    }

    int remark() {
        return lastDraw() + 1;
    }

    private List<String> names() {
        return several ? List.of("sample or control", "role", "analyte") : List.of("sample or control", "role");
    }

    List<String> titles() {
        List<String> titles = new ArrayList<>(names());
        titles.addAll(List.of("value", "unit"));
        titles.addAll(PLAIN);
        if (validated) {
            titles.add("u by validation");
        }
        titles.addAll(labels);
        if (draws.isPresent()) {
            titles.addAll(DRAWS);
        }
        if (lost) {
            titles.add("draws without a value");
        }
        titles.add("remark");
        return titles;
    }

    List<String> recoveryTitles() {
        List<String> titles = new ArrayList<>(names());
        titles.addAll(List.of("recovery", "unit"));
        titles.addAll(PLAIN.subList(0, PLAIN.size() - 1));
        titles.add("100 % within U");
        titles.add("basis of U");
        return titles;
    }

    /** Widths in characters by column. */
    Map<Integer, Double> widths(double remark) {
        List<Double> widths = new ArrayList<>(several ? List.of(26.0, 8.0, 13.0) : List.of(26.0, 8.0));
        widths.addAll(List.of(10.0, 9.0, 10.0, 10.0, 6.0, 10.0, 8.0));
        widths.addAll(Collections.nCopies(firstDraw() - validation(), 12.5));
        widths.addAll(Collections.nCopies(remark() - firstDraw(), 10.5));
        widths.add(remark);
        Map<Integer, Double> byColumn = new LinkedHashMap<>();
        for (int i = 0; i < widths.size(); i++) {
            byColumn.put(i, widths.get(i));
        }
        return byColumn;
    }

    /** How many characters fit beside the first column. */
    int charactersOfText() {
        return (int) widths(30).entrySet().stream()
                .filter(each -> each.getKey() > 0)
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }
}
