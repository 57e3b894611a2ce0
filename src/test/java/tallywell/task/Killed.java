package tallywell.task;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A process that writes outputs and ends before it is done, as if it were killed. */
final class Killed {
    private static final int TERMINATED = 143;

    private Killed() {}

    /** Runs this class in a process of its own. */
    static void call(String how, Path folder) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Killed.class.getName(),
                        how,
                        folder.toString())
                .inheritIO()
                .start();
        if (process.waitFor() != TERMINATED) {
            throw new IOException("the process ended with " + process.exitValue());
        }
    }

    /** Ends while writing, between two moves, or told to end while writing. */
    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args[1]);
        switch (args[0]) {
            case "writing" -> {
                new Outputs(true, List.of()).open(folder.resolve("a.csv")).write(1);
                Runtime.getRuntime().halt(TERMINATED);
            }
            case "told" -> {
                OutputStream out = new Outputs(true, List.of()).open(folder.resolve("a.csv"));
                out.write(1);
                System.exit(TERMINATED);
            }
            case "moving" -> {
                moving(folder);
                Runtime.getRuntime().halt(TERMINATED);
            }
            default -> throw new IllegalArgumentException(args[0]);
        }
    }

    /** The steps of a commit of three files, up to the first move. */
    private static void moving(Path folder) throws IOException {
        HiddenFiles hidden = new HiddenFiles();
        List<Journal.Move> moves = new ArrayList<>();
        for (String name : List.of("a.csv", "b.csv", "tables/c.csv")) {
            Path target = folder.resolve(name);
            Path part = hidden.part(target.getParent());
            Files.write(part, (OutputsTest.HEADER + "new\r\n").getBytes(StandardCharsets.UTF_8));
            moves.add(new Journal.Move(part, target, Journal.stamp(target)));
        }
        hidden.journal(moves);
        Disk.replace(moves.get(0).from(), moves.get(0).to());
    }
}
