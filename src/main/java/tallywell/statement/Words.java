package tallywell.statement;

import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.assess.Advice;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.quantity.Numbers;
import tallywell.workup.Flag;

/** Flags and advice in the words of a report. */
public final class Words {
    private Words() {}

    /** Flags in words, separated by semicolons; empty if there are none. */
    public static String flags(Set<Flag> flags) {
        return flags.stream().map(Flag::text).collect(Collectors.joining("; "));
    }

    /** Flags that a reader of the first page should know of, in few words. */
    public static String brief(Set<Flag> flags) {
        Set<Flag> told = EnumSet.noneOf(Flag.class);
        told.addAll(flags);
        // Where a value is outside the standards it is outside the window as a rule; once is enough.
        if (told.contains(Flag.ABOVE_STANDARDS)) {
            told.remove(Flag.ABOVE_WINDOW);
        }
        if (told.contains(Flag.BELOW_STANDARDS)) {
            told.remove(Flag.BELOW_WINDOW);
        }
        return told.stream().map(Words::brief).collect(Collectors.joining("; "));
    }

    private static String brief(Flag flag) {
        return switch (flag) {
            case OVER_RANGE -> "over the range of the reader";
            case READINGS_MISSING -> "readings missing";
            case ABSORBANCE_HIGH -> "absorbance over the limit";
            case EXCLUDED -> "wells excluded";
            case BELOW_STANDARDS -> "below the lowest standard";
            case ABOVE_STANDARDS -> "above the highest standard";
            case BELOW_WINDOW -> "net ΔA below the window";
            case ABOVE_WINDOW -> "net ΔA above the window";
            case REPLICATES_DIFFER -> "replicates differ";
            case SINGLE_REPLICATE -> "one well only";
            case RECOVERY_OUT -> "recovery outside its limits";
            case TRIGGER_BLANK_MISSING -> "no blank without trigger enzyme";
            case CREEP_NOT_MEASURED -> "creep not measured; only standards treated alike allow for it";
            case CREEP_NOT_TESTED -> "creep not tested";
            case CREEP_NOT_CONSTANT -> "creep not constant";
            case REACTION_INCOMPLETE -> "reaction may not be over";
            case BASELINE_DRIFTS -> "baseline drifts";
            case SPIKE -> "readings off the trace left out";
            case JUMP -> "trace jumps";
            case FINISHED_BY_HAND -> "finished part chosen by hand";
            case CURVE_MISFIT -> "no progress curve fits, or too few readings";
            case CREEP_BELONGS -> "creep may belong to the next step";
            case INDICATOR_LOW -> "indicator may be used up";
            case OUTLIER -> "one well is an outlier";
            case SCATTER_HIGH -> "wells scatter more than others";
            case BELOW_DETECTION -> "below the detection limit";
            case BELOW_QUANTIFICATION -> "below the limit of quantification";
            case EQUILIBRIUM_LOST -> "no equilibrium to reckon from";
            case PLATE_DRIFTS -> "plate drifts";
            case SAME_CEILING -> "same ΔA as others at the top";
            case HALF_BELOW_STANDARDS -> "a half below the lowest standard";
            case DIFFERENCE_NOT_TESTED -> "no uncertainty, so not tested against none";
            case BELOW_ZERO -> "below zero";
            case FREE_OF_NOT_SHOWN -> "free of it: not shown";
            case CREEP_FOLLOWS_ANALYTE -> "creep grows with ΔA";
            case TRIGGER_ELSEWHERE -> "trigger may be elsewhere";
            case READER_CEILING -> "reader may have stopped at its ceiling";
            case DILUTION_ASSUMED -> "no dilution in the sample list, taken as undiluted";
            case SPIKE_OUT -> "recovery of its spike outside the limits: the matrix may disturb";
            case BOUND_NOT_SHOWN -> "not shown to be below the lowest standard";
            case SAMPLES_DISAGREE -> "another row of this name or id differs by more than the uncertainties";
            case OTHER_PLATE -> "the pattern of the wells is that of another plate";
            case STANDARDS_UNFINISHED -> "standards perhaps not over";
            case PATH_DOUBTFUL -> "measured light path is not plausible";
        };
    }

    /** What to do next in words; empty if nothing. */
    public static String advice(Judgement judgement) {
        return advice(judgement.advice());
    }

    /** What to do next in words; empty if nothing. */
    public static String advice(Advice advice) {
        if (advice instanceof Advice.Dilute dilute) {
            double factor = dilute.dilution().factor();
            return factor == 1
                    ? "repeat undiluted"
                    : "repeat at dilution " + Numbers.plain(factor) + " (1+" + Numbers.plain(rest(factor)) + ")";
        }
        if (advice instanceof Advice.ReadLonger) {
            return "repeat, reading longer";
        }
        return advice instanceof Advice.Repeat ? "repeat" : "";
    }

    /** What to do next with which half; empty if nothing. */
    public static String advice(JudgedDifference judged) {
        String advice = advice(judged.advice());
        return switch (judged.adviceFor()) {
            case NONE -> advice;
            case FREE, TOTAL -> "the " + judged.adviceFor().word() + " half: " + advice;
            case BOTH -> "both halves, as their rows say: repeat";
        };
    }

    /** Parts of diluent to one part of sample, without the noise of binary fractions. */
    private static double rest(double factor) {
        return BigDecimal.valueOf(factor).subtract(BigDecimal.ONE).doubleValue();
    }
}
