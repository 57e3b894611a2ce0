package tallywell.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tallywell.method.AssayMethod;
import tallywell.notice.InputException;

/** The methods that come with the program, each a method file like any other. */
public final class MethodLibrary {
    private static final String FOLDER = "/tallywell/methods/";

    /** The ids of the built-in methods, in the order of the library. */
    public List<String> ids() {
        return text("index.txt")
                .orElse("")
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** The file of a built-in method as it stands, if there is such a method. */
    public Optional<String> file(String id) {
        return ids().contains(id) ? text(id + ".yaml") : Optional.empty();
    }

    /** A built-in method, if there is one with that id. */
    public Optional<AssayMethod> find(String id) throws InputException {
        Optional<String> text = file(id);
        return text.isPresent()
                ? Optional.of(new MethodReader().parse(Path.of(id + " (built in)"), text.get()))
                : Optional.empty();
    }

    private static Optional<String> text(String name) {
        try (InputStream stream = MethodLibrary.class.getResourceAsStream(FOLDER + name)) {
            return stream == null
                    ? Optional.empty()
                    : Optional.of(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new IllegalStateException("the program file is damaged: " + name, e);
        }
    }
}
