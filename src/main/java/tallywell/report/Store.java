package tallywell.report;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Keeps what is written until it is read back. */
interface Store extends Closeable {
    /** Where to write to. */
    OutputStream out();

    /** What was written; writing must be over. */
    InputStream in() throws IOException;

    /** In memory. */
    final class Memory implements Store {
        private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

        @Override
        public OutputStream out() {
            return bytes;
        }

        @Override
        public InputStream in() {
            return new ByteArrayInputStream(bytes.toByteArray());
        }

        @Override
        public void close() {
            bytes.reset();
        }
    }

    /** In a file that goes again when closed. */
    final class Disk implements Store {
        private final Path file;
        private final OutputStream out;

        Disk() throws IOException {
            file = Files.createTempFile("tallywell", ".rows");
            out = new BufferedOutputStream(new Named(Files.newOutputStream(file), file), 1 << 16);
        }

        @Override
        public OutputStream out() {
            return out;
        }

        @Override
        public InputStream in() throws IOException {
            out.flush();
            return Files.newInputStream(file);
        }

        @Override
        public void close() throws IOException {
            try {
                out.close();
            } finally {
                Files.deleteIfExists(file);
            }
        }
    }

    /** Says in its errors that it is the folder of temporary files that has no room, not that of the output. */
    final class Named extends FilterOutputStream {
        private final Path file;

        Named(OutputStream out, Path file) {
            super(out);
            this.file = file;
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            try {
                out.write(bytes, from, length);
            } catch (IOException e) {
                throw new IOException(
                        "in the folder of temporary files, " + file.getParent() + ": " + e.getMessage(), e);
            }
        }
    }
}
