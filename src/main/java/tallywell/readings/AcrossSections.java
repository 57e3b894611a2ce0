package tallywell.readings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.Well;

/** The rows under one row of headings. */
final class AcrossSections {
    private final Sheet sheet;
    private final int first;
    private final WellHeads heads;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Notice> notes = new ArrayList<>();
    private int last;

    AcrossSections(Sheet sheet, int first, WellHeads heads) {
        this.sheet = sheet;
        this.first = first;
        this.heads = heads;
        last = heads.last;
    }

    Finding collect(int start) throws InputException {
        int at = start;
        Facts between = Facts.none();
        boolean parted = false;
        while (at < sheet.rows() && heads.isData(sheet, at)) {
            List<Integer> rows = new ArrayList<>();
            while (at < sheet.rows() && heads.isData(sheet, at)) {
                rows.add(at);
                last = at;
                at = beyondEvents(sheet.nextFilled(at + 1));
            }
            refuseTooWide(rows);
            RowWidths.check(sheet, rows, first);
            section(rows, between);
            parted |= GridGroups.namesReadings(between);
            between = Facts.none();
            for (int lines = 0; lines < 2 && at < sheet.rows() && isTitle(at); lines++) {
                between = Facts.ofLine(sheet.line(at)).or(between);
                at = sheet.nextFilled(at + 1);
            }
            if (!between.isSomething()) {
                break;
            }
        }
        if (parted && GridGroups.namesReadings(between)) {
            pieces.replaceAll(
                    piece -> piece.with(
                            piece.facts()
                                    .withDoubt(
                                            "found captions between readings under one row of wells and below the last ("
                                                    + sheet.table().place(first).text()
                                                    + "), and nothing shows whether they belong to those above or below; expected one above each")));
        }
        return new Finding(pieces, first, last, notes);
    }

    /** The row where readings go on behind a mark of a page or an injection, or headings that repeat; else the row. */
    private int beyondEvents(int row) {
        int at = row;
        while (at < sheet.rows() && isEvent(at)) {
            at = sheet.nextFilled(at + 1);
        }
        if (at == row || at >= sheet.rows() || !heads.isData(sheet, at)) {
            return row;
        }
        for (int event = row; event < at; event = sheet.nextFilled(event + 1)) {
            note(event, "left out: '" + sheet.line(event) + "', amid the readings");
        }
        return at;
    }

    private boolean isEvent(int row) {
        if (sheet.line(row).equals(sheet.line(first))) {
            return true;
        }
        boolean drawn = sheet.filled(row).stream()
                .allMatch(column -> sheet.text(row, column).chars().noneMatch(Character::isLetterOrDigit));
        Facts facts = Facts.ofLine(sheet.line(row));
        return drawn
                || isTitle(row)
                        && facts.has(Meaning.EVENT)
                        && facts.plate().isEmpty()
                        && facts.wavelengthNm().isEmpty();
    }

    private boolean isTitle(int row) {
        return sheet.filled(row).stream().allMatch(column -> sheet.look(row, column) == Look.TEXT)
                && sheet.filled(row).size() <= 2;
    }

    private void refuseTooWide(List<Integer> rows) throws InputException {
        int width = Math.max(sheet.width(first), sheet.width(heads.last));
        for (int row : rows) {
            for (int column = width; column < sheet.width(row); column++) {
                if (sheet.look(row, column).isReading()) {
                    throw sheet.fault(
                            row,
                            column,
                            "beyond the last heading",
                            "one cell for each heading; a decimal comma between cells that are set apart by commas"
                                    + " cuts numbers in two");
                }
            }
        }
    }

    private void section(List<Integer> all, Facts between) throws InputException {
        List<Column> beside = beside(all);
        Optional<Column> time = beside.stream()
                .filter(column -> column.role() == Column.Role.TIME)
                .findFirst()
                .or(() -> unnamedTime(beside, all))
                .or(() -> beside.stream().filter(Column::isStamp).findFirst());
        List<Integer> rows = withoutSummaries(all, beside, time);
        List<Column> keys = beside.stream()
                .filter(column -> !time.equals(Optional.of(column)))
                .filter(column -> isKey(column, time.isPresent(), rows))
                .toList();
        for (Column column : beside) {
            boolean other = column.role() == Column.Role.OTHER || column.role() == Column.Role.UNNAMED;
            if (other && !time.equals(Optional.of(column))) {
                note(first, "left out: the column " + named(column));
            }
        }
        for (Map.Entry<Facts, List<Integer>> rowGroup : grouped(rows, keys).entrySet()) {
            for (Map.Entry<Facts, List<Integer>> wellGroup : wellGroups().entrySet()) {
                Facts facts = wellGroup.getKey().or(rowGroup.getKey()).or(between);
                add(facts, wellGroup.getValue(), rowGroup.getValue(), time.orElse(null));
            }
        }
    }

