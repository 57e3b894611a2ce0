package tallywell.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.table.Delimiter;

/** One list under way. */
final class WellList {
    final Sheet sheet;
    final WellPosition position;
    private final int from;
    private final int limit;
    private final int start;
    private final WellSlips slips;
    final List<Piece> pieces = new ArrayList<>();
    final List<Notice> notes = new ArrayList<>();
    int[] rows = new int[16];
    private int count;
    private SeriesRows series = new SeriesRows(-1, "", 0, List.of());
    int top;
    int last;

    WellList(Sheet sheet, WellPosition position, int from, int limit, int start) {
        this.sheet = sheet;
        this.position = position;
        this.from = from;
        this.limit = limit;
        this.start = start;
        slips = new WellSlips(sheet, position, this::hasNumbers);
    }

    boolean collect() throws InputException {
        if (start > 0 && hasNumbers(start - 1)) {
            slips.refuseLabelled(start - 1);
            slips.refuseSlip(start - 1, start);
        }
        gather();
        series = SeriesRows.above(sheet, start, from);
        top = headings();
        rows = Arrays.copyOf(rows, count);
        List<Column> columns = columns();
        List<Column> values = values(columns);
        if (values.isEmpty() || count < 2 && !isHeaded()) {
            return false;
        }
        refuseWidths(columns, values);
        notes.addAll(series.notes(sheet, from));
        new ListReadings(this, columns, values).collect();
        return true;
    }

    private boolean isHeaded() {
        return top < start;
    }

    /** Whether it is a list of wells, readings or not. */
    boolean isList() {
        return count >= 2;
    }

    /** What a list that holds no readings looks like to whoever expected some. */
    Notice leftOut() {
        String headings = columns().stream()
                .map(Column::heading)
                .filter(heading -> !heading.isEmpty())
                .map(heading -> "'" + heading + "'")
                .collect(Collectors.joining(", "));
        return Notice.information(
                sheet.table().place(start),
                "left out: a list of wells without a column known as readings"
                        + (headings.isEmpty() ? "" : " (" + headings + ")"));
    }

    private void refuseWidths(List<Column> columns, List<Column> values) throws InputException {
        List<Integer> all = Arrays.stream(rows).boxed().toList();
        int headings = isHeaded() ? lowestHeading() : -1;
        boolean alone = from == 0 && limit == Integer.MAX_VALUE;
        if (alone) {
            RowWidths.check(sheet, all, headings);
        }
        if (alone && isHeaded() && headings == top) {
            RowWidths.checkHeaded(sheet, all, headings);
        }
        refuseCutDecimals(columns, values);
    }

    /** A column of small whole numbers and one of digits beside it are numbers that a delimiter has cut in two. */
    private void refuseCutDecimals(List<Column> columns, List<Column> values) throws InputException {
        boolean comma = sheet.table()
                .form()
                .map(form -> form.delimiter() == Delimiter.COMMA)
                .orElse(false);
        if (!comma || columns.stream().anyMatch(column -> column.decimals() > 0)) {
            return;
        }
        for (Column value : values) {
            int at = value.index();
            boolean cut = Arrays.stream(rows)
                    .allMatch(row -> sheet.text(row, at).matches("[-+]?\\d")
                            && sheet.text(row, at + 1).matches("\\d{2,}"));
            if (cut) {
                throw sheet.fault(
                        rows[0],
                        at,
                        "whole numbers in two columns beside each other, the first",
                        "readings with decimals; a decimal comma between cells that are set apart by commas cuts numbers"
                                + " in two");
            }
        }
    }

    /** All rows that name a well, over blank rows and rows of words between them. */
    private void gather() throws InputException {
        int at = start;
        while (at < sheet.rows()) {
            if (position.well(sheet, at).isPresent()) {
                if (count == rows.length) {
                    rows = Arrays.copyOf(rows, count * 2);
                }
                rows[count++] = at;
                last = at;
                at++;
                continue;
            }
            slips.refuseOutside(at, count == 0 ? -1 : last);
            int next = continuation(at);
            if (next < 0) {
                break;
            }
            at = next;
        }
    }

