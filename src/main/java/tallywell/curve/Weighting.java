package tallywell.curve;

import java.util.Arrays;
import java.util.Optional;

/** How much a standard counts in the fit. */
public enum Weighting implements Weigher {
    /** Every well counts the same. */
    NONE("none"),
    /** 1 over the level: variance in proportion to the level. */
    ONE_OVER_X("1/x"),
    /** 1 over the squared level: standard deviation in proportion to the level. */
    ONE_OVER_X2("1/x2"),
    /**
     * 1 over the mean response of the wells of the level: variance in proportion to the response. The mean of the level
     * is taken, since a well's own response would favour whichever replicate happens to read low.
     */
    ONE_OVER_Y("1/y");

    private final String word;

    Weighting(String word) {
        this.word = word;
    }

    @Override
    public double weight(double level, double response) {
        return switch (this) {
            case NONE -> 1;
            case ONE_OVER_X -> 1 / level;
            case ONE_OVER_X2 -> 1 / (level * level);
            case ONE_OVER_Y -> 1 / response;
        };
    }

    @Override
    public double weightOfBlank() {
        return this == NONE ? 1 : 0;
    }

    /** The word in method files. */
    @Override
    public String word() {
        return word;
    }

    /** The weighting with a word of the method files. */
    public static Optional<Weighting> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }

    @Override
    public String toString() {
        return word;
    }
}
