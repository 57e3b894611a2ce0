package tallywell.assess;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.numeric.StudentT;
import tallywell.quantity.Quantity;
import tallywell.workup.Analysis;
import tallywell.workup.DifferenceResult;
import tallywell.workup.Flag;
import tallywell.workup.Half;
import tallywell.workup.Result;

/**
 * Judges results by difference, each by its own uncertainty, and then its halves by what the difference needs of them. The
 * table stands in {@code docs/verdicts.md}, "Differences".
 */
final class DifferenceVerdicts {
    /** Flags of a half that say how little it holds, which is nothing against the difference. */
    private static final Set<Flag> LOW =
            EnumSet.of(Flag.BELOW_STANDARDS, Flag.BELOW_WINDOW, Flag.BELOW_DETECTION, Flag.BELOW_QUANTIFICATION);

    private static final Set<Flag> LOOK_AT =
            EnumSet.of(Flag.DIFFERENCE_NOT_TESTED, Flag.BELOW_ZERO, Flag.FREE_OF_NOT_SHOWN);

    /** A value below zero is looked at from a one-sided test at 1 % on, as the observations are. */
    private static final double BELOW_ZERO = 0.99;

    private final List<Judgement> judgements;
    private final PlateBudget budget;
    private final boolean batchPassed;

    /** What the differences need of halves, by key of the result. */
    private final Map<String, Advice> needed = new LinkedHashMap<>();

    private final Set<String> halves = new HashSet<>();
    private final List<JudgedDifference> differences = new ArrayList<>();

    /** Judges all differences of a plate by the judgements of its results. */
    DifferenceVerdicts(List<Judgement> judgements, PlateBudget budget, boolean batchPassed) {
        this.judgements = judgements;
        this.budget = budget;
        this.batchPassed = batchPassed;
        budget.analysis().differences().forEach(each -> differences.add(judged(each)));
    }

    /** The differences, judged. */
    List<JudgedDifference> differences() {
        return List.copyOf(differences);
    }

    /** The judgements with those of halves as the differences need them. */
    List<Judgement> judgements() {
        return judgements.stream().map(this::asNeeded).toList();
    }

    /** A half that is wanted otherwise is to be repeated; one that is only low, and does no harm, is not. */
    private Judgement asNeeded(Judgement half) {
        Advice advice = needed.get(half.result().key());
        if (advice != null) {
            return new Judgement(half.result(), Verdict.REPEAT, advice, half.budget());
        }
        if (!halves.contains(half.result().key()) || !isLowOnly(half)) {
            return half;
        }
        return new Judgement(
                half.result(),
                !batchPassed || isToBeLookedAt(half) ? Verdict.CHECK : Verdict.REPORT,
                new Advice.None(),
                half.budget());
    }

    /** The advice to dilute less is given where nothing else is wrong, or replicates differ, too. */
    private static boolean isLowOnly(Judgement half) {
        return isLower(half) && !half.result().flags().contains(Flag.REPLICATES_DIFFER);
    }

    private JudgedDifference judged(DifferenceResult each) {
        Analysis analysis = budget.analysis();
        Judgement total = judgements.get(analysis.results().indexOf(each.total()));
        Judgement free = judgements.get(analysis.results().indexOf(each.free()));
        halves.add(total.result().key());
        halves.add(free.result().key());
        DifferenceResult flagged = each.flagged(total.result(), free.result());
        Optional<ResultBudget> ofTotal = budget.of(each.whole());
        Optional<ResultBudget> ofFree = budget.of(each.unbound());
        Optional<DifferenceBudget> own = each.value().isPresent() && ofTotal.isPresent() && ofFree.isPresent()
                ? Optional.of(DifferenceBudget.of(flagged, ofTotal.get(), ofFree.get()))
                : Optional.empty();
        Set<Flag> flags = flags(flagged, own);
        Map<JudgedDifference.For, Advice> repeats = repeats(total, free, flags, own);
        repeats.forEach((which, advice) -> needed.put(
                (which == JudgedDifference.For.TOTAL ? total : free).result().key(), advice));
        return new JudgedDifference(
                flagged, own, flags, verdict(flags, repeats, total, free), advice(repeats), named(repeats));
    }

    private boolean isToBeLookedAt(Judgement half) {
        return Verdicts.isToBeLookedAt(half.result().flags(), budget.analysis().stepOf(half.result()));
    }

