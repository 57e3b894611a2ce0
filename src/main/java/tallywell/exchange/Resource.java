package tallywell.exchange;

import java.util.List;

/**
 * One file of a package.
 *
 * @param name what the package calls it: small letters, digits, {@code -}
 * @param path where it stands in the package, parts separated by {@code /}
 * @param title in words
 * @param description in words
 * @param mediaType what kind of file it is
 * @param columns of a table; empty for any other file
 * @param bytes its size
 * @param sha256 hash of its bytes
 */
record Resource(
        String name,
        String path,
        String title,
        String description,
        String mediaType,
        List<Column> columns,
        long bytes,
        String sha256) {
    /** Keeps a copy that cannot change. */
    Resource {
        columns = List.copyOf(columns);
    }

    /** The ending of the file name; empty if it has none that is plain. */
    String format() {
        String file = path.substring(path.lastIndexOf('/') + 1);
        String ending = file.substring(file.lastIndexOf('.') + 1).toLowerCase(java.util.Locale.ROOT);
        return ending.length() < file.length() && ending.matches("[a-z0-9]+") ? ending : "";
    }
}
