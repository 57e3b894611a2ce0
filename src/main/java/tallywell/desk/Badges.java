package tallywell.desk;

import java.util.Optional;
import tallywell.workup.Flag;

/** Which flags are shown on a well, and how. */
public final class Badges {
    private Badges() {}

    /** The badge of a flag; empty for those that every well of a plate would have. */
    public static Optional<WellFace.Badge> of(Flag flag) {
        return switch (flag) {
            case OVER_RANGE, ABSORBANCE_HIGH, ABOVE_STANDARDS, ABOVE_WINDOW -> Optional.of(WellFace.Badge.HIGH);
            case BELOW_STANDARDS, BELOW_WINDOW -> Optional.of(WellFace.Badge.LOW);
            case REACTION_INCOMPLETE -> Optional.of(WellFace.Badge.RISING);
            case REPLICATES_DIFFER -> Optional.of(WellFace.Badge.DIFFER);
            case CREEP_NOT_CONSTANT, BASELINE_DRIFTS, SPIKE, JUMP, CURVE_MISFIT -> Optional.of(WellFace.Badge.TRACE);
            case READINGS_MISSING -> Optional.of(WellFace.Badge.MISSING);
            case RECOVERY_OUT -> Optional.of(WellFace.Badge.RECOVERY);
            case FINISHED_BY_HAND -> Optional.of(WellFace.Badge.BY_HAND);
            case EXCLUDED, SINGLE_REPLICATE, CREEP_NOT_MEASURED, CREEP_NOT_TESTED -> Optional.empty();
            default -> Optional.of(WellFace.Badge.LOOK);
        };
    }
}