    private Verdict verdict(
            Set<Flag> flags, Map<JudgedDifference.For, Advice> repeats, Judgement total, Judgement free) {
        if (!repeats.isEmpty()) {
            return Verdict.REPEAT;
        }
        boolean look = flags.stream().anyMatch(LOOK_AT::contains) || isToBeLookedAt(total) || isToBeLookedAt(free);
        return look || !batchPassed ? Verdict.CHECK : Verdict.REPORT;
    }

    private static Set<Flag> flags(DifferenceResult difference, Optional<DifferenceBudget> found) {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        flags.addAll(difference.total().flags());
        flags.addAll(difference.free().flags());
        flags.removeAll(LOW);
        if (difference.value().isEmpty()) {
            return flags;
        }
        if (difference.whole().below() != Half.Below.NOT || difference.unbound().below() != Half.Below.NOT) {
            flags.add(Flag.HALF_BELOW_STANDARDS);
        }
        if (found.isEmpty() || !(found.get().standardUncertainty() > 0)) {
            flags.add(Flag.DIFFERENCE_NOT_TESTED);
            return flags;
        }
        DifferenceBudget own = found.get();
        double value = difference.value().getAsDouble();
        if (value <= own.decision()) {
            flags.add(Flag.BELOW_DETECTION);
        } else if (value < own.quantification()) {
            flags.add(Flag.BELOW_QUANTIFICATION);
        }
        if (isBelowZero(value, own.standardUncertainty(), own.degreesOfFreedom())
                || isBelowZero(own.total())
                || isBelowZero(own.free())) {
            flags.add(Flag.BELOW_ZERO);
        }
        OptionalDouble freeOf = freeOf(difference);
        if (freeOf.isPresent()
                && own.atMost() > freeOf.getAsDouble()
                && value - own.decision() < freeOf.getAsDouble()) {
            flags.add(Flag.FREE_OF_NOT_SHOWN);
        }
        return flags;
    }

    private static boolean isBelowZero(ResultBudget half) {
        return isBelowZero(half.result().value().orElseThrow(), half.byBudget(), half.degreesOfFreedom());
    }

    private static boolean isBelowZero(double value, double u, double freedom) {
        return value < 0 && -value > StudentT.quantile(BELOW_ZERO, freedom) * u;
    }

    /** What counts as free of the analyte, in the unit of the result; empty where the method does not say so in such a unit. */
    private static OptionalDouble freeOf(DifferenceResult difference) {
        Result total = difference.total();
        Optional<Quantity> said = difference.rule().freeOf();
        return said.isPresent() && said.get().unit().kind() == total.unit().kind()
                ? OptionalDouble.of(said.get().in(total.unit()))
                : OptionalDouble.empty();
    }

    /** What is to be repeated for the difference to stand. */
    private Map<JudgedDifference.For, Advice> repeats(
            Judgement total, Judgement free, Set<Flag> flags, Optional<DifferenceBudget> own) {
        Map<JudgedDifference.For, Advice> repeats = new LinkedHashMap<>();
        // What the product follows from is the total: where that is low, diluting less makes the product surer.
        if (total.verdict() == Verdict.REPEAT) {
            repeats.put(JudgedDifference.For.TOTAL, total.advice());
        }
        if (free.verdict() == Verdict.REPEAT && !isLowOnly(free)) {
            repeats.put(
                    JudgedDifference.For.FREE,
                    free.result().flags().contains(Flag.REPLICATES_DIFFER) && isLower(free)
                            ? new Advice.Repeat()
                            : free.advice());
        }
        if (repeats.isEmpty() && flags.contains(Flag.BELOW_DETECTION) && own.isPresent()) {
            boolean ofTotal = own.get().total().byBudget() >= own.get().free().byBudget();
            Judgement lessSure = ofTotal ? total : free;
            new DilutionAdvice(budget.analysis(), lessSure.result())
                    .finer()
                    .ifPresent(advice ->
                            repeats.put(ofTotal ? JudgedDifference.For.TOTAL : JudgedDifference.For.FREE, advice));
        }
        return repeats;
    }

    private static boolean isLower(Judgement half) {
        return half.advice() instanceof Advice.Dilute other
                && other.dilution().factor() < half.result().dilution().factor();
    }

    private static Advice advice(Map<JudgedDifference.For, Advice> repeats) {
        List<Advice> all = repeats.values().stream().distinct().toList();
        return all.isEmpty() ? new Advice.None() : all.size() == 1 ? all.get(0) : new Advice.Repeat();
    }

    private static JudgedDifference.For named(Map<JudgedDifference.For, Advice> repeats) {
        return repeats.isEmpty()
                ? JudgedDifference.For.NONE
                : repeats.size() > 1
                        ? JudgedDifference.For.BOTH
                        : repeats.keySet().iterator().next();
    }
}
