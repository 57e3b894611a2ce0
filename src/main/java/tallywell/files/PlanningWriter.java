package tallywell.files;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tallywell.method.Planning;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;

/** Writes what a run says under {@code planning}; {@link PlanningReader} reads the same back. */
final class PlanningWriter {
    private static final double PERCENT = 100;

    private PlanningWriter() {}

    /** The value of the key; empty where everything is as usual. */
    static String text(Planning planning) {
        Planning usual = Planning.USUAL;
        if (planning.equals(usual)) {
            return "";
        }
        YamlText.Braces braces = new YamlText.Braces();
        if (!planning.series().isEmpty()) {
            braces.add(
                    "series",
                    planning.series().stream().map(Numbers::plain).collect(Collectors.joining(", ", "[", "]")));
        }
        if (planning.overage() != usual.overage()) {
            braces.add("overage", Numbers.plain(PERCENT * planning.overage()) + " %");
        }
        braces.add("pipette-least", planning.pipetteLeastUl(), " µL");
        if (planning.diluteToUl() != usual.diluteToUl()) {
            braces.add("dilute-to", Numbers.plain(planning.diluteToUl()) + " µL");
        }
        stocks(planning.stocks(), braces);
        if (planning.stockMl() != usual.stockMl()) {
            braces.add("stock-volume", Numbers.plain(planning.stockMl()) + " mL");
        }
        braces.add("well-most", planning.wellMostUl(), " µL");
        planning.earlier().ifPresent(earlier -> braces.add("earlier", YamlText.quoted(earlier)));
        return braces.toString();
    }

    private static void stocks(Map<String, Quantity> stocks, YamlText.Braces braces) {
        Quantity common = stocks.get("");
        if (common != null) {
            braces.add("stock", common.toString());
        } else if (!stocks.isEmpty()) {
            YamlText.Braces each = new YamlText.Braces();
            new TreeMap<>(stocks).forEach((analyte, stock) -> each.add(YamlText.quoted(analyte), stock.toString()));
            braces.add("stock", each.toString());
        }
    }
}
