package tallywell.workup;

/**
 * What is left of the indicator in one well at the end of a falling assay, in absorbance.
 *
 * <pre>{@code
 * supplied    = A before of the blanks - background
 * used before = max(0, A before of the blanks - A before of the well)
 * used        = A before - A at the end of the readings that count
 * left        = supplied - used before - used
 * }</pre>
 *
 * <p>The reading itself would tell too much: plate, reagents and the colour of the sample are in it, and stay when the
 * indicator is gone. What the well has more than the blanks before the trigger counts as colour, what it has less as
 * indicator that the sample used up by itself. A sample that does both hides as much of the one as of the other: that
 * much less may be left. The limit stands against it ({@code docs/verdicts.md}).
 *
 * @param supplied indicator in the blanks before the trigger
 * @param background absorbance of plate and reagents without indicator
 * @param backgroundFrom where the background is known from
 * @param usedBefore what the sample used up by itself, as far as it shows
 * @param used own ΔA at the end of the readings that count, creep included
 * @param least what must be left
 */
public record IndicatorLeft(
        double supplied,
        double background,
        BackgroundFrom backgroundFrom,
        double usedBefore,
        double used,
        double least) {
    /** Where the absorbance of plate and reagents without indicator is known from. */
    public enum BackgroundFrom {
        /** The method file says it. */
        METHOD("method"),
        /** Nothing says it: an upper bound. */
        BOUND("upper bound");

        private final String text;

        BackgroundFrom(String text) {
            this.text = text;
        }

        /** In words. */
        public String text() {
            return text;
        }
    }

    /** What is left, in absorbance; negative where more seems used than there was. */
    public double left() {
        return supplied - usedBefore - used;
    }

    /** Whether the indicator may have run out before the analyte. */
    public boolean isLow() {
        return !(left() >= least);
    }
}