    private boolean hasNumbers(int row) {
        for (int column = from; column < Math.min(limit, sheet.width(row)); column++) {
            if (!position.holds(column) && sheet.look(row, column).isNumber()) {
                return true;
            }
        }
        return false;
    }

    /** The row where the list goes on behind blank rows or a row of statistics; -1 if it ends. */
    private int continuation(int row) {
        int next = sheet.nextFilled(row);
        if (next >= sheet.rows()) {
            return -1;
        }
        if (position.well(sheet, next).isPresent()) {
            return next;
        }
        int after = isEvent(next) ? sheet.nextFilled(next + 1) : -1;
        if (after >= 0 && position.well(sheet, after).isPresent()) {
            notes.add(Notice.information(
                    sheet.table().place(next), "left out: '" + sheet.line(next) + "', amid the readings"));
            last = next;
            return after;
        }
        boolean summary = hasNumbers(next)
                && Facts.ofHeading(sheet.text(next, position.first())).isOtherQuantity();
        if (!summary) {
            return -1;
        }
        notes.add(Notice.information(
                sheet.table().place(next), "left out: '" + sheet.text(next, position.first()) + "'"));
        last = next;
        int below = sheet.nextFilled(next + 1);
        return below < sheet.rows() ? below : -1;
    }

    /** Whether a row is a mark of a page or an injection, a line drawn, or repeats the headings. */
    private boolean isEvent(int row) {
        if (start > 0 && sheet.line(row).equals(sheet.line(start - 1))) {
            return true;
        }
        boolean drawn = sheet.filled(row).stream()
                .allMatch(column -> sheet.text(row, column).chars().noneMatch(Character::isLetterOrDigit));
        Facts facts = Facts.ofLine(sheet.line(row));
        return drawn
                || !hasNumbers(row)
                        && facts.has(Meaning.EVENT)
                        && facts.plate().isEmpty()
                        && facts.wavelengthNm().isEmpty();
    }

    /** The first row of headings; the first row of wells if there are none. */
    private int headings() {
        int row = series.isEmpty() ? start : series.first();
        int lowest = row;
        for (int i = 0; i < WellsDown.MOST_HEADING_ROWS; i++) {
            int above = row - 1;
            if (above >= 0 && sheet.isBlank(above) && row == lowest) {
                above--;
            }
            if (above < 0 || sheet.isBlank(above) || !isHeading(above, row == lowest)) {
                break;
            }
            row = above;
        }
        return row;
    }

    private boolean isHeading(int row, boolean lowest) {
        int over = 0;
        boolean named = false;
        boolean stray = false;
        for (int column = from; column < Math.min(limit, sheet.width(row)); column++) {
            Look look = sheet.look(row, column);
            if (look == Look.EMPTY) {
                continue;
            }
            if (look == Look.WELL) {
                return false;
            }
            over++;
            stray |= look.isNumber()
                    && !position.holds(column)
                    && !Facts.isWavelength(sheet.number(row, column, DecimalMark.POINT));
            named |= position.holds(column)
                    && (Words.in(sheet.text(row, column)).contains(Meaning.WELL)
                            || Words.in(sheet.text(row, column)).contains(Meaning.ROW)
                            || Words.in(sheet.text(row, column)).contains(Meaning.COLUMN));
        }
        if (over == 2 && stray && !named) {
            // A setting and its value.
            return false;
        }
        boolean beside = over == 1 && sheet.look(row, position.first()) == Look.EMPTY;
        return lowest
                ? over >= 2 || named || beside
                : over >= 2 && named || over >= 1 && !keyAndValue(row) && aligned(row);
    }

    private boolean keyAndValue(int row) {
        return sheet.text(row, from).matches(".*[:=]$") || sheet.filled(row).size() == 1 && !aligned(row);
    }

    /** A second row of headings stands over the readings, not at the left edge where titles and settings stand. */
    private boolean aligned(int row) {
        List<Integer> table = sheet.filled(start);
        int left = table.stream().filter(column -> column >= from).findFirst().orElse(from);
        return sheet.look(row, position.first()) == Look.EMPTY
                && sheet.look(row, left) == Look.EMPTY
                && sheet.filled(row).stream()
                        .noneMatch(column -> sheet.text(row, column).matches("(?s)\\D*:.*"));
    }

