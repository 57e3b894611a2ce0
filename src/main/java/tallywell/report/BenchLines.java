package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tallywell.plan.DilutionScheme;
import tallywell.plan.Plan;
import tallywell.quantity.Numbers;

/** The lines of the bench sheet: what to dilute, what to mix. */
final class BenchLines {
    private static final double UL_PER_ML = 1000;
    private static final int DIGITS = 4;
    private static final int STEP_CHARACTERS = 46;
    private static final int NOTE_CHARACTERS = 56;

    private BenchLines() {}

    static List<BenchLine> dilutions(Plan plan) {
        List<BenchLine> lines = new ArrayList<>();
        lines.add(BenchLine.section("Samples: take + add"));
        for (Plan.PlannedSample each : plan.samples()) {
            String name = each.sample().slot() + "  " + each.sample().label();
            lines.add(BenchLine.item(name, scheme(each.sample().dilution().factor(), each.scheme())));
            if (each.sample().volumeUl().isPresent()) {
                lines.add(BenchLine.note(
                        "into each well " + microlitres(each.sample().volumeUl().getAsDouble())
                                + (each.waterUl() > 0 ? " and " + microlitres(each.waterUl()) + " of water" : "")));
            }
        }
        if (!plan.controls().isEmpty()) {
            lines.add(BenchLine.section("Controls"));
            for (Plan.PlannedControl each : plan.controls()) {
                lines.add(BenchLine.item(
                        each.word() + "  " + each.name(), scheme(each.scheme().factor(), each.scheme())));
            }
        }
        return lines;
    }

    private static String scheme(double factor, DilutionScheme scheme) {
        if (scheme.steps().isEmpty()) {
            return "as it is";
        }
        String transfers = scheme.steps().stream()
                .map(each -> rounded(each.takeUl()) + " + " + rounded(each.addUl()))
                .collect(Collectors.joining(", then "));
        return "÷ " + rounded(factor) + ": " + transfers + " µL";
    }

    static List<BenchLine> mixes(Plan plan) {
        List<BenchLine> lines = new ArrayList<>();
        for (Plan.Part part : plan.parts()) {
            lines.add(BenchLine.section(part.name() + ": " + microlitres(part.perWellUl()) + " into each"));
            for (Plan.Component each : part.components()) {
                lines.add(BenchLine.item(each.name(), volume(each.totalUl())));
                if (!each.holds().isEmpty()) {
                    wrapped(each.holds(), NOTE_CHARACTERS).stream()
                            .map(BenchLine::note)
                            .forEach(lines::add);
                }
            }
            if (part.components().size() > 1) {
                lines.add(BenchLine.total(part.wells() + " wells, with spare", volume(part.totalUl())));
            } else {
                lines.add(BenchLine.note(part.wells() + " wells, with spare"));
            }
        }
        standards(plan, lines);
        steps(plan, lines);
        return lines;
    }

    private static void steps(Plan plan, List<BenchLine> lines) {
        lines.add(BenchLine.section("In this order (write the time beside it)"));
        for (Plan.Action action : plan.steps()) {
            String when = action.atMin().isPresent()
                    ? "+ " + Numbers.brief(action.atMin().getAsDouble(), 3) + " min: "
                    : "";
            List<String> wrapped = wrapped(when + action.text(), STEP_CHARACTERS);
            lines.add(new BenchLine(BenchLine.Kind.STEP, wrapped.get(0), ""));
            wrapped.stream().skip(1).map(BenchLine::note).forEach(lines::add);
        }
    }

    /** Lines no longer than the block is wide. */
    private static List<String> wrapped(String text, int characters) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (line.length() > 0 && line.length() + 1 + word.length() > characters) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private static void standards(Plan plan, List<BenchLine> lines) {
        if (plan.standards().isEmpty()) {
            return;
        }
        lines.add(BenchLine.section("Standards"));
        for (Plan.Stock stock : plan.stocks()) {
            lines.add(BenchLine.item(
                    "stock " + stock.analyte() + (stock.proposed() ? " (proposed)" : ""),
                    rounded(stock.gPerL()) + " g/L"));
            stock.weigh()
                    .ifPresent(text -> wrapped(text, NOTE_CHARACTERS).stream()
                            .map(BenchLine::note)
                            .forEach(lines::add));
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
