package tallywell.method;

/** How a net ΔA becomes a concentration. */
public sealed interface CalibrationRule {
    /** The word behind {@code by:}. */
    String word();

    /** From the molar absorptivity and the light path. */
    record ByAbsorptivity() implements CalibrationRule {
        @Override
        public String word() {
            return "absorptivity";
        }
    }

    /** From one standard: a line from zero through the mean of its wells. */
    record BySingleStandard() implements CalibrationRule {
        @Override
        public String word() {
            return "single-standard";
        }
    }

    /**
     * From several standards.
     *
     * @param model shape of the curve
     * @param weights how the points weigh
     */
    record ByStandards(Model model, Weights weights) implements CalibrationRule {
        @Override
        public String word() {
            return "standards";
        }
    }
}
