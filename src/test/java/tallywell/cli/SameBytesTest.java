package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same inputs and the same given time give the same bytes, wherever and however the program is started. */
class SameBytesTest {
    @TempDir
    private Path folder;

    @Test
    void everyOutputIsTheSameInAnotherFolderLanguageAndZone() throws Exception {
        Path one = copied("one");
        Path other = copied("quite/another");
        Process first = start(one, "en", "US", "America/St_Johns");
        Process second = start(other, "tr", "TR", "Pacific/Chatham");
        finish(first, one);
        finish(second, other);
        Map<String, Path> made = outputs(one);
        assertThat(made.keySet())
                .contains(
                        "cider-malic-kinetic.xlsx",
                        "cider-malic-kinetic-charts/plate-traces.png",
                        "cider-malic-kinetic-charts/plate-traces.svg",
                        "juice-glucose-fructose.xlsx",
                        "juice-glucose-fructose-tables/results.csv",
                        "juice-glucose-fructose-tables/wells.csv");
        Map<String, Path> again = outputs(other);
        assertThat(again.keySet()).isEqualTo(made.keySet());
        made.forEach((name, file) -> assertThat(again.get(name)).as(name).hasSameBinaryContentAs(file));
    }

    private Path copied(String name) throws IOException {
        Path home = Files.createDirectories(folder.resolve(name));
        for (String from : List.of("samples/cider-malic-kinetic", "samples/juice-glucose-fructose", "plate-layouts")) {
            Path to = Files.createDirectories(home.resolve(from));
            try (Stream<Path> files = Files.list(Path.of(from))) {
                for (Path each : files.toList()) {
                    Files.copy(each, to.resolve(each.getFileName()));
                }
            }
        }
        return home;
    }

    private static Process start(Path home, String language, String country, String zone) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx400m",
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-Duser.language=" + language,
                "-Duser.country=" + country,
                "-Duser.timezone=" + zone,
                "-cp",
                System.getProperty("java.class.path"),
                SampleCalls.class.getName(),
                "cider-malic-kinetic"));
        return new ProcessBuilder(command)
                .directory(home.toFile())
                .redirectErrorStream(true)
                .redirectOutput(home.resolve("said.log").toFile())
                .start();
    }

    private static void finish(Process process, Path home) throws Exception {
        boolean ended = process.waitFor(120, TimeUnit.SECONDS);
        if (!ended) {
            process.destroyForcibly();
        }
        assertThat(ended && process.exitValue() == 0)
                .as("%s", Files.readString(home.resolve("said.log")))
                .isTrue();
    }

    private static Map<String, Path> outputs(Path home) throws IOException {
        Map<String, Path> outputs = new TreeMap<>();
        try (Stream<Path> files = Files.walk(home)) {
            files.filter(Files::isRegularFile).forEach(file -> {
                String name = home.relativize(file).toString().replace('\\', '/');
                if (!name.startsWith("samples/") && !name.startsWith("plate-layouts/") && !name.equals("said.log")) {
                    outputs.put(name, file);
                }
            });
        }
        return outputs;
    }
}
