package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.notice.InputException;

/**
 * Every file in the corpus against what its maker says stands in it; see corpus.py beside the files. {@code
 * NAME.expected.csv} holds the readings, {@code NAME.block2.expected.csv} those of {@code --block 2}, {@code
 * NAME.refused.txt} words that the refusal must hold, one phrase a line. What corpus.py does not make was written by
 * somebody who did not know the importer; those readings were compared one by one with a list made apart from it.
 */
class CorpusTest {
    private static final Path CORPUS = Path.of("src/test/resources/exports");

    static Stream<String> expectations() throws IOException {
        try (Stream<Path> files = Files.list(CORPUS)) {
            return files
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.matches(".*[.](expected[.]csv|refused[.]txt)"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("expectations")
    void fileIsReadAsExpected(String expectation) throws Exception {
        String name = expectation.replaceFirst("([.]block\\d+)?[.](expected[.]csv|refused[.]txt)$", "");
        Choice choice = Choice.none();
        if (expectation.matches(".*[.]block\\d+[.].*")) {
            choice = choice.withBlock(Integer.parseInt(expectation.replaceFirst(".*[.]block(\\d+)[.].*", "$1")));
        }
        String expected = Files.readString(CORPUS.resolve(expectation));
        if (expectation.endsWith(".refused.txt")) {
            refused(CORPUS.resolve(name), choice, expected);
        } else {
            Export export = new Importer().read(CORPUS.resolve(name), choice);
            StringBuilder csv = new StringBuilder();
            ReadingsCsv writer = new ReadingsCsv(csv);
            writer.header();
            writer.rows(new Export(Path.of(name), export.blocks(), export.explanation()));
            assertThat(csv.toString()).isEqualTo(expected);
        }
    }

    private static void refused(Path file, Choice choice, String phrases) {
        InputException refusal = catchThrowableOfType(InputException.class, () -> new Importer().read(file, choice));
        assertThat(refusal).as("%s must be refused", file).isNotNull();
        List<String> wanted = phrases.lines().filter(line -> !line.isBlank()).toList();
        assertThat(refusal.getMessage())
                .contains(wanted)
                .contains(file.getFileName().toString());
        assertThat(refusal.getMessage()).doesNotContain("Exception").doesNotContain("NaN");
    }

    @Test
    void corpusIsLargeAndEveryFileHasAnExpectation() throws Exception {
        List<String> expectations = expectations().toList();
        try (Stream<Path> files = Files.list(CORPUS)) {
            List<String> names = files.map(file -> file.getFileName().toString())
                    .filter(name -> !name.matches(".*[.](expected[.]csv|refused[.]txt|py|md)"))
                    .toList();
            assertThat(names).hasSizeGreaterThanOrEqualTo(60);
            assertThat(names)
                    .allSatisfy(name ->
                            assertThat(expectations).anyMatch(expectation -> expectation.startsWith(name + ".")));
        }
    }
}
