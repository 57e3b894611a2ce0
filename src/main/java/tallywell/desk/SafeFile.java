package tallywell.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;
import tallywell.notice.OutputException;

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
            move(temporary, whole);
        } catch (IOException e) {
            forget(temporary, e);
            throw new OutputException(target, "cannot be written (" + reason(e) + ")", e);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
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
