package tallywell.exchange;

import java.util.List;

/**
 * One column of a table, as a Table Schema describes it.
 *
 * @param name in the header row
 * @param type {@code string}, {@code integer}, {@code number} or {@code boolean}
 * @param description in words
 * @param unit UCUM code of all its numbers; empty where there is none, or each row has its own
 * @param unitPerRow whether the numbers are in the unit that their row names
 * @param isRequired whether each row has a value
 * @param words all that it may hold; empty if it is not a closed list
 * @param pattern what its texts match; empty if anything may stand there
 */
record Column(
        String name,
        String type,
        String description,
        String unit,
        boolean unitPerRow,
        boolean isRequired,
        List<String> words,
        String pattern) {
    /** A well of any plate: two letters from 384 wells on. */
    static final String WELL = "[A-Z]{1,2}[1-9][0-9]?";

    /** Keeps a copy that cannot change. */
    Column {
        words = List.copyOf(words);
    }

    static Column text(String name, String description) {
        return of(name, "string", description);
    }

    static Column number(String name, String description) {
        return of(name, "number", description);
    }

    static Column whole(String name, String description) {
        return of(name, "integer", description);
    }

    /** Yes or no. */
    static Column yesNo(String name, String description) {
        return of(name, "boolean", description);
    }

    private static Column of(String name, String type, String description) {
        return new Column(name, type, description, "", false, false, List.of(), "");
    }

    /** The same in a unit. */
    Column in(String ucum) {
        return new Column(name, type, description, ucum, false, isRequired, words, pattern);
    }

    /** The same in the unit that each row names in its column {@code unit}. */
    Column perRow() {
        return new Column(name, type, description, "", true, isRequired, words, pattern);
    }

    /** The same with a value in each row. */
    Column required() {
        return new Column(name, type, description, unit, unitPerRow, true, words, pattern);
    }

    /** The same with a closed list of words. */
    Column oneOf(String... allowed) {
        return new Column(name, type, description, unit, unitPerRow, isRequired, List.of(allowed), pattern);
    }

    /** The same with texts of one form. */
    Column matching(String expression) {
        return new Column(name, type, description, unit, unitPerRow, isRequired, words, expression);
    }

    static List<String> names(List<Column> columns) {
        return columns.stream().map(Column::name).toList();
    }
}
