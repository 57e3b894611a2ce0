package tallywell.task;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The files that one run was read from, in the order they were read. */
final class ReadFiles {
    private final List<Entry> entries = new ArrayList<>();

    /**
     * One file.
     *
     * @param role what it was read as
     * @param typed as the run names it
     * @param name what messages and reports call it
     * @param path where it is; none for a method that is built in
     * @param text of a method that is built in
     */
    record Entry(String role, String typed, String name, Optional<Path> path, Optional<String> text) {
        /** The bytes of what is built in. */
        byte[] builtIn() {
            return text.orElseThrow().getBytes(StandardCharsets.UTF_8);
        }
    }

    /** Adds a file; once, however often the run names it so. */
    void add(String role, String typed, Finder.Found found) {
        add(new Entry(role, typed, found.name(), Optional.of(found.path()), Optional.empty()));
    }

    /** Adds a method that is built in. */
    void builtIn(String id, String text) {
        add(new Entry("method", id, id + " (built in)", Optional.empty(), Optional.of(text)));
    }

    private void add(Entry entry) {
        if (!entries.contains(entry)) {
            entries.add(entry);
        }
    }

    /** Every file with what it was read as. */
    List<Entry> entries() {
        return List.copyOf(entries);
    }

    /** Those on this computer, with what they were read as. */
    Map<Path, String> onDisk() {
        Map<Path, String> files = new LinkedHashMap<>();
        for (Entry entry : entries) {
            entry.path().ifPresent(path -> files.put(path, entry.role()));
        }
        return files;
    }
}
