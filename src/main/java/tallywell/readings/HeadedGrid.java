package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/**
 * A plate drawn as a grid with numbers over its columns and letters beside its rows, or transposed. Several may stand
 * side by side; several may follow each other under one row of numbers; a row of the plate may take several lines, one
 * for each wavelength or kind of value.
 */
final class HeadedGrid implements Form {
    /** So many lines that are no rows may stand between rows of one plate. */
    private static final int MOST_BETWEEN = 6;

    private static final Set<Meaning> OF_PLATES = EnumSet.of(
            Meaning.ROW, Meaning.COLUMN, Meaning.WELL, Meaning.PLATE, Meaning.VALUE, Meaning.ABSORBANCE, Meaning.RAW);

    private static final Set<Meaning> OTHER_AXES = EnumSet.of(
            Meaning.SAMPLE, Meaning.SOURCE, Meaning.OTHER, Meaning.OTHER_TIME, Meaning.CYCLE, Meaning.TEMPERATURE);

    private final boolean transposed;

    HeadedGrid(boolean transposed) {
        this.transposed = transposed;
    }

    private int head(Sheet sheet, int row, int column) {
        return transposed ? sheet.plateRow(row, column) : sheet.plateColumn(row, column);
    }

    private int side(Sheet sheet, int row, int column) {
        return transposed ? sheet.plateColumn(row, column) : sheet.plateRow(row, column);
    }

