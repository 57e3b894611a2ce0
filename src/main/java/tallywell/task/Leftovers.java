package tallywell.task;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tallywell.notice.Notice;
import tallywell.notice.Place;

/**
 * Clears what a killed call has left in a folder. If it was killed while its outputs were being put in place, the rest of
 * them is put in place first, so that what belongs together is of one call; else they are dropped, and what was there
 * before stands as it stood.
 *
 * <p>A planted journal cannot do more than who planted it: it moves hidden files of one call within their own folder, onto
 * nothing, or onto a file of ours that is as the journal says.
 */
final class Leftovers {
    private static final Pattern HIDDEN =
            Pattern.compile("[.]tallywell-([0-9a-f]{32})(?:[.]lock|-[0-9]+[.](?:part|old))");

    private Leftovers() {}

    /** Clears a folder, and says what was done. What cannot be cleared now is left to the next call. */
    static List<Notice> clear(Path folder) {
        List<Notice> notices = new ArrayList<>();
        try {
            for (String id : calls(folder)) {
                clear(folder, id, notices);
            }
        } catch (IOException e) {
            notices.add(Notice.attention(
                    Place.file(folder), "what a killed call has left here cannot be cleared (" + e.getMessage() + ")"));
        }
        return notices;
    }

    private static SortedSet<String> calls(Path folder) throws IOException {
        SortedSet<String> calls = new TreeSet<>();
        for (Path each : hidden(folder)) {
            Matcher name = HIDDEN.matcher(String.valueOf(each.getFileName()));
            if (name.matches()) {
                calls.add(name.group(1));
            }
        }
        return calls;
    }

    private static List<Path> hidden(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(each ->
                            HIDDEN.matcher(String.valueOf(each.getFileName())).matches())
                    .toList();
        }
    }

    private static void clear(Path folder, String id, List<Notice> notices) throws IOException {
        Path lock = folder.resolve(HiddenFiles.PREFIX + id + HiddenFiles.LOCK);
        if (!Files.isRegularFile(lock)) {
            drop(folder, id);
            return;
        }
        try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.WRITE)) {
            if (!HiddenFiles.isFree(channel)) {
                return;
            }
            List<Path> done = new ArrayList<>();
            for (Journal.Move move : Journal.read(lock)) {
                if (isOf(id, move) && mayMove(move)) {
                    Disk.replace(move.from(), move.to());
                    done.add(move.to());
                }
            }
            notices.add(Notice.attention(
                    Place.file(folder),
                    done.isEmpty()
                            ? "cleared the hidden files of a call that was killed before its outputs were complete"
                            : "finished what a killed call had begun to put in place: "
                                    + done.stream()
                                            .map(Path::toString)
                                            .reduce((a, b) -> a + ", " + b)
                                            .orElse("")));
            drop(folder, id);
            Disk.syncFolder(folder);
        }
        Files.deleteIfExists(lock);
    }

    private static boolean isOf(String id, Journal.Move move) {
        Matcher name = HIDDEN.matcher(String.valueOf(move.from().getFileName()));
        Path from = move.from().getParent();
        return name.matches()
                && name.group(1).equals(id)
                && from != null
                && from.equals(move.to().getParent());
    }

    private static boolean mayMove(Journal.Move move) throws IOException {
        return Files.isRegularFile(move.from())
                && Journal.stamp(move.to()).equals(move.instead())
                && (!Files.exists(move.to()) || OwnFiles.isOurs(move.to()) || OwnFiles.isPacked(move.to()));
    }

    private static void drop(Path folder, String id) throws IOException {
        for (Path each : hidden(folder)) {
            String name = String.valueOf(each.getFileName());
            if (name.startsWith(HiddenFiles.PREFIX + id) && !name.endsWith(HiddenFiles.LOCK)) {
                Files.deleteIfExists(each);
            }
        }
    }
}
