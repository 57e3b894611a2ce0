package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.notice.InputException;

/**
 * Whatever bytes a file holds, it is read or refused with a notice. Its name keeps it out of the usual build, where MutationTest takes its place; for a hunt of
 * two minutes run {@code JAZZER_FUZZ=1 mvn -Dtest=ImporterFuzz test}. What it finds becomes a file of the corpus.
 */
class ImporterFuzz {
    static Stream<Arguments> seeds() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/exports"))) {
            return files
                    .filter(file -> file.toString().matches(".*[.](csv|txt|tsv)")
                            && !file.toString().matches(".*[.](expected[.]csv|refused[.]txt)"))
                    .filter(file -> file.toFile().length() < 2000)
                    .sorted()
                    .map(file -> Arguments.of((Object) bytes(file)))
                    .toList()
                    .stream();
        }
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @MethodSource("seeds")
    @FuzzTest(maxDuration = "2m")
    void anyFileIsReadOrRefused(byte[] bytes) throws IOException {
        Path file = Files.createTempFile("fuzz", ".txt");
        try {
            Files.write(file, bytes);
            Export export = new Importer().read(file, Choice.none());
            assertThat(export.explanation().text()).isNotBlank();
        } catch (InputException e) {
            assertThat(e.notices()).isNotEmpty();
        } finally {
            Files.delete(file);
        }
    }
}
