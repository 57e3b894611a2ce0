package tallywell.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.plate.Well;

/** What the rows and columns of a list hold. */
final class ListReadings {
    private final WellList list;
    private final Sheet sheet;
    private final List<Column> columns;
    private final List<Column> values;

    ListReadings(WellList list, List<Column> columns, List<Column> values) {
        this.list = list;
        this.columns = columns;
        this.values = values;
        sheet = list.sheet;
    }

    void collect() throws InputException {
        List<Column> headed = bareHeadings();
        list.notes.addAll(new Flags(sheet, list.position, list.rows).notes(columns, values));
        Optional<Column> time = columns.stream()
                .filter(column -> column.role() == Column.Role.TIME)
                .findFirst()
                .or(() ->
                        wellsRepeat() ? columns.stream().filter(Column::isStamp).findFirst() : Optional.empty());
        Map<Facts, List<Column>> byFacts = new LinkedHashMap<>();
        for (Column column : headed) {
            Facts facts = known(column).withTime(Optional.empty());
            byFacts.computeIfAbsent(facts, none -> new ArrayList<>()).add(column);
        }
        for (Map.Entry<Facts, RowGroup> rows : rowGroups(time.isPresent()).entrySet()) {
            for (Map.Entry<Facts, List<Column>> of : byFacts.entrySet()) {
                add(of.getKey().or(rows.getKey()), rows.getValue(), of.getValue(), time);
            }
        }
    }

    /** Words over numbers that no one knows lower the evidence that these are readings. */
    private static Facts known(Column column) {
        boolean unknown = column.role() == Column.Role.UNNAMED || column.role() == Column.Role.WHOLE;
        boolean words = column.heading().chars().anyMatch(Character::isLetter);
        return unknown
                        && words
                        && column.facts().time().isEmpty()
                        && column.facts().wavelengthNm().isEmpty()
                ? column.facts().plus(Meaning.UNKNOWN)
                : column.facts();
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
        if (!list.timesLabel().isEmpty()) {
            return list.timesLabel();
        }
        StringBuilder text = new StringBuilder(sheet.text(list.lowestHeading(), list.position.first()));
        int above = list.top - 1;
        while (above >= Math.max(0, list.top - 2) && sheet.isBlank(above)) {
            above--;
        }
        if (above >= 0 && TimeUnits.isOfReadings(sheet.line(above))) {
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
        List<Moment> moments =
                of.stream().map(column -> column.facts().time().orElseThrow()).toList();
        int headings = list.lowestHeading();
        List<Place> places = of.stream()
                .map(column -> sheet.table().place(headings, column.index()))
                .toList();
        Times times = Times.of(moments, places);
        int[] columns = of.stream().mapToInt(Column::index).toArray();
        add(facts, "wells down, times across", group, Places.down(group.firstRows(), columns), well -> times);
    }

    private void addColumn(Facts facts, RowGroup group, Column column, Optional<Column> time) throws InputException {
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
        list.pieces.add(
                new Piece(sheet, form, list.top, list.last, facts, group.wells(), places, times, null, "", marks()));
    }
}
