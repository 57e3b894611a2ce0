package tallywell.bench;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import tallywell.readings.Choice;
import tallywell.readings.Importer;

/**
 * How fast exports are read: one large wide time series against cutting the same file into cells with Commons CSV alone,
 * and one kinetic plate of 96 wells and 241 times once the program is warm.
 *
 * <p>Run with the size of the large file in megabytes, 50 if none is given. To measure one core, start it with {@code
 * taskset -c 0} or the like.
 */
public final class ImportBenchmark {
    private static final int ROUNDS = 5;

    private ImportBenchmark() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws Exception {
        int megabytes = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 50;
        Path folder = Files.createTempDirectory("import-benchmark");
        Path large = folder.resolve("large.csv");
        Path plate = folder.resolve("plate.csv");
        try {
            series(large, megabytes * 1_000_000L);
            series(plate, 241);
            large(large);
            plate(plate);
        } finally {
            Files.deleteIfExists(large);
            Files.deleteIfExists(plate);
            Files.deleteIfExists(folder);
        }
    }

    private static void large(Path file) throws Exception {
        double size = Files.size(file) / 1e6;
        double ours = best(() -> new Importer().read(file, Choice.none()).blocks().size());
        double csv = best(() -> cells(file));
        print("large series, %.0f MB: %.2f s, %.0f MB/s", size, ours, size / ours);
        print("Commons CSV alone:     %.2f s, %.0f MB/s", csv, size / csv);
        print("ratio (ours / Commons CSV): %.2f", ours / csv);
    }

    private static void plate(Path file) throws Exception {
        for (int i = 0; i < 50; i++) {
            new Importer().read(file, Choice.none());
        }
        double ours = best(() -> new Importer().read(file, Choice.none()).blocks().size());
        print("one plate of 96 wells and 241 times, warm: %.1f ms", ours * 1000);
    }

    private static long cells(Path file) throws IOException {
        long cells = 0;
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8);
                CSVParser parser = CSVFormat.RFC4180.parse(reader)) {
            for (CSVRecord row : parser) {
                cells += row.size();
            }
        }
        return cells;
    }

    private static double best(Callable<?> work) throws Exception {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < ROUNDS; i++) {
            long start = System.nanoTime();
            work.call();
            best = Math.min(best, (System.nanoTime() - start) / 1e9);
        }
        return best;
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    /** Writes rows up to a number of bytes, or so many rows if the number is small. */
    private static void series(Path file, long most) throws IOException {
        Random random = new Random(1);
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            StringBuilder line = new StringBuilder("Time [s]");
            for (int well = 0; well < 96; well++) {
                line.append(',').append((char) ('A' + well / 12)).append(well % 12 + 1);
            }
            long written = 0;
            for (int row = 0; most < 10_000 ? row <= most : written < most; row++) {
                out.append(line).append('\n');
                written += line.length() + 1L;
                line.setLength(0);
                line.append(row * 5L);
                for (int well = 0; well < 96; well++) {
                    int digits = 10_000 + random.nextInt(25_000);
                    line.append(',').append(digits / 10_000 - 1).append('.');
                    line.append(Integer.toString(10_000 + digits % 10_000), 1, 5);
                }
            }
        }
    }
}
