package tallywell.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import tallywell.trace.AfterRule;
import tallywell.trace.SimulatedTrace;

/**
 * The study of creep: simulates traces over a grid and sets the tables of docs/creep.md.
 *
 * <pre>
 * CreepStudy [cells=160] [traces=2000] [wrong=40] [wrong-traces=500] [seed=1] [into=docs/creep.md]
 * </pre>
 *
 * <p>{@code cells} are drawn from the grid without replacement ({@code cells=all} takes every one), {@code wrong} is the number
 * of cells for each kind of wrong model, of {@code wrong-traces} each. With {@code into} the tables replace what stands between the two marks in that
 * file; without it they are printed.
 */
public final class CreepStudy {
    private static final String BEGIN = "<!-- tables: set by CreepStudy -->";
    private static final String END = "<!-- end of tables -->";

    private final int cells;
    private final int traces;
    private final int wrongCells;
    private final int wrongTraces;
    private final long seed;
    private final StringBuilder out = new StringBuilder();

    private CreepStudy(Map<String, String> options) {
        String all = options.getOrDefault("cells", "160");
        cells = all.equals("all") ? Integer.MAX_VALUE : Integer.parseInt(all);
        traces = Integer.parseInt(options.getOrDefault("traces", "2000"));
        wrongCells = Integer.parseInt(options.getOrDefault("wrong", "40"));
        wrongTraces = Integer.parseInt(options.getOrDefault("wrong-traces", "500"));
        seed = Long.parseLong(options.getOrDefault("seed", "1"));
    }

    /** Runs the study. */
    public static void main(String[] arguments) throws IOException {
        Map<String, String> options = new TreeMap<>();
        for (String argument : arguments) {
            int sign = argument.indexOf('=');
            options.put(argument.substring(0, sign), argument.substring(sign + 1));
        }
        String tables = new CreepStudy(options).run();
        String into = options.get("into");
        if (into == null) {
            System.out.print(tables);
        } else {
            Path file = Path.of(into);
            String text = Files.readString(file, StandardCharsets.UTF_8);
            int begin = text.indexOf(BEGIN) + BEGIN.length();
            Files.writeString(file, text.substring(0, begin) + "\n\n" + tables + text.substring(text.indexOf(END)));
        }
    }

    private String run() {
        List<SimulatedTrace> grid = StudyGrid.right(cells, seed);
        line(
                "%d cells of the grid, %d traces each, seed %d. An absorbance is in mA throughout. A cell meets a limit if it",
                grid.size(), traces, seed);
        line("does so within two standard deviations of the simulation (of bias: rms / √n; of coverage: √(0.05 · 0.95 / n)).");
        line("");
        AfterRule curve = new AfterRule.ProgressCurve(OptionalDouble.empty());
        AfterRule lineRule = new AfterRule.Extrapolate(OptionalDouble.empty());
        List<CellResult> byCurve = results(grid, curve, traces);
        List<CellResult> byLine = results(grid, lineRule, traces);
        limits(byCurve, byLine);
        strata("progress-curve", byCurve, 0.3);
        strata("extrapolate", byLine, 0.5);
        failures("progress-curve", byCurve, true);
        failures("extrapolate", byLine, false);
        wrong(curve, lineRule);
        return out.toString();
    }

    private List<CellResult> results(List<SimulatedTrace> grid, AfterRule rule, int count) {
        return grid.parallelStream()
                .map(cell -> CellResult.of(cell, rule, count, seed))
                .toList();
    }

