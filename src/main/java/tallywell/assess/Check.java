package tallywell.assess;

import java.util.Locale;

/**
 * One criterion for the batch.
 *
 * @param name in words an analyst uses
 * @param limit what the method allows, with unit; empty if it sets no limit
 * @param found what was found, with unit
 * @param state how it went
 * @param source where the limit comes from
 */
public record Check(String name, String limit, String found, State state, String source) {
    /** How a check went. */
    public enum State {
        /** Within the limit. */
        PASSED,
        /** Outside the limit. */
        FAILED,
        /** There is no limit, or nothing to hold against it; this never counts as passed. */
        NOT_ASSESSED;

        /** The state in words. */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }
}
