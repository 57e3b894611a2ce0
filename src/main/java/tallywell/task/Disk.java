package tallywell.task;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** What it takes that a file is whole on the disk, also after the power fails. */
public final class Disk {
    private Disk() {}

    /** Waits until the content of a file is on the disk. */
    public static void sync(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** Waits until the names in a folder are on the disk, where the system can do that (Windows cannot). */
    public static void syncFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // The system opens no folders; it keeps the order of its own names.
        }
    }

    /** Puts a file in the place of another in one step: at every moment the old or the new one is there, whole. */
    public static void replace(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Keeps the content of a file under a second name. */
    static void keep(Path file, Path as) throws IOException {
        try {
            Files.createLink(as, file);
        } catch (UnsupportedOperationException | IOException e) {
            // Not every file system has second names.
            Files.copy(file, as, StandardCopyOption.COPY_ATTRIBUTES);
        }
    }
}
