package tallywell.task;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.report.CarriedFile;

/**
 * The files that a workbook carries of one run, laid out in a folder that goes again when closed. They are found by what
 * they were read as and how the run names them, so that paths of another computer do not matter.
 */
final class CarriedFiles implements Finder, Closeable {
    private final Place place;
    private final Path folder;
    private final Map<String, Found> byTyped = new LinkedHashMap<>();

    /**
     * Lays files out.
     *
     * @param workbook that carries them, for messages
     */
    CarriedFiles(Path workbook, List<CarriedFile> files) throws OutputException {
        place = Place.file(workbook);
        try {
            folder = Files.createTempDirectory("tallywell");
        } catch (IOException e) {
            throw failed(Path.of(System.getProperty("java.io.tmpdir", ".")), e);
        }
        try {
            for (CarriedFile file : files) {
                // Each in a folder of its own, because the name of a layout file can be the layout's name.
                Path own = Files.createDirectory(folder.resolve(Integer.toString(byTyped.size())));
                Path path = own.resolve(fileName(file.name()));
                byTyped.put(key(file.role(), file.typed()), new Found(path, file.name()));
                Files.write(path, file.bytes());
            }
        } catch (IOException e) {
            OutputException failure = failed(folder, e);
            try {
                close();
            } catch (IOException more) {
                failure.addSuppressed(more);
            }
            throw failure;
        }
    }

    private static OutputException failed(Path where, IOException e) {
        return new OutputException(where, "what the workbook carries cannot be unpacked (" + e.getMessage() + ")", e);
    }

    /** The last part of a path of any system, without what a file may not be called on this one. */
    static String fileName(String name) {
        String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        String allowed = last.replaceAll("[\\x00-\\x1f:*?\"<>|]", "_");
        return allowed.isBlank() || allowed.equals(".") || allowed.equals("..") ? "file" : allowed;
    }

    private static String key(String role, String typed) {
        return role + ' ' + typed.replace('\\', '/');
    }

    @Override
    public Found find(String role, String typed) throws InputException {
        Found found = byTyped.get(key(role, typed));
        if (found == null) {
            throw new InputException(
                    place, "the run needs '" + typed + "' (" + role + "), which the workbook does not carry");
        }
        return found;
    }

    @Override
    public boolean hasMethod(String typed) {
        return byTyped.containsKey(key("method", typed));
    }

    /** The same message with the names that the files had, not those they were laid out under. */
    Notice named(Notice notice) {
        if (notice.place() instanceof Place.InFile in) {
            for (Found found : byTyped.values()) {
                if (found.path().toString().equals(in.file())) {
                    return new Notice(notice.severity(), new Place.InFile(found.name(), in.where()), notice.text());
                }
            }
        }
        return notice;
    }

    @Override
    public void close() throws IOException {
        List<Path> all = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            files.sorted(Comparator.reverseOrder()).forEach(all::add);
        }
        for (Path each : all) {
            Files.delete(each);
        }
    }
}
