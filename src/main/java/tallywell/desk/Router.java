package tallywell.desk;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.files.SampleListReader;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.readings.Importer;

/** Finds out what a dropped file is, by what is in it. */
public final class Router {
    private static final int FIRST_LINES = 30;

    /** What the file is. It may take a while: not for the event thread. */
    public Dropped route(Path file) {
        try {
            return routed(file);
        } catch (InputException e) {
            return new Dropped.Refused(file, e.notices());
        }
    }

    private static Dropped routed(Path file) throws InputException {
        String marker = marker(file);
        if (marker.startsWith("layout/")) {
            return new Dropped.OfLayout(file, new LayoutReader().read(file));
        }
        if (marker.startsWith("method/")) {
            return new Dropped.OfMethod(file, new MethodReader().read(file));
        }
        if (marker.startsWith("run/")) {
            return new Dropped.OfRun(file);
        }
        InputException noSamples;
        try {
            return new Dropped.OfSamples(file, new SampleListReader().read(file));
        } catch (InputException e) {
            noSamples = e;
        }
        try {
            return new Dropped.OfWanted(file, new SampleListReader().readWanted(file));
        } catch (InputException e) {
            noSamples.addSuppressed(e);
        }
        try {
            Export export = new Importer().read(file, Choice.none());
            return new Dropped.OfReadings(file, export);
        } catch (InputException e) {
            if (looksLikeSamples(noSamples)) {
                e.addSuppressed(noSamples);
                throw noSamples;
            }
            throw Files.isReadable(file) ? unknown(file, e) : e;
        }
    }

    /** Says first that a file is nothing we know, and only then what kept it from being taken for readings. */
    private static InputException unknown(Path file, InputException asReadings) {
        List<Notice> notices = new ArrayList<>(asReadings.notices());
        notices.set(
                0,
                Notice.error(
                        Place.nowhere(),
                        file.getFileName()
                                + " was not understood as readings, a sample list, a layout, a method or a run. Tried as"
                                + " readings: " + within(notices.get(0))));
        InputException said = new InputException(notices);
        said.initCause(asReadings);
        return said;
    }

    /** A notice without the file, which has been named. */
    private static String within(Notice notice) {
        String where = notice.place() instanceof Place.InFile in
                ? in.where()
                : notice.place().text();
        return where.isEmpty() ? notice.text() : where + ": " + notice.text();
    }

    /** Whether a file says that it is a layout. */
    static boolean isLayout(Path file) {
        return marker(file).startsWith("layout/");
    }

    /** A list with a column of slots that has a fault is a list with a fault, not an export without readings. */
    private static boolean looksLikeSamples(InputException e) {
        String text = String.valueOf(e.getMessage());
        return !text.contains("found no column 'slot'") && !text.contains("found the column '")
                || text.contains("expected each slot once");
    }

    /** What stands behind {@code tallywell:} in the first lines of a text; empty for anything else. */
    private static String marker(Path file) {
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            for (int i = 0; i < FIRST_LINES; i++) {
                String line = reader.readLine();
                if (line == null) {
                    return "";
                }
                String plain = line.replace("\uFEFF", "").strip();
                if (plain.startsWith("tallywell:")) {
                    return plain.substring("tallywell:".length())
                            .strip()
                            .replace("\"", "")
                            .toLowerCase(Locale.ROOT);
                }
                if (!plain.isEmpty() && !plain.startsWith("#")) {
                    return "";
                }
            }
            return "";
        } catch (IOException e) {
            // No text in UTF-8, or not readable: the readers of tables say what is wrong with it.
            return "";
        }
    }
}
