package tallywell.gui;

import tallywell.desk.Shown;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/**
 * Reads what is typed into fields, with the decimal mark of the user.
 *
 * @param shown how numbers are shown
 */
record Typed(Shown shown) {
    /** Several numbers in one line, with decimal points. */
    String pointed(String typed) {
        return shown.mark() == ',' ? typed.replaceAll("(\\d),(\\d)", "$1.$2") : typed;
    }

    Quantity quantity(String typed, Kind... kinds) throws InputException {
        try {
            return Quantity.parse(shown.pointed(typed), kinds);
        } catch (IllegalArgumentException e) {
            throw new InputException(Place.nowhere(), String.valueOf(e.getMessage()), e);
        }
    }

    Dilution dilution(String typed) throws InputException {
        try {
            return Dilution.parse(shown.pointed(typed));
        } catch (IllegalArgumentException e) {
            throw new InputException(Place.nowhere(), String.valueOf(e.getMessage()), e);
        }
    }
}
