package tallywell.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** Reads files of cells; told apart by their first bytes, never by their names. */
public final class Tables {
    private static final byte[] ZIP = {'P', 'K', 3, 4};
    private static final byte[] EMPTY_ZIP = {'P', 'K', 5, 6};
    private static final byte[] COMPOUND = {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0};

    private Tables() {}

    /**
     * Reads the first table of a file that holds anything: the text, or the first sheet with content.
     *
     * @throws InputException if the file cannot be read, is damaged, protected, too large, or holds nothing
     */
    public static Table read(Path file) throws InputException {
        return list(file, List.of());
    }

    /**
     * Reads a list whose first line has headings that are known, which tells best what separates its cells.
     *
     * @throws InputException as {@link #read}
     */
    public static Table list(Path file, List<String> headings) throws InputException {
        for (Table table : sheets(file, headings)) {
            if (!table.isBlank()) {
                return table;
            }
        }
        throw new InputException(Place.file(file), "found nothing in the file; expected cells");
    }

    /**
     * Reads all tables of a file: one for a text file, one for each sheet of a workbook.
     *
     * @throws InputException if the file cannot be read, is damaged, protected or too large
     */
    public static List<Table> sheets(Path file) throws InputException {
        return sheets(file, List.of());
    }

    private static List<Table> sheets(Path file, List<String> headings) throws InputException {
        Limits limits = Limits.ofThisProcess();
        try {
            if (Files.isDirectory(file)) {
                throw new InputException(Place.file(file), "found a folder; expected a file");
            }
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw new InputException(
                        Place.file(file), "found a pipe or a device, which may never end; expected an ordinary file");
            }
            byte[] head = head(file);
            if (startsWith(head, ZIP) || startsWith(head, EMPTY_ZIP)) {
                return new Workbook(file, limits).sheets();
            }
            if (startsWith(head, COMPOUND)) {
                return new OldWorkbook(file, limits).sheets();
            }
            return List.of(new TextFile(file, limits).table(headings));
        } catch (NoSuchFileException e) {
            throw new InputException(Place.file(file), "found no such file; check the name and the folder", e);
        } catch (AccessDeniedException e) {
            throw new InputException(Place.file(file), "may not be read; check its permissions", e);
        } catch (IOException e) {
            throw new InputException(Place.file(file), "could not be read: " + e.getMessage(), e);
        }
    }

    private static byte[] head(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(8);
        }
    }

    private static boolean startsWith(byte[] head, byte[] magic) {
        return head.length >= magic.length && Arrays.equals(head, 0, magic.length, magic, 0, magic.length);
    }
}
