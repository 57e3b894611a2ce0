package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** The grids under one row of headings. */
final class GridGroups {
    /** So many lines that are no rows may stand between rows of one plate. */
    private static final int MOST_BETWEEN = 6;

    private final HeadedGrid grid;
    private final GridWords words;
    private final Sheet sheet;
    private final int headings;
    private final HeadedGrid.Frame frame;
    private final int limit;
    private final int from;
    private final int to;
    final List<Piece> pieces = new ArrayList<>();
    final List<Notice> notes = new ArrayList<>();
    int last;

    GridGroups(HeadedGrid grid, Sheet sheet, int headings, HeadedGrid.Frame frame, int limit) {
        this.grid = grid;
        words = new GridWords(sheet, headings, frame);
        this.sheet = sheet;
        this.headings = headings;
        this.frame = frame;
        this.limit = limit;
        from = frame.heads().first() + frame.shift();
        to = from + frame.heads().count();
        last = headings;
    }

    void collect() throws InputException {
        Facts corner = words.corner();
        int at = frame.next();
        Facts between = Facts.none();
        boolean parted = false;
        while (at < sheet.rows()) {
            GridLines group = group(at);
            if (group.lines.isEmpty() || group.lines.size() < 2 && frame.heads().count() < 2) {
                break;
            }
            take(group, between.or(words.gutter(group)).or(corner));
            last = group.end;
            at = sheet.nextFilled(last + 1);
            parted |= namesReadings(between);
            boolean titled = at < sheet.rows() && isTitle(at);
            between = Facts.none();
            // Titles may part grids that share the numbers over their columns.
            for (int lines = 0; lines < 3 && at < sheet.rows() && isTitle(at); lines++) {
                between = Facts.ofLine(sheet.line(at)).or(between);
                at = sheet.nextFilled(at + 1);
            }
            if (at >= sheet.rows() || grid.side(sheet, at, frame.side()) != group.sides.get(0)) {
                refuseFurther(at, group, titled);
                if (parted && namesReadings(between) && !isHeadings(at)) {
                    doubt();
                }
                break;
            }
        }
    }

    /** Whether words name a plate or a wavelength. */
    static boolean namesReadings(Facts facts) {
        return facts.plate().isPresent() || facts.wavelengthNm().isPresent();
    }

    private boolean isHeadings(int row) {
        return row < sheet.rows() && grid.runs(sheet, row).stream().anyMatch(run -> run.count() > 2);
    }

    /** Captions between grids that share their headings, and one below the last: they may belong to those above. */
    private void doubt() {
        pieces.replaceAll(
                piece -> piece.with(
                        piece.facts()
                                .withDoubt(
                                        "found captions between grids under one row of headings and below the last ("
                                                + sheet.table().place(headings).text()
                                                + "), and nothing shows whether they belong to those above or below; expected one above each")));
    }

    /** A row of the plate that does not go on with the grid must not go by in silence. */
    private void refuseFurther(int row, GridLines group, boolean titled) throws InputException {
        int side = grid.side(sheet, row, frame.side());
        boolean next = side == group.last() + 1 || side == group.sides.get(0) - 1;
        // Behind a whole plate a letter that does not come next names a statistic, such as M or N.
        boolean close = !titled && !isWholePlate(group) && (!grid.isTransposed() || row == group.end + 1);
        if (side >= 0 && (next || close) && HeadedGrid.hasReading(sheet, row, from, to)) {
            throw new InputException(
                    sheet.table().place(row, frame.side()),
                    "found '" + sheet.text(row, frame.side())
                            + "' with readings apart from the grid above it, which"
                            + " ends with '" + sheet.text(group.end, frame.side())
                            + "'; expected the rows of a plate in one piece and in order");
        }
    }

    private boolean isWholePlate(GridLines group) {
        int sides = group.sides.size();
        int heads = frame.heads().count();
        return PlateFormat.KNOWN.stream()
                .anyMatch(format -> grid.isTransposed()
                        ? format.columns() == sides && format.rows() == heads
                        : format.rows() == sides && format.columns() == heads);
    }

    private boolean isTitle(int row) {
        return grid.side(sheet, row, frame.side()) < 0
                && !HeadedGrid.hasReading(sheet, row, from, to)
                && grid.runs(sheet, row).stream().noneMatch(run -> run.count() > 2);
    }

