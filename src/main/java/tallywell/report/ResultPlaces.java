package tallywell.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.Result;

/** Where each result stands on the sheet Results, and what its further columns are. */
final class ResultPlaces {
    static final String SHEET = "Results";

    /** Columns to the right of those of {@code results.csv}: what goes in, and the working in between. */
    enum Working {
        VOLUME("volume_uL", "own volume of sample in the well"),
        MASS("mass_g", "mass weighed in"),
        EXTRACT("extract_mL", "volume the extract was made up to"),
        DENSITY("density_g_per_mL", "density"),
        SCALE("value_per_g_per_L", "value in the original sample for 1 g/L of the solution pipetted"),
        CONCENTRATION("c_g_per_L", "mean concentration of the solution pipetted"),
        ADDED("added_g_per_L", "rise in concentration that a spike should make"),
        FRACTION("spike_fraction", "part of the pipetted volume that is spike"),
        SD("sd", "standard deviation of the values of the wells");

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
            return ResultColumns.count() + ALL.indexOf(this);
        }
    }

    private final List<Result> results;
    private final Map<String, Integer> rowOf = new HashMap<>();
    private final Map<String, Integer> rowOfWell = new HashMap<>();
    private final int replicates;
    private final int differences;

    ResultPlaces(Analysis analysis) {
        results = analysis.results();
        differences = analysis.differences().size();
        int most = 1;
        for (int i = 0; i < results.size(); i++) {
            Result result = results.get(i);
            rowOf.put(key(result), i + 1);
            for (Well well : result.wells()) {
                rowOfWell.put(result.step() + " " + well, i + 1);
            }
            most = Math.max(most, result.wells().size());
        }
        replicates = most;
    }

    private static String key(Result result) {
        return result.step() + " " + result.role() + " " + result.word();
    }

    /** The row of a result, from 0. */
    int row(Result result) {
        Integer row = rowOf.get(key(result));
        if (row == null) {
            throw new IllegalArgumentException("result must be of this run but was " + key(result));
        }
        return row;
    }

    /** The row of the result that a well counts for, from 0. */
    Optional<Integer> row(int step, Well well) {
        return Optional.ofNullable(rowOfWell.get(step + " " + well));
    }

    /** The row of the sample in a slot, from 0. */
    Optional<Integer> rowOfSample(int step, int slot) {
        return Optional.ofNullable(rowOf.get(step + " sample " + slot));
    }

    /** How many wells the result with the most wells has. */
    int replicates() {
        return replicates;
    }

    /** First column of the values of single wells. */
    int firstReplicate() {
        return ResultColumns.count() + Working.values().length;
    }

    /** First column of the same with excluded wells put back. */
    int firstReplicateAll() {
        return firstReplicate() + replicates;
    }

    /** The row of a result by difference, from 0: they stand after the others. */
    int rowOfDifference(int index) {
        return results.size() + 1 + index;
    }

    int lastRow() {
        return Math.max(1, results.size() + differences);
    }

    static String own(int row, ResultColumns column) {
        return At.cell(row, column.column());
    }

    static String own(int row, Working column) {
        return At.cell(row, column.column());
    }

    /** A cell as other sheets write it. */
    static String cell(int row, ResultColumns column) {
        return SHEET + "!" + own(row, column);
    }

    static String cell(int row, Working column) {
        return SHEET + "!" + own(row, column);
    }
}
