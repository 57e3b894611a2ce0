package tallywell.readings;

import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;

/** Refuses readings in thousandths of a unit whose mark may set apart thousands: 1.234 beside 987. */
final class Thousandths {
    private Thousandths() {}

    /**
     * Checks the numbers of a piece.
     *
     * @throws InputException at the first number that may be 1000 times as large
     */
    static void check(Piece piece) throws InputException {
        if (!piece.facts().has(Meaning.MILLI)) {
            return;
        }
        boolean whole = false;
        boolean decimal = false;
        int @Nullable [] doubtful = null;
        for (int well = 0; well < piece.wells().size(); well++) {
            for (int reading = 0; reading < piece.places().size().applyAsInt(well); reading++) {
                int row = piece.places().row().at(well, reading);
                int column = piece.places().column().at(well, reading);
                switch (piece.sheet().look(row, column)) {
                    case WHOLE -> whole = true;
                    case POINT, COMMA, STORED -> decimal = true;
                    case POINT_OR_THOUSANDS, COMMA_OR_THOUSANDS ->
                        doubtful = doubtful == null ? new int[] {row, column} : doubtful;
                    default -> {}
                }
            }
        }
        if (doubtful != null && whole && !decimal) {
            throw piece.sheet()
                    .fault(
                            doubtful[0],
                            doubtful[1],
                            "among whole thousandths the reading",
                            "a number whose mark is plainly decimal or plainly sets apart thousands");
        }
    }
}
