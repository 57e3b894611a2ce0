package tallywell.gui;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javax.swing.table.AbstractTableModel;
import tallywell.desk.ResultRow;

/** What the table of results shows: a row each, whole in every column. */
final class ResultsModel extends AbstractTableModel {
    static final int NAME = 0;
    static final int VALUE = 1;
    static final int EXPANDED = 2;
    static final int VERDICT = 8;
    static final int NEXT = 9;
    static final int COLUMNS = 10;
    private static final int DILUTION = 7;
    private static final int NO_SLOT = 10_000;

    private List<ResultRow> lines = new ArrayList<>();
    private String analyte = "";
    private boolean scatter;

    void show(List<ResultRow> other, String name, boolean scatterOnly) {
        lines = other;
        scatter = scatterOnly;
        analyte = name;
        fireTableDataChanged();
    }

    List<ResultRow> lines() {
        return lines;
    }

    static boolean isNumber(int column) {
        return column >= VALUE && column < VERDICT;
    }

    @Override
    public int getRowCount() {
        return lines.size();
    }

    @Override
    public int getColumnCount() {
        return COLUMNS;
    }

    @Override
    public String getColumnName(int column) {
        return column == EXPANDED && scatter ? Text.of("results.scatter") : Text.of("results." + column, analyte);
    }

    /** The whole row: the renderer picks what it shows, the sorter what it compares. */
    @Override
    public Object getValueAt(int row, int column) {
        return lines.get(row);
    }

    @Override
    public Class<?> getColumnClass(int column) {
        return ResultRow.class;
    }

    /**
     * Compares two rows by a column; rows without a number there stand last, whichever way it is sorted.
     *
     * @param descending whether the answer will be turned round
     */
    static int compare(int column, boolean descending, ResultRow one, ResultRow other) {
        if (isNumber(column)) {
            int absent = descending ? -1 : 1;
            OptionalDouble first = number(column, one);
            OptionalDouble second = number(column, other);
            return first.isPresent() && second.isPresent()
                    ? Double.compare(first.getAsDouble(), second.getAsDouble())
                    : first.isPresent() ? -absent : second.isPresent() ? absent : 0;
        }
        return switch (column) {
            case NAME ->
                slot(one) != slot(other)
                        ? Integer.compare(slot(one), slot(other))
                        : one.name().compareTo(other.name());
            case VERDICT -> one.verdict().compareTo(other.verdict());
            default -> text(column, one).compareTo(text(column, other));
        };
    }

    private static OptionalDouble number(int column, ResultRow row) {
        return switch (column) {
            case VALUE -> row.result().value();
            case 3 -> OptionalDouble.of(row.result().n());
            case 4 -> row.result().cvPercent();
            case 6 -> row.result().netDeltaA();
            case DILUTION -> OptionalDouble.of(row.result().dilution().factor());
            default -> shown(text(column, row).replace(',', '.'));
        };
    }

    /** The number that a cell shows; empty where it shows words or nothing. */
    private static OptionalDouble shown(String text) {
        return text.matches("-?\\d+(\\.\\d+)?") ? OptionalDouble.of(Double.parseDouble(text)) : OptionalDouble.empty();
    }

    private static int slot(ResultRow row) {
        return row.result().slot().orElse(NO_SLOT);
    }

    static String text(int column, ResultRow row) {
        return switch (column) {
            case NAME -> row.name();
            case VALUE -> row.valueWithUnit();
            case 2 -> row.uncertainty();
            case 3 -> Integer.toString(row.result().n());
            case 4 -> row.cv();
            case 5 -> row.creep();
            case 6 -> row.deltaA();
            case DILUTION -> row.dilution();
            case VERDICT -> row.verdict().word();
            default -> row.next();
        };
    }
}
