package tallywell.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tallywell.method.AssayMethod;
import tallywell.method.DilutionSeries;
import tallywell.method.Planning;
import tallywell.method.StandardSubstance;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.plan.Plan.PlannedStandard;
import tallywell.plan.Plan.Stock;
import tallywell.plan.Plan.Take;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;

/**
 * The standards of a layout from stocks: {@code C1 V1 = C2 V2}, from a predilution where a volume would be too small.
 */
final class StandardSeries {
    private static final double[] NICE = {1, 2, 5, 10};

    private final AssayMethod method;
    private final Planning planning;
    private final double leastUl;
    private final Place place;
    private final Map<String, Stock> stocks = new LinkedHashMap<>();

    StandardSeries(AssayMethod method, Planning planning, double leastUl, Place place) {
        this.method = method;
        this.planning = planning;
        this.leastUl = leastUl;
        this.place = place;
    }

    List<Stock> stocks() {
        return List.copyOf(stocks.values());
    }

    List<PlannedStandard> of(Layout layout) throws InputException {
        Map<String, Content.Standard> words = new LinkedHashMap<>();
        Map<String, Integer> wells = new LinkedHashMap<>();
        for (var well : layout.where(content -> content instanceof Content.Standard)) {
            Content.Standard standard = (Content.Standard) layout.at(well);
            words.putIfAbsent(standard.word(), standard);
            wells.merge(standard.word(), 1, Integer::sum);
        }
        for (Step step : method.steps()) {
            double[] levels = WorkingRange.levels(step, layout);
            if (levels.length > 0 && levels[levels.length - 1] > 0) {
                stocks.put(step.analyte().name(), stock(step, levels[levels.length - 1]));
            }
        }
        List<PlannedStandard> planned = new ArrayList<>();
        for (Content.Standard each : ascending(words.values())) {
            planned.add(standard(each, wells.getOrDefault(each.word(), 0)));
        }
        return planned;
    }

    /** By the level of the first analyte. */
    private List<Content.Standard> ascending(Collection<Content.Standard> standards) {
        Step first = method.steps().get(0);
        return standards.stream()
                .sorted(Comparator.comparingDouble(each -> each.level()
                        .of(first.analyte().name())
                        .map(level -> WorkingRange.gPerL(level, first))
                        .orElse(0.0)))
                .toList();
    }

    /** Ten times the highest level or more, as a round figure, where the run gives no stock. */
    private Stock stock(Step step, double highest) throws InputException {
        String analyte = step.analyte().name();
        Optional<Quantity> given = planning.stock(analyte);
        double gPerL = given.isPresent() ? WorkingRange.gPerL(given.get(), step) : round(10 * highest);
        if (!(gPerL >= highest)) {
            throw new InputException(
                    place,
                    "found a stock of " + given.map(Quantity::toString).orElse("") + " for standards of " + analyte
                            + " up to " + Numbers.brief(highest, 4)
                            + " g/L; expected a stock at least as strong as the highest standard");
        }
        return new Stock(analyte, gPerL, given.isEmpty(), weigh(step, gPerL));
    }

    private static double round(double least) {
        double decade = Math.pow(10, Math.floor(Math.log10(least)));
        for (double nice : NICE) {
            if (nice * decade >= least * (1 - 1e-9)) {
                return nice * decade;
            }
        }
        return least;
    }

    private Optional<String> weigh(Step step, double gPerL) {
        if (step.standard().isEmpty() || step.analyte().molarMass().isEmpty()) {
            return Optional.empty();
        }
        StandardSubstance substance = step.standard().get();
        double grams = gPerL
                * planning.stockMl()
                / 1000
                * substance.weighedPerAnalyte(step.analyte().molarMass().getAsDouble());
        return Optional.of(Numbers.brief(grams, 4) + " g of " + substance.form().name() + " ("
                + Numbers.brief(100 * substance.purity(), 4) + " %"
                + (substance.water() > 0 ? ", water " + Numbers.brief(100 * substance.water(), 3) + " %" : "")
                + ") to " + Numbers.plain(planning.stockMl()) + " mL of water");
    }

    private PlannedStandard standard(Content.Standard standard, int wells) throws InputException {
        double sampleUl =
                method.steps().get(0).volumes().map(each -> each.sampleUl()).orElse(0.0);
        double total = Volumes.made(planning, wells * sampleUl);
        List<Take> takes = new ArrayList<>();
        double sum = 0;
        for (Step step : method.steps()) {
            Optional<Quantity> level = standard.level().of(step.analyte().name());
            Stock stock = stocks.get(step.analyte().name());
            if (level.isPresent() && stock != null) {
                double gPerL = WorkingRange.gPerL(level.get(), step);
                if (gPerL > 0) {
                    Take take = take(standard, stock, gPerL, total);
                    takes.add(take);
                    sum += take.takeUl();
                }
            }
        }
        if (sum > total * (1 + 1e-9)) {
            throw new InputException(
                    place,
                    "the standard '" + standard.word() + "' would take " + Numbers.brief(sum, 5)
                            + " µL of stocks for " + Numbers.plain(total)
                            + " µL; expected stronger stocks under 'planning: {stock: ...}'");
        }
        return new PlannedStandard(
                standard.word(), words(standard.level()), wells, total, takes, Math.max(0, total - sum));
    }

    private Take take(Content.Standard standard, Stock stock, double gPerL, double total) throws InputException {
        for (double predilution : DilutionSeries.of(planning).steps()) {
            double take = total * gPerL * predilution / stock.gPerL();
            if (take >= leastUl * (1 - 1e-9) && take <= total * (1 + 1e-9)) {
                return new Take(stock.analyte(), predilution, Math.min(take, total));
            }
        }
        throw new InputException(
                place,
                "the standard '" + standard.word() + "' (" + Numbers.brief(gPerL, 4)
                        + " g/L) cannot be made from a stock of "
                        + Numbers.brief(stock.gPerL(), 4) + " g/L without pipetting less than "
                        + Numbers.plain(leastUl)
                        + " µL; expected a larger 'dilute-to', another stock, or a longer series under 'planning'");
    }

    /** A level as the layout says it. */
    static String words(PerAnalyte level) {
        List<String> words = new ArrayList<>();
        new TreeMap<>(level.byName())
                .forEach((name, quantity) -> words.add(name.isEmpty() ? quantity.toString() : name + " " + quantity));
        return String.join(", ", words);
    }
}
