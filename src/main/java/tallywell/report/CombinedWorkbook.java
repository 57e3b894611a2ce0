package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;

/** Many runs in one summary; replaced by the streaming writer, which comes with its own branch. */
public final class CombinedWorkbook implements Closeable {
    /** Takes a run. */
    public void add(Report report) throws IOException {
        throw new IOException("the combined summary of " + report.run() + " cannot be written by this build");
    }

    /** Writes the summary. */
    public void finish(OutputStream out) throws IOException {
        throw new IOException("the combined summary cannot be written by this build");
    }

    @Override
    public void close() {
        // Nothing is held.
    }
}
