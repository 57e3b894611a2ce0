package tallywell.gui;

import java.util.ArrayList;
import java.util.List;
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

    static int compare(int column, ResultRow one, ResultRow other) {
        return switch (column) {
            case NAME ->
                slot(one) != slot(other)
                        ? Integer.compare(slot(one), slot(other))
                        : one.name().compareTo(other.name());
            case VALUE, 2 ->
                Double.compare(
                        one.result().value().orElse(-1), other.result().value().orElse(-1));
            case 3 -> Integer.compare(one.result().n(), other.result().n());
            case 4 ->
                Double.compare(
                        one.result().cvPercent().orElse(-1),
                        other.result().cvPercent().orElse(-1));
            case 6 ->
                Double.compare(
                        one.result().netDeltaA().orElse(-9),
                        other.result().netDeltaA().orElse(-9));
            case DILUTION ->
                Double.compare(
                        one.result().dilution().factor(),
                        other.result().dilution().factor());
            case VERDICT -> one.verdict().compareTo(other.verdict());
            default -> text(column, one).compareTo(text(column, other));
        };
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
