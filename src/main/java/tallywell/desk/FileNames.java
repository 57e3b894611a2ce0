package tallywell.desk;

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
}
