package tallywell.exchange;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.report.CsvRows;
import tallywell.report.Report;
import tallywell.workup.Taken;

/** Writes {@code readings.csv}: every reading that a run was worked up from, as it was read. */
final class ReadingsTable implements Closeable {
    static final List<Column> COLUMNS = List.of(
            Column.text("run", "Path of the run file as typed").required(),
            Column.whole("reading", "Which entry of the run's readings, from 1").required(),
            Column.text("file", "File of the entry, as the run names it").required(),
            Column.text("well", "Well of the plate").required().matching(Column.WELL),
            Column.number("time_s", "Time as the file counts it; empty for an end point")
                    .in("s"),
            Column.number("absorbance", "Absorbance as read; empty where there is a mark")
                    .in(Ucum.ONE),
            Column.text("mark", "What stands in place of a number: over (the reader said out of range), missing")
                    .oneOf("over", "missing"));

    private final CsvRows rows;

    ReadingsTable(Appendable out) throws IOException {
        rows = new CsvRows(out, Column.names(COLUMNS));
    }

    void add(Report report) throws IOException {
        List<Taken> entries = report.analysis().assay().allReadings();
        for (int i = 0; i < entries.size(); i++) {
            ReadingSeries series = entries.get(i).series();
            for (Well well : series.wells()) {
                for (int k = 0; k < series.size(well); k++) {
                    rows.text(report.run());
                    rows.number(i + 1);
                    rows.text(entries.get(i).name());
                    reading(series, well, k);
                    rows.end();
                }
            }
        }
    }

    private void reading(ReadingSeries series, Well well, int index) throws IOException {
        rows.text(well.toString());
        if (series.isTimed()) {
            rows.number(series.timeS(well, index));
        } else {
            rows.empty();
        }
        Mark mark = series.mark(well, index);
        if (mark == Mark.NONE) {
            rows.number(series.absorbance(well, index));
        } else {
            rows.empty();
        }
        rows.text(mark.word());
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
