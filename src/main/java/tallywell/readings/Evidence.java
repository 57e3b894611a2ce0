package tallywell.readings;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** How the numbers of a file are written, and what follows for the decimal mark. */
final class Evidence {
    private final Map<NumberForm, Place> readings = new EnumMap<>(NumberForm.class);
    private final Map<NumberForm, Place> times = new EnumMap<>(NumberForm.class);

    /** Takes up how a reading is written. */
    void reading(NumberForm form, Supplier<Place> place) {
        if (!readings.containsKey(form)) {
            readings.put(form, place.get());
        }
    }

    /** Takes up how a time is written. */
    void time(NumberForm form, Supplier<Place> place) {
        if (!times.containsKey(form)) {
            times.put(form, place.get());
        }
    }

    private boolean has(NumberForm form) {
        return readings.containsKey(form) || times.containsKey(form);
    }

    private Place place(NumberForm form) {
        Place place = readings.containsKey(form) ? readings.get(form) : times.get(form);
        return place == null ? Place.nowhere() : place;
    }

    /**
     * The decimal marks that remain possible: one, or both.
     *
     * @throws InputException if the file uses both, or readings need thousands marks that nothing else bears out
     */
    List<DecimalMark> marks() throws InputException {
        NumberForm point = has(NumberForm.POINT) ? NumberForm.POINT : NumberForm.COMMA_THOUSANDS;
        NumberForm comma = has(NumberForm.COMMA) ? NumberForm.COMMA : NumberForm.POINT_THOUSANDS;
        if (has(point) && has(comma)) {
            throw new InputException(
                    place(comma),
                    "found a number with a decimal comma, while " + place(point).text()
                            + " has a decimal point; expected one decimal mark in the whole file");
        }
        if (has(point)) {
            checkThousands(NumberForm.COMMA_OR_THOUSANDS, NumberForm.COMMA_THOUSANDS, "comma");
            return List.of(DecimalMark.POINT);
        }
        if (has(comma)) {
            checkThousands(NumberForm.POINT_OR_THOUSANDS, NumberForm.POINT_THOUSANDS, "point");
            return List.of(DecimalMark.COMMA);
        }
        if (has(NumberForm.COMMA_OR_THOUSANDS)) {
            return List.of(DecimalMark.COMMA, DecimalMark.POINT);
        }
        // A lone point is a decimal point, as everywhere in this program.
        return List.of(DecimalMark.POINT);
    }

    /** Absorbances of a thousand and more do not exist, so a thousands mark in one needs proof that the file uses them. */
    private void checkThousands(NumberForm doubtful, NumberForm proof, String mark) throws InputException {
        Place where = readings.get(doubtful);
        if (where != null && !has(proof)) {
            throw new InputException(
                    where,
                    "found a reading with a " + mark + " that would set apart thousands, since the file has another"
                            + " decimal mark; expected one decimal mark in the whole file");
        }
    }
}
