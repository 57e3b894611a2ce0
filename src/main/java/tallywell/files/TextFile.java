package tallywell.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** Reads one of our own text files: UTF-8, with or without byte order mark, of a sane size. */
final class TextFile {
    /** Our files are typed by people; one of this size is something else. */
    private static final long LARGEST = 4L << 20;

    private TextFile() {}

    /**
     * The whole text.
     *
     * @throws InputException if the file is missing, unreadable, too large or not UTF-8
     */
    static String read(Path path) throws InputException {
        byte[] bytes = bytes(path);
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return visible(path, text.startsWith("\uFEFF") ? text.substring(1) : text);
        } catch (CharacterCodingException e) {
            throw new InputException(Place.file(path), "found bytes that are no UTF-8 text; save the file as UTF-8", e);
        }
    }

    private static String visible(Path path, String text) throws InputException {
        int at = HiddenCharacters.indexIn(text);
        if (at >= 0) {
            int line = 1
                    + (int) text.substring(0, at).chars().filter(c -> c == '\n').count();
            throw new InputException(
                    Place.line(path, line),
                    "found the invisible character "
                            + HiddenCharacters.first(text.substring(at)).orElse("")
                            + "; type the text anew without it");
        }
        return text;
    }

    private static byte[] bytes(Path path) throws InputException {
        try {
            if (Files.isDirectory(path)) {
                throw new InputException(Place.file(path), "found a folder; expected a file");
            }
            if (Files.exists(path) && !Files.isRegularFile(path)) {
                throw new InputException(
                        Place.file(path), "found a pipe or a device, which may never end; expected an ordinary file");
            }
            if (Files.size(path) > LARGEST) {
                throw new InputException(
                        Place.file(path), "found a file of over 4 MB; expected a short text file in YAML");
            }
            return Files.readAllBytes(path);
        } catch (NoSuchFileException e) {
            throw new InputException(Place.file(path), "there is no such file", e);
        } catch (IOException e) {
            throw new InputException(Place.file(path), "the file cannot be read (" + e.getMessage() + ")", e);
        }
    }
}
