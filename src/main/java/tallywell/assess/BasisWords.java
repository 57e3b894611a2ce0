package tallywell.assess;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tallywell.budget.Basis;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.ResultBudget;

/** What the ± U of a plate may be said to mean, by what each rests on. */
public final class BasisWords {
    private static final String U = "± U";
    private static final String MEANS = "how well a result repeats, not where the true value lies";

    private final List<Basis> known;

    /** Over all results of an assessment, those by difference included. */
    public BasisWords(Assessment assessment) {
        this(Stream.concat(
                        assessment.judgements().stream().map(BasisWords::of),
                        assessment.differences().stream().map(BasisWords::of))
                .flatMap(Optional::stream)
                .toList());
    }

    /** Over results of several plates: what each U rests on. */
    public BasisWords(List<Basis> known) {
        this.known = List.copyOf(known);
    }

    /** What the U of a result rests on; empty without U. */
    public static Optional<Basis> of(Judgement judgement) {
        return judgement.budget().map(ResultBudget::basis);
    }

    /** What the U of a result by difference rests on; empty without U. */
    public static Optional<Basis> of(JudgedDifference judged) {
        return judged.budget().map(DifferenceBudget::basis);
    }

    /** Whether every U of the plate is scatter only. */
    public boolean scatterOnly() {
        return !known.isEmpty() && count() == known.size();
    }

    /** The head of a column of U. */
    public String head() {
        return scatterOnly() ? U + ", " + Basis.SCATTER_ONLY.word() : U;
    }

    /** What stands with a result, where the head of the column cannot say it for all; else empty. */
    public String row(Optional<Basis> basis) {
        return basis.equals(Optional.of(Basis.SCATTER_ONLY)) && !scatterOnly()
                ? U + " " + Basis.SCATTER_ONLY.word()
                : "";
    }

    /** What ± U is, without a full stop; nothing may be said of coverage where it is scatter only. */
    public String meaning() {
        if (scatterOnly()) {
            return U + " is scatter only (no stated source acts): " + MEANS;
        }
        String coverage = U + " is their expanded uncertainty for 95 % coverage";
        return count() == 0 ? coverage : coverage + "; where it is scatter only (no stated source acts), " + MEANS;
    }

    /** A sentence for where results are summed up, with a blank before it; empty if no U is scatter only. */
    public String sentence() {
        if (count() == 0) {
            return "";
        }
        return scatterOnly()
                ? " Every U is scatter only."
                : " U of " + count() + " of " + known.size() + " results is scatter only.";
    }

    private long count() {
        return known.stream().filter(each -> each == Basis.SCATTER_ONLY).count();
    }
}
