package tallywell.method;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the method says about uncertainty.
 *
 * @param stated which of the two ways the reported uncertainty comes from
 * @param inputs quantities besides scatter that are uncertain; what is absent counts as exact
 * @param validation what the laboratory found in its validation, if the method says
 */
public record UncertaintyRule(Stated stated, Map<InputQuantity, Spread> inputs, Optional<Validation> validation) {
    /** Nothing said: the budget holds scatter only. */
    public static final UncertaintyRule NONE = new UncertaintyRule(Stated.BUDGET, Map.of(), Optional.empty());

    /** Which way the reported uncertainty comes from. */
    public enum Stated implements Worded {
        /** From the budget of each result. */
        BUDGET("budget"),
        /** From the laboratory's validation. */
        VALIDATION("validation");

        private final String word;

        Stated(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    /**
     * Figures of a validation, as fractions of the value.
     *
     * @param precision intermediate precision, positive
     * @param bias standard uncertainty of the bias, at least 0
     */
    public record Validation(double precision, double bias) {
        /** Refuses what is no precision. */
        public Validation {
            if (!(precision > 0 && bias >= 0 && precision <= Double.MAX_VALUE && bias <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException(
                        "precision must be > 0 and bias at least 0 but were " + precision + " and " + bias);
            }
        }
    }

    /** The same with one quantity as uncertain as another says. */
    public UncertaintyRule with(InputQuantity quantity, Spread spread) {
        EnumMap<InputQuantity, Spread> more = new EnumMap<>(InputQuantity.class);
        more.putAll(inputs);
        more.put(quantity, spread);
        return new UncertaintyRule(stated, more, validation);
    }

    /** Keeps a copy that cannot change. */
    public UncertaintyRule {
        EnumMap<InputQuantity, Spread> copy = new EnumMap<>(InputQuantity.class);
        copy.putAll(inputs);
        inputs = Collections.unmodifiableMap(copy);
        if (stated == Stated.VALIDATION && validation.isEmpty()) {
            throw new IllegalArgumentException("validation must be given where it is stated but was absent");
        }
    }
}
