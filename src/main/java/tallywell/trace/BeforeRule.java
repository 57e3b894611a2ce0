package tallywell.trace;

/** How the baseline readings become one absorbance before the trigger. */
public enum BeforeRule {
    /** Their mean. */
    MEAN,
    /** Their straight line, at the trigger. */
    LINE,
    /** The last of them. */
    LAST
}
