package tallywell.method;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.Quantity;

/**
 * How a laboratory wants its runs planned, as a run file says under {@code planning}.
 *
 * @param series dilutions that the laboratory makes, ascending from 1; empty for 1, 2, 5, 10, 20, 50 and so on
 * @param overage what is made beyond the wells, as a part of what they take
 * @param pipetteLeastUl smallest volume to pipette, in µL; empty for that of the method, or 10
 * @param diluteToUl volume made of each dilution, in µL
 * @param stocks concentration of the stock of standard by analyte; the one entry under "" is for whichever analyte
 * @param stockMl volume of stock made, in mL
 * @param wellMostUl how much a well may hold, in µL, in place of what is known of the plate
 * @param earlier table of results of an earlier run, as typed
 */
public record Planning(
        List<Double> series,
        double overage,
        OptionalDouble pipetteLeastUl,
        double diluteToUl,
        Map<String, Quantity> stocks,
        double stockMl,
        OptionalDouble wellMostUl,
        Optional<String> earlier) {
    /** What holds where a run says nothing (own choices): 10 % more than the wells take, 1 mL of each dilution. */
    public static final Planning USUAL = new Planning(
            List.of(), 0.10, OptionalDouble.empty(), 1000, Map.of(), 100, OptionalDouble.empty(), Optional.empty());

    /** Keeps copies that cannot change. */
    public Planning {
        series = List.copyOf(series);
        stocks = Map.copyOf(stocks);
        if (!(overage >= 0 && diluteToUl > 0 && stockMl > 0)) {
            throw new IllegalArgumentException(
                    "overage must be >= 0 and volumes > 0 but were " + overage + ", " + diluteToUl + ", " + stockMl);
        }
    }

    /** The stock of an analyte. */
    public Optional<Quantity> stock(String analyte) {
        Quantity own = stocks.get(analyte);
        return Optional.ofNullable(own != null ? own : stocks.get(""));
    }
}
