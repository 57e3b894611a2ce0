package tallywell.exchange;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.time.temporal.ChronoUnit;
import tallywell.report.Provenance;
import tallywell.report.Report;

/**
 * Writes {@code results.json}: everything that a laboratory information system wants to know of one or many runs, run by
 * run, so that memory does not grow with their number. Its schema is {@code results.schema.json}.
 */
public final class ResultsDocument implements Closeable {
    /** What the first key says the document is. */
    public static final String FORMAT = "results/1";

    /** The file that describes it. */
    public static final String SCHEMA = "results.schema.json";

    private final Json json;

    /**
     * Starts the document.
     *
     * @param made by what and when; its inputs do not matter
     * @param out where to; closed with the document
     */
    public ResultsDocument(Provenance made, OutputStream out) throws IOException {
        json = new Json(out);
        json.begin();
        json.text("tallywell", FORMAT);
        json.text("schema", SCHEMA);
        json.object("program", () -> {
            json.text("name", "Tallywell");
            json.text("version", made.version());
        });
        json.text("made", made.made().truncatedTo(ChronoUnit.SECONDS).toString());
        json.text("zone", made.zone().getId());
        json.textOrNull("options", made.options());
        json.beginArray("runs");
    }

    /** Adds a run. */
    public void add(Report report) throws IOException {
        json.object(() -> RunPart.write(report, json));
    }

    /** Ends the document; without this it is no whole one. */
    public void finish() throws IOException {
        json.endArray();
        json.end();
    }

    @Override
    public void close() throws IOException {
        json.close();
    }
}
