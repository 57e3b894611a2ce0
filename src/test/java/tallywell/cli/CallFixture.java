package tallywell.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Calls of the command line in this process, and copies of sample runs to be called with. */
final class CallFixture {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    int run(Object... words) {
        out.reset();
        err.reset();
        String[] args = Stream.of(words).map(Object::toString).toArray(String[]::new);
        PrintStream data = new PrintStream(out, true, StandardCharsets.UTF_8);
        return Cli.run(new Console(data, new PrintStream(err, true, StandardCharsets.UTF_8), false), args);
    }

    String out() {
        return out.toString(StandardCharsets.UTF_8);
    }

    String err() {
        return err.toString(StandardCharsets.UTF_8);
    }

    /** The run file of a copy of a sample. */
    static Path copy(String sample, Path to) throws IOException {
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(Path.of("samples", sample))) {
            for (Path each : files.filter(file -> file.toString().matches(".*[.](csv|yaml)"))
                    .toList()) {
                Files.copy(each, to.resolve(each.getFileName()));
            }
        }
        Path run = to.resolve("run.yaml");
        String layouts = Path.of("plate-layouts").toAbsolutePath().toString();
        return Files.writeString(run, Files.readString(run).replace("../../plate-layouts", layouts));
    }

    static void change(Path file, String from, String to) throws IOException {
        String text = Files.readString(file);
        if (!text.contains(from)) {
            throw new IllegalArgumentException(file + " does not hold '" + from + "'");
        }
        Files.writeString(file, text.replace(from, to));
    }
}
