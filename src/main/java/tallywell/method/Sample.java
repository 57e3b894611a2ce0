package tallywell.method;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.Dilution;

/**
 * One row of the sample list.
 *
 * @param slot number of the slot in the layout
 * @param name as reports print it
 * @param dilution before pipetting
 * @param volumeUl own volume of sample in the well in µL, in place of the method's
 * @param solid how a solid was extracted, empty for a liquid
 * @param densityGPerMl density in g/mL, if known
 * @param group group of blanks, empty for the common one
 * @param id barcode, or empty
 * @param note or empty
 * @param treatment which half of a result by difference it is
 */
public record Sample(
        int slot,
        String name,
        Dilution dilution,
        OptionalDouble volumeUl,
        Optional<Extraction> solid,
        OptionalDouble densityGPerMl,
        String group,
        String id,
        String note,
        Treatment treatment) {
    /** A row without a treatment. */
    public Sample(
            int slot,
            String name,
            Dilution dilution,
            OptionalDouble volumeUl,
            Optional<Extraction> solid,
            OptionalDouble densityGPerMl,
            String group,
            String id,
            String note) {
        this(slot, name, dilution, volumeUl, solid, densityGPerMl, group, id, note, Treatment.NONE);
    }

    /**
     * How a solid was brought into solution.
     *
     * @param massG mass weighed in, in g, positive
     * @param extractMl volume the extract was made up to, in mL, positive
     */
    public record Extraction(double massG, double extractMl) {
        /** Refuses what is not positive. */
        public Extraction {
            if (!(massG > 0 && extractMl > 0)) {
                throw new IllegalArgumentException(
                        "massG and extractMl must be > 0 but were " + massG + " and " + extractMl);
            }
        }
    }

    /** The name with the treatment, as results print it. */
    public String label() {
        return treatment == Treatment.NONE ? name : name + " (" + treatment.word() + ")";
    }

    /** The same sample in another slot. */
    public Sample inSlot(int other) {
        return new Sample(other, name, dilution, volumeUl, solid, densityGPerMl, group, id, note, treatment);
    }

    /** The same sample at another dilution. */
    public Sample at(Dilution other) {
        return new Sample(slot, name, other, volumeUl, solid, densityGPerMl, group, id, note, treatment);
    }

    /** A liquid at dilution 1, named by its slot. */
    public static Sample plain(int slot) {
        return new Sample(
                slot,
                Integer.toString(slot),
                Dilution.NONE,
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                "",
                "",
                "");
    }
}
