import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/** Makes an application with its own Java, by the jpackage of the JDK that runs this. */
public class Application {
    public static void main(String[] args) throws IOException {
        Path target = Path.of(args[0]);
        Path input = target.resolve("app-input");
        Path app = target.resolve("app");
        clear(app);
        clear(input);
        Files.createDirectories(input);
        Files.copy(target.resolve("tallywell.jar"), input.resolve("tallywell.jar"), StandardCopyOption.REPLACE_EXISTING);
        ToolProvider jpackage = ToolProvider.findFirst("jpackage")
                .orElseThrow(() -> new IllegalStateException("this JDK has no jpackage"));
        int status = jpackage.run(System.out, System.err, List.of(
                        "--type", "app-image",
                        "--name", "Tallywell",
                        "--input", input.toString(),
                        "--main-jar", "tallywell.jar",
                        "--main-class", "tallywell.Main",
                        "--dest", app.toString())
                .toArray(new String[0]));
        System.exit(status);
    }

    private static void clear(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
    }
}
