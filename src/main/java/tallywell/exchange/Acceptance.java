package tallywell.exchange;

import tallywell.assess.Assessment;
import tallywell.assess.Check;

/** The acceptance of a batch as one state. */
final class Acceptance {
    private Acceptance() {}

    /** Failed if one check failed, passed if one passed and none failed; else nothing was assessed. */
    static Check.State state(Assessment assessment) {
        if (!assessment.passed()) {
            return Check.State.FAILED;
        }
        return assessment.count(Check.State.PASSED) > 0 ? Check.State.PASSED : Check.State.NOT_ASSESSED;
    }
}
