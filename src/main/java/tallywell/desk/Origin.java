package tallywell.desk;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A value with where it comes from.
 *
 * @param name as the user knows it: an id, a file name, or words
 * @param file the file, if it is in one as it stands
 * @param value the value
 * @param <T> what it is
 */
public record Origin<T>(String name, Optional<Path> file, T value) {
    /** A value read from a file. */
    static <T> Origin<T> file(Path file, T value) {
        return new Origin<>(String.valueOf(file.getFileName()), Optional.of(file), value);
    }
}
