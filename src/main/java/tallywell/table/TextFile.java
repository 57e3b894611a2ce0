package tallywell.table;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** A delimited text file in whatever encoding. */
final class TextFile {
    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");
    /** What is looked at to guess an encoding without mark. */
    private static final int SAMPLE = 1 << 16;

    private final Path file;
    private final Limits limits;

    TextFile(Path file, Limits limits) {
        this.file = file;
        this.limits = limits;
    }

    /** Reads the file and cuts it into cells. */
    Table table() throws IOException, InputException {
        return table(List.of());
    }

    /** The same, where headings of the first line tell what separates the cells. */
    Table table(List<String> headings) throws IOException, InputException {
        Decoded text = decode(read());
        refuseBinary(text);
        Delimiter delimiter = DelimiterGuess.byHeadings(text, headings).orElseGet(() -> DelimiterGuess.of(text));
        Table.Cells cells = delimiter.isBlank()
                ? new AlignedCells(file, limits, text, delimiter).cut()
                : new DelimitedCells(file, limits, text, (byte) delimiter.character()).cut();
        return new Table(file, new TextForm(text.encoding(), delimiter), cells);
    }

    private byte[] read() throws IOException, InputException {
        limits.checkBytes(file, Files.size(file));
        try (InputStream in = Files.newInputStream(file)) {
            // A pipe or a growing file has no size to rely on.
            byte[] bytes = in.readNBytes((int) Math.min(Integer.MAX_VALUE - 8L, limits.bytes() + 1));
            limits.checkBytes(file, bytes.length);
            return bytes;
        }
    }

    private static Decoded decode(byte[] bytes) throws IOException {
        if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
            return new Decoded(bytes, 3, StandardCharsets.UTF_8, "UTF-8 with byte order mark");
        }
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return utf16(bytes, 2, StandardCharsets.UTF_16LE, "UTF-16 LE with byte order mark");
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return utf16(bytes, 2, StandardCharsets.UTF_16BE, "UTF-16 BE with byte order mark");
        }
        int odd = zeros(bytes, 1);
        int even = zeros(bytes, 0);
        int pairs = Math.min(bytes.length, SAMPLE) / 2;
        // Exports are mostly ASCII, of which every second byte is zero in UTF-16.
        if (odd > pairs * 0.7 && even < pairs * 0.1) {
            return utf16(bytes, 0, StandardCharsets.UTF_16LE, "UTF-16 LE");
        }
        if (even > pairs * 0.7 && odd < pairs * 0.1) {
            return utf16(bytes, 0, StandardCharsets.UTF_16BE, "UTF-16 BE");
        }
        return switch (Utf8.check(bytes)) {
            case ASCII -> new Decoded(bytes, 0, StandardCharsets.UTF_8, "ASCII");
            case VALID -> new Decoded(bytes, 0, StandardCharsets.UTF_8, "UTF-8");
            case INVALID -> new Decoded(bytes, 0, WINDOWS_1252, "Windows-1252");
        };
    }

    private static Decoded utf16(byte[] bytes, int from, Charset charset, String name) throws IOException {
        ByteSink sink = new ByteSink(bytes.length / 2 + 16);
        try (Reader reader =
                new InputStreamReader(new ByteArrayInputStream(bytes, from, bytes.length - from), charset)) {
            char[] chunk = new char[1 << 14];
            for (int n = reader.read(chunk); n >= 0; n = reader.read(chunk)) {
                // A pair of surrogates must not be torn apart between two chunks.
                if (n > 0 && Character.isHighSurrogate(chunk[n - 1])) {
                    int low = reader.read();
                    sink.add(new String(chunk, 0, n) + (low < 0 ? "" : String.valueOf((char) low)));
                } else {
                    sink.add(new String(chunk, 0, n));
                }
            }
        }
        return new Decoded(sink.bytes(), 0, StandardCharsets.UTF_8, name);
    }

    private static int zeros(byte[] bytes, int from) {
        int zeros = 0;
        for (int i = from; i < Math.min(bytes.length, SAMPLE); i += 2) {
            zeros += bytes[i] == 0 ? 1 : 0;
        }
        return zeros;
    }

    private static boolean startsWith(byte[] bytes, int... magic) {
        for (int i = 0; i < magic.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xFF) != magic[i]) {
                return false;
            }
        }
        return true;
    }

    private void refuseBinary(Decoded text) throws InputException {
        byte[] data = text.data();
        int odd = 0;
        for (int i = text.from(); i < data.length; i++) {
            byte at = data[i];
            if (at >= 0 && at < ' ' && at != '\t' && at != '\n' && at != '\r' && at != '\f') {
                odd++;
            }
        }
        // A few control characters come from instruments on serial lines; more means that this is no text.
        if (odd > 8 || odd > 0 && odd * 20L > data.length) {
            throw new InputException(
                    Place.file(file), "found no text but binary data; expected a text file or a workbook (xlsx, xls)");
        }
    }

    /** Collects UTF-8. */
    private static final class ByteSink {
        private byte[] bytes;
        private int size;

        ByteSink(int capacity) {
            bytes = new byte[capacity];
        }

        void add(String text) {
            byte[] more = text.getBytes(StandardCharsets.UTF_8);
            if (size + more.length > bytes.length) {
                bytes = Arrays.copyOf(bytes, size + more.length + (bytes.length >> 1));
            }
            System.arraycopy(more, 0, bytes, size, more.length);
            size += more.length;
        }

        byte[] bytes() {
            return size == bytes.length ? bytes : Arrays.copyOf(bytes, size);
        }
    }
}
