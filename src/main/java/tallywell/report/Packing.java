package tallywell.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * How a file stands in the cells of a column, such that its bytes come back, also after another spreadsheet program has
 * saved the workbook.
 *
 * <p>A plain text stands as it is, one line a row, so that a person can read it. Anything else is deflated (RFC 1950) and
 * written in base64 (RFC 4648, 4), in pieces that a cell can hold.
 */
public enum Packing {
    /** UTF-8 with a line feed at the end of each line, the last one included. */
    TEXT("text"),
    /** The same with a carriage return before each line feed. */
    TEXT_CRLF("text, CRLF"),
    /** Deflated, in base64. */
    PACKED("packed");

    /** More than this many characters of base64 are not carried: some 6 MB, which is many times that of an export. */
    public static final int MOST_CHARACTERS = 8 << 20;

    /** A file that comes out larger than this was never packed by us. */
    private static final int MOST_BYTES = 1 << 30;

    private static final int PIECE = 32_000;
    private static final int MOST_LINES = 20_000;

    private final String word;

    Packing(String word) {
        this.word = word;
    }

    /** As the sheet says it. */
    public String word() {
        return word;
    }

    /** The packing with a word. */
    public static Optional<Packing> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }

    /**
     * A file in rows.
     *
     * @param packing how it was packed
     * @param rows the text of each row
     */
    public record Packed(Packing packing, List<String> rows) {
        /** Keeps a copy that cannot change. */
        public Packed {
            rows = List.copyOf(rows);
        }
    }

    /** Packs a file; nothing if it is too large to be carried. */
    static Optional<Packed> pack(byte[] bytes) {
        Optional<Packed> text = text(bytes);
        return text.isPresent() ? text : packed(bytes);
    }

    /** Whether a file is too large to be carried. */
    static boolean isTooLarge(byte[] bytes) {
        // What cannot be deflated grows by a few bytes in a thousand at most (RFC 1951, 3.2.4).
        boolean mayBe = bytes.length > MOST_CHARACTERS / 4 * 3 * 0.99;
        return mayBe && pack(bytes).isEmpty();
    }

    private static Optional<Packed> text(byte[] bytes) {
        String text;
        try {
            CharBuffer decoded = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            text = decoded.toString();
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
        boolean crlf = text.contains("\r");
        String end = crlf ? "\r\n" : "\n";
        if (!text.endsWith(end)) {
            return Optional.empty();
        }
        List<String> rows =
                List.of(text.substring(0, text.length() - end.length()).split(end, -1));
        boolean plain = rows.size() <= MOST_LINES && rows.stream().allMatch(Packing::isPlain);
        return plain ? Optional.of(new Packed(crlf ? TEXT_CRLF : TEXT, rows)) : Optional.empty();
    }

    /** Whether every spreadsheet program keeps a text as typed: no controls, nothing like an escape of SpreadsheetML. */
    private static boolean isPlain(String row) {
        if (row.length() > PIECE || row.contains("_x")) {
            return false;
        }
        for (int i = 0; i < row.length(); i++) {
            char c = row.charAt(i);
            boolean kept = c >= ' ' && c <= '~'
                    || c >= '\u00A0' && c <= '\uD7FF'
                    || c >= '\uE000' && c <= '\uFDCF'
                    || c >= '\uFDF0' && c <= '\uFFEF' && c != '\uFEFF';
            if (!kept) {
                return false;
            }
        }
        return true;
    }

    private static Optional<Packed> packed(byte[] bytes) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            deflater.setInput(bytes);
            deflater.finish();
            byte[] part = new byte[1 << 14];
            while (!deflater.finished()) {
                out.write(part, 0, deflater.deflate(part));
            }
        } finally {
            deflater.end();
        }
        String base64 = Base64.getEncoder().encodeToString(out.toByteArray());
        if (base64.length() > MOST_CHARACTERS) {
            return Optional.empty();
        }
        List<String> rows = new ArrayList<>();
        for (int from = 0; from < base64.length(); from += PIECE) {
            rows.add(base64.substring(from, Math.min(base64.length(), from + PIECE)));
        }
        return Optional.of(new Packed(PACKED, rows));
    }

    /**
     * The bytes that were packed.
     *
     * @param rows the text of each row
     * @throws IOException if the rows are no longer what was written
     */
    public byte[] unpack(List<String> rows) throws IOException {
        if (this != PACKED) {
            String end = this == TEXT_CRLF ? "\r\n" : "\n";
            return (String.join(end, rows) + end).getBytes(StandardCharsets.UTF_8);
        }
        try {
            return inflated(Base64.getDecoder().decode(String.join("", rows)));
        } catch (IllegalArgumentException | DataFormatException e) {
            throw new IOException("the rows are no longer what was written", e);
        }
    }

    private static byte[] inflated(byte[] deflated) throws DataFormatException {
        Inflater inflater = new Inflater();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            inflater.setInput(deflated);
            byte[] part = new byte[1 << 16];
            while (!inflater.finished()) {
                int n = inflater.inflate(part);
                if (n == 0 && !inflater.finished() || out.size() > MOST_BYTES) {
                    throw new DataFormatException("it ends early, or does not end");
                }
                out.write(part, 0, n);
            }
        } finally {
            inflater.end();
        }
        return out.toByteArray();
    }
}
