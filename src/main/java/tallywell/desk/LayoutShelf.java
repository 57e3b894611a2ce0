package tallywell.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tallywell.files.LayoutReader;
import tallywell.notice.InputException;
import tallywell.plate.Layout;

/** The layouts at hand: those in the folders where layouts are kept. Not for the event thread. */
public final class LayoutShelf {
    /** Nobody looks through more than these. */
    private static final int MOST = 200;

    private final List<Path> folders;

    /** The layouts in some folders; folders that are not there are passed over. */
    public LayoutShelf(List<Path> folders) {
        this.folders = List.copyOf(folders);
    }

    /** The layouts, each once, those in the same folder as a file first. */
    public List<Origin<Layout>> all(List<Path> files) {
        Set<Path> around = new LinkedHashSet<>();
        for (Path file : files) {
            Path parent = file.toAbsolutePath().normalize().getParent();
            if (parent != null) {
                around.add(parent);
            }
        }
        folders.forEach(folder -> around.add(folder.toAbsolutePath().normalize()));
        List<Origin<Layout>> layouts = new ArrayList<>();
        around.forEach(folder -> read(folder, layouts));
        Set<Layout> seen = new HashSet<>();
        layouts.removeIf(each -> !seen.add(each.value()));
        return layouts;
    }

    /**
     * The layouts as a menu lists them: the user's own in the order of their titles, then those that come with the program.
     */
    public List<Shelved> menu() {
        return all(List.of()).stream()
                .map(each -> new Shelved(
                        each, each.file().filter(Examples::isBundledLayout).isEmpty()))
                .sorted(Comparator.comparing(Shelved::own)
                        .reversed()
                        .thenComparing(each -> each.layout().value().name(), String.CASE_INSENSITIVE_ORDER))
                .toList();
    }

    /**
     * A layout on the shelf.
     *
     * @param layout with its file
     * @param own whether the user made it; else it came with the program
     */
    public record Shelved(Origin<Layout> layout, boolean own) {}

    private static void read(Path folder, List<Origin<Layout>> into) {
        List<Path> files = new ArrayList<>();
        try (Stream<Path> inside = Files.list(folder)) {
            inside.filter(each -> each.toString().endsWith(".yaml")).limit(MOST).forEach(files::add);
        } catch (IOException e) {
            // A folder that is not there or must not be read offers no layouts.
            return;
        }
        files.sort(null);
        for (Path file : files) {
            if (Router.isLayout(file) && into.size() < MOST) {
                layout(file).ifPresent(into::add);
            }
        }
    }

    private static Optional<Origin<Layout>> layout(Path file) {
        try {
            return Optional.of(Origin.file(file, new LayoutReader().read(file)));
        } catch (InputException e) {
            // A layout with a fault cannot be used in place of another; opening it says what is wrong with it.
            return Optional.empty();
        }
    }
}
