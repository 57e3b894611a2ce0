package tallywell.task;

import java.io.IOException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The moves by which the outputs of one call reach their places, as text that outlives the call. It counts only when it is
 * whole, which its last line says.
 */
final class Journal {
    private static final String END = "end";
    private static final String ELSEWHERE = "see ";
    private static final String NOTHING = "-";

    private Journal() {}

    /**
     * One move.
     *
     * @param from a hidden file
     * @param to its place, in the same folder
     * @param instead what stood there as {@link #stamp} says it
     */
    record Move(Path from, Path to, String instead) {}

    /** Size and time of a file; of one that is not there a dash. */
    static String stamp(Path file) throws IOException {
        return Files.exists(file)
                ? Files.size(file) + "/" + Files.getLastModifiedTime(file).toMillis()
                : NOTHING;
    }

    /** The moves as text. */
    static String text(List<Move> moves) {
        StringBuilder text = new StringBuilder();
        for (Move each : moves) {
            text.append(word(each.from()))
                    .append(' ')
                    .append(word(each.to()))
                    .append(' ')
                    .append(each.instead())
                    .append('\n');
        }
        return text.append(END).append('\n').toString();
    }

    /** Says in which file the journal stands. */
    static String elsewhere(Path file) {
        return ELSEWHERE + word(file) + "\n" + END + "\n";
    }

    private static String word(Path path) {
        return URLEncoder.encode(path.toAbsolutePath().toString(), StandardCharsets.UTF_8);
    }

    /** The moves that a lock file lists, or the one it points to; none if the call ended before they were all written. */
    static List<Move> read(Path lock) throws IOException {
        Optional<List<String>> lines = lines(lock);
        if (lines.isPresent() && lines.get().size() == 1 && lines.get().get(0).startsWith(ELSEWHERE)) {
            Optional<Path> other = path(lines.get().get(0).substring(ELSEWHERE.length()));
            boolean sameCall = other.isPresent()
                    && String.valueOf(other.get().getFileName()).equals(String.valueOf(lock.getFileName()));
            lines = sameCall ? lines(other.get()) : Optional.empty();
        }
        List<Move> moves = new ArrayList<>();
        for (String line : lines.orElse(List.of())) {
            String[] words = line.split(" ", -1);
            if (words.length != 3) {
                return List.of();
            }
            Optional<Path> from = path(words[0]);
            Optional<Path> to = path(words[1]);
            if (from.isEmpty() || to.isEmpty()) {
                return List.of();
            }
            moves.add(new Move(from.get(), to.get(), words[2]));
        }
        return moves;
    }

    /** The lines above the last one; empty if the file is not whole. */
    private static Optional<List<String>> lines(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        List<String> lines = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1)
                .lines()
                .toList();
        boolean whole = !lines.isEmpty() && lines.get(lines.size() - 1).equals(END);
        return whole ? Optional.of(lines.subList(0, lines.size() - 1)) : Optional.empty();
    }

    private static Optional<Path> path(String word) {
        try {
            return Optional.of(Path.of(URLDecoder.decode(word, StandardCharsets.UTF_8)));
        } catch (InvalidPathException e) {
            return Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
