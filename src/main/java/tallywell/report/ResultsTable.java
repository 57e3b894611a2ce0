package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;

/** Writes {@code results.csv}: one row for each sample, control and spike and each analyte. */
public final class ResultsTable implements Closeable {
    private final CsvRows rows;

    /**
     * Starts the table with its header row.
     *
     * @param out where to; closed with the table if it can be
     */
    public ResultsTable(Appendable out) throws IOException {
        rows = new CsvRows(out, ResultColumns.titles());
    }

    /** Adds the results of a run. */
    public void add(Report report) throws IOException {
        for (Judgement judgement : report.assessment().judgements()) {
            ResultColumns.write(report, judgement, rows);
            rows.end();
        }
        for (JudgedDifference judged : report.assessment().differences()) {
            DifferenceRow.write(report, judged, rows);
            rows.end();
        }
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
