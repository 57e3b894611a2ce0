package tallywell.report;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
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
            out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
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
}
