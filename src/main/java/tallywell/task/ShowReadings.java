package tallywell.task;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Consumer;
import tallywell.notice.InputException;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;
import tallywell.readings.ReadingsCsv;

/** Shows what was understood of exports; works nothing up. */
public final class ShowReadings {
    private final Importer importer = new Importer();
    private final Choice choice;
    private final List<Export> exports = new ArrayList<>();

    /**
     * Prepares to read.
     *
     * @param block which block of a file with several, from 1; empty to leave it to the file
     */
    public ShowReadings(OptionalInt block) {
        choice = block.isPresent() ? Choice.none().withBlock(block.getAsInt()) : Choice.none();
    }

    /**
     * What was understood of one file, in words.
     *
     * @throws InputException if it cannot be read, or could be read in more than one way
     */
    public String explain(Path file) throws InputException {
        return importer.read(file, choice).explanation().text();
    }

    /**
     * Reads files.
     *
     * @param refused hears of each file that cannot be read
     * @return whether all could be read
     */
    public boolean read(List<Path> files, Consumer<InputException> refused) {
        boolean all = true;
        for (Path file : files) {
            try {
                exports.add(importer.read(file, choice));
            } catch (InputException e) {
                refused.accept(e);
                all = false;
            }
        }
        return all;
    }

    /** Writes every reading of the files that were read, a line each. */
    public void writeCsv(OutputStream out) throws IOException {
        BufferedWriter writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), 1 << 16);
        ReadingsCsv csv = new ReadingsCsv(writer);
        csv.header();
        for (Export export : exports) {
            csv.rows(export);
        }
        writer.flush();
    }
}
