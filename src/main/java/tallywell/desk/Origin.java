package tallywell.desk;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A value with where it comes from.
 *
 * @param name as the user knows it: an id, a file name, or words
 * @param file the file, if it is in one as it stands
 * @param value the value
 * @param text what a file of it would say, where only the value does not tell
 * @param <T> what it is
 */
public record Origin<T>(String name, Optional<Path> file, T value, Optional<String> text) {
    /** A value read from a file. */
    static <T> Origin<T> file(Path file, T value) {
        return new Origin<>(String.valueOf(file.getFileName()), Optional.of(file), value, Optional.empty());
    }

    /** A value that is in no file. */
    public static <T> Origin<T> unsaved(String name, T value) {
        return new Origin<>(name, Optional.empty(), value, Optional.empty());
    }
}