    private String heading(int column) {
        StringBuilder heading = new StringBuilder();
        for (int row = top; row < start; row++) {
            if (sheet.isBlank(row) || row == series.times() || series.others().contains(row)) {
                continue;
            }
            int at = column;
            boolean upper = row < lowestHeading();
            // A cell merged over several columns keeps its words in the first.
            while (upper && at > from && sheet.look(row, at) == Look.EMPTY) {
                at--;
            }
            String text = sheet.text(row, at);
            heading.append(heading.isEmpty() || text.isEmpty() ? "" : " ").append(text);
        }
        return heading.toString();
    }

    int lowestHeading() {
        int row = start - 1;
        while (row > top && sheet.isBlank(row)) {
            row--;
        }
        return row;
    }

    private List<Column> columns() {
        int width = 0;
        for (int row : rows) {
            width = Math.max(width, sheet.width(row));
        }
        List<Column> columns = new ArrayList<>();
        for (int column = from; column < Math.min(limit, width); column++) {
            if (!position.holds(column)) {
                columns.add(column(column));
            }
        }
        return columns;
    }

    private Column column(int index) {
        String heading = isHeaded() ? heading(index) : "";
        String time = sheet.text(series.times(), index);
        if (series.times() < 0 || time.isEmpty() || time.equals(series.label())) {
            return Column.of(sheet, index, heading, rows);
        }
        Column timed = Column.of(sheet, index, time, rows);
        Facts over = Facts.ofHeading(heading);
        Facts upper = (over.has(Meaning.SAMPLE) || over.has(Meaning.WELL) ? Facts.none() : over)
                .withTime(Optional.empty())
                .withCycle(OptionalInt.empty());
        return timed.with(timed.facts().or(upper));
    }

    /** What names the times over the columns, if a row of its own does; else empty. */
    String timesLabel() {
        return series.label();
    }

    /** The columns of readings. What is named as such counts more than what is not. */
    private List<Column> values(List<Column> columns) {
        List<Column> instants = instants(columns);
        if (instants.size() >= 2) {
            return instants;
        }
        for (Column.Role role : List.of(Column.Role.VALUE, Column.Role.UNNAMED, Column.Role.WHOLE)) {
            List<Column> found =
                    columns.stream().filter(column -> column.role() == role).toList();
            if (role == Column.Role.WHOLE) {
                found = found.stream().filter(column -> !isCounter(column)).toList();
            }
            if (!found.isEmpty()) {
                found = withBareHeadings(columns, found);
                noteOthers(columns, found);
                return found;
            }
        }
        return List.of();
    }

    /** Columns headed by bare numbers hold readings too: the numbers are wavelengths or times. */
    private static List<Column> withBareHeadings(List<Column> columns, List<Column> found) {
        return columns.stream()
                .filter(column -> found.contains(column)
                        || (column.role() == Column.Role.UNNAMED || column.role() == Column.Role.WHOLE)
                                && NumberForm.of(column.heading()) != NumberForm.NONE)
                .toList();
    }

    private void noteOthers(List<Column> columns, List<Column> values) {
        for (Column column : columns) {
            boolean numbers = column.role() == Column.Role.UNNAMED
                    || column.role() == Column.Role.WHOLE
                    || column.role() == Column.Role.OTHER;
            if (numbers && !values.contains(column) && column.numbers() > 0) {
                notes.add(Notice.information(
                        sheet.table().place(start),
                        "left out: the column "
                                + (column.heading().isEmpty()
                                        ? Integer.toString(column.index() + 1)
                                        : "'" + column.heading() + "'")));
            }
        }
    }

    /** Whether a column merely counts the rows. */
    private boolean isCounter(Column column) {
        for (int i = 0; i < count; i++) {
            if (sheet.look(rows[i], column.index()) != Look.WHOLE
                    || sheet.number(rows[i], column.index(), DecimalMark.POINT) != i + 1 && count > 1) {
                return false;
            }
        }
        return count > 1;
    }

    /** Columns headed by times. */
    private List<Column> instants(List<Column> columns) {
        return columns.stream()
                .filter(column -> column.facts().time().isPresent()
                        && !column.facts().isOtherQuantity()
                        && (column.numbers() + column.marks() > 0 || column.filled() == 0))
                .toList();
    }
}
