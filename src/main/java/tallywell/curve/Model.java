package tallywell.curve;

import java.util.Arrays;
import java.util.Optional;

/** The formulas that a calibration can follow. */
public enum Model {
    /** y = a + b x. */
    LINE("line", 2, 2),
    /** y = b x. */
    LINE_THROUGH_ZERO("line-through-zero", 1, 1),
    /** y = a + b x + c x². */
    QUADRATIC("quadratic", 3, 3),
    /** y = d + (a − d) / (1 + (x / c)^b). */
    LOGISTIC_4("logistic-4", 4, 4),
    /** y = d + (a − d) / (1 + (x / c)^b)^g. */
    LOGISTIC_5("logistic-5", 5, 5);

    private final String word;
    private final int parameters;
    private final int leastLevels;

    Model(String word, int parameters, int leastLevels) {
        this.word = word;
        this.parameters = parameters;
        this.leastLevels = leastLevels;
    }

    /** The word in method files. */
    public String word() {
        return word;
    }

    /** How many parameters are fitted. */
    public int parameters() {
        return parameters;
    }

    /** How many different levels the standards must have; level 0 does not count for a line through zero. */
    public int leastLevels() {
        return leastLevels;
    }

    /** The model with a word of the method files. */
    public static Optional<Model> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }

    @Override
    public String toString() {
        return word;
    }
}
