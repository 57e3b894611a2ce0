package tallywell.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Well;

/**
 * A list: each row names a well, in one column or in two (letters, numbers), and holds readings of it in one column or
 * several (wavelengths, kinds of value, times). Wells may come in any order, and again and again for each time, plate or
 * wavelength. Several such lists may stand side by side.
 */
final class WellsDown implements Form {
    private static final int MOST_HEADING_ROWS = 2;

    /** Headed so, a column that looks like wells names samples, or the wells they came from. */
    private static final Set<Meaning> ELSEWHERE = EnumSet.of(Meaning.SAMPLE, Meaning.SOURCE);

    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        List<Position> positions = positions(sheet, row);
        List<Piece> pieces = new ArrayList<>();
        List<Notice> notes = new ArrayList<>();
        int first = row;
        int last = row;
        for (int i = 0; i < positions.size(); i++) {
            int limit = i + 1 < positions.size() ? positions.get(i + 1).first() : Integer.MAX_VALUE;
            int from = i == 0 ? 0 : positions.get(i).first();
            Listing listing = new Listing(sheet, positions.get(i), from, limit, row);
            if (listing.collect()) {
                pieces.addAll(listing.pieces);
                notes.addAll(listing.notes);
                first = Math.min(first, listing.top);
                last = Math.max(last, listing.last);
            }
        }
        return pieces.isEmpty() && notes.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(pieces, first, last, notes));
    }

    /** The columns that name wells in this row, those in the next ones alike. */
    private static List<Position> positions(Sheet sheet, int row) throws InputException {
        List<Position> found = new ArrayList<>();
        Optional<Position> pair = pair(sheet, row, true);
        if (pair.isPresent()) {
            return List.of(pair.get());
        }
        for (int column = 0; column < sheet.width(row); column++) {
            Position single = new Position(column, -1, -1);
            if (single.well(sheet, row).isPresent()) {
                found.add(single);
            }
        }
        if (found.isEmpty()) {
            return pair(sheet, row, false).stream().toList();
        }
        return sideBySide(sheet, row, found);
    }

    /** Two neighbouring columns that name wells together. */
    private static Optional<Position> pair(Sheet sheet, int row, boolean headed) {
        for (int column = 0; column + 1 < sheet.width(row); column++) {
            for (Position pair :
                    List.of(new Position(column, column, column + 1), new Position(column, column + 1, column))) {
                if (headed ? pair.isHeaded(sheet, row) : pair.isPair(sheet, row)) {
                    return Optional.of(pair);
                }
            }
        }
        return Optional.empty();
    }

    /** Lists side by side have readings behind each well; a second column that merely looks like wells has none. */
    private static List<Position> sideBySide(Sheet sheet, int row, List<Position> found) throws InputException {
        List<Position> kept = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            int to = i + 1 < found.size() ? found.get(i + 1).first() : sheet.width(row);
            boolean reading = false;
            for (int column = found.get(i).first() + 1; column < to; column++) {
                reading |= sheet.look(row, column).isReading();
            }
            if (reading) {
                kept.add(found.get(i));
            }
        }
        if (kept.size() == found.size()) {
            return kept;
        }
        return List.of(chosen(sheet, row, found));
    }

    /**
     * Of several columns that look like wells the one headed as such, else the one whose wells never repeat.
     *
     * @throws InputException if more than one would do
     */
    private static Position chosen(Sheet sheet, int row, List<Position> found) throws InputException {
        List<Position> headed = found.stream()
                .filter(each -> headings(sheet, row, each).contains(Meaning.WELL))
                .toList();
        List<Position> ofPlate = headed.stream()
                .filter(each -> headings(sheet, row, each).stream().noneMatch(ELSEWHERE::contains))
                .toList();
        List<Position> left = ofPlate.isEmpty() ? headed : ofPlate;
        if (left.isEmpty()) {
            List<Position> unnamed = found.stream()
                    .filter(each -> headings(sheet, row, each).stream().noneMatch(ELSEWHERE::contains))
                    .toList();
            left = unnamed.stream().filter(each -> isOnce(sheet, row, each)).toList();
            left = left.isEmpty() ? List.of(unnamed.isEmpty() ? found.get(0) : unnamed.get(0)) : left;
        }
        boolean readings = sheet.filled(row).stream()
                .anyMatch(column -> sheet.look(row, column).isReading());
        for (Position other : left) {
            if (readings && !other.well(sheet, row).equals(left.get(0).well(sheet, row))) {
                throw sheet.fault(
                        row,
                        other.first(),
                        "two columns of wells, '" + sheet.text(row, left.get(0).first()) + "' and",
                        "one, or a heading that tells the wells of the plate from those the samples came from");
            }
        }
        return left.get(0);
    }

    private static Set<Meaning> headings(Sheet sheet, int row, Position position) {
        for (int up = row - 1; up >= Math.max(0, row - MOST_HEADING_ROWS); up--) {
            Set<Meaning> meanings = Words.in(sheet.text(up, position.first()));
            if (!meanings.isEmpty()) {
                return meanings;
            }
        }
        return Set.of();
    }

    private static boolean isOnce(Sheet sheet, int row, Position position) {
        Set<Well> seen = new java.util.HashSet<>();
        for (int at = row; at < sheet.rows(); at++) {
            Optional<Well> well = position.well(sheet, at);
            if (well.isEmpty()) {
                return true;
            }
            if (!seen.add(well.get())) {
                return false;
            }
        }
        return true;
    }

    /**
     * Where a row names its well.
     *
     * @param first the first column of the name
     * @param letter the column of the letter; -1 if one column holds all
     * @param number the column of the number; -1 likewise
     */
    private record Position(int first, int letter, int number) {
        Optional<Well> well(Sheet sheet, int row) {
            if (letter < 0) {
                Optional<Well> well = sheet.well(row, first);
                return well.isPresent() || sheet.look(row, first) != Look.TEXT ? well : named(sheet.text(row, first));
            }
            int of = sheet.plateRow(row, letter);
            int at = sheet.plateColumn(row, number);
            return of < 0 || at < 0 ? Optional.empty() : Optional.of(new Well(of, at));
        }

        private static Optional<Well> named(String text) {
            return WellHeading.parse(text)
                    .filter(heading -> heading.facts().has(Meaning.WELL))
                    .map(WellHeading::well);
        }

        /** Whether headings say that the two columns name rows and columns of a plate. */
        boolean isHeaded(Sheet sheet, int row) {
            if (well(sheet, row).isEmpty()) {
                return false;
            }
            for (int up = row - 1; up >= Math.max(0, row - MOST_HEADING_ROWS); up--) {
                if (Words.in(sheet.text(up, letter)).contains(Meaning.ROW)
                        || Words.in(sheet.text(up, number)).contains(Meaning.COLUMN)) {
                    return true;
                }
            }
            return false;
        }

        /** Letters and numbers beside each other name wells if they repeat in a longer list. */
        boolean isPair(Sheet sheet, int row) {
            if (well(sheet, row).isEmpty()) {
                return false;
            }
            Map<Integer, Integer> letters = new HashMap<>();
            Map<Integer, Integer> numbers = new HashMap<>();
            Set<Well> wells = new java.util.HashSet<>();
            int lines = 0;
            for (int at = row;
                    at < Math.min(sheet.rows(), row + 200) && well(sheet, at).isPresent();
                    at++) {
                Well well = well(sheet, at).get();
                letters.merge(well.row(), 1, Integer::sum);
                numbers.merge(well.column(), 1, Integer::sum);
                wells.add(well);
                lines++;
            }
            int width = sheet.filled(row).size();
            return lines >= 3
                    && (letters.size() < lines || numbers.size() < lines)
                    && (wells.size() == lines || lines % wells.size() == 0)
                    && !(letters.size() == lines && width > 4);
        }

        boolean holds(int column) {
            return column == first || column == letter || column == number;
        }
    }

    /** One list under way. */
    private static final class Listing {
        private final Sheet sheet;
        private final Position position;
        private final int from;
        private final int limit;
        private final int start;
        private final List<Piece> pieces = new ArrayList<>();
        private final List<Notice> notes = new ArrayList<>();
        private int[] rows = new int[16];
        private int count;
        private int top;
        private int last;

        Listing(Sheet sheet, Position position, int from, int limit, int start) {
            this.sheet = sheet;
            this.position = position;
            this.from = from;
            this.limit = limit;
            this.start = start;
        }

        boolean collect() throws InputException {
            if (start > 0 && hasNumbers(start - 1)) {
                refuseLabelled(start - 1);
            }
            gather();
            top = headings();
            rows = Arrays.copyOf(rows, count);
            List<Column> columns = columns();
            List<Column> values = values(columns);
            boolean headed = top < start;
            if (values.isEmpty() || count < 2 && !headed) {
                return false;
            }
            new ListReadings(this, columns, values).collect();
            return true;
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
                refuseOutside(at);
                int next = continuation(at);
                if (next < 0) {
                    break;
                }
                at = next;
            }
        }

        /** A word like a well that no plate has, in the midst of wells, is a slip and no title. */
        private void refuseOutside(int row) throws InputException {
            String text = position.letter < 0 ? sheet.text(row, position.first()) : "";
            boolean numbers = hasNumbers(row);
            if (numbers && row == last + 1) {
                refuseLabelled(row);
            }
            if (numbers && text.matches("[A-Za-z]{1,2} ?\\d{1,4}")) {
                throw sheet.fault(row, position.first(), "the well", "A1 to AF48, wells that plates have");
            }
            if (numbers
                    && text.isEmpty()
                    && position.letter < 0
                    && count > 0
                    && row == last + 1
                    && followedByWell(row)) {
                throw new InputException(
                        sheet.table().place(row), "found numbers without a well; expected a well such as B7");
            }
        }

        /** A well with more in its cell is a row of the list that would go by in silence. */
        private void refuseLabelled(int row) throws InputException {
            if (position.letter < 0
                    && WellHeading.labelled(sheet.text(row, position.first())).isPresent()) {
                throw sheet.fault(
                        row, position.first(), "the well", "a well such as B7, and its sample in a column of its own");
            }
        }

        private boolean followedByWell(int row) {
            return position.well(sheet, row + 1).isPresent();
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
            boolean summary = hasNumbers(next)
                    && Facts.ofHeading(sheet.text(next, position.first())).isOtherQuantity();
            if (!summary) {
                return -1;
            }
            notes.add(Notice.information(
                    sheet.table().place(next), "left out: '" + sheet.text(next, position.first()) + "'"));
            last = next;
            int after = sheet.nextFilled(next + 1);
            return after < sheet.rows() ? after : -1;
        }

        /** The first row of headings; the first row of wells if there are none. */
        private int headings() {
            int row = start;
            for (int i = 0; i < MOST_HEADING_ROWS; i++) {
                int above = row - 1;
                if (above >= 0 && sheet.isBlank(above) && row == start) {
                    above--;
                }
                if (above < 0 || sheet.isBlank(above) || !isHeading(above, row == start)) {
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
            int left =
                    table.stream().filter(column -> column >= from).findFirst().orElse(from);
            return sheet.look(row, position.first()) == Look.EMPTY
                    && sheet.look(row, left) == Look.EMPTY
                    && sheet.filled(row).stream()
                            .noneMatch(column -> sheet.text(row, column).matches("(?s)\\D*:.*"));
        }

        private String heading(int column) {
            StringBuilder heading = new StringBuilder();
            for (int row = top; row < start; row++) {
                if (sheet.isBlank(row)) {
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

        private int lowestHeading() {
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
                    columns.add(Column.of(sheet, column, top < start ? heading(column) : "", rows));
                }
            }
            return columns;
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

    /** What the rows and columns of a list hold. */
    private static final class ListReadings {
        private final Listing list;
        private final Sheet sheet;
        private final List<Column> columns;
        private final List<Column> values;

        ListReadings(Listing list, List<Column> columns, List<Column> values) {
            this.list = list;
            this.columns = columns;
            this.values = values;
            sheet = list.sheet;
        }

        void collect() throws InputException {
            List<Column> headed = bareHeadings();
            Optional<Column> time = columns.stream()
                    .filter(column -> column.role() == Column.Role.TIME)
                    .findFirst()
                    .or(() -> wellsRepeat()
                            ? columns.stream().filter(Column::isStamp).findFirst()
                            : Optional.empty());
            Map<Facts, List<Column>> byFacts = new LinkedHashMap<>();
            for (Column column : headed) {
                Facts facts = column.facts().withTime(Optional.empty());
                byFacts.computeIfAbsent(facts, none -> new ArrayList<>()).add(column);
            }
            for (Map.Entry<Facts, RowGroup> rows : rowGroups(time.isPresent()).entrySet()) {
                for (Map.Entry<Facts, List<Column>> of : byFacts.entrySet()) {
                    add(of.getKey().or(rows.getKey()), rows.getValue(), of.getValue(), time);
                }
            }
        }

        /** Bare numbers over several columns are wavelengths or times; which, their company must show. */
        private List<Column> bareHeadings() throws InputException {
            TimeHeading parts = TimeHeading.of(aroundText());
            if (values.size() > 1 && parts.twoPart().isPresent()) {
                return headed((column, i) -> column.facts()
                        .withTime(column.facts()
                                .time()
                                .map(time -> time.open() == Moment.Open.PARTS
                                        ? time.closed(parts.twoPart().get())
                                        : time)));
            }
            List<Column> bare = values.stream()
                    .filter(column -> NumberForm.of(column.heading()) != NumberForm.NONE)
                    .toList();
            if (bare.isEmpty()) {
                return values;
            }
            if (bare.size() < values.size()) {
                // Beside columns with other names, such as a ratio of two wavelengths, numbers are wavelengths.
                return headed((column, i) -> wavelength(column));
            }
            double[] numbers = values.stream()
                    .mapToDouble(column -> NumberForm.value(column.heading()))
                    .toArray();
            Facts around = around();
            boolean possible = Arrays.stream(numbers).allMatch(Facts::isWavelength);
            boolean wavelengths = around.has(Meaning.WAVELENGTH);
            boolean times = around.has(Meaning.TIME);
            boolean even = numbers.length > 2 && isEven(numbers);
            if (possible && (wavelengths || !times && !even)) {
                return headed((column, i) -> column.facts().withWavelength(numbers[i]));
            }
            if (possible && !times) {
                throw new InputException(
                        sheet.table().place(list.top),
                        "found columns headed by bare numbers that may be wavelengths or times; expected a unit, such as"
                                + " nm or s, in the headings or above them");
            }
            TimeHeading unit = TimeHeading.of(aroundText());
            return headed((column, i) -> column.facts().withTime(unit.read(column.heading())));
        }

        private static Facts wavelength(Column column) {
            if (NumberForm.of(column.heading()) != NumberForm.WHOLE) {
                return column.facts();
            }
            double nm = NumberForm.value(column.heading());
            return Facts.isWavelength(nm) ? column.facts().withWavelength(nm) : column.facts();
        }

        private static boolean isEven(double[] numbers) {
            for (int i = 2; i < numbers.length; i++) {
                double step = numbers[1] - numbers[0];
                if (Math.abs(numbers[i] - numbers[i - 1] - step) > 1e-9 * Math.abs(step)) {
                    return false;
                }
            }
            return true;
        }

        private String aroundText() {
            StringBuilder text = new StringBuilder(sheet.text(list.lowestHeading(), list.position.first()));
            int above = list.top - 1;
            while (above >= Math.max(0, list.top - 2) && sheet.isBlank(above)) {
                above--;
            }
            if (above >= 0) {
                text.append(' ').append(sheet.line(above));
            }
            return text.toString();
        }

        private Facts around() {
            return Facts.ofLine(aroundText());
        }

        private List<Column> headed(java.util.function.BiFunction<Column, Integer, Facts> facts) {
            List<Column> headed = new ArrayList<>();
            for (int i = 0; i < values.size(); i++) {
                Column column = values.get(i);
                headed.add(new Column(
                        column.index(),
                        column.heading(),
                        named(facts.apply(column, i), column),
                        column.time(),
                        column.looks(),
                        column.filled()));
            }
            return headed;
        }

        /** A heading that is nothing but a number or a time names nothing else. */
        private static Facts named(Facts facts, Column column) {
            boolean number = NumberForm.of(column.heading()) != NumberForm.NONE;
            return number ? facts.withLabel("") : facts;
        }

        /** Rows by what their other columns say; which of these tell wells apart shows where wells repeat. */
        private Map<Facts, RowGroup> rowGroups(boolean timed) throws InputException {
            List<Column> keys = new ArrayList<>(columns.stream()
                    .filter(column -> column.role() == Column.Role.PLATE
                            || column.role() == Column.Role.WAVELENGTH
                            || column.role() == Column.Role.CYCLE && !timed && wellsRepeat())
                    .toList());
            if (wellsRepeat()) {
                columns.stream()
                        .filter(column -> column.role() == Column.Role.WORDS && isKind(column))
                        .forEach(keys::add);
            }
            Map<Facts, RowGroup> groups = new LinkedHashMap<>();
            if (keys.isEmpty()) {
                RowGroup all = new RowGroup();
                for (int row : list.rows) {
                    all.add(well(row), row);
                }
                groups.put(Facts.none(), all);
                return groups;
            }
            Map<String, Facts> known = new HashMap<>();
            // A cell merged over several rows, or a name that is not repeated, holds for the rows below.
            Map<Integer, String> above = new HashMap<>();
            for (int row : list.rows) {
                StringBuilder key = new StringBuilder();
                for (Column column : keys) {
                    String text = sheet.text(row, column.index());
                    if (column.role() == Column.Role.PLATE && !text.isEmpty()) {
                        above.put(column.index(), text);
                    }
                    key.append(text.isEmpty() ? above.getOrDefault(column.index(), "") : text)
                            .append('\n');
                }
                Facts facts = known.computeIfAbsent(key.toString(), text -> RowFacts.of(sheet, row, keys, above));
                groups.computeIfAbsent(facts, none -> new RowGroup()).add(well(row), row);
            }
            return groups;
        }

        private Well well(int row) {
            return list.position.well(sheet, row).orElseThrow();
        }

        private boolean wellsRepeat() {
            Set<Well> seen = new java.util.HashSet<>();
            for (int row : list.rows) {
                if (!seen.add(well(row))) {
                    return true;
                }
            }
            return false;
        }

        /** Whether a column of words names kinds of readings: each well has the same few words. */
        private boolean isKind(Column column) {
            Map<String, Set<Well>> wells = new HashMap<>();
            for (int row : list.rows) {
                wells.computeIfAbsent(sheet.text(row, column.index()), none -> new java.util.HashSet<>())
                        .add(well(row));
                if (wells.size() > 50) {
                    return false;
                }
            }
            int most = wells.values().stream().mapToInt(Set::size).max().orElse(0);
            return wells.size() >= 2
                    && wells.values().stream().allMatch(set -> set.size() == most)
                    && wells.values().stream().distinct().count() == 1;
        }

        private void add(Facts facts, RowGroup group, List<Column> of, Optional<Column> time) throws InputException {
            boolean across = of.size() > 1
                    && of.stream().allMatch(column -> column.facts().time().isPresent());
            if (across) {
                addAcross(facts, group, of);
                return;
            }
            for (Column column : of) {
                Facts own = column.facts().time().isPresent()
                        ? facts.withTime(column.facts().time())
                        : facts;
                addColumn(own, group, column, time);
            }
        }

        private void addAcross(Facts facts, RowGroup group, List<Column> of) throws InputException {
            group.refuseDoubles(sheet);
            List<Moment> moments = of.stream()
                    .map(column -> column.facts().time().orElseThrow())
                    .toList();
            int headings = list.lowestHeading();
            List<Place> places = of.stream()
                    .map(column -> sheet.table().place(headings, column.index()))
                    .toList();
            Times times = Times.of(moments, places);
            int[] columns = of.stream().mapToInt(Column::index).toArray();
            add(facts, "wells down, times across", group, Places.down(group.firstRows(), columns), well -> times);
        }

        private void addColumn(Facts facts, RowGroup group, Column column, Optional<Column> time)
                throws InputException {
            if (time.isEmpty()) {
                for (RowGroup each : group.rounds(sheet)) {
                    int[] rows = each.firstRows();
                    int[] columns = new int[rows.length];
                    Arrays.fill(columns, column.index());
                    add(facts, "list of wells", each, Places.single(rows, columns), null);
                }
                return;
            }
            int[][] rows = group.rows();
            Times[] times = new Times[rows.length];
            for (int i = 0; i < rows.length; i++) {
                if (!group.isRegular()) {
                    // A list in no order at all is put in order; in any other, a time that runs back is a fault.
                    rows[i] = Times.sorted(sheet, time.get().time(), time.get().index(), rows[i]);
                }
                times[i] = Times.of(sheet, time.get().time(), time.get().index(), rows[i]);
            }
            add(
                    facts.withCycle(OptionalInt.empty()),
                    "list of wells and times",
                    group,
                    Places.listed(rows, column.index(), group.isByTime()),
                    well -> times[well]);
        }

        /** A column of remarks belongs to the readings if there is but one column of these. */
        private int marks() {
            return values.size() != 1
                    ? -1
                    : columns.stream()
                            .filter(column -> column.role() == Column.Role.MARK)
                            .mapToInt(Column::index)
                            .findFirst()
                            .orElse(-1);
        }

        private void add(
                Facts facts,
                String form,
                RowGroup group,
                Places places,
                java.util.function.@org.jspecify.annotations.Nullable IntFunction<Times> times) {
            list.pieces.add(new Piece(
                    sheet, form, list.top, list.last, facts, group.wells(), places, times, null, "", marks()));
        }
    }
}
