package tallywell.readings;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import tallywell.notice.InputException;

/**
 * Finds the column beside a grid that names its rows. Where several hold letters, one that is headed as something else
 * gives way; then the one in which they run on, A, B, C …, the longest is meant.
 */
final class GridSide {
    /** No plate has more rows, upright or transposed. */
    private static final int MOST_ROWS = 48;

    private static final Set<Meaning> ELSE = EnumSet.of(
            Meaning.SAMPLE, Meaning.MARK, Meaning.TIME, Meaning.OTHER_TIME, Meaning.CYCLE, Meaning.TEMPERATURE);

    /** The row of the plate that a cell names; negative if it names none. */
    interface Names {
        int at(Sheet sheet, int row, int column);
    }

    private final Sheet sheet;
    private final int headings;
    private final int first;
    private final Names names;

    /**
     * A grid under a row of headings.
     *
     * @param first its first row
     */
    GridSide(Sheet sheet, int headings, int first, Names names) {
        this.sheet = sheet;
        this.headings = headings;
        this.first = first;
        this.names = names;
    }

    /**
     * The column among those from one to before another.
     *
     * @throws InputException if two would do that name different rows
     */
    OptionalInt in(int from, int to) throws InputException {
        int best = -1;
        Map<Integer, Integer> ranks = new HashMap<>();
        for (int column = from; column < to; column++) {
            if (names.at(sheet, first, column) >= 0) {
                int rank = rank(column);
                ranks.put(column, rank);
                best = rank >= ranks.getOrDefault(best, Integer.MIN_VALUE) ? column : best;
            }
        }
        int highest = ranks.getOrDefault(best, Integer.MIN_VALUE);
        for (Map.Entry<Integer, Integer> each : ranks.entrySet()) {
            int column = each.getKey();
            boolean other = names.at(sheet, first, column) != names.at(sheet, first, best);
            if (other && each.getValue() == highest) {
                throw sheet.fault(
                        first,
                        column,
                        "two columns that may name the rows of the plate, '" + sheet.text(first, best) + "' and",
                        "one, or the heading Row over it");
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }

    private int rank(int column) {
        Set<Meaning> heading = Words.in(sheet.text(headings, column));
        int headed = heading.contains(Meaning.ROW) ? 2 : heading.stream().anyMatch(ELSE::contains) ? 0 : 1;
        return headed * (MOST_ROWS + 1) + run(column);
    }

    private int run(int column) {
        int run = 1;
        int before = names.at(sheet, first, column);
        for (int row = sheet.nextFilled(first + 1);
                row < sheet.rows() && run < MOST_ROWS;
                row = sheet.nextFilled(row + 1)) {
            int name = names.at(sheet, row, column);
            if (name < 0 || name != before + 1) {
                break;
            }
            before = name;
            run++;
        }
        return run;
    }
}
