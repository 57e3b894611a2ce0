package tallywell.desk;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tallywell.notice.OutputException;

/** The sample runs and layouts that come with the program, laid out as files that can be looked at and dragged. */
public final class Examples {
    /** The one that the start page opens. */
    public static final String FIRST = "cider-malic-kinetic";

    private static final String ROOT = "/tallywell/examples/";

    private final Path folder;

    /** Examples are laid out in a folder. */
    public Examples(Path folder) {
        this.folder = folder;
    }

    /** The names of the sample runs. */
    public List<String> names() {
        return index().stream()
                .filter(each -> each.startsWith("samples/") && each.endsWith("/run.yaml"))
                .map(each -> each.split("/")[1])
                .toList();
    }

    /**
     * Lays the files out where they are missing.
     *
     * @return the run file of an example
     */
    public Path layOut(String name) throws OutputException {
        for (String each : index()) {
            Path target = folder.resolve(each);
            if (!Files.exists(target)) {
                copy(each, target);
            }
        }
        return folder.resolve("samples").resolve(name).resolve("run.yaml");
    }

    /** Lays the layouts out where they are missing, without the sample runs. */
    public void layOutLayouts() throws OutputException {
        for (String each : index()) {
            Path target = folder.resolve(each);
            if (each.startsWith("plate-layouts/") && !Files.exists(target)) {
                copy(each, target);
            }
        }
    }

    /** Whether a file is one of the layouts that come with the program. */
    public static boolean isBundledLayout(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return folder != null
                && folder.getFileName() != null
                && index().contains(folder.getFileName() + "/" + file.getFileName());
    }

    private static void copy(String name, Path target) throws OutputException {
        try (InputStream in = resource(name)) {
            Path parent = target.getParent();
            if (parent != null) {
                Files.createDirectories(parent);
            }
            Files.copy(in, target);
        } catch (IOException e) {
            throw new OutputException(target, "cannot be written (" + e.getMessage() + ")", e);
        }
    }

    private static List<String> index() {
        try (InputStream in = resource("index.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty())
                    .toList();
        } catch (IOException e) {
            throw new IllegalStateException("the program file is damaged: index.txt", e);
        }
    }

    private static InputStream resource(String name) {
        InputStream in = Examples.class.getResourceAsStream(ROOT + name);
        if (in == null) {
            throw new IllegalStateException("the program file is damaged: " + name);
        }
        return in;
    }
}
