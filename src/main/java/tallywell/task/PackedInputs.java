package tallywell.task;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Where the files of runs stand in a package: to one another as they stand on the disk, so that paths from one to another
 * hold and the runs can be worked up again from the package. The folders above the deepest one that holds them all are
 * left away, since they say where somebody keeps files.
 */
final class PackedInputs {
    private static final String FOLDER = "inputs";

    private final Map<Path, File> files = new LinkedHashMap<>();

    /**
     * A file with what it was read as.
     *
     * @param path to read it by
     * @param roles such as {@code layout}; several where runs use it differently
     * @param sha256 hash of its bytes when it was read
     */
    record File(Path path, Set<String> roles, String sha256) {}

    /** Notes a file; the same file may come again. */
    void add(Path path, String role, String sha256) {
        files.computeIfAbsent(path.toAbsolutePath().normalize(), key -> new File(path, new LinkedHashSet<>(), sha256))
                .roles()
                .add(role);
    }

    /** The files by their path in the package. */
    Map<String, File> placed() {
        Map<String, File> placed = new LinkedHashMap<>();
        Path top = top();
        Map<String, Integer> taken = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        files.forEach((path, file) -> {
            StringBuilder to = new StringBuilder(FOLDER);
            // A file on another drive has no folder in common.
            for (Path part : path.startsWith(top) ? top.relativize(path) : path) {
                to.append('/').append(plain(part.toString()));
            }
            // Names that differ in letter case only are one on some systems.
            int times = taken.merge(to.toString(), 1, Integer::sum);
            placed.put(times == 1 ? to.toString() : numbered(to.toString(), times), file);
        });
        return placed;
    }

    /** The deepest folder that holds all files. */
    private Path top() {
        List<Path> all = List.copyOf(files.keySet());
        Path top = all.get(0).getParent();
        for (Path each : all) {
            while (top != null && !each.startsWith(top)) {
                top = top.getParent();
            }
        }
        return top == null ? all.get(0).getRoot() : top;
    }

    /** A part of a path as the specification of packages allows it: no two points in a row. */
    private static String plain(String part) {
        return part.replace('\\', '_').replaceAll("[.]{2,}", "_");
    }

    private static String numbered(String path, int times) {
        int point = path.lastIndexOf('.');
        return point > path.lastIndexOf('/')
                ? path.substring(0, point) + "-" + times + path.substring(point)
                : path + "-" + times;
    }
}
