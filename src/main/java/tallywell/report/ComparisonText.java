package tallywell.report;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import tallywell.across.ComparedResult;
import tallywell.across.Comparison;
import tallywell.across.Found;
import tallywell.assess.BasisWords;

/** A comparison of two runs as text for a terminal. */
public final class ComparisonText {
    private static final boolean[] RIGHT = {false, false, true, true, true, true, true, true, true, false, false};

    private ComparisonText() {}

    /** The comparison in words and one table. */
    public static String of(Comparison comparison) {
        TextTable table = new TextTable(
                RIGHT,
                List.of(
                        "sample",
                        "analyte",
                        "first",
                        "U",
                        "second",
                        "U",
                        "difference",
                        "U",
                        "score",
                        "unit",
                        "judgement"));
        for (ComparedResult row : comparison.rows()) {
            OptionalDouble expanded = row.doubt().isPresent()
                    ? OptionalDouble.of(row.doubt().get().expanded())
                    : OptionalDouble.empty();
            table.row(List.of(
                    name(row.first()),
                    row.first().result().analyte(),
                    value(row.first()),
                    Rounded.uncertainty(row.first().expandedUncertainty()),
                    value(row.second()),
                    Rounded.uncertainty(row.second().expandedUncertainty()),
                    Rounded.value(row.difference(), expanded),
                    Rounded.uncertainty(expanded),
                    Rounded.score(row.score()),
                    row.unit().symbol(),
                    row.agreement().words() + (row.why().isEmpty() ? "" : ": " + row.why())));
        }
        StringBuilder text = new StringBuilder();
        text.append("first   ").append(comparison.first()).append('\n');
        text.append("second  ").append(comparison.second()).append("\n\n");
        text.append(table.text()).append('\n');
        for (Found each : comparison.onlyOne()) {
            text.append("only in ")
                    .append(each.run())
                    .append(": ")
                    .append(name(each))
                    .append('\n');
        }
        text.append(comparison.sentence()).append('\n');
        text.append(shared(comparison.shared())).append(basis(comparison)).append('\n');
        return text.toString();
    }

    static String name(Found found) {
        return found.result().role().equals("control")
                ? found.result().name() + " (control)"
                : found.result().name();
    }

    private static String value(Found found) {
        return Rounded.value(found.value(), found.expandedUncertainty());
    }

    /** What U may not be said to mean where it is scatter only, with a blank before it; else empty. */
    static String basis(Comparison comparison) {
        return new BasisWords(comparison.rows().stream()
                        .flatMap(row -> Stream.of(row.first(), row.second()))
                        .flatMap(found -> found.basis().stream())
                        .toList())
                .sentence();
    }

    /** Which sources counted as the same on several plates, in a sentence. */
    static String shared(Set<String> shared) {
        return shared.isEmpty()
                ? "No source of uncertainty is shared between plates: the methods state none that could be."
                : "Shared between plates, so that the same error is in each: " + String.join(", ", shared) + ".";
    }
}
