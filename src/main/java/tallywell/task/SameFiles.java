package tallywell.task;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * A set of files that knows each by any of its names: relative or absolute, through links, and as another hard link to the
 * same content. Where the system numbers its files (not on Windows), a look-up takes the same time however many there are.
 */
final class SameFiles {
    private final Set<Path> places = new HashSet<>();
    private final Set<Object> numbers = new HashSet<>();
    private final List<Path> unnumbered = new ArrayList<>();

    /** Adds a file, which need not exist yet. */
    void add(Path path) {
        if (!places.add(place(path)) || !Files.exists(path)) {
            return;
        }
        Optional<Object> number = number(path);
        if (number.isPresent()) {
            numbers.add(number.get());
        } else {
            unnumbered.add(path);
        }
    }

    void addAll(Collection<Path> paths) {
        paths.forEach(this::add);
    }

    /** Whether a path leads to one of the files. */
    boolean contains(Path path) {
        if (places.contains(place(path))) {
            return true;
        }
        if (!Files.exists(path)) {
            return false;
        }
        Optional<Object> number = number(path);
        return number.isPresent()
                ? numbers.contains(number.get())
                : unnumbered.stream().anyMatch(each -> isSame(each, path));
    }

    /** Where the file is once all links are followed; for a file to come, in its folder. */
    private static Path place(Path path) {
        try {
            return path.toRealPath();
        } catch (IOException e) {
            Path whole = path.toAbsolutePath().normalize();
            Path folder = whole.getParent();
            Path name = whole.getFileName();
            if (folder == null || name == null) {
                return whole;
            }
            try {
                return folder.toRealPath().resolve(name);
            } catch (IOException none) {
                return whole;
            }
        }
    }

    private static Optional<Object> number(Path path) {
        try {
            return Optional.ofNullable(
                    Files.readAttributes(path, BasicFileAttributes.class).fileKey());
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static boolean isSame(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return Objects.equals(one, other);
        }
    }
}
