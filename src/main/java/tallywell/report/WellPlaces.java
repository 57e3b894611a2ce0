package tallywell.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Where each well and step stands on the sheet Wells, and what its further columns are. */
final class WellPlaces {
    static final String SHEET = "Wells";

    /** Columns to the right of those of {@code wells.csv}: the working in between. */
    enum Working {
        RESULT("result_row", "row of the sheet Results that the well counts for"),
        SET("blank_set", "number of the mean on the sheet Calibration that the well belongs to"),
        COUNTS("counts", "1 if the well can count: it was read, or was over range"),
        CONCENTRATION("c_g_per_L", "concentration of the solution pipetted"),
        SQUARE("sq_dev", "squared distance of ΔA from the mean of its blanks"),
        NEXT_TRIGGER("next_trigger_s", "time of the next trigger from this one"),
        NET_ALL("net_delta_a_all", "the same with excluded wells put back"),
        CONCENTRATION_ALL("c_g_per_L_all", "the same with excluded wells put back"),
        VALUE_ALL("value_all", "the same with excluded wells put back");

        private static final List<Working> ALL = List.of(values());

        private final String title;
        private final String meaning;

        Working(String title, String meaning) {
            this.title = title;
            this.meaning = meaning;
        }

        String title() {
            return title;
        }

        String meaning() {
            return meaning;
        }

        int column() {
            return WellColumns.count() + ALL.indexOf(this);
        }
    }

    private final Map<Integer, Map<Well, Integer>> rows = new HashMap<>();
    private final int lastRow;

    WellPlaces(Analysis analysis) {
        int next = 1;
        for (StepAnalysis step : analysis.steps()) {
            Map<Well, Integer> of = new HashMap<>();
            for (WellResult well : step.wells()) {
                of.put(well.well(), next++);
            }
            rows.put(step.number(), of);
        }
        lastRow = Math.max(1, next - 1);
    }

    /** The row of a well in a step, from 0. */
    int row(int step, Well well) {
        Integer row = rows.getOrDefault(step, Map.of()).get(well);
        if (row == null) {
            throw new IllegalArgumentException("well must be in use but was " + well);
        }
        return row;
    }

    int lastRow() {
        return lastRow;
    }

    /** A cell of the sheet itself. */
    static String own(int row, WellColumns column) {
        return At.cell(row, column.column());
    }

    static String own(int row, Working column) {
        return At.cell(row, column.column());
    }

    /** A cell as other sheets write it. */
    String cell(int step, Well well, WellColumns column) {
        return SHEET + "!" + At.cell(row(step, well), column.column());
    }

    String cell(int step, Well well, Working column) {
        return SHEET + "!" + At.cell(row(step, well), column.column());
    }

    /** A whole column as other sheets write it. */
    String all(WellColumns column) {
        return SHEET + "!" + At.fixed(1, lastRow, column.column());
    }

    String all(Working column) {
        return SHEET + "!" + At.fixed(1, lastRow, column.column());
    }
}
