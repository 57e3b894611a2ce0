package tallywell.readings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tallywell.notice.Notice;

/** Says which readings of a list are flagged by columns of words beside them, since such columns change no reading. */
final class Flags {
    private static final int MOST_NAMED = 8;

    private final Sheet sheet;
    private final WellPosition position;
    private final int[] rows;

    Flags(Sheet sheet, WellPosition position, int[] rows) {
        this.sheet = sheet;
        this.position = position;
        this.rows = rows;
    }

    /** One notice for each column and each of its words that speaks against readings. */
    List<Notice> notes(List<Column> columns, List<Column> values) {
        List<Notice> notes = new ArrayList<>();
        for (Column column : columns) {
            boolean words = column.role() == Column.Role.MARK
                    || column.role() == Column.Role.WORDS
                    || column.role() == Column.Role.OTHER
                    || column.role() == Column.Role.UNNAMED;
            if (words && !values.contains(column)) {
                addTo(notes, column);
            }
        }
        return notes;
    }

    private void addTo(List<Notice> notes, Column column) {
        Map<String, List<Integer>> flagged = new LinkedHashMap<>();
        for (int row : rows) {
            if (isFlag(column, row)) {
                flagged.computeIfAbsent(sheet.text(row, column.index()), none -> new ArrayList<>())
                        .add(row);
            }
        }
        flagged.forEach((word, of) -> notes.add(Notice.attention(
                sheet.table().place(of.get(0), column.index()),
                "the column '" + column.heading() + "' says '" + word + "' of " + wells(of)
                        + "; the readings were taken as they stand")));
    }

    private String wells(List<Integer> of) {
        StringBuilder wells = new StringBuilder();
        for (int i = 0; i < Math.min(of.size(), MOST_NAMED); i++) {
            wells.append(i == 0 ? "" : ", ")
                    .append(position.well(sheet, of.get(i))
                            .map(Object::toString)
                            .orElse(""));
        }
        return of.size() > MOST_NAMED ? wells + " and " + (of.size() - MOST_NAMED) + " more" : wells.toString();
    }

    private boolean isFlag(Column column, int row) {
        Look look = sheet.look(row, column.index());
        if (look == Look.OVER) {
            return true;
        }
        if (look == Look.EMPTY || look.isNumber()) {
            return false;
        }
        Set<Meaning> meanings = Words.in(sheet.text(row, column.index()));
        boolean marks = column.facts().has(Meaning.MARK);
        return meanings.contains(Meaning.FLAGGED) && !meanings.contains(Meaning.NOT)
                || marks && meanings.contains(Meaning.NOT)
                || marks && look == Look.MISSING;
    }
}
