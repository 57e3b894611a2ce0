package tallywell.task;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Names of folders for the pictures of many runs: the file name of each run without its ending, with as many of the folders
 * above it in front as it takes to tell the runs apart.
 */
final class ChartFolders {
    private ChartFolders() {}

    /**
     * One name a run, in their order, all different.
     *
     * @param runs run files as typed
     */
    static List<String> of(List<Path> runs) {
        int most = runs.stream()
                .mapToInt(run -> run.toAbsolutePath().normalize().getNameCount())
                .max()
                .orElse(0);
        for (int parts = 1; parts < most; parts++) {
            int length = parts;
            List<String> names = runs.stream().map(run -> name(run, length)).toList();
            if (new HashSet<>(names).size() == names.size()) {
                return names;
            }
        }
        return numbered(runs, most);
    }

    private static String name(Path run, int parts) {
        Path whole = run.toAbsolutePath().normalize();
        int from = Math.max(0, whole.getNameCount() - parts);
        List<String> words = new ArrayList<>();
        whole.subpath(from, whole.getNameCount()).forEach(part -> words.add(part.toString()));
        return String.join("-", words).replaceFirst("[.][^.]*$", "");
    }

    /** The same run twice: nothing tells them apart but their order. */
    private static List<String> numbered(List<Path> runs, int parts) {
        Set<String> taken = new HashSet<>();
        List<String> names = new ArrayList<>();
        for (Path run : runs) {
            String name = name(run, Math.min(parts, 2));
            String free = name;
            for (int n = 2; !taken.add(free); n++) {
                free = name + "-" + n;
            }
            names.add(free);
        }
        return names;
    }
}
