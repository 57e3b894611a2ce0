package tallywell.method;

/**
 * Something pipetted into every well, in the order of addition.
 *
 * @param name as the bench sheet prints it
 * @param volumeUl in each well, in µL, positive
 * @param into what it belongs to
 * @param trigger which trigger it belongs to, from 1; 0 unless {@code into} is a trigger
 * @param holds composition of the solution, or how it is made, or empty
 */
public record Reagent(String name, double volumeUl, Into into, int trigger, String holds) {
    /** Where a reagent goes. */
    public enum Into {
        /** To the sample before everything else; wells of free and total differ in it. */
        TREATMENT,
        /** Into the mix that all wells share. */
        MIX,
        /** Into what starts a reaction. */
        TRIGGER
    }

    /** Refuses volumes that are not positive. */
    public Reagent {
        if (!(volumeUl > 0 && trigger >= 0)) {
            throw new IllegalArgumentException("volumeUl must be > 0 but was " + volumeUl);
        }
    }
}
