package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Writes {@code wells.csv}: one row for each well in use and each step, step by step in row order. */
public final class WellsTable implements Closeable {
    private final CsvRows rows;

    /**
     * Starts the table with its header row.
     *
     * @param out where to; closed with the table if it can be
     */
    public WellsTable(Appendable out) throws IOException {
        rows = new CsvRows(out, WellColumns.titles());
    }

    /** Adds the wells of a run. */
    public void add(Report report) throws IOException {
        for (StepAnalysis step : report.analysis().steps()) {
            for (WellResult well : step.wells()) {
                WellColumns.write(report, step, well, rows);
                rows.end();
            }
        }
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
