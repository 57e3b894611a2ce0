package tallywell.readings;

import java.util.Optional;
import tallywell.notice.InputException;

/** A way to write readings down. One class each; see docs/importing.md for how to add one. */
interface Form {
    /**
     * Looks whether readings in this form begin at a row.
     *
     * @param sheet the sheet
     * @param row a row that is not blank
     * @return empty if this form does not begin here
     * @throws InputException if it does, but cannot be right
     */
    Optional<Finding> find(Sheet sheet, int row) throws InputException;
}