    private void line(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    private static boolean mustFlag(CellResult cell) {
        return cell.bound() > 3;
    }

    private static boolean mustNotFlag(CellResult cell) {
        return cell.burstLeft() < 0.1 && cell.bound() < 1.5;
    }

    private static boolean missed(CellResult cell) {
        return cell.flagged() < 0.98 - 2 * Math.sqrt(0.02 * 0.98 / cell.traces());
    }

    private static boolean missedLate(CellResult cell) {
        return cell.late() > 0
                && (double) cell.lateFlagged() / cell.late() < 0.98 - 2 * Math.sqrt(0.02 * 0.98 / cell.late());
    }

    private static boolean falselyFlagged(CellResult cell) {
        return cell.flagged() > 0.03 + 2 * Math.sqrt(0.03 * 0.97 / cell.traces());
    }

    private static boolean biased(CellResult cell, double limit) {
        return Math.abs(cell.bias()) > limit + 2 * cell.mcOfBias();
    }

    private static boolean coversTooLittle(CellResult cell) {
        return cell.covered() < 0.93 - 2 * cell.mcOfCovered();
    }

    private static boolean coversTooMuch(CellResult cell) {
        return !cell.mayCoverMore() && cell.covered() > 0.97 + 2 * cell.mcOfCovered();
    }

    private static boolean tooWide(CellResult cell) {
        return cell.rms() > 1.2 * cell.bound() * (1 + 2 / Math.sqrt(2.0 * cell.judged()));
    }

    private void limits(List<CellResult> byCurve, List<CellResult> byLine) {
        line("| asked of the estimator | progress-curve | extrapolate |");
        line("| --- | --- | --- |");
        line(
                "| flags incomplete, ≥ 98 %%, where it must (bound over 3; burst left over 0.5 at the chosen start) | %s | %s |",
                share(byCurve, CreepStudy::mustFlag, cell -> !missed(cell)),
                share(byLine, cell -> cell.late() > cell.traces() / 50, cell -> !missedLate(cell)));
        line(
                "| the same, all such traces together | %s | %s |",
                percent(mean(byCurve, CreepStudy::mustFlag, CellResult::flagged)),
                percent((double) byLine.stream().mapToInt(CellResult::lateFlagged).sum()
                        / Math.max(1, byLine.stream().mapToInt(CellResult::late).sum())));
        line(
                "| does not flag, ≤ 3 %%, where it must not (burst left under 0.1, bound under 1.5) | %s | %s |",
                share(byCurve, CreepStudy::mustNotFlag, cell -> !falselyFlagged(cell)),
                share(byLine, CreepStudy::mustNotFlag, cell -> !falselyFlagged(cell)));
        line(
                "| the same, all such traces together | %s | %s |",
                percent(mean(byCurve, CreepStudy::mustNotFlag, CellResult::flagged)),
                percent(mean(byLine, CreepStudy::mustNotFlag, CellResult::flagged)));
        line(
                "| bias of traces not flagged: ≤ 0.3 and ≤ 0.5 | %s | %s |",
                share(byCurve, CellResult::isJudged, cell -> !biased(cell, 0.3)),
                share(byLine, CellResult::isJudged, cell -> !biased(cell, 0.5)));
        line(
                "| 95 %% intervals cover 93 to 97 %% (more where creep or lag is zero) | %s | %s |",
                share(byCurve, CellResult::isJudged, cell -> !coversTooLittle(cell) && !coversTooMuch(cell)),
                share(byLine, CellResult::isJudged, cell -> !coversTooLittle(cell) && !coversTooMuch(cell)));
        line(
                "| coverage, all traces not flagged together | %s | %s |", percent(coverage(byCurve)), percent(coverage(byLine)));
        line(
                "| bias, all traces not flagged together | %.2f | %.2f |", biasOfAll(byCurve), biasOfAll(byLine));
        line(
                "| rms within 1.2 times the bound | %s | not asked |",
                share(byCurve, CellResult::isJudged, cell -> !tooWide(cell)));
        line("");
    }

    private static String percent(double part) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * part);
    }

    private static String share(List<CellResult> all, Predicate<CellResult> of, Predicate<CellResult> good) {
        long base = all.stream().filter(of).count();
        long met = all.stream().filter(of).filter(good).count();
        return String.format(Locale.ROOT, "%d of %d cells", met, base);
    }

    private interface Figure {
        double of(CellResult cell);
    }

    private static double mean(List<CellResult> all, Predicate<CellResult> of, Figure figure) {
        return all.stream().filter(of).mapToDouble(figure::of).average().orElse(Double.NaN);
    }

    private static double coverage(List<CellResult> all) {
        double covered = all.stream().mapToDouble(cell -> cell.covered() * cell.judged()).sum();
        return covered / all.stream().mapToInt(CellResult::judged).sum();
    }

    private static double biasOfAll(List<CellResult> all) {
        double sum = all.stream().mapToDouble(cell -> cell.bias() * cell.judged()).sum();
        return sum / all.stream().mapToInt(CellResult::judged).sum();
    }

    private void strata(String name, List<CellResult> all, double limit) {
        line("`%s`, by kind of cell (cells with one trace in twenty or more not flagged):", name);
        line("");
        line("| cells | n | largest bias | biased | rms / bound, median | coverage, mean | under 93 %% | over 97 %% |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        Map<String, Function<CellResult, String>> by = new TreeMap<>();
        by.put("1", cell -> String.format(Locale.ROOT, "%.0f min", cell.cell().minutes()));
        by.put("2", cell -> cell.cell().carry() == 0 ? "white noise" : "carry 0.5");
        by.put("3", cell -> String.format(Locale.ROOT, "ΔA %.2f", cell.cell().change()));
        by.put("4", cell -> cell.cell().lagS() == 0
                ? "no lag"
                : cell.cell().lag().name().toLowerCase(Locale.ROOT) + " lag");
        by.put("5", cell -> cell.cell().kinetics().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        for (Function<CellResult, String> kind : by.values()) {
            Map<String, List<CellResult>> groups = new TreeMap<>();
            for (CellResult cell : all) {
                if (cell.isJudged()) {
                    groups.computeIfAbsent(kind.apply(cell), key -> new ArrayList<>()).add(cell);
                }
            }
            groups.forEach((key, group) -> stratum(key, group, limit));
        }
        line("");
    }

    private void stratum(String key, List<CellResult> group, double limit) {
        double largest = group.stream().mapToDouble(cell -> Math.abs(cell.bias())).max().orElse(0);
        double[] ratios =
                group.stream().mapToDouble(cell -> cell.rms() / cell.bound()).sorted().toArray();
        line(
                "| %s | %d | %.2f | %d | %.2f | %s | %d | %d |",
                key,
                group.size(),
                largest,
                group.stream().filter(cell -> biased(cell, limit)).count(),
                ratios[ratios.length / 2],
                percent(coverage(group)),
                group.stream().filter(CreepStudy::coversTooLittle).count(),
                group.stream().filter(CreepStudy::coversTooMuch).count());
    }

    private void failures(String name, List<CellResult> all, boolean curve) {
        List<String> rows = new ArrayList<>();
        int torn = 0;
        for (CellResult cell : all) {
            List<String> why = new ArrayList<>();
            if (curve ? mustFlag(cell) && missed(cell) : cell.late() > cell.traces() / 50 && missedLate(cell)) {
                why.add("not flagged");
            }
            if (mustNotFlag(cell) && falselyFlagged(cell)) {
                why.add("flagged");
            }
            if (cell.isJudged()) {
                if (biased(cell, curve ? 0.3 : 0.5)) {
                    why.add("bias");
                }
                if (coversTooLittle(cell) || coversTooMuch(cell)) {
                    why.add("coverage");
                }
                if (curve && tooWide(cell)) {
                    why.add("rms");
                }
            }
            if (!why.isEmpty()) {
                torn += cell.flagged() > 0.03 && cell.flagged() < 0.98 ? 1 : 0;
                rows.add(String.format(
                        Locale.ROOT,
                        "| %s | %.2f | %.2f | %s | %.2f ± %.2f | %.2f | %s | %s |",
                        cell.name(),
                        cell.bound(),
                        cell.burstLeft(),
                        percent(cell.flagged()),
                        cell.bias(),
                        cell.mcOfBias(),
                        cell.rms(),
                        percent(cell.covered()),
                        String.join(", ", why)));
            }
        }
        line(
                "`%s`: the %d of %d cells that miss a limit; %d of them are torn, with 3 to 98 %% of the traces flagged.",
                name, rows.size(), all.size(), torn);
        line("");
        line("| cell | bound | burst left | flagged | bias | rms | coverage | misses |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        rows.stream().sorted().forEach(row -> line("%s", row));
        line("");
    }

    private void wrong(AfterRule curve, AfterRule lineRule) {
        line(
                "Wrong models: part of the traces that are flagged, or within twice their standard uncertainty (± by which cells were drawn).");
        line("");
        line("| what is wrong | cells | progress-curve | cells ≥ 95 %% | extrapolate | cells ≥ 95 %% |");
        line("| --- | --- | --- | --- | --- | --- |");
        int count = wrongTraces;
        for (StudyGrid.Wrong wrong : StudyGrid.Wrong.values()) {
            List<SimulatedTrace> grid = StudyGrid.wrong(wrong, wrongCells, seed);
            String name = wrong.name().toLowerCase(Locale.ROOT).replace('_', ' ');
            if (wrong == StudyGrid.Wrong.LAMP_DRIFT || wrong == StudyGrid.Wrong.SATURATING_CREEP) {
                wrongRow(name + ", one well alone", results(grid, curve, count), results(grid, lineRule, count));
                wrongRow(name + ", 96 wells together", plates(grid, curve, count), plates(grid, lineRule, count));
            } else {
                wrongRow(name, results(grid, curve, count), results(grid, lineRule, count));
            }
        }
        line("");
    }

    /** Wells of a plate share their drift, so the cells of this count fewer plates, and what is safe is judged without slack. */
    private List<CellResult> plates(List<SimulatedTrace> grid, AfterRule rule, int count) {
        return grid.parallelStream()
                .map(cell -> CellResult.ofPlates(cell, rule, count, seed))
                .toList();
    }

    private void wrongRow(String name, List<CellResult> byCurve, List<CellResult> byLine) {
        line(
                "| %s | %d | %s ± %.1f | %d | %s ± %.1f | %d |",
                name,
                byCurve.size(),
                percent(1 - mean(byCurve, cell -> true, CellResult::unsafe)),
                100 * mcOfMean(byCurve),
                byCurve.stream().filter(CreepStudy::isSafe).count(),
                percent(1 - mean(byLine, cell -> true, CellResult::unsafe)),
                100 * mcOfMean(byLine),
                byLine.stream().filter(CreepStudy::isSafe).count());
    }

    /** Standard error of a mean over cells, which were drawn from the grid. */
    private static double mcOfMean(List<CellResult> cells) {
        double mean = mean(cells, cell -> true, CellResult::unsafe);
        double squares = cells.stream()
                .mapToDouble(cell -> (cell.unsafe() - mean) * (cell.unsafe() - mean))
                .sum();
        return Math.sqrt(squares / Math.max(1, cells.size() - 1) / cells.size());
    }

    private static boolean isSafe(CellResult cell) {
        return cell.unsafe() < 0.05 + 2 * Math.sqrt(0.05 * 0.95 / cell.traces());
    }
}
