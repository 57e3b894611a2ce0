package tallywell.task;

import java.nio.file.Path;
import java.util.Optional;
import tallywell.files.MethodLibrary;
import tallywell.method.AssayMethod;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** Lists the built-in methods, or prints one as a file to start from. */
public final class ShowMethods {
    private final MethodLibrary library = new MethodLibrary();

    /** One line a method: id and title. */
    public String list() throws InputException {
        int width = library.ids().stream().mapToInt(String::length).max().orElse(0);
        StringBuilder text = new StringBuilder();
        for (String id : library.ids()) {
            AssayMethod method = library.find(id).orElseThrow();
            text.append(id)
                    .append(" ".repeat(width - id.length() + 2))
                    .append(method.title())
                    .append('\n');
        }
        return text.toString();
    }

    /**
     * One method as its file stands.
     *
     * @throws InputException if there is no such method
     */
    public String file(String id) throws InputException {
        Optional<String> file = library.file(id);
        return file.orElseThrow(() -> new InputException(
                Place.file(Path.of(id)),
                "found no built-in method of that name; expected one of " + String.join(", ", library.ids())));
    }
}
