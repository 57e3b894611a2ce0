package tallywell.statement;

import java.util.OptionalDouble;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.quantity.Numbers;
import tallywell.workup.Analysis;

/**
 * A result as it is stated, on the first page and in the window alike: rounded to the place of the second significant digit of its expanded uncertainty,
 * which is shown with two (JCGM 100:2008, 7.2.6), or to three significant digits where there is none.
 *
 * @param value what it came to, or what can be said instead
 * @param expanded its expanded uncertainty, or empty
 */
public record Stated(String value, String expanded) {
    /**
     * Rounds.
     *
     * @param otherwise what can be said where there is no value
     */
    public static Stated of(OptionalDouble value, OptionalDouble expanded, String otherwise) {
        if (value.isEmpty()) {
            return new Stated(otherwise, "");
        }
        int place = Rounding.place(value.getAsDouble(), expanded);
        return new Stated(
                at(place, value.getAsDouble()), expanded.isPresent() ? at(place, expanded.getAsDouble()) : "");
    }

    /** A result of the plate, or what can be said of it where it has no value. */
    public static Stated of(Analysis analysis, Judgement judged) {
        OptionalDouble expanded = judged.budget().isPresent()
                ? OptionalDouble.of(judged.budget().get().expandedUncertainty())
                : OptionalDouble.empty();
        return of(judged.result().value(), expanded, Bounds.words(analysis, judged.result()));
    }

    /** A result by difference; that no more than some content is there, where only that can be said. */
    public static Stated of(JudgedDifference judged) {
        if (judged.atMost().isPresent()) {
            return new Stated(Bounds.words(judged), "");
        }
        OptionalDouble expanded = judged.budget().isPresent()
                ? OptionalDouble.of(judged.budget().get().expandedUncertainty())
                : OptionalDouble.empty();
        return of(judged.row().value(), expanded, Bounds.words(judged));
    }

    /** A number to three significant digits. */
    static String brief(double value) {
        return at(Rounding.place(value, OptionalDouble.empty()), value);
    }

    private static String at(int place, double value) {
        return Numbers.fixed(Rounding.round(value, place), Math.max(0, place)).replaceFirst("^-(0[.]?0*)$", "$1");
    }
}
