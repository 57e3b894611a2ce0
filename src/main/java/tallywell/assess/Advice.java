package tallywell.assess;

import tallywell.quantity.Dilution;

/** What to do next for a result. */
public sealed interface Advice {
    /** The advice as files spell it; empty if there is none. */
    String word();

    /** Nothing. */
    record None() implements Advice {
        @Override
        public String word() {
            return "";
        }
    }

    /** The same again. */
    record Repeat() implements Advice {
        @Override
        public String word() {
            return "repeat";
        }
    }

    /**
     * Again at another dilution.
     *
     * @param dilution final volume over sample volume
     */
    record Dilute(Dilution dilution) implements Advice {
        @Override
        public String word() {
            return "dilute:" + dilution;
        }
    }

    /** Again, reading longer. */
    record ReadLonger() implements Advice {
        @Override
        public String word() {
            return "read-longer";
        }
    }
}
