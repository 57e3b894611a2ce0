package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tallywell.plan.DilutionScheme;
import tallywell.plan.Plan;
import tallywell.quantity.Numbers;

/** The lines of the bench sheet: what to dilute, what to mix, what to do when. */
public final class BenchLines {
    private static final double UL_PER_ML = 1000;
    private static final int DIGITS = 4;
    private static final int DELTA_A_DECIMALS = 2;

    private BenchLines() {}

    /** Samples and controls with their dilutions and the net ΔA that is expected of them. */
    public static List<BenchLine> dilutions(Plan plan) {
        List<BenchLine> lines = new ArrayList<>();
        boolean isExpected =
                plan.samples().stream().anyMatch(each -> each.expectedDeltaA().isPresent());
        lines.add(BenchLine.section("Samples: take + add" + (isExpected ? ", net ΔA expected" : "")));
        for (Plan.PlannedSample each : plan.samples()) {
            String name = each.sample().slot() + "  " + each.sample().label();
            scheme(
                    name,
                    each.sample().dilution().factor(),
                    each.scheme(),
                    each.expectedDeltaA().isPresent()
                            ? Numbers.fixed(each.expectedDeltaA().getAsDouble(), DELTA_A_DECIMALS)
                            : "",
                    lines);
            if (each.sample().volumeUl().isPresent()) {
                lines.add(BenchLine.note(
                        "into each well " + microlitres(each.sample().volumeUl().getAsDouble())
                                + (each.waterUl() > 0 ? " and " + microlitres(each.waterUl()) + " of water" : "")));
            }
        }
        if (!plan.controls().isEmpty()) {
            lines.add(BenchLine.section("Controls"));
            for (Plan.PlannedControl each : plan.controls()) {
                scheme(each.word() + "  " + each.name(), each.scheme().factor(), each.scheme(), "", lines);
            }
        }
        return lines;
    }

    private static void scheme(
            String name, double factor, DilutionScheme scheme, String expected, List<BenchLine> lines) {
        if (scheme.steps().isEmpty()) {
            lines.add(new BenchLine(BenchLine.Kind.ITEM, name, "as it is", expected));
            return;
        }
        String first = transfer(scheme.steps().get(0));
        lines.add(new BenchLine(BenchLine.Kind.ITEM, name, "÷ " + rounded(factor) + ": " + first, expected));
        scheme.steps().stream()
                .skip(1)
                .forEach(each -> lines.add(new BenchLine(BenchLine.Kind.ITEM, "", "then " + transfer(each), "")));
    }

    private static String transfer(DilutionScheme.Transfer each) {
        return rounded(each.takeUl()) + " + " + rounded(each.addUl()) + " µL";
    }

    /** What is mixed, each part for all wells that get it. */
    public static List<BenchLine> mixes(Plan plan) {
        List<BenchLine> lines = new ArrayList<>();
        for (Plan.Part part : plan.parts()) {
            lines.add(BenchLine.section(part.name() + ": " + microlitres(part.perWellUl()) + " into each"));
            for (Plan.Component each : part.components()) {
                lines.add(BenchLine.item(each.name(), volume(each.totalUl())));
                if (!each.holds().isEmpty()) {
                    lines.add(BenchLine.note(each.holds()));
                }
            }
            if (part.components().size() > 1) {
                lines.add(BenchLine.total(part.wells() + " wells, with spare", volume(part.totalUl())));
            } else {
                lines.add(BenchLine.note(part.wells() + " wells, with spare"));
            }
        }
        return lines;
    }

    /** What is done, in order; the value of a line says when. */
    public static List<BenchLine> steps(Plan plan) {
        List<BenchLine> lines = new ArrayList<>();
        lines.add(BenchLine.section("In this order (write the time beside it)"));
        for (Plan.Action action : plan.steps()) {
            String when = action.atMin().isPresent()
                    ? "+ " + Numbers.brief(action.atMin().getAsDouble(), 3) + " min"
                    : "";
            lines.add(new BenchLine(BenchLine.Kind.STEP, action.text(), when, ""));
        }
        return lines;
    }

    /** Stocks and standards, from the lowest up. */
    public static List<BenchLine> standards(Plan plan) {
        List<BenchLine> lines = new ArrayList<>();
        if (plan.standards().isEmpty()) {
            return lines;
        }
        lines.add(BenchLine.section("Standards: take + water"));
        for (Plan.Stock stock : plan.stocks()) {
            lines.add(BenchLine.item(
                    "stock " + stock.analyte() + (stock.proposed() ? " (proposed)" : ""),
                    rounded(stock.gPerL()) + " g/L"));
            stock.weigh().ifPresent(text -> lines.add(BenchLine.note(text)));
        }
        predilutions(plan, lines);
        for (Plan.PlannedStandard each : plan.standards()) {
            String takes = each.takes().stream()
                    .map(take -> rounded(take.takeUl())
                            + (take.predilution() > 1 ? " of ÷ " + rounded(take.predilution()) : ""))
                    .collect(Collectors.joining(" + "));
            lines.add(BenchLine.item(
                    each.word() + "  " + each.level(),
                    (takes.isEmpty() ? "0" : takes) + " + " + rounded(each.waterUl()) + " µL"));
        }
        return lines;
    }

    private static void predilutions(Plan plan, List<BenchLine> lines) {
        plan.standards().stream()
                .flatMap(each -> each.takes().stream())
                .filter(take -> take.predilution() > 1)
                .map(take -> "stock " + take.analyte() + " ÷ " + rounded(take.predilution()))
                .distinct()
                .sorted()
                .forEach(text -> lines.add(BenchLine.item(text, "")));
    }

    private static String microlitres(double value) {
        return rounded(value) + " µL";
    }

    private static String volume(double microlitres) {
        return microlitres >= UL_PER_ML ? rounded(microlitres / UL_PER_ML) + " mL" : rounded(microlitres) + " µL";
    }

    private static String rounded(double value) {
        return Numbers.brief(value, DIGITS);
    }
}