    private static String named(Column column) {
        return column.heading().isEmpty() ? Integer.toString(column.index() + 1) : "'" + column.heading() + "'";
    }

    private void note(int row, String text) {
        notes.add(Notice.information(sheet.table().place(row), text));
    }

    private List<Column> beside(List<Integer> rows) {
        List<Column> beside = new ArrayList<>();
        int width = Math.max(sheet.width(heads.last), sheet.width(rows.get(0)));
        int[] all = rows.stream().mapToInt(Integer::intValue).toArray();
        Set<Integer> wells = Set.copyOf(heads.columns);
        for (int column = 0; column < width; column++) {
            if (!wells.contains(column)) {
                beside.add(Column.of(sheet, column, heading(column, rows.get(0)), all));
            }
        }
        return beside;
    }

    /** The words over a column, and units in a row of their own below them. */
    private String heading(int column, int data) {
        StringBuilder heading = new StringBuilder();
        for (int row = first; row < Math.min(data, heads.last + 1 + WellsAcross.MOST_SUBTITLES); row++) {
            if ((row <= heads.last || !heads.isData(sheet, row)) && isWord(sheet.look(row, column))) {
                heading.append(heading.isEmpty() ? "" : " ").append(sheet.text(row, column));
            }
        }
        return heading.toString();
    }

    private static boolean isWord(Look look) {
        return look == Look.TEXT || look == Look.ROW;
    }

    /** A first column without heading whose numbers ascend, other than by one, can only be times. */
    private Optional<Column> unnamedTime(List<Column> beside, List<Integer> rows) {
        if (beside.isEmpty() || rows.size() < 2) {
            return Optional.empty();
        }
        Column column = beside.get(0);
        boolean unnamed = (column.role() == Column.Role.WHOLE || column.role() == Column.Role.UNNAMED)
                && column.heading().isEmpty()
                && column.numbers() == rows.size();
        boolean words = column.role() == Column.Role.WORDS
                && rows.stream()
                        .allMatch(row ->
                                Moment.parse(sheet.text(row, column.index())).isPresent());
        if (words) {
            return Optional.of(column);
        }
        if (!unnamed || column.decimals() == 0 && isCounter(column, rows)) {
            return Optional.empty();
        }
        return Optional.of(column);
    }

    private boolean isCounter(Column column, List<Integer> rows) {
        for (int i = 1; i < rows.size(); i++) {
            double step = sheet.number(rows.get(i), column.index(), DecimalMark.POINT)
                    - sheet.number(rows.get(i - 1), column.index(), DecimalMark.POINT);
            if (step != 1) {
                return false;
            }
        }
        return true;
    }

    private boolean isKey(Column column, boolean timed, List<Integer> rows) {
        return switch (column.role()) {
            case WAVELENGTH, PLATE -> true;
            case WORDS -> !timed || repeats(column, rows);
            case CYCLE, WHOLE -> !timed;
            default -> false;
        };
    }

    /** Whether the words of a column part the rows into few kinds; remarks on single rows do not. */
    private boolean repeats(Column column, List<Integer> rows) {
        long kinds = rows.stream()
                .map(row -> sheet.text(row, column.index()))
                .distinct()
                .limit(rows.size() / 2 + 1L)
                .count();
        return kinds >= 2 && kinds <= rows.size() / 2;
    }

    /** Rows of statistics below the readings carry words where times or counters stand. */
    private List<Integer> withoutSummaries(List<Integer> rows, List<Column> beside, Optional<Column> time) {
        List<Column> numeric = beside.stream()
                .filter(column -> time.equals(Optional.of(column)) || column.role() == Column.Role.CYCLE)
                .toList();
        List<Integer> kept = new ArrayList<>(rows.size());
        for (int row : rows) {
            Optional<Column> words = numeric.stream()
                    .filter(column -> isSummary(row, column, time))
                    .findFirst()
                    .or(() -> untimed(row, beside, time));
            if (words.isPresent()) {
                note(row, "left out: '" + sheet.text(row, words.get().index()) + "'");
            } else {
                kept.add(row);
            }
        }
        return kept;
    }

    /** In a row without a time, a word of statistics in whatever column. */
    private Optional<Column> untimed(int row, List<Column> beside, Optional<Column> time) {
        return time.filter(column -> sheet.look(row, column.index()) == Look.EMPTY)
                .flatMap(none -> beside.stream()
                        .filter(column ->
                                Facts.ofHeading(sheet.text(row, column.index())).isOtherQuantity())
                        .findFirst());
    }

    private boolean isSummary(int row, Column column, Optional<Column> time) {
        Look look = sheet.look(row, column.index());
        if (look != Look.TEXT && look != Look.ROW) {
            return false;
        }
        String text = sheet.text(row, column.index());
        if (!time.equals(Optional.of(column)) || Facts.ofHeading(text).isOtherQuantity()) {
            return true;
        }
        // Words without a digit, above all times or below them, head a row of names or of statistics.
        return text.chars().noneMatch(Character::isDigit) && (isEdge(row, column, -1) || isEdge(row, column, 1));
    }

