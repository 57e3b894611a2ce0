package tallywell.table;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;

/** The bytes of a text in UTF-8 or an encoding of one byte a character: ASCII characters are themselves in both. */
final class Decoded {
    private final byte[] data;
    private final int from;
    private final Charset charset;
    private final String encoding;

    Decoded(byte[] data, int from, Charset charset, String encoding) {
        this.data = data;
        this.from = from;
        this.charset = charset;
        this.encoding = encoding;
    }

    byte[] data() {
        return data;
    }

    /** Where the text begins, behind a byte order mark. */
    int from() {
        return from;
    }

    Charset charset() {
        return charset;
    }

    String encoding() {
        return encoding;
    }

    boolean endsWithLineEnd() {
        byte last = data.length > from ? data[data.length - 1] : 0;
        return last == '\n' || last == '\r';
    }

    /** The first lines of the text, cut at a number of bytes. */
    List<String> head(int bytes) {
        int to = Math.min(data.length, from + bytes);
        if (to < data.length) {
            int cut = to;
            while (cut > from && data[cut - 1] != '\n' && data[cut - 1] != '\r') {
                cut--;
            }
            to = cut > from ? cut : to;
        }
        List<String> lines = new ArrayList<>();
        new String(data, from, to - from, charset).lines().forEach(lines::add);
        return lines;
    }
}