    /** Lines that name rows in order, with or without further lines of the same row below them. */
    private GridLines group(int start) throws InputException {
        GridLines group = new GridLines();
        int row = start;
        while (row < sheet.rows()) {
            int side = grid.side(sheet, row, frame.side());
            int before = group.sides.isEmpty() ? -1 : group.sides.get(group.sides.size() - 1);
            boolean more = !group.lines.isEmpty()
                    && row == group.end + 1
                    && (side == before || side < 0 && sheet.look(row, frame.side()) == Look.EMPTY)
                    && HeadedGrid.hasReading(sheet, row, from, to)
                    && !isSummary(row);
            if (continues(group, side)) {
                group.add(row, side);
            } else if (more) {
                group.addMore(row);
            } else if (sheet.isBlank(row)) {
                int next = sheet.nextFilled(row);
                if (next >= sheet.rows() || beyond(group, next) < 0) {
                    break;
                }
                row = next - 1;
            } else {
                int next = beyond(group, row);
                if (next < 0) {
                    break;
                }
                noteBetween(row, next);
                row = next - 1;
            }
            row++;
        }
        group.settle(sheet, frame.side());
        return group;
    }

    /** Whether a row of the plate goes on with these: rows run down the alphabet or, throughout, up. */
    private boolean continues(GridLines group, int side) {
        if (group.sides.isEmpty()) {
            return side >= 0;
        }
        int before = group.last();
        if (group.isUpward() || group.sides.size() == 1 && side == before - 1) {
            return side >= 0 && side == before - 1;
        }
        int step = group.sides.size() > 1 ? before - group.sides.get(group.sides.size() - 2) : 1;
        if (step > 1 && side == before + step) {
            // Every other row of a plate, or every third.
            return true;
        }
        return side > before && !(HeadedGrid.isComplete(before + 1, grid.isTransposed()) && side > before + 1);
    }

    /**
     * The next row of the plate, from the given line on, over lines of statistics and lines drawn between; -1 if the
     * grid ends.
     */
    private int beyond(GridLines group, int row) throws InputException {
        boolean words = false;
        int at = row;
        for (int lines = 0; lines < MOST_BETWEEN && at < sheet.rows() && !group.sides.isEmpty(); lines++) {
            int side = grid.side(sheet, at, frame.side());
            if (side >= 0) {
                boolean goesOn = continues(group, side);
                if (goesOn && words) {
                    throw new InputException(
                            sheet.table().place(at, frame.side()),
                            "found '" + sheet.text(at, frame.side())
                                    + "' below words that part it from the rows above; expected the rows of a plate in"
                                    + " one piece");
                }
                return goesOn ? at : -1;
            }
            boolean numbers = HeadedGrid.hasReading(sheet, at, from, to);
            if (!isDrawn(at) && !(numbers && isSummary(at))) {
                if (numbers || !isTitle(at)) {
                    return -1;
                }
                words = true;
            }
            at = sheet.nextFilled(at + 1);
        }
        return -1;
    }

    /** Whether a line holds nothing but signs that draw a line. */
    private boolean isDrawn(int row) {
        return sheet.filled(row).stream()
                .allMatch(column -> sheet.text(row, column).chars().noneMatch(Character::isLetterOrDigit));
    }

    private void noteBetween(int row, int next) {
        for (int line = row; line < next; line++) {
            if (!sheet.isBlank(line) && !isDrawn(line)) {
                notes.add(Notice.information(
                        sheet.table().place(line), "left out: '" + sheet.text(line, frame.side()) + "'"));
            }
        }
    }

    /** Whether a line without a letter is headed by words of statistics somewhere left of its numbers. */
    private boolean isSummary(int row) {
        for (int column = 0; column < from; column++) {
            if (sheet.look(row, column) == Look.TEXT) {
                return Facts.ofHeading(sheet.text(row, column)).isOtherQuantity();
            }
        }
        return false;
    }

    private void take(GridLines group, Facts facts) throws InputException {
        int readings = 0;
        int others = 0;
        for (int line : group.lines) {
            for (int column = from; column < to; column++) {
                Look look = sheet.look(line, column);
                readings += look.isReading() ? 1 : 0;
                others += look != Look.EMPTY && !look.isReading() ? 1 : 0;
            }
        }
        if (readings <= others) {
            notes.add(Notice.information(
                    sheet.table().place(group.lines.get(0)), "left out: a plate of words, not of numbers"));
            return;
        }
        refuseCutDecimals(group);
        refuseTurned(group);
        RowWidths.check(sheet, group.lines, headings);
        for (int k = 0; k < group.deep; k++) {
            pieces.add(piece(group, k, facts.or(lineFacts(group, k))));
        }
        noteRest(group);
    }

