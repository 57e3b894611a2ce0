package tallywell.across;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import tallywell.budget.Estimate;
import tallywell.budget.Source;
import tallywell.method.InputQuantity;

/**
 * Which sources of uncertainty two plates have in common, so that their error is the same on both.
 *
 * <p>What a plate shows by itself (repeatability, blanks, the scatter of its calibration) is never in common; nor is what
 * makes one plate differ from another. What the method states of standards, equipment and constants is, unless the user
 * says that another lot or another piece of equipment served. Masses, extracts and the creep that is left are of each
 * run, unless the user says otherwise.
 *
 * @param quantities the quantities of the method file that are in common
 */
public record SharedSources(Set<InputQuantity> quantities) {
    /** What is in common where nobody says otherwise. */
    public static final SharedSources USUAL = new SharedSources(EnumSet.of(
            InputQuantity.SAMPLE_VOLUME,
            InputQuantity.TOTAL_VOLUME,
            InputQuantity.ABSORPTIVITY,
            InputQuantity.LIGHT_PATH,
            InputQuantity.READER,
            InputQuantity.STANDARD,
            InputQuantity.DILUTION,
            InputQuantity.DENSITY));

    /** Refuses what is of one plate by its nature. */
    public SharedSources {
        EnumSet<InputQuantity> copy = EnumSet.noneOf(InputQuantity.class);
        copy.addAll(quantities);
        if (copy.contains(InputQuantity.PLATE)) {
            throw new IllegalArgumentException(
                    "found 'plate' among what plates share; it is what makes one plate differ from another");
        }
        quantities = Collections.unmodifiableSet(copy);
    }

    /** The usual ones, with some more in common and some less. */
    public static SharedSources usualWith(Set<InputQuantity> shared, Set<InputQuantity> apart) {
        EnumSet<InputQuantity> all = EnumSet.noneOf(InputQuantity.class);
        all.addAll(USUAL.quantities());
        all.addAll(shared);
        all.removeAll(apart);
        return new SharedSources(all);
    }

    /** The quantity that a source of a budget is of, where plates can have it in common by this rule. */
    Optional<InputQuantity> of(Source source) {
        return source.estimate() == Estimate.STATED
                ? Arrays.stream(InputQuantity.values())
                        .filter(each -> each.label().equals(source.label()))
                        .filter(quantities::contains)
                        .findFirst()
                : Optional.empty();
    }
}
