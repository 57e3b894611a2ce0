package tallywell.readings;

import java.util.function.IntPredicate;
import tallywell.notice.InputException;

/** Refuses rows of a list in which something else stands where a well should: by it, their readings would vanish. */
final class WellSlips {
    private final Sheet sheet;
    private final WellPosition position;
    private final IntPredicate numbers;

    /**
     * For one list.
     *
     * @param numbers whether a row holds numbers beside its well
     */
    WellSlips(Sheet sheet, WellPosition position, IntPredicate numbers) {
        this.sheet = sheet;
        this.position = position;
        this.numbers = numbers;
    }

    /** A word like a well that no plate has, in the midst of wells, is a slip and no title. */
    void refuseOutside(int row, int last) throws InputException {
        String text = position.letter() < 0 ? sheet.text(row, position.first()) : "";
        boolean filled = numbers.test(row);
        if (filled
                && position.letter() >= 0
                && row == last + 1
                && (position.well(sheet, row + 1).isPresent() || isCountedFrom0(row))) {
            throw sheet.fault(
                    row, position.first(), "amid wells the row", "a letter and a number that name a well of a plate");
        }
        if (filled && row == last + 1) {
            refuseLabelled(row);
        }
        if (filled && text.matches("[A-Za-z]{1,2} ?\\d{1,4}")) {
            throw sheet.fault(row, position.first(), "the well", "A1 to AF48, wells that plates have");
        }
        if (filled && !text.isEmpty() && row == last + 1 && isMistyped(row, text)) {
            throw sheet.fault(
                    row,
                    position.first(),
                    "where a well should stand",
                    "a well such as B7, in letters of the Latin alphabet");
        }
        if (filled
                && text.isEmpty()
                && position.letter() < 0
                && last >= 0
                && row == last + 1
                && position.well(sheet, row + 1).isPresent()) {
            throw new InputException(
                    sheet.table().place(row), "found numbers without a well; expected a well such as B7");
        }
    }

    /** Whether a row amid wells, or one that is written like a well, names none: a slip, by which it would vanish. */
    private boolean isMistyped(int row, String text) {
        boolean wellLike = text.length() <= 5
                && text.chars().anyMatch(Character::isLetter)
                && text.chars().anyMatch(c -> Character.isDigit(c) || c == 'O' || c == 'o' || c == 'l' || c == 'I');
        boolean known = !Words.in(text).isEmpty();
        return !known && (wellLike || position.well(sheet, row + 1).isPresent());
    }

    /** The row above the first well must not be one whose well was mistyped or counted from 0. */
    void refuseSlip(int row, int start) throws InputException {
        if (position.letter() >= 0 && isCountedFrom0(row)) {
            throw sheet.fault(
                    row, position.first(), "rows or columns of the plate counted from 0, at", "both counted from 1");
        }
        String text = position.letter() < 0 ? sheet.text(row, position.first()) : "";
        boolean alike = sheet.filled(row).size() == sheet.filled(start).size();
        boolean zero = text.matches("[A-Za-z]{1,2} ?0{1,3}");
        boolean foreign = text.length() <= 4 && text.matches("\\p{L}{1,2}\\d{1,3}");
        if (alike && (zero || foreign)) {
            throw sheet.fault(
                    row,
                    position.first(),
                    "where a well should stand",
                    "a well such as B7, in letters of the Latin alphabet, counted from 1");
        }
    }

    private boolean isCountedFrom0(int row) {
        return sheet.text(row, position.letter()).matches("0{1,2}")
                || sheet.text(row, position.number()).matches("0{1,2}");
    }

    /** A well with more in its cell is a row of the list that would go by in silence. */
    void refuseLabelled(int row) throws InputException {
        if (position.letter() < 0
                && WellHeading.labelled(sheet.text(row, position.first())).isPresent()) {
            throw sheet.fault(
                    row, position.first(), "the well", "a well such as B7, and its sample in a column of its own");
        }
    }
}