    /** Letters A to L over columns and numbers 1 to 8 beside rows are a plate whose names were swapped. */
    private void refuseTurned(GridLines group) throws InputException {
        int letters = frame.heads().count();
        int numbers = group.sides.size();
        boolean turned =
                PlateFormat.KNOWN.stream().anyMatch(format -> format.columns() == letters && format.rows() == numbers);
        if (grid.isTransposed() && turned && numbers > 1) {
            throw new InputException(
                    sheet.table().place(headings),
                    "found " + letters + " letters over the columns and " + numbers
                            + " numbers beside the rows, which no plate has; expected letters for the rows of the plate"
                            + " and numbers for its columns");
        }
    }

    private Piece piece(GridLines group, int k, Facts facts) {
        List<Well> wells = new ArrayList<>();
        int[] rows = new int[group.sides.size() * frame.heads().count()];
        int[] columns = new int[rows.length];
        for (int i = 0; i < group.sides.size(); i++) {
            for (int j = 0; j < frame.heads().count(); j++) {
                rows[wells.size()] = group.lines.get(i * group.deep + k);
                columns[wells.size()] = from + j;
                wells.add(grid.well(frame.heads().values().get(j), group.sides.get(i)));
            }
        }
        return new Piece(
                sheet,
                grid.isTransposed() ? "grid with headings, transposed" : "grid with headings",
                headings,
                group.end,
                facts,
                wells,
                Places.single(rows, columns),
                null,
                whole(wells),
                "",
                -1);
    }

    private @Nullable PlateFormat whole(List<Well> wells) {
        return PlateFormat.KNOWN.stream()
                .filter(format ->
                        format.wells() == wells.size() && wells.stream().allMatch(format::holds))
                .findFirst()
                .orElse(null);
    }

    /** Where a row of the plate has several lines, words at their ends tell them apart. */
    private Facts lineFacts(GridLines group, int k) {
        if (group.deep == 1) {
            return Facts.none();
        }
        int row = group.lines.get(k);
        StringBuilder text = new StringBuilder();
        for (int column = 0; column < Math.min(sheet.width(row), limit); column++) {
            boolean outside = column < from || column >= to;
            if (outside && column != frame.side() && sheet.look(row, column) != Look.EMPTY) {
                text.append(' ').append(sheet.text(row, column));
            }
        }
        String words = text.toString().strip();
        boolean bare = words.matches("\\d{3,4}") && Facts.isWavelength(Integer.parseInt(words));
        return bare ? Facts.none().withWavelength(Integer.parseInt(words)) : Facts.ofHeading(words);
    }

    /** Twice as many numbers as headings, none with decimals: a decimal comma was taken for a delimiter. */
    private void refuseCutDecimals(GridLines group) throws InputException {
        int row = group.lines.get(0);
        int numbers = 0;
        for (int column = from; column < sheet.width(row); column++) {
            Look look = sheet.look(row, column);
            if (look.isDecimal()) {
                return;
            }
            numbers += look == Look.WHOLE ? 1 : 0;
        }
        if (numbers >= 2 * frame.heads().count() && frame.heads().count() > 1) {
            throw new InputException(
                    sheet.table().place(row),
                    "found " + numbers + " whole numbers under "
                            + frame.heads().count()
                            + " headings; expected one reading for each; a decimal comma between cells that are set"
                            + " apart by commas cuts numbers in two");
        }
    }

    private void noteRest(GridLines group) {
        if (group.deep > 1) {
            return;
        }
        int row = group.lines.get(0);
        StringBuilder words = new StringBuilder();
        int count = 0;
        for (int column = to; column < Math.min(sheet.width(row), limit); column++) {
            if (sheet.look(row, column).isReading() && column != frame.side()) {
                count++;
                String heading = sheet.text(headings, column);
                words.append(heading.isEmpty() ? "" : (words.isEmpty() ? " (" : ", ") + heading);
            }
        }
        if (count > 0) {
            notes.add(Notice.information(
                    sheet.table().place(headings),
                    "left out: " + count + (count == 1 ? " column" : " columns") + " beside the grid" + words
                            + (words.isEmpty() ? "" : ")")));
        }
    }
}
