package tallywell.task;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * The hidden files of one call, beside the places of its outputs: {@code .tallywell-ID-N.part} holds an output that is not
 * in place yet, {@code .tallywell-ID-N.old} what stood there, and {@code .tallywell-ID.lock} is locked as long as the call
 * lives, so that the next call can tell what a killed one has left.
 *
 * <p>The lock of the first folder is the journal of the call, too: once it lists the moves, and is on the disk, they are
 * carried out even if the call is killed between two of them. The locks of the other folders say where it is.
 */
final class HiddenFiles implements Closeable {
    static final String PREFIX = ".tallywell-";
    static final String LOCK = ".lock";

    private static final int TRIES = 100;

    private final Map<Path, Lock> locks = new LinkedHashMap<>();
    private String id = newId();
    private int count;

    private record Lock(Path file, FileChannel channel) {}

    private static String newId() {
        return UUID.randomUUID().toString().replace("-", "");
    }

    /** A name for an output to come; its folder is locked from now on. */
    Path part(Path folder) throws IOException {
        lock(folder);
        return named(folder, ".part");
    }

    /** A name for what stands in the place of an output, in a folder that is locked. */
    Path old(Path folder) {
        return named(folder, ".old");
    }

    private Path named(Path folder, String ending) {
        return folder.resolve(PREFIX + id + "-" + ++count + ending);
    }

    private void lock(Path folder) throws IOException {
        if (locks.containsKey(folder)) {
            return;
        }
        Path file = folder.resolve(PREFIX + id + LOCK);
        for (int i = 0; i < TRIES; i++) {
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (!isHeldElsewhere(channel) && Files.exists(file)) {
                locks.put(folder, new Lock(file, channel));
                return;
            }
            // Another call that tidies the folder has come between the making and the locking, and takes it away.
            channel.close();
        }
        throw new IOException("another call tidies this folder; try again");
    }

    /** A file system without locks lets nobody lock the file, so that nobody takes it for that of a dead call either. */
    private static boolean isHeldElsewhere(FileChannel channel) {
        try {
            return !isFree(channel);
        } catch (IOException e) {
            return false;
        }
    }

    /** Takes the lock of an open file, which is let go when the file is closed. */
    static boolean isFree(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    /** Writes the moves down, on the disk, before the first is made. */
    void journal(List<Journal.Move> moves) throws IOException {
        List<Map.Entry<Path, Lock>> all = new ArrayList<>(locks.entrySet());
        for (int i = all.size() - 1; i >= 0; i--) {
            write(
                    all.get(i).getValue().channel(),
                    i == 0
                            ? Journal.text(moves)
                            : Journal.elsewhere(all.get(0).getValue().file()));
            Disk.syncFolder(all.get(i).getKey());
        }
    }

    private static void write(FileChannel channel, String text) throws IOException {
        channel.truncate(0);
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
            channel.write(bytes, bytes.position());
        }
        channel.force(true);
    }

    /** Lets the folders go; the locks are no longer there. */
    @Override
    public void close() throws IOException {
        List<Lock> held = new ArrayList<>(locks.values());
        locks.clear();
        id = newId();
        Optional<IOException> failure = Optional.empty();
        for (Lock each : held) {
            try {
                each.channel().close();
                Files.deleteIfExists(each.file());
            } catch (IOException e) {
                failure = Optional.of(e);
            }
        }
        if (failure.isPresent()) {
            throw failure.get();
        }
    }
}
