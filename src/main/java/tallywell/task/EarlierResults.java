package tallywell.task;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.plan.EarlierResult;
import tallywell.quantity.CellText;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.QuantityRange;
import tallywell.table.Table;
import tallywell.table.Tables;

/** Reads a table of results of an earlier run ({@code results.csv}), as far as a plan can use it. */
final class EarlierResults {
    private static final List<String> NEEDED = List.of("role", "sample", "analyte", "value", "unit", "advice");
    private static final String ADVISED = "dilute:";

    private final Table table;
    private final Map<String, Integer> columns = new HashMap<>();

    private EarlierResults(Table table) {
        this.table = table;
    }

    static List<EarlierResult> read(Path file) throws InputException {
        return new EarlierResults(Tables.read(file)).results();
    }

    private List<EarlierResult> results() throws InputException {
        for (int column = 0; column < table.width(0); column++) {
            columns.put(table.text(0, column).strip(), column);
        }
        for (String each : NEEDED) {
            if (!columns.containsKey(each)) {
                throw new InputException(
                        table.place(0),
                        "found no column '" + each
                                + "'; expected results.csv as 'tallywell workup --tables' writes it");
            }
        }
        List<EarlierResult> results = new ArrayList<>();
        for (int row = 1; row < table.rows(); row++) {
            if (text(row, "role").equals("sample")) {
                results.add(result(row));
            }
        }
        return results;
    }

    private EarlierResult result(int row) throws InputException {
        String value = text(row, "value");
        String advice = text(row, "advice");
        try {
            boolean positive = !value.isEmpty() && Double.parseDouble(value) > 0;
            return new EarlierResult(
                    text(row, "sample"),
                    text(row, "analyte"),
                    positive
                            ? Optional.of(QuantityRange.parse(
                                    value + " " + text(row, "unit"),
                                    Kind.CONCENTRATION,
                                    Kind.AMOUNT_CONCENTRATION,
                                    Kind.CONTENT))
                            : Optional.empty(),
                    advice.startsWith(ADVISED)
                            ? Optional.of(Dilution.parse(advice.substring(ADVISED.length())))
                            : Optional.empty());
        } catch (IllegalArgumentException e) {
            throw new InputException(table.place(row), "found no result (" + e.getMessage() + ")", e);
        }
    }

    private String text(int row, String column) {
        Integer index = columns.get(column);
        return index == null ? "" : CellText.meant(table.text(row, index).strip());
    }
}
