package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import tallywell.across.Combination;
import tallywell.across.CombinedResult;
import tallywell.assess.BasisWords;

/** Combined results as text for a terminal. */
public final class CombinationText {
    private static final boolean[] RIGHT = {false, false, true, true, false, true, true, false};

    private CombinationText() {}

    /** The combination in words and one table. */
    public static String of(Combination combination) {
        TextTable table =
                new TextTable(RIGHT, List.of("sample", "analyte", "value", "U", "unit", "n", "Birge", "remark"));
        for (CombinedResult each : combination.results()) {
            table.row(List.of(
                    ComparisonText.name(each.parts().get(0).found()),
                    each.analyte(),
                    Rounded.value(each.value(), each.expanded()),
                    Rounded.uncertainty(each.expanded()),
                    each.unit().symbol(),
                    Integer.toString(each.n()),
                    each.consistency()
                            .map(found -> tallywell.quantity.Numbers.fixed(found.birge(), 2))
                            .orElse(""),
                    remark(each)));
        }
        StringBuilder text = new StringBuilder();
        text.append("rule  ").append(combination.rule().text()).append('\n');
        combination.runs().forEach(run -> text.append("run   ").append(run).append('\n'));
        text.append('\n').append(table.text()).append('\n');
        text.append(combination.sentence()).append('\n');
        text.append(ComparisonText.shared(combination.shared()))
                .append(basis(combination))
                .append('\n');
        return text.toString();
    }

    /** What U may not be said to mean where it is scatter only, with a blank before it; else empty. */
    static String basis(Combination combination) {
        return new BasisWords(combination.results().stream()
                        .flatMap(each -> each.basis().stream())
                        .toList())
                .sentence();
    }

    private static String remark(CombinedResult each) {
        List<String> parts = new ArrayList<>();
        if (!each.remark().isEmpty()) {
            parts.add(each.remark());
        }
        for (CombinedResult.Part part : each.parts()) {
            if (!part.counts()) {
                parts.add("left out: " + part.found().run() + " (" + part.leftOut() + ")");
            }
        }
        return String.join("; ", parts);
    }
}
