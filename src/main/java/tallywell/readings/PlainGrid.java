package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/**
 * A plate drawn as a grid without headings, or with them on one side only. Then nothing but its size says which plate it
 * is, so it must have exactly the rows and columns of a known one, upright or transposed. Under numbers alone several
 * grids may follow each other, each with its time beside its first row.
 */
final class PlainGrid implements Form {
    /** Smaller rectangles of numbers are too common to be taken for plates unless they are named by letters. */
    private static final int LEAST_BARE = 24;

    /** A smaller bare rectangle on its side may as well be a part of a larger plate. */
    private static final int LEAST_TURNED = 96;

    /** No plate has more rows, upright or transposed. */
    private static final int MOST_LINES = 48;

    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        Optional<Finding> numbered = numbered(sheet, row);
        return numbered.isPresent() ? numbered : rectangle(sheet, row);
    }

    /** Columns headed 1, 2, 3 … or A, B, C …, rows without names. */
    private Optional<Finding> numbered(Sheet sheet, int row) {
        for (boolean transposed : new boolean[] {false, true}) {
            for (int column = 0; column < sheet.width(row); column++) {
                int count = ascending(sheet, row, column, transposed);
                if (count >= 2) {
                    Optional<Finding> found = groups(sheet, row, column, count, transposed);
                    if (found.isPresent()) {
                        return found;
                    }
                    column += count;
                }
            }
        }
        return Optional.empty();
    }

    private static int ascending(Sheet sheet, int row, int column, boolean transposed) {
        int count = 0;
        while ((transposed ? sheet.plateRow(row, column + count) : sheet.plateColumn(row, column + count)) == count) {
            count++;
        }
        return count;
    }

    private Optional<Finding> groups(Sheet sheet, int headings, int from, int count, boolean transposed) {
        Optional<PlateFormat> format = PlateFormat.KNOWN.stream()
                .filter(each -> (transposed ? each.rows() : each.columns()) == count)
                .findFirst();
        if (format.isEmpty()) {
            return Optional.empty();
        }
        int deep = format.get().wells() / count;
        List<Piece> pieces = new ArrayList<>();
        int last = headings;
        int at = sheet.nextFilled(headings + 1);
        while (at < sheet.rows() && isFull(sheet, at, deep, from, count)) {
            Facts facts = gutter(sheet, headings, at, from);
            pieces.add(piece(
                    sheet, new Area(headings, at, from, format.get(), transposed), facts, "grid with numbers only"));
            last = at + deep - 1;
            at = sheet.nextFilled(last + 1);
        }
        boolean more = at < sheet.rows() && at == last + 1 && hasReadings(sheet, at, from, count);
        return pieces.isEmpty() || more
                ? Optional.empty()
                : Optional.of(new Finding(pieces, headings, last, List.of()));
    }

    private static boolean hasReadings(Sheet sheet, int row, int from, int count) {
        for (int column = from; column < from + count; column++) {
            if (sheet.look(row, column).isReading()) {
                return true;
            }
        }
        return false;
    }

    /** Whether so many lines follow that hold readings or nothing, and nothing beside them but the first. */
    private static boolean isFull(Sheet sheet, int row, int deep, int from, int count) {
        for (int line = row; line < row + deep; line++) {
            if (!hasReadings(sheet, line, from, count)) {
                return false;
            }
            for (int column = 0; column < from + count; column++) {
                Look look = sheet.look(line, column);
                boolean inside = column >= from;
                if (inside && look != Look.EMPTY && !look.isReading() || !inside && look != Look.EMPTY && line > row) {
                    return false;
                }
            }
        }
        return true;
    }

    private static Facts gutter(Sheet sheet, int headings, int row, int from) {
        Facts facts = Facts.none();
        for (int column = 0; column < from; column++) {
            String heading = sheet.text(headings, column);
            if (Words.in(heading).contains(Meaning.TIME)) {
                facts = facts.withTime(TimeHeading.of(heading).read(sheet.text(row, column)));
            } else if (sheet.look(row, column) == Look.TEXT) {
                facts = facts.or(Facts.ofHeading(sheet.text(row, column)));
            }
        }
        return facts;
    }

    /** Letters beside the rows, or nothing at all. */
    private Optional<Finding> rectangle(Sheet sheet, int row) throws InputException {
        List<Integer> filled = sheet.filled(row);
        int first = filled.get(0);
        boolean lettered = sheet.plateRow(row, first) == 0;
        boolean sided = lettered || isNumberedSide(sheet, row, first);
        int from = sided && filled.size() > 1 ? filled.get(1) : first;
        int to = right(sheet, row, from);
        int last = row;
        while (last - row <= MOST_LINES && isLine(sheet, last + 1, from, to, first, sided, last + 1 - row, lettered)) {
            last++;
        }
        int lines = last - row + 1;
        int columns = to - from;
        Optional<PlateFormat> upright = format(lines, columns);
        Optional<PlateFormat> turned = format(columns, lines);
        boolean transposed = upright.isEmpty();
        Optional<PlateFormat> format = upright.or(() -> turned);
        if (format.isEmpty()
                || !isLine(sheet, row, from, to, first, sided, 0, lettered)
                || sided && lettered == transposed
                || !sided && format.get().wells() < LEAST_BARE && !isAlone(sheet, row, last)
                || !sided && transposed && format.get().wells() < LEAST_TURNED
                || !sided && row > 0 && hasReadings(sheet, row - 1, from, to - from)
                || !sided && looksLikeTimes(sheet, row, last, from)) {
            return Optional.empty();
        }
        String form = (sided ? "grid with letters only" : "grid without headings") + (transposed ? ", transposed" : "");
        RowWidths.check(sheet, IntStream.rangeClosed(row, last).boxed().toList(), -1);
        Area area = new Area(row, row, from, format.get(), transposed);
        List<Notice> notes = new ArrayList<>();
        if (sheet.width(row) > to && filled.get(filled.size() - 1) >= to) {
            notes.add(Notice.information(sheet.table().place(row), "left out: what stands right of the grid"));
        }
        return Optional.of(new Finding(List.of(piece(sheet, area, Facts.none(), form)), row, last, notes));
    }

    /** The first column that holds no reading in any line of the paragraph, or that is headed as something else. */
    private static int right(Sheet sheet, int row, int from) {
        int to = from;
        while (isReadingDown(sheet, row, to)
                && !(sheet.look(row - 1, to) == Look.TEXT
                        && Facts.ofHeading(sheet.text(row - 1, to)).isOtherQuantity())) {
            to++;
        }
        return to;
    }

    private static boolean isReadingDown(Sheet sheet, int row, int column) {
        for (int line = row; line < Math.min(sheet.rows(), row + MOST_LINES) && !sheet.isBlank(line); line++) {
            if (sheet.look(line, column).isReading()) {
                return true;
            }
        }
        return false;
    }

    /** Rows of a transposed plate are named 1, 2, 3 …; a first row of readings alone cannot look like that. */
    private static boolean isNumberedSide(Sheet sheet, int row, int column) {
        return sheet.look(row, column) == Look.WHOLE
                && sheet.plateColumn(row, column) == 0
                && sheet.plateColumn(row + 1, column) == 1
                && sheet.plateColumn(row + 2, column) == 2;
    }

    private static Optional<PlateFormat> format(int rows, int columns) {
        return PlateFormat.KNOWN.stream()
                .filter(each -> each.rows() == rows && each.columns() == columns)
                .findFirst();
    }

    private static boolean isLine(
            Sheet sheet, int row, int from, int to, int side, boolean sided, int index, boolean lettered) {
        if (sided && (lettered ? sheet.plateRow(row, side) : sheet.plateColumn(row, side)) != index) {
            return false;
        }
        if (!sided && sheet.look(row, from - 1) != Look.EMPTY) {
            return false;
        }
        for (int column = from; column < to; column++) {
            Look look = sheet.look(row, column);
            if (look != Look.EMPTY && !look.isReading()) {
                return false;
            }
        }
        return hasReadings(sheet, row, from, to - from);
    }

    private static boolean isAlone(Sheet sheet, int first, int last) {
        return IntStream.range(0, sheet.rows())
                .filter(row -> row < first || row > last)
                .allMatch(row -> sheet.filled(row).stream()
                        .noneMatch(column -> sheet.look(row, column).isNumber()));
    }

    /** Whole numbers in equal steps down the first column, decimals beside them: times or counters, no wells. */
    private static boolean looksLikeTimes(Sheet sheet, int first, int last, int column) {
        double step = 0;
        for (int row = first; row <= last; row++) {
            if (sheet.look(row, column) != Look.WHOLE
                    || !sheet.look(row, column + 1).isDecimal()) {
                return false;
            }
            if (row > first) {
                double difference =
                        sheet.number(row, column, DecimalMark.POINT) - sheet.number(row - 1, column, DecimalMark.POINT);
                if (row > first + 1 && difference != step || difference <= 0) {
                    return false;
                }
                step = difference;
            }
        }
        return true;
    }

    /** A rectangle of a sheet that holds a plate. */
    private record Area(int first, int top, int left, PlateFormat format, boolean transposed) {
        int lines() {
            return transposed ? format.columns() : format.rows();
        }

        int columns() {
            return transposed ? format.rows() : format.columns();
        }
    }

    private static Piece piece(Sheet sheet, Area area, Facts facts, String form) {
        List<Well> wells = new ArrayList<>();
        int[] rows = new int[area.format().wells()];
        int[] columns = new int[rows.length];
        for (int line = 0; line < area.lines(); line++) {
            for (int column = 0; column < area.columns(); column++) {
                rows[wells.size()] = area.top() + line;
                columns[wells.size()] = area.left() + column;
                wells.add(area.transposed() ? new Well(column, line) : new Well(line, column));
            }
        }
        return new Piece(
                sheet,
                form,
                area.first(),
                area.top() + area.lines() - 1,
                facts,
                wells,
                Places.single(rows, columns),
                null,
                area.format(),
                "",
                -1);
    }
}