    private boolean isEdge(int row, Column column, int step) {
        for (int at = row + step; at > heads.last && at <= last; at += step) {
            Look look = sheet.look(at, column.index());
            if (look.isNumber() || look == Look.CLOCK) {
                return false;
            }
        }
        return true;
    }

    /** Rows by what the columns beside the wells say of them; the same facts go together. */
    private Map<Facts, List<Integer>> grouped(List<Integer> rows, List<Column> keys) {
        if (keys.isEmpty()) {
            return Map.of(Facts.none(), rows);
        }
        Map<String, Facts> known = new LinkedHashMap<>();
        Map<Facts, List<Integer>> groups = new LinkedHashMap<>();
        for (int row : rows) {
            StringBuilder key = new StringBuilder();
            for (Column column : keys) {
                key.append(sheet.text(row, column.index())).append('\n');
            }
            Facts facts = known.computeIfAbsent(key.toString(), text -> RowFacts.of(sheet, row, keys, Map.of()));
            groups.computeIfAbsent(facts, none -> new ArrayList<>()).add(row);
        }
        return groups;
    }

    /** Columns of wells by what their headings say beside the well: wavelengths, kinds of value. */
    private Map<Facts, List<Integer>> wellGroups() {
        Map<Facts, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < heads.wells.size(); i++) {
            groups.computeIfAbsent(over(i), none -> new ArrayList<>()).add(i);
        }
        return groups;
    }

    private Facts over(int well) {
        Facts facts = heads.facts.get(well);
        int column = heads.columns.get(well);
        for (int row = heads.last + 1; row < last && !heads.isData(sheet, row); row++) {
            String text = sheet.text(row, column);
            Facts below = heads.isWavelengths(sheet, sheet.isBlank(row) ? heads.last : row)
                    ? Facts.none().withWavelength(sheet.number(row, column, DecimalMark.POINT))
                    : Facts.ofHeading(text);
            if (facts.wavelengthNm().isEmpty() && below.wavelengthNm().isPresent()) {
                facts = facts.withWavelength(below.wavelengthNm().getAsDouble());
            }
        }
        return facts.under(above(column));
    }

    /** What a row above the wells says, each of its cells up to the next one; names of samples are not taken. */
    private Facts above(int column) {
        int left = heads.columns.get(0);
        List<Integer> over = sheet.filled(Math.max(0, first - 1)).stream()
                .filter(each -> each >= left)
                .toList();
        if (first == 0 || over.size() < 2) {
            return Facts.none();
        }
        int at = column;
        while (at > left && sheet.look(first - 1, at) == Look.EMPTY) {
            at--;
        }
        boolean bare = over.stream()
                .allMatch(each -> sheet.look(first - 1, each) == Look.WHOLE
                        && Facts.isWavelength(sheet.number(first - 1, each, DecimalMark.POINT)));
        Facts facts = bare
                ? Facts.none().withWavelength(sheet.number(first - 1, at, DecimalMark.POINT))
                : Facts.ofHeading(sheet.text(first - 1, at));
        return facts.wavelengthNm().isPresent() || facts.plate().isPresent()
                ? facts.withLabel("").withTime(Optional.empty()).withCycle(OptionalInt.empty())
                : Facts.none();
    }

    private void add(Facts facts, List<Integer> numbers, List<Integer> rows, @Nullable Column time)
            throws InputException {
        if (rows.isEmpty()) {
            return;
        }
        List<Well> wells = new ArrayList<>();
        Map<Well, Integer> seen = new LinkedHashMap<>();
        for (int number : numbers) {
            Well well = heads.wells.get(number);
            Integer before = seen.put(well, heads.columns.get(number));
            if (before != null) {
                throw sheet.fault(
                        heads.last,
                        heads.columns.get(number),
                        "twice, here and in column " + (before + 1) + ", the well",
                        "each well once");
            }
            wells.add(well);
        }
        int[] columns = numbers.stream().mapToInt(heads.columns::get).toArray();
        int[] all = rows.stream().mapToInt(Integer::intValue).toArray();
        if (time == null) {
            // Without times each row is a reading of its own.
            for (int i = 0; i < all.length; i++) {
                int[] one = {all[i]};
                pieces.add(new Piece(
                        sheet,
                        "wells across",
                        first,
                        last,
                        facts,
                        wells,
                        Places.across(one, columns),
                        null,
                        null,
                        "",
                        -1));
            }
            return;
        }
        Times times = Times.of(sheet, time.time(), time.index(), all);
        pieces.add(new Piece(
                sheet,
                "times down, wells across",
                first,
                last,
                facts.withCycle(OptionalInt.empty()),
                wells,
                Places.across(all, columns),
                well -> times,
                null,
                "",
                -1));
    }
}
