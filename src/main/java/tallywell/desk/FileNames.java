package tallywell.desk;

import java.nio.file.Path;
import java.util.Locale;

/** Makes file names of titles. */
public final class FileNames {
    private FileNames() {}

    /** The letters and digits of a title in small letters, hyphens between; may be empty. */
    public static String of(String title) {
        return title.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-|-$", "");
    }

    /** A title from a file name: without its ending, spaces for hyphens, a capital in front. */
    public static String title(Path file) {
        String words = String.valueOf(file.getFileName())
                .replaceFirst("[.][^.]*$", "")
                .replaceAll("[-_\\s]+", " ")
                .strip();
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
