package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.InputException;
import tallywell.notice.Notice;

/**
 * Damages the files of the corpus at random: whatever comes of it is read or refused in plain words soon,
 * never anything else. {@code -Dtallywell.mutations=N} tries more, {@code -Dtallywell.mutation=SEED} begins
 * elsewhere.
 */
class MutationTest {
    private static final int COUNT = Integer.getInteger("tallywell.mutations", 800);
    private static final long FIRST = Long.getLong("tallywell.mutation", 1);
    private static final long SLOW_MS = 30_000;
    private static final String[] WORDS = {
        "A1",
        "H12",
        "0,5",
        "1.5",
        "\"",
        ";",
        ",",
        "\t",
        "\n",
        "\r",
        "-",
        ">3",
        "OVER",
        "Time",
        "nm",
        "Plate",
        "0:30",
        "1e9",
        "1e999",
        "99999999999999999999",
        "\u00e4",
        "\u2212",
        "A",
        "12",
        "340",
        "Mean",
        "\ufeff",
        "  ",
        "1,234",
        "="
    };

    @TempDir
    private Path folder;

    @Test
    void damagedFilesAreReadOrRefusedInPlainWords() throws Exception {
        List<Path> corpus;
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/exports"))) {
            corpus = files.filter(file -> !file.toString().matches(".*[.](expected[.]csv|refused[.]txt|py)"))
                    .sorted()
                    .toList();
        }
        for (long seed = FIRST; seed < FIRST + COUNT; seed++) {
            Random random = new Random(seed);
            Path source = corpus.get(random.nextInt(corpus.size()));
            Path file = folder.resolve("damaged");
            Files.write(file, damaged(Files.readAllBytes(source), random));
            long start = System.nanoTime();
            attempt(file, "seed " + seed + ", " + source.getFileName());
            assertThat((System.nanoTime() - start) / 1_000_000)
                    .as("ms for seed %d of %s", seed, source)
                    .isLessThan(SLOW_MS);
        }
    }

    private static void attempt(Path file, String name) {
        try {
            Export export = new Importer().read(file, Choice.none());
            StringBuilder csv = new StringBuilder();
            new ReadingsCsv(csv).rows(export);
            assertThat(csv).as(name).doesNotContain("NaN").doesNotContain("Infinity");
            assertThat(export.explanation().text()).as(name).isNotBlank();
        } catch (InputException e) {
            assertThat(e.notices()).as(name).isNotEmpty();
            for (Notice notice : e.notices()) {
                assertThat(notice.toString())
                        .as(name)
                        .isNotBlank()
                        .doesNotContain("Exception")
                        .doesNotContain("tallywell.");
            }
        } catch (IOException | RuntimeException | StackOverflowError e) {
            throw new AssertionError(name, e);
        }
    }

    private static byte[] damaged(byte[] bytes, Random random) {
        byte[] result = bytes;
        for (int i = 0; i <= random.nextInt(6); i++) {
            result = once(result, random);
        }
        return result;
    }

    private static byte[] once(byte[] bytes, Random random) {
        if (bytes.length == 0) {
            return WORDS[random.nextInt(WORDS.length)].getBytes(StandardCharsets.UTF_8);
        }
        int at = random.nextInt(bytes.length);
        int to = Math.min(bytes.length, at + 1 + random.nextInt(40));
        switch (random.nextInt(7)) {
            case 0:
                return Arrays.copyOf(bytes, at);
            case 1:
                return joined(Arrays.copyOf(bytes, at), new byte[0], Arrays.copyOfRange(bytes, to, bytes.length));
            case 2:
                byte[] word = WORDS[random.nextInt(WORDS.length)].getBytes(StandardCharsets.UTF_8);
                return joined(Arrays.copyOf(bytes, at), word, Arrays.copyOfRange(bytes, at, bytes.length));
            case 3:
                byte[] copy = Arrays.copyOfRange(bytes, at, to);
                return joined(Arrays.copyOf(bytes, at), copy, Arrays.copyOfRange(bytes, at, bytes.length));
            case 4:
                byte[] flipped = bytes.clone();
                flipped[at] = (byte) random.nextInt(256);
                return flipped;
            case 5:
                return lines(bytes, random);
            default:
                byte from = bytes[at];
                byte target = (byte) " ,;\t|.\n".charAt(random.nextInt(7));
                byte[] replaced = bytes.clone();
                for (int i = 0; i < replaced.length; i++) {
                    replaced[i] = replaced[i] == from ? target : replaced[i];
                }
                return replaced;
        }
    }

    /** Drops, doubles or swaps lines. */
    private static byte[] lines(byte[] bytes, Random random) {
        List<String> lines =
                new ArrayList<>(Arrays.asList(new String(bytes, StandardCharsets.ISO_8859_1).split("\n", -1)));
        int one = random.nextInt(lines.size());
        int other = random.nextInt(lines.size());
        switch (random.nextInt(3)) {
            case 0 -> lines.remove(one);
            case 1 -> lines.add(other, lines.get(one));
            default -> java.util.Collections.swap(lines, one, other);
        }
        return String.join("\n", lines).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] joined(byte[] before, byte[] between, byte[] after) {
        byte[] all = Arrays.copyOf(before, before.length + between.length + after.length);
        System.arraycopy(between, 0, all, before.length, between.length);
        System.arraycopy(after, 0, all, before.length + between.length, after.length);
        return all;
    }
}
