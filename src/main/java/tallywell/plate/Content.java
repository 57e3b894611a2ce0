package tallywell.plate;

import java.util.Optional;
import tallywell.quantity.Dilution;
import tallywell.quantity.Quantity;

/** What a layout puts into a well. */
public sealed interface Content {
    /** The role as the files spell it. */
    String role();

    /** The word that stands in the layout: a slot number, a legend word, or {@code .}. */
    String word();

    /** The group of blanks the well belongs to, empty for the common one. */
    String group();

    /** Nothing: the well is not used. */
    record Unused() implements Content {
        @Override
        public String role() {
            return "unused";
        }

        @Override
        public String word() {
            return ".";
        }

        @Override
        public String group() {
            return "";
        }
    }

    /**
     * Everything but the analyte.
     *
     * @param word legend word
     * @param group group of blanks, empty for the common one
     * @param triggered false for a blank without trigger enzyme, to go with sample blanks
     */
    record Blank(String word, String group, boolean triggered) implements Content {
        @Override
        public String role() {
            return "blank";
        }
    }

    /**
     * A solution of known concentration that makes the calibration.
     *
     * @param word legend word
     * @param group group of blanks
     * @param level concentration of the solution pipetted, by analyte
     */
    record Standard(String word, String group, PerAnalyte level) implements Content {
        @Override
        public String role() {
            return "standard";
        }
    }

    /**
     * A material of known content that is treated like a sample.
     *
     * @param word legend word
     * @param group group of blanks
     * @param name as reports print it
     * @param assigned assigned value in the original material, by analyte; may be empty
     * @param tolerance allowed difference from the assigned value, as a percentage or in its unit
     * @param dilution of the control before pipetting
     */
    record Control(
            String word,
            String group,
            String name,
            PerAnalyte assigned,
            Optional<Quantity> tolerance,
            Dilution dilution)
            implements Content {
        @Override
        public String role() {
            return "control";
        }
    }

    /**
     * A sample to be measured.
     *
     * @param slot number in the sample list, from 1
     */
    record Sample(int slot) implements Content {
        /** Refuses slots below 1. */
        public Sample {
            if (!(slot >= 1)) {
                throw new IllegalArgumentException("slot must be at least 1 but was " + slot);
            }
        }

        @Override
        public String role() {
            return "sample";
        }

        @Override
        public String word() {
            return Integer.toString(slot);
        }

        /** Empty: the group of a sample stands in the sample list. */
        @Override
        public String group() {
            return "";
        }
    }

    /**
     * A sample without trigger enzyme.
     *
     * @param word legend word
     * @param group group of blanks, empty for that of its sample
     * @param of slot of the sample
     */
    record SampleBlank(String word, String group, int of) implements Content {
        @Override
        public String role() {
            return "sample-blank";
        }
    }

    /**
     * A sample with analyte added.
     *
     * @param word legend word
     * @param group group of blanks, empty for that of its sample
     * @param of slot of the sample
     * @param added rise in concentration of the solution pipetted, by analyte
     * @param fraction part of the pipetted volume that is spike, 0 to below 1
     */
    record Spike(String word, String group, int of, PerAnalyte added, double fraction) implements Content {
        /** Refuses fractions outside 0 to 1. */
        public Spike {
            if (!(fraction >= 0 && fraction < 1)) {
                throw new IllegalArgumentException("fraction must be 0 to below 1 but was " + fraction);
            }
        }

        @Override
        public String role() {
            return "spike";
        }
    }
}
