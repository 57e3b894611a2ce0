package tallywell.workup;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The closed list of words that say what is special about a well or a result. */
public enum Flag {
    /** A reading that counts was over the range of the reader. */
    OVER_RANGE("a reading was over the range of the reader"),
    /** A reading that counts is missing. */
    READINGS_MISSING("readings are missing"),
    /** A reading that counts is over the limit of the method. */
    ABSORBANCE_HIGH("a reading is over the absorbance limit of the method"),
    /** The well does not count. */
    EXCLUDED("wells were excluded by a person, with a reason"),
    /** Below the lowest standard. */
    BELOW_STANDARDS("below the lowest standard, so there is no value"),
    /** Above the highest standard. */
    ABOVE_STANDARDS("above the highest standard, so there is no value"),
    /** Net ΔA below the window of the method. */
    BELOW_WINDOW("net ΔA is below the window of the method"),
    /** Net ΔA above the window of the method. */
    ABOVE_WINDOW("net ΔA is above the window of the method"),
    /** Replicates differ by more than the method accepts. */
    REPLICATES_DIFFER("replicates differ by more than the method accepts"),
    /** One well only, so that nothing shows the scatter. */
    SINGLE_REPLICATE("one well only, so nothing shows the scatter"),
    /** Recovery of a control or spike outside its limits. */
    RECOVERY_OUT("the recovery is outside its limits"),
    /** No blank without trigger to go with a sample blank. */
    TRIGGER_BLANK_MISSING("a sample blank was taken off without a blank without trigger enzyme"),
    /** One reading after the trigger: its creep is in ΔA. */
    CREEP_NOT_MEASURED(
            "one reading after the trigger, so creep was not measured; only standards treated alike allow for it"),
    /** Two readings: nothing tests the creep. */
    CREEP_NOT_TESTED("the readings after the trigger cannot tell constant creep from a reaction that is not over"),
    /** The finished part is not straight. */
    CREEP_NOT_CONSTANT("the change per minute is not constant in the finished part"),
    /** The reaction may not be over. */
    REACTION_INCOMPLETE("the reaction may not be over at the end of the readings"),
    /** The baseline moves. */
    BASELINE_DRIFTS("the baseline drifts before the trigger"),
    /** Readings off the trace were left out. */
    SPIKE("readings off the trace (a bubble, a spike) were left out"),
    /** The trace steps. */
    JUMP("the trace jumps from one level to another"),
    /** The finished part was chosen by hand. */
    FINISHED_BY_HAND("the finished part was chosen by a person, with a reason"),
    /** No rate law fits, or there are fewer than ten readings. */
    CURVE_MISFIT("no progress curve fits, or too few readings for one: the line was used"),
    /** The creep of this step may be the next analyte already reacting, and matters. */
    CREEP_BELONGS("the creep may belong to the next step, and matters more than its uncertainty"),
    /** Little indicator is left in a falling assay: it may have run out before the analyte. */
    INDICATOR_LOW("the indicator may be used up, so that there is more analyte than it shows"),
    /** One well lies too far from the others. */
    OUTLIER("one well lies farther from the others than chance explains (Grubbs, two-sided, 1 %)"),
    /** The wells scatter more than those of the rest of the plate. */
    SCATTER_HIGH("the wells scatter more than other replicates (Cochran, 1 %)"),
    /** Not to be told from a blank. */
    BELOW_DETECTION("not to be told from a blank; a difference: from none"),
    /** Detected, but too little to say how much. */
    BELOW_QUANTIFICATION("below the limit of quantification"),
    /** The formula of the coupled equilibrium has no value. */
    EQUILIBRIUM_LOST("A2 does not lie beyond A0, so the formula of the coupled equilibrium has no value"),
    /** All wells drift together. */
    PLATE_DRIFTS("the wells of the plate drift together (lamp, temperature, or creep that is not constant)"),
    /** Samples that should differ use up equally much, the most of the plate. */
    SAME_CEILING("samples that should differ have the same ΔA, the largest of the plate: something may have run out"),
    /** A half of a difference that has no value of its own. */
    HALF_BELOW_STANDARDS(
            "a half lies below the lowest standard and counts with what the curve says there, or an interval"),
    /** Nothing shows how sure a difference is. */
    DIFFERENCE_NOT_TESTED("no u, so nothing tells the difference from none"),
    /** Less than nothing, by more than chance. */
    BELOW_ZERO("below zero by more than chance explains; a difference: it, or a half of it"),
    /** What counts as free of it cannot be told. */
    FREE_OF_NOT_SHOWN("the content may lie on either side of what counts as free of it"),
    /** Creep grows with ΔA from sample to sample: it may be analyte that reacts slowly. */
    CREEP_FOLLOWS_ANALYTE("creep grows with ΔA from well to well, so that it may be analyte that reacts slowly"),
    /** The traces break elsewhere than the trigger is written. */
    TRIGGER_ELSEWHERE("the traces break at another moment than the trigger is written"),
    /** The reader stops at a value that it does not mark. */
    READER_CEILING("readings stop at one highest value, as a reader does at the end of its range"),
    /** The sample list has no dilution for a sample that it should have one for. */
    DILUTION_ASSUMED("the sample list states no dilution for it, so it counts as undiluted"),
    /** A spike that speaks for the sample is outside its limits. */
    SPIKE_OUT("the recovery of a spike on it, or on another of its matrix, is outside its limits, or it has no value"),
    /** Rows of one sample do not agree. */
    SAMPLES_DISAGREE(
            "another row of this name or id has a value that differs by more than their uncertainties explain"),
    /** The curve is too unsure at its low end to say that a sample lies below it. */
    BOUND_NOT_SHOWN("it may hold as much as the lowest standard: the curve is not sure enough there to say less"),
    /** The pattern of the wells does not come back after the trigger. */
    OTHER_PLATE("the pattern of the wells does not come back in a later reading, which may be of another plate"),
    /** Standards that a result rests on may not have been over. */
    STANDARDS_UNFINISHED("standards that it rests on may not have been over"),
    /** The measured light path does not go with the volume in the well. */
    PATH_DOUBTFUL("the measured light path does not go with the volume and the area of the well");

    private final String text;

    Flag(String text) {
        this.text = text;
    }

    /**
     * Whether the change of a well with it may be smaller than that of the analyte, so that no upper bound follows from it.
     * A lower bound does.
     */
    public boolean hidesAnalyte() {
        return switch (this) {
            case OVER_RANGE, REACTION_INCOMPLETE, INDICATOR_LOW, READER_CEILING, SAME_CEILING, EQUILIBRIUM_LOST -> true;
            default -> false;
        };
    }

    /** The word that stands in files, such as {@code over-range}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The flag in words, without a capital or a full stop. */
    public String text() {
        return text;
    }

    /** The flag that a word stands for, if one does. */
    public static Optional<Flag> of(String word) {
        return Arrays.stream(values()).filter(flag -> flag.word().equals(word)).findFirst();
    }
}
