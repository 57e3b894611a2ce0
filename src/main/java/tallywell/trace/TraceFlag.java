package tallywell.trace;

import java.util.Locale;

/** What a reader of the result should know of a trace. */
public enum TraceFlag {
    /** One reading after the trigger: its creep, if any, is in ΔA. */
    CREEP_NOT_MEASURED("one reading after the trigger, so creep was not measured"),
    /** Too few readings after the trigger, too close or too noisy, to tell a line from the end of the reaction. */
    CREEP_NOT_TESTED("the readings after the trigger cannot tell constant creep from a reaction that is not over"),
    /** The change per minute is not constant over the finished part. */
    CREEP_NOT_CONSTANT("the change per minute is not constant in the finished part"),
    /** The burst may not have been over when the readings ended. */
    REACTION_INCOMPLETE("the reaction may not be over at the end of the readings"),
    /** The baseline moves by more than its noise. */
    BASELINE_DRIFTS("the baseline drifts before the trigger"),
    /** Single readings off the trace were left out. */
    SPIKE("readings off the trace (a bubble, a spike) were left out"),
    /** The trace steps from one level to another. */
    JUMP("the trace jumps from one level to another"),
    /** The finished part is the analyst's own choice. */
    FINISHED_BY_HAND("the finished part was chosen by hand"),
    /** No progress curve describes the trace, or there are too few readings for one; ΔA is from the line. */
    CURVE_MISFIT("no progress curve fits, or too few readings for one: the line was used"),
    /** Readings were over the range of the reader. */
    OVER_RANGE("readings were over the range of the reader"),
    /** Readings are missing from the series. */
    READINGS_MISSING("readings are missing from the series");

    private final String text;

    TraceFlag(String text) {
        this.text = text;
    }

    /** The word that stands in tables, such as {@code creep-not-measured}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The flag in words, without a capital or a full stop. */
    public String text() {
        return text;
    }
}
