package tallywell.readings;

import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/**
 * A part of a sheet that holds readings of one plate at one wavelength: where they stand and what is known of them. The
 * numbers are not read yet.
 *
 * @param sheet where it stands
 * @param form the form it was found in, in the words of a message
 * @param first its first row, headings included
 * @param last its last row
 * @param facts what names it
 * @param wells the wells in the order of the file
 * @param places where their readings stand
 * @param times the times of the readings of a well by its number; null if it has none of its own
 * @param whole the plate, if the form shows all of it; null if it must be inferred from the wells
 * @param title the name that stands over it; empty if none
 * @param marks a column that says why a reading is empty; -1 if there is none
 */
record Piece(
        Sheet sheet,
        String form,
        int first,
        int last,
        Facts facts,
        List<Well> wells,
        Places places,
        @Nullable IntFunction<Times> times,
        @Nullable PlateFormat whole,
        String title,
        int marks) {
    Piece with(Facts replaced) {
        return with(replaced, title);
    }

    Piece with(Facts replaced, String over) {
        return new Piece(sheet, form, first, last, replaced, wells, places, times, whole, over, marks);
    }

    /** Counts how its numbers are written. */
    void testify(Evidence evidence) {
        for (int well = 0; well < wells.size(); well++) {
            for (int reading = 0; reading < places.size().applyAsInt(well); reading++) {
                int row = places.row().at(well, reading);
                int column = places.column().at(well, reading);
                Look look = sheet.look(row, column);
                if (look.isDecimal()) {
                    evidence.reading(look.form(), () -> sheet.table().place(row, column));
                }
            }
        }
        if (times != null) {
            Times before = null;
            for (int well = 0; well < wells.size(); well++) {
                Times of = times.apply(well);
                if (of != before) {
                    of.testify(evidence);
                }
                before = of;
            }
        }
        facts.time()
                .flatMap(Moment::number)
                .ifPresent(number ->
                        evidence.time(NumberForm.of(number), () -> sheet.table().place(first)));
    }

    /**
     * Reads one reading.
     *
     * @return what the reader said instead of a number; then the value is not set
     * @throws InputException if the cell holds neither number nor mark
     */
    Mark read(int well, int reading, DecimalMark mark, double[] values, int at) throws InputException {
        int row = places.row().at(well, reading);
        int column = places.column().at(well, reading);
        Look look = sheet.look(row, column);
        if (look.isNumber()) {
            if (look != Look.STORED && !look.form().fits(mark)) {
                throw sheet.fault(row, column, "the reading", "a number with a " + mark.label());
            }
            double value = sheet.number(row, column, mark);
            if (!(Math.abs(value) <= Double.MAX_VALUE)) {
                throw sheet.fault(row, column, "the reading", "a number of usual size");
            }
            values[at] = facts.has(Meaning.MILLI) ? value / 1000 : value;
            return Mark.NONE;
        }
        if (look == Look.OVER) {
            return Mark.OVER;
        }
        if (look == Look.EMPTY || look == Look.MISSING) {
            return sheet.look(row, marks) == Look.OVER ? Mark.OVER : Mark.MISSING;
        }
        throw sheet.fault(row, column, "the reading", "a number, a word for out of range or missing, or an empty cell");
    }

    /** The first column of its readings. */
    int left() {
        return columns().min().orElse(0);
    }

    /** The last column of its readings. */
    int right() {
        return columns().max().orElse(0);
    }

    /** Columns ascend or stay along the readings of a well, so that the first and the last tell all. */
    private IntStream columns() {
        return IntStream.range(0, wells.size())
                .filter(well -> places.size().applyAsInt(well) > 0)
                .flatMap(well -> IntStream.of(
                        places.column().at(well, 0),
                        places.column().at(well, places.size().applyAsInt(well) - 1)));
    }

    /** Its rows in the words of a message. */
    String where() {
        String from = sheet.table().where(first);
        return first == last
                ? from
                : from.replaceFirst("^line ", "lines ").replaceFirst(", row ", ", rows ") + " to "
                        + sheet.table().where(last).replaceFirst("^.*(line|row) ", "");
    }
}
