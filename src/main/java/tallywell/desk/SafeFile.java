package tallywell.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import tallywell.notice.OutputException;
import tallywell.task.Disk;

/** Writes a file whole or not at all: under another name first, then renamed into place. */
public final class SafeFile {
    private SafeFile() {}

    /**
     * Writes a text in UTF-8; what stood there before stays until the new file is complete.
     *
     * @throws OutputException if it cannot be written; nothing half-written is left
     */
    public static void write(Path target, String text) throws OutputException {
        Path whole = target.toAbsolutePath();
        Path temporary = whole.resolveSibling(".tallywell-" + UUID.randomUUID() + ".part");
        try {
            Path folder = whole.getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            Files.writeString(temporary, text, StandardCharsets.UTF_8);
            Disk.sync(temporary);
            Disk.replace(temporary, whole);
            if (folder != null) {
                Disk.syncFolder(folder);
            }
        } catch (IOException e) {
            forget(temporary, e);
            throw new OutputException(target, "cannot be written (" + reason(e) + ")", e);
        }
    }

    /**
     * Makes a folder where there is none.
     *
     * @throws OutputException if it cannot be made
     */
    public static void folder(Path folder) throws OutputException {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new OutputException(folder, "the folder cannot be made (" + reason(e) + ")", e);
        }
    }

    private static void forget(Path temporary, IOException cause) {
        try {
            Files.deleteIfExists(temporary);
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
    }

    private static String reason(IOException e) {
        if (e instanceof java.nio.file.AccessDeniedException) {
            return "access denied";
        }
        return e instanceof java.nio.file.FileSystemException system && system.getReason() != null
                ? system.getReason()
                : String.valueOf(e.getMessage());
    }
}
