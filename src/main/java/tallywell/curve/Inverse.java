package tallywell.curve;

/** What a response says about the level, relative to the range of the standards. Nothing is extrapolated. */
public sealed interface Inverse {
    /**
     * A level within the range of the standards.
     *
     * @param level the level
     */
    record Within(double level) implements Inverse {}

    /**
     * Below the lowest standard.
     *
     * @param bound the level of the lowest standard
     */
    record Below(double bound) implements Inverse {}

    /**
     * Above the highest standard.
     *
     * @param bound the level of the highest standard
     */
    record Above(double bound) implements Inverse {}
}
