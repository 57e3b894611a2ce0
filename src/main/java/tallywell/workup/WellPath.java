package tallywell.workup;

/**
 * The measured light path of one well.
 *
 * @param cm its length in cm
 * @param plannedCm the common length in cm that every ΔA of the plate is stated for
 * @param relativeUncertainty standard uncertainty of the length from the scatter of the readings, relative; 0 if not known
 */
public record WellPath(double cm, double plannedCm, double relativeUncertainty) {
    /** What a ΔA as read is multiplied by to be that of the common length. */
    public double scale() {
        return plannedCm / cm;
    }
}
