package tallywell.exchange;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Counts the bytes that pass and takes their SHA-256. */
final class MeasuredStream extends FilterOutputStream {
    private final MessageDigest digest;
    private long bytes;

    MeasuredStream(OutputStream out) {
        super(out);
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    @Override
    public void write(int b) throws IOException {
        out.write(b);
        digest.update((byte) b);
        bytes++;
    }

    @Override
    public void write(byte[] part, int from, int length) throws IOException {
        out.write(part, from, length);
        digest.update(part, from, length);
        bytes += length;
    }

    long bytes() {
        return bytes;
    }

    /** The hash of all that passed, in small hexadecimal digits; nothing may pass any more. */
    String sha256() {
        return HexFormat.of().formatHex(digest.digest());
    }
}