    private Well well(int head, int side) {
        return transposed ? new Well(head, side) : new Well(side, head);
    }

    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        List<Piece> pieces = new ArrayList<>();
        List<Notice> notes = new ArrayList<>();
        int last = row;
        int from = 0;
        OptionalInt shared = OptionalInt.empty();
        List<Heads> runs = runs(sheet, row);
        for (int i = 0; i < runs.size(); i++) {
            Heads heads = runs.get(i);
            int limit = i + 1 < runs.size() ? runs.get(i + 1).first() : Integer.MAX_VALUE;
            Optional<Frame> frame = frame(sheet, row, heads, from, limit, shared);
            if (frame.isEmpty()) {
                continue;
            }
            Groups groups = new Groups(sheet, row, frame.get(), limit);
            groups.collect();
            pieces.addAll(groups.pieces);
            notes.addAll(groups.notes);
            last = Math.max(last, groups.last);
            shared = OptionalInt.of(frame.get().side());
            from = heads.last() + 1;
        }
        return last == row ? Optional.empty() : Optional.of(new Finding(pieces, row, last, notes));
    }

    /** Runs of neighbouring cells that name ascending columns. */
    private List<Heads> runs(Sheet sheet, int row) {
        List<Heads> runs = new ArrayList<>();
        int column = 0;
        while (column < sheet.width(row)) {
            int value = head(sheet, row, column);
            if (value < 0) {
                column++;
                continue;
            }
            List<Integer> values = new ArrayList<>();
            int first = column;
            while (value >= 0 && (values.isEmpty() || continues(values, value))) {
                values.add(value);
                column++;
                value = head(sheet, row, column);
            }
            runs.add(new Heads(first, values));
        }
        return runs;
    }

    private boolean continues(List<Integer> values, int value) {
        int last = values.get(values.size() - 1);
        boolean complete = values.get(0) == 0 && last == values.size() - 1 && isComplete(values.size(), !transposed);
        return value == last + 1 || value > last && !complete;
    }

    /** Finds the column that names the rows: left of the numbers, or right of them. */
    private Optional<Frame> frame(Sheet sheet, int row, Heads heads, int from, int limit, OptionalInt shared)
            throws InputException {
        Optional<Frame> found = unchecked(sheet, row, heads, from, limit, shared);
        if (found.isPresent()
                && !transposed
                && sheet.text(row, heads.first() - 1).matches("0{1,2}")) {
            throw sheet.fault(row, heads.first() - 1, "columns counted from", "columns counted from 1");
        }
        return found;
    }

    private Optional<Frame> unchecked(Sheet sheet, int row, Heads heads, int from, int limit, OptionalInt shared)
            throws InputException {
        int next = sheet.nextFilled(row + 1);
        if (next >= sheet.rows() || next > row + 3) {
            return Optional.empty();
        }
        if (!hasReading(sheet, next, heads.first(), heads.last() + 1)) {
            // A line of units may stand between.
            next = sheet.nextFilled(next + 1);
        }
        for (int column = from; column < heads.first(); column++) {
            if (Words.in(sheet.text(row, column)).contains(Meaning.COLUMN) && side(sheet, next, column) < 0
                    || sheet.plateColumn(next, column) >= 0
                            && Words.in(sheet.text(row, column)).contains(Meaning.COLUMN)
                            && !transposed) {
                // Wells named in two columns, with headings of numbers behind them.
                return Optional.empty();
            }
        }
        OptionalInt left = new GridSide(sheet, row, next, this::side).in(from, heads.first());
        if (left.isPresent()) {
            return Optional.of(new Frame(heads, left.getAsInt(), 0, next));
        }
        boolean withoutCorner = side(sheet, next, heads.first()) >= 0
                && sheet.look(row, heads.last() + 1) == Look.EMPTY
                && sheet.filled(next).size() == heads.count() + 1
                && !transposed;
        if (withoutCorner) {
            return Optional.of(new Frame(heads, heads.first(), 1, next));
        }
        for (int column = heads.last() + 1; column < Math.min(limit, sheet.width(next)); column++) {
            if (side(sheet, next, column) >= 0 && !transposed) {
                return Optional.of(new Frame(heads, column, 0, next));
            }
        }
        if (shared.isPresent() && side(sheet, next, shared.getAsInt()) >= 0) {
            return Optional.of(new Frame(heads, shared.getAsInt(), 0, next));
        }
        return Optional.empty();
    }

    /** Whether a known plate ends here: a name that is not the next one then names something else. */
    private static boolean isComplete(int count, boolean columns) {
        return PlateFormat.KNOWN.stream().anyMatch(format -> (columns ? format.columns() : format.rows()) == count);
    }

    private static boolean hasReading(Sheet sheet, int row, int from, int to) {
        return IntStream.range(from, to)
                .anyMatch(column -> sheet.look(row, column).isReading());
    }

    /** Neighbouring cells that name columns, from {@code first} on. */
    private record Heads(int first, List<Integer> values) {
        int last() {
            return first + values.size() - 1;
        }

        int count() {
            return values.size();
        }
    }

    /**
     * A grid's headings.
     *
     * @param shift how far the readings stand right of their headings: 1 where the corner is left out
     * @param next the first row below the headings
     */
    private record Frame(Heads heads, int side, int shift, int next) {}

    /** The grids under one row of headings. */
    private final class Groups {
        private final Sheet sheet;
        private final int headings;
        private final Frame frame;
        private final int limit;
        private final int from;
        private final int to;
        private final List<Piece> pieces = new ArrayList<>();
        private final List<Notice> notes = new ArrayList<>();
        private int last;

        Groups(Sheet sheet, int headings, Frame frame, int limit) {
            this.sheet = sheet;
            this.headings = headings;
            this.frame = frame;
            this.limit = limit;
            from = frame.heads().first() + frame.shift();
            to = from + frame.heads().count();
            last = headings;
        }

        void collect() throws InputException {
            Facts corner = corner();
            int at = frame.next();
            Facts between = Facts.none();
            while (at < sheet.rows()) {
                GridLines group = group(at);
                if (group.lines.isEmpty()
                        || group.lines.size() < 2 && frame.heads().count() < 2) {
                    break;
                }
                take(group, between.or(gutter(group)).or(corner));
                last = group.end;
                at = sheet.nextFilled(last + 1);
                boolean titled = at < sheet.rows() && isTitle(at);
                between = Facts.none();
                // Titles may part grids that share the numbers over their columns.
                for (int lines = 0; lines < 3 && at < sheet.rows() && isTitle(at); lines++) {
                    between = Facts.ofLine(sheet.line(at)).or(between);
                    at = sheet.nextFilled(at + 1);
                }
                if (at >= sheet.rows() || side(sheet, at, frame.side()) != group.sides.get(0)) {
                    refuseFurther(at, group, titled);
                    break;
                }
            }
        }

        /** A row of the plate that does not go on with the grid must not go by in silence. */
        private void refuseFurther(int row, GridLines group, boolean titled) throws InputException {
            int side = side(sheet, row, frame.side());
            boolean next = side == group.last() + 1 || side == group.sides.get(0) - 1;
            // Behind a whole plate a letter that does not come next names a statistic, such as M or N.
            boolean close = !titled && !isWholePlate(group) && (!transposed || row == group.end + 1);
            if (side >= 0 && (next || close) && hasReading(sheet, row, from, to)) {
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
                    .anyMatch(format -> transposed
                            ? format.columns() == sides && format.rows() == heads
                            : format.rows() == sides && format.columns() == heads);
        }

        private boolean isTitle(int row) {
            return side(sheet, row, frame.side()) < 0
                    && !hasReading(sheet, row, from, to)
                    && runs(sheet, row).stream().noneMatch(run -> run.count() > 2);
        }

        private Facts corner() {
            StringBuilder text = new StringBuilder();
            for (int column = 0; column < frame.heads().first(); column++) {
                boolean over = column == frame.side() || sheet.look(frame.next(), column) == Look.EMPTY;
                if (over && sheet.look(headings, column) == Look.TEXT) {
                    text.append(' ').append(sheet.text(headings, column));
                }
            }
            String words = text.toString().strip();
            return namesOtherAxes(words)
                    ? Facts.none()
                            .withDoubt("found '" + words + "' in the corner of a grid ("
                                    + sheet.table().place(headings).text()
                                    + "), which may name something else than rows and columns of a plate; expected Row,"
                                    + " Column or nothing")
                    : Facts.ofHeading(words);
        }

        private boolean namesOtherAxes(String words) {
            Set<Meaning> meanings = LineMeanings.of(words);
            boolean plate = meanings.stream().anyMatch(OF_PLATES::contains);
            boolean two = words.matches("(?s).*\\p{L}.*[/\\\\|×].*\\p{L}.*");
            return !plate && (two || meanings.stream().anyMatch(OTHER_AXES::contains));
        }

        /** A column left of the grid that holds the time of each grid, once. */
        private Optional<TimeHeading> gutterHeading(int column) {
            String text = sheet.text(headings, column);
            boolean filled = column != frame.side() && sheet.look(frame.next(), column) != Look.EMPTY;
            return filled && Words.in(text).contains(Meaning.TIME)
                    ? Optional.of(TimeHeading.of(text))
                    : Optional.empty();
        }

        private Facts gutter(GridLines group) {
            Facts facts = Facts.none();
            int row = group.lines.get(0);
            for (int column = 0; column < frame.heads().first(); column++) {
                if (column == frame.side() || sheet.look(row, column) == Look.EMPTY || isRemark(group, column)) {
                    continue;
                }
                Optional<TimeHeading> heading = gutterHeading(column);
                String text = sheet.text(row, column);
                if (heading.isPresent()) {
                    facts = facts.withTime(heading.get().read(text));
                } else if (sheet.look(row, column) == Look.TEXT) {
                    facts = facts.or(Facts.ofHeading(text));
                }
            }
            return facts;
        }

        /** Whether a column left of the grid says something of single rows, rather than once of the whole grid. */
        private boolean isRemark(GridLines group, int column) {
            Set<Meaning> heading = Words.in(sheet.text(headings, column));
            if (heading.contains(Meaning.TIME)) {
                return false;
            }
            return heading.contains(Meaning.SAMPLE)
                    || heading.contains(Meaning.MARK)
                    || group.lines.size() > 1 && sheet.look(group.lines.get(1), column) != Look.EMPTY;
        }

        /** Lines that name rows in order, with or without further lines of the same row below them. */
        private GridLines group(int start) throws InputException {
            GridLines group = new GridLines();
            int row = start;
            while (row < sheet.rows()) {
                int side = side(sheet, row, frame.side());
                int before = group.sides.isEmpty() ? -1 : group.sides.get(group.sides.size() - 1);
                boolean more = !group.lines.isEmpty()
                        && row == group.end + 1
                        && (side == before || side < 0 && sheet.look(row, frame.side()) == Look.EMPTY)
                        && hasReading(sheet, row, from, to)
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
            return side > before && !(isComplete(before + 1, transposed) && side > before + 1);
        }

        /**
         * The next row of the plate, from the given line on, over lines of statistics and lines drawn between; -1 if the
         * grid ends.
         */
        private int beyond(GridLines group, int row) throws InputException {
            boolean words = false;
            int at = row;
            for (int lines = 0; lines < MOST_BETWEEN && at < sheet.rows() && !group.sides.isEmpty(); lines++) {
                int side = side(sheet, at, frame.side());
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
                boolean numbers = hasReading(sheet, at, from, to);
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
            boolean turned = PlateFormat.KNOWN.stream()
                    .anyMatch(format -> format.columns() == letters && format.rows() == numbers);
            if (transposed && turned && numbers > 1) {
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
                    wells.add(well(frame.heads().values().get(j), group.sides.get(i)));
                }
            }
            return new Piece(
                    sheet,
                    transposed ? "grid with headings, transposed" : "grid with headings",
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
}
