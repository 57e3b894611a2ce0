package tallywell.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;

/**
 * Times whole commands of the jar, as a person waits for them: one end-point run, and many kinetic plates in one call with a
 * small heap. Build the jar first; start from the project's root.
 *
 * <p>Arguments: how many kinetic plates (300). Times are of this machine on this day: quote the ratios.
 */
public final class CommandBenchmark {
    private static final int REPEATS = 7;
    private static final Path JAR = Path.of("target/tallywell.jar");

    private CommandBenchmark() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        int plates = args.length > 0 ? Integer.parseInt(args[0]) : 300;
        Path folder = Files.createTempDirectory("command-benchmark");
        try {
            endPointRun(folder);
            kineticPlates(folder, plates);
        } finally {
            delete(folder);
        }
    }

    private static void endPointRun(Path folder) throws IOException, InterruptedException {
        double[] run = new double[REPEATS];
        double[] start = new double[REPEATS];
        String out = folder.resolve("one.xlsx").toString();
        for (int i = -1; i < REPEATS; i++) {
            double version = seconds("512m", "--version");
            double workup = seconds("512m", "workup", "--force", "--quiet", "samples/cider-l-malic/run.yaml", "-o", out);
            if (i >= 0) {
                start[i] = version;
                run[i] = workup;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "one end-point run, workbook included: %s s; '--version' alone: %s s; ratio of medians %.1f%n",
                spread(run),
                spread(start),
                median(run) / median(start));
    }

    private static void kineticPlates(Path folder, int plates) throws IOException, InterruptedException {
        int few = Math.max(1, plates / 10);
        List<String> runs = makePlates(folder, plates);
        double least = many(folder, runs.subList(0, few));
        double most = many(folder, runs);
        System.out.printf(
                Locale.ROOT,
                "%d kinetic plates (96 × 94) in one call with -Xmx256m: %.1f s, %.1f ms a plate; %d plates: %.1f s; ratio %.1f for %.0f times the plates%n",
                plates,
                most,
                1000 * most / plates,
                few,
                least,
                most / least,
                (double) plates / few);
    }

    private static double many(Path folder, List<String> runs) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of("workup", "--force", "--quiet", "-o", folder.resolve("all.xlsx").toString()));
        words.addAll(runs);
        return seconds("256m", words.toArray(String[]::new));
    }

    /** Copies of the kinetic sample, each with noise of its own, so that no two plates are the same. */
    private static List<String> makePlates(Path folder, int plates) throws IOException {
        Path sample = Path.of("samples/cider-malic-kinetic");
        List<String> lines = Files.readAllLines(sample.resolve("trace.csv"));
        String run = Files.readString(sample.resolve("run.yaml"))
                .replace("../../plate-layouts", Path.of("plate-layouts").toAbsolutePath().toString())
                .replace("samples.csv", sample.resolve("samples.csv").toAbsolutePath().toString());
        Random random = new Random(1);
        List<String> runs = new ArrayList<>();
        for (int i = 0; i < plates; i++) {
            List<String> noisy = lines.stream().map(line -> noisy(line, random)).toList();
            Files.write(folder.resolve("trace" + i + ".csv"), noisy);
            Path file = folder.resolve("run" + i + ".yaml");
            Files.writeString(file, run.replace("trace.csv", "trace" + i + ".csv"));
            runs.add(file.toString());
        }
        return runs;
    }

    /** Another last digit for every absorbance of a line. */
    private static String noisy(String line, Random random) {
        return Arrays.stream(line.split(",", -1))
                .map(cell -> cell.matches("-?\\d+[.]\\d{4}") ? cell + random.nextInt(10) : cell)
                .reduce((one, other) -> one + "," + other)
                .orElse("");
    }

    private static double seconds(String heap, String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("java", "-Xmx" + heap, "-jar", JAR.toString()));
        command.addAll(List.of(words));
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        int status = process.waitFor();
        double seconds = (System.nanoTime() - start) / 1e9;
        if (status != 0 && status != 3) {
            throw new IllegalStateException("the command ended with " + status);
        }
        return seconds;
    }

    private static String spread(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return String.format(
                Locale.ROOT, "%.2f (%.2f to %.2f)", median(values), sorted[0], sorted[sorted.length - 1]);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path each : files.toList()) {
                Files.delete(each);
            }
        }
        Files.delete(folder);
    }
}
