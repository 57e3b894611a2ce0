package tallywell.workup;

import java.util.List;
import java.util.OptionalDouble;
import tallywell.plate.Well;

/**
 * The blanks of one group in one step.
 *
 * @param group name of the group, empty for the common one
 * @param wells the blanks that count
 * @param mean mean ΔA
 * @param sd standard deviation of ΔA; empty for a single blank
 * @param untriggered the blanks without trigger enzyme that count
 * @param untriggeredMean their mean ΔA; empty if there is none
 */
public record BlankMean(
        String group,
        List<Well> wells,
        double mean,
        OptionalDouble sd,
        List<Well> untriggered,
        OptionalDouble untriggeredMean) {
    /** Keeps copies that cannot change. */
    public BlankMean {
        wells = List.copyOf(wells);
        untriggered = List.copyOf(untriggered);
    }
}
