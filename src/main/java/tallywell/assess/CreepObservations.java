package tallywell.assess;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tallywell.method.Creep;
import tallywell.numeric.Gaussian;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.CreepSlope;
import tallywell.workup.SlopeOnChange;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * The creep of each well beside that of its replicates, that of the blanks, and none at all.
 *
 * <p>Replicates hold the same, so they creep alike; where one does not, something happens in that well only (a bubble, an
 * edge that dries out). Creep that the blanks have too comes from the reagents, the rest from the sample.
 */
final class CreepObservations {
    private static final double LEVEL = 0.01;

    /** Creep in absorbance per min that moves a ΔA of ten minutes by no more than readers round to. */
    private static final double LEAST = 0.0001;

    private static final int MOST_NAMED = 8;

    private final StepAnalysis step;
    private final String of;

    CreepObservations(StepAnalysis step, String of) {
        this.step = step;
        this.of = of;
    }

    /** A creep and its standard uncertainty, in absorbance per min. */
    private record Rate(WellResult well, double perMin, double u) {
        boolean differs(double from, double uFrom, double factor) {
            double off = Math.abs(perMin - from);
            return off > LEAST && off > factor * Math.hypot(u, uFrom);
        }
    }

    List<Check> all() {
        if (step.step().creep() == Creep.NONE) {
            return List.of();
        }
        List<Rate> rates = step.wells().stream()
                .filter(WellResult::used)
                .filter(well -> well.trace().creepPerMin().isPresent()
                        && well.trace().uCreepPerMin().isPresent())
                .map(well -> new Rate(
                        well,
                        well.trace().creepPerMin().getAsDouble(),
                        well.trace().uCreepPerMin().getAsDouble()))
                .toList();
        return List.of(replicates(rates), blanks(rates), withChange());
    }

    private Check replicates(List<Rate> rates) {
        String name = "replicates creep alike" + of;
        Map<Content, List<Rate>> slots = new LinkedHashMap<>();
        for (Rate rate : rates) {
            slots.computeIfAbsent(rate.well().content(), key -> new ArrayList<>())
                    .add(rate);
        }
        slots.values().removeIf(slot -> slot.size() < 2);
        int compared = slots.values().stream().mapToInt(Collection::size).sum();
        if (compared == 0) {
            return Observations.open(name, "no replicates with traces", "layout");
        }
        double factor = factor(compared);
        List<Well> odd = new ArrayList<>();
        for (List<Rate> slot : slots.values()) {
            for (Rate rate : slot) {
                List<Rate> others =
                        slot.stream().filter(each -> !each.equals(rate)).toList();
                if (rate.differs(mean(others), uOfMean(others), factor)) {
                    odd.add(rate.well().well());
                }
            }
        }
        return new Check(
                name,
                "within their uncertainty",
                odd.isEmpty() ? "no well creeps otherwise than its replicates" : named(odd),
                Observations.state(odd.isEmpty()),
                "normal distribution, 1 % over all wells");
    }

    private Check blanks(List<Rate> rates) {
        String name = "creep beside the blanks" + of;
        List<Rate> blanks = rates.stream()
                .filter(rate -> rate.well().content() instanceof Content.Blank blank && blank.triggered())
                .toList();
        if (blanks.isEmpty() || blanks.size() == rates.size()) {
            return Observations.open(name, "no traces of blanks and samples to compare", "layout");
        }
        double factor = factor(rates.size());
        double mean = mean(blanks);
        double u = uOfMean(blanks);
        List<Rate> others =
                rates.stream().filter(rate -> !blanks.contains(rate)).toList();
        long otherwise =
                others.stream().filter(rate -> rate.differs(mean, u, factor)).count();
        long some = rates.stream().filter(rate -> rate.differs(0, 0, factor)).count();
        String found = "blanks " + milli(mean) + " mA/min, the others "
                + milli(others.stream().mapToDouble(Rate::perMin).min().orElse(0)) + " to "
                + milli(others.stream().mapToDouble(Rate::perMin).max().orElse(0)) + "; " + otherwise + " of "
                + others.size() + " creep otherwise than the blanks; " + some + " of " + rates.size()
                + " wells creep at all";
        return Observations.open(name, found, "normal distribution, 1 % over all wells");
    }

    /** Whether creep goes with ΔA, as analyte that reacts slowly would. */
    private Check withChange() {
        String name = "creep does not grow with ΔA" + of;
        Optional<CreepSlope> found = step.creepSlope();
        Optional<SlopeOnChange> samples = found.flatMap(CreepSlope::samples);
        Optional<SlopeOnChange> standards = found.flatMap(CreepSlope::standards);
        if (samples.isEmpty() && standards.isEmpty()) {
            return Observations.open(name, "too few groups of wells with creep, or ΔA hardly differs", "layout");
        }
        String words = Stream.of(
                        samples.map(each -> "samples " + slope(each)),
                        standards.map(each -> "standards " + slope(each)))
                .flatMap(Optional::stream)
                .collect(Collectors.joining("; "));
        String limit = standards.isPresent() ? "slope of samples as of standards" : "no slope";
        boolean alone = found.get().isOfStandards() && samples.isEmpty();
        String cancels = found.get().isOfStandards() && !found.get().isSeen() && !alone
                ? "; it cancels where standards were made and left standing like the samples"
                : "";
        return new Check(
                name,
                limit,
                words + cancels,
                Observations.state(!found.get().isSeen() && !alone),
                "weighted regression, t test at 1 %, with each group left out");
    }

    /** In mA per min for each unit of ΔA. */
    private static String slope(SlopeOnChange each) {
        return milli(each.perMin()) + " mA/min for ΔA 1 (u " + milli(each.uPerMin()) + ", " + each.groups()
                + " groups)";
    }

    /** Standard uncertainties beyond which one of so many wells lies by chance on one plate in a hundred. */
    private static double factor(int wells) {
        return Gaussian.quantile(1 - LEVEL / wells / 2);
    }

    private static double mean(List<Rate> rates) {
        return rates.stream().mapToDouble(Rate::perMin).average().orElseThrow();
    }

    private static double uOfMean(List<Rate> rates) {
        return Math.sqrt(rates.stream().mapToDouble(rate -> rate.u() * rate.u()).sum()) / rates.size();
    }

    private static String milli(double perMin) {
        return Numbers.fixed(1000 * perMin, 2);
    }

    private static String named(List<Well> wells) {
        return wells.size()
                + (wells.size() == 1 ? " well: " : " wells: ")
                + wells.stream().limit(MOST_NAMED).map(Well::toString).collect(Collectors.joining(", "))
                + (wells.size() > MOST_NAMED ? ", …" : "");
    }
}
