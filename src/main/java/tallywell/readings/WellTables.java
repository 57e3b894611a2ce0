package tallywell.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.Well;

/**
 * A table for each well: a line that names the well and nothing else, below it headings, of which one is for times, and
 * the readings down from there.
 */
final class WellTables implements Form {
    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        Optional<Well> well = alone(sheet, row);
        if (well.isEmpty()) {
            return Optional.empty();
        }
        int headings = sheet.nextFilled(row + 1);
        if (!isHeadings(sheet, headings)) {
            return Optional.empty();
        }
        int[] rows = rowsBelow(sheet, headings);
        if (rows.length == 0) {
            return Optional.of(new Finding(List.of(), row, headings, List.of(leftOut(sheet, row))));
        }
        List<Column> columns = new ArrayList<>();
        for (int column = 0; column < sheet.width(headings); column++) {
            columns.add(Column.of(sheet, column, sheet.text(headings, column), rows));
        }
        List<Column> times = with(columns, Column.Role.TIME);
        List<Column> values = with(columns, Column.Role.VALUE);
        values = values.isEmpty() ? with(columns, Column.Role.UNNAMED) : values;
        if (times.size() != 1 || values.isEmpty()) {
            throw sheet.fault(
                    headings,
                    sheet.filled(headings).get(0),
                    "the headings of a table for one well",
                    "one column headed as times, and one or more as readings");
        }
        return Optional.of(found(sheet, row, well.get(), rows, columns, times.get(0), values));
    }

    private static Finding found(
            Sheet sheet, int row, Well well, int[] rows, List<Column> columns, Column time, List<Column> values)
            throws InputException {
        RowWidths.check(sheet, Arrays.stream(rows).boxed().toList(), -1);
        List<Notice> notes = new ArrayList<>(othersLeftOut(sheet, row, columns, values));
        int last = rows[rows.length - 1];
        int next = last + 1;
        while (next < sheet.rows() && !sheet.isBlank(next) && holdsReading(sheet, next, values)) {
            if (!Words.in(sheet.line(next)).contains(Meaning.STATISTIC)) {
                throw sheet.fault(next, time.index(), "the time", "a time such as 30, 30 s or 0:00:30");
            }
            notes.add(leftOut(sheet, next));
            last = next++;
        }
        Times at = Times.of(sheet, time.time(), time.index(), rows);
        List<Piece> pieces = new ArrayList<>();
        for (Column value : values) {
            pieces.add(new Piece(
                    sheet,
                    "a table for each well",
                    row,
                    last,
                    value.facts(),
                    List.of(well),
                    Places.across(rows, new int[] {value.index()}),
                    none -> at,
                    null,
                    "",
                    -1));
        }
        return new Finding(pieces, row, last, notes);
    }

    private static boolean holdsReading(Sheet sheet, int row, List<Column> values) {
        return values.stream()
                .anyMatch(value ->
                        sheet.look(row, value.index()).isNumber() || sheet.look(row, value.index()) == Look.OVER);
    }

    /** The well that a row names if it names nothing else: {@code A1}, {@code Well A1}, {@code Well: A1} in one cell or two. */
    private static Optional<Well> alone(Sheet sheet, int row) {
        List<Integer> filled = sheet.filled(row);
        int name = filled.get(filled.size() - 1);
        if (filled.size() > 2
                || filled.size() == 2
                        && !Words.in(sheet.text(row, filled.get(0))).contains(Meaning.WELL)) {
            return Optional.empty();
        }
        return new WellPosition(name, -1, -1).well(sheet, row);
    }

    /** Whether a row holds words only, of which one is for times. */
    private static boolean isHeadings(Sheet sheet, int row) {
        return row < sheet.rows()
                && sheet.filled(row).size() >= 2
                && sheet.filled(row).stream().noneMatch(column -> isReadable(sheet, row, column))
                && sheet.filled(row).stream()
                        .anyMatch(column ->
                                Facts.ofHeading(sheet.text(row, column)).has(Meaning.TIME));
    }

    /** The rows below the headings, up to the first that does not begin with a number or a time. */
    private static int[] rowsBelow(Sheet sheet, int headings) {
        List<Integer> rows = new ArrayList<>();
        int at = headings + 1;
        while (at < sheet.rows()
                && !sheet.isBlank(at)
                && isReadable(sheet, at, sheet.filled(at).get(0))) {
            rows.add(at++);
        }
        return rows.stream().mapToInt(Integer::intValue).toArray();
    }

    private static boolean isReadable(Sheet sheet, int row, int column) {
        return sheet.look(row, column).isNumber()
                || sheet.look(row, column) == Look.CLOCK
                || Moment.parse(sheet.text(row, column)).isPresent();
    }

    private static List<Column> with(List<Column> columns, Column.Role role) {
        return columns.stream().filter(column -> column.role() == role).toList();
    }

    private static List<Notice> othersLeftOut(Sheet sheet, int row, List<Column> columns, List<Column> values) {
        return columns.stream()
                .filter(column -> !values.contains(column) && column.numbers() > 0)
                .filter(column -> column.role() == Column.Role.OTHER || column.role() == Column.Role.UNNAMED)
                .map(column ->
                        Notice.information(sheet.table().place(row), "left out: the column '" + column.heading() + "'"))
                .toList();
    }

    private static Notice leftOut(Sheet sheet, int row) {
        return Notice.information(sheet.table().place(row), "left out: '" + sheet.line(row) + "'");
    }
}
