package tallywell.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Planning;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Reads what a run says under {@code planning}. */
final class PlanningReader {
    private static final double UL_PER_ML = 1000;

    private PlanningReader() {}

    static Planning planning(YamlMapping top) throws InputException {
        Optional<YamlNode> node = top.find("planning");
        if (node.isEmpty()) {
            return Planning.USUAL;
        }
        YamlMapping keys = node.get()
                .mapping("how the run is planned, such as {overage: 10 %, dilute-to: 1 mL}")
                .only(
                        "series",
                        "overage",
                        "pipette-least",
                        "dilute-to",
                        "stock",
                        "stock-volume",
                        "well-most",
                        "earlier");
        Planning usual = Planning.USUAL;
        return new Planning(
                series(keys),
                keys.has("overage") ? keys.need("overage", "").notNegative(Kind.RATIO) : usual.overage(),
                keys.has("pipette-least")
                        ? OptionalDouble.of(keys.need("pipette-least", "").positive(Kind.VOLUME))
                        : OptionalDouble.empty(),
                keys.has("dilute-to") ? keys.need("dilute-to", "").positive(Kind.VOLUME) : usual.diluteToUl(),
                stocks(keys),
                keys.has("stock-volume")
                        ? keys.need("stock-volume", "").positive(Kind.VOLUME) / UL_PER_ML
                        : usual.stockMl(),
                keys.has("well-most")
                        ? OptionalDouble.of(keys.need("well-most", "").positive(Kind.VOLUME))
                        : OptionalDouble.empty(),
                keys.has("earlier")
                        ? Optional.of(keys.need("earlier", "").text().strip())
                        : Optional.empty());
    }

    private static List<Double> series(YamlMapping keys) throws InputException {
        List<Double> series = new ArrayList<>();
        if (keys.has("series")) {
            YamlNode node = keys.need("series", "");
            for (YamlNode item : node.list("dilutions, such as [1, 2, 5, 10]")) {
                double factor;
                try {
                    factor = Dilution.parse(item.text()).factor();
                } catch (IllegalArgumentException e) {
                    throw item.wrong(e);
                }
                if (!series.isEmpty() && !(factor > series.get(series.size() - 1))) {
                    throw item.wrong("found '" + item.text() + "' after a larger dilution; expected them ascending");
                }
                series.add(factor);
            }
            if (series.isEmpty()) {
                throw node.wrong("found no dilutions; expected some, such as [1, 2, 5, 10]");
            }
        }
        return series;
    }

    private static Map<String, Quantity> stocks(YamlMapping keys) throws InputException {
        Map<String, Quantity> stocks = new HashMap<>();
        Optional<YamlNode> node = keys.find("stock");
        if (node.isPresent() && node.get().isMapping()) {
            for (Map.Entry<String, YamlNode> each :
                    node.get().mapping("a stock for each analyte").all().entrySet()) {
                stocks.put(each.getKey(), stock(each.getValue()));
            }
        } else if (node.isPresent()) {
            stocks.put("", stock(node.get()));
        }
        return stocks;
    }

    private static Quantity stock(YamlNode node) throws InputException {
        Quantity stock = node.quantity(Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION);
        if (!(stock.value() > 0)) {
            throw node.wrong("found '" + node.text() + "'; expected a concentration above 0");
        }
        return stock;
    }
}
