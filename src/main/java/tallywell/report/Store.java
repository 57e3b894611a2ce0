package tallywell.report;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.FilterInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

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

    /** In a file that goes again when closed, and with the process, however that ends. */
    final class Disk implements Store {
        private final FileChannel channel;
        private final OutputStream out;

        Disk() throws IOException {
            Path file = Files.createTempFile("tallywell", ".rows");
            channel = FileChannel.open(
                    file, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
            out = new BufferedOutputStream(new Named(Channels.newOutputStream(channel), file), 1 << 16);
        }

        @Override
        public OutputStream out() {
            return out;
        }

        @Override
        public InputStream in() throws IOException {
            out.flush();
            channel.position(0);
            return new Reread(Channels.newInputStream(channel));
        }

        @Override
        public void close() throws IOException {
            channel.close();
        }
    }

    /** Reads a store; its end is not the end of the store. */
    final class Reread extends FilterInputStream {
        Reread(InputStream in) {
            super(in);
        }

        @Override
        public void close() {
            // The store closes its file itself.
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
