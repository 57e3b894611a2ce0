package tallywell.desk;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import tallywell.notice.OutputException;

/** What the program remembers from one start to the next, in a small file. Reading and writing it is not for the event thread. */
public final class Settings {
    private static final int MOST_RECENT = 8;

    private final Path file;
    private final Properties values = new Properties();

    /** The settings in a file; a file that is missing or damaged gives the usual ones. */
    public Settings(Path file) {
        this.file = file;
        if (Files.isRegularFile(file)) {
            try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                values.load(reader);
            } catch (IOException | IllegalArgumentException e) {
                // Settings are a convenience: a damaged file must not keep anyone from working.
                values.clear();
            }
        }
    }

    /** How the windows look. */
    public enum Look {
        /** As the system does. */
        SYSTEM,
        /** Light. */
        LIGHT,
        /** Dark. */
        DARK
    }

    /** How the windows look. */
    public Look look() {
        String word = values.getProperty("look", "");
        for (Look each : Look.values()) {
            if (each.name().equals(word)) {
                return each;
            }
        }
        return Look.SYSTEM;
    }

    /** Changes how the windows look. */
    public void look(Look look) {
        values.setProperty("look", look.name());
    }

    /** Size of text in points. */
    public int size(int usual, int least, int most) {
        try {
            return Math.max(least, Math.min(most, Integer.parseInt(values.getProperty("size", "" + usual))));
        } catch (NumberFormatException e) {
            return usual;
        }
    }

    /** Changes the size of text. */
    public void size(int points) {
        values.setProperty("size", Integer.toString(points));
    }

    /** How the replicates of a well were placed the last time. */
    public Replicates replicates() {
        String word = values.getProperty("replicates", "");
        for (Replicates each : Replicates.values()) {
            if (each.name().equals(word)) {
                return each;
            }
        }
        return Replicates.BELOW;
    }

    /** Remembers how the replicates of a well are placed. */
    public void replicates(Replicates place) {
        values.setProperty("replicates", place.name());
    }

    /** Who sits here: the name under exclusions. */
    public String person() {
        return values.getProperty("person", "");
    }

    /** Changes who sits here. */
    public void person(String name) {
        values.setProperty("person", name);
    }

    /** Files opened or saved lately that are still there, the latest first. Looks at files: not for the event thread. */
    public List<Path> recent(String kind) {
        return known(kind).stream().filter(Files::isRegularFile).toList();
    }

    /** Files opened or saved lately, the latest first; some may be gone. */
    public synchronized List<Path> known(String kind) {
        List<Path> files = new ArrayList<>();
        for (int i = 0; i < MOST_RECENT; i++) {
            String text = values.getProperty(kind + "." + i, "");
            try {
                if (!text.isEmpty()) {
                    files.add(Path.of(text));
                }
            } catch (InvalidPathException e) {
                values.remove(kind + "." + i);
            }
        }
        return files;
    }

    /** Puts a file in front of those opened lately. */
    public synchronized void opened(String kind, Path path) {
        List<Path> files = new ArrayList<>(known(kind));
        Path whole = path.toAbsolutePath().normalize();
        files.remove(whole);
        files.add(0, whole);
        for (int i = 0; i < MOST_RECENT; i++) {
            if (i < files.size()) {
                values.setProperty(kind + "." + i, files.get(i).toString());
            } else {
                values.remove(kind + "." + i);
            }
        }
    }

    /** Writes the file. */
    public void save() throws OutputException {
        StringWriter text = new StringWriter();
        try {
            synchronized (this) {
                values.store(text, null);
            }
        } catch (IOException e) {
            throw new OutputException(file, "cannot be written (" + e.getMessage() + ")", e);
        }
        SafeFile.write(file, text.toString());
    }
}
