package tallywell.task;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** SHA-256 of a file, so that a later reader can tell whether it is the same one. */
final class Hash {
    private static final int PART = 1 << 16;

    private Hash() {}

    /** The hash of a file in small hexadecimal digits. */
    static String of(Path file) throws InputException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = digest();
            byte[] part = new byte[PART];
            for (int n = in.read(part); n >= 0; n = in.read(part)) {
                digest.update(part, 0, n);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (IOException e) {
            throw new InputException(Place.file(file), "the file cannot be read (" + e.getMessage() + ")", e);
        }
    }

    /** The hash of bytes in small hexadecimal digits. */
    static String of(byte[] bytes) {
        return HexFormat.of().formatHex(digest().digest(bytes));
    }

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
