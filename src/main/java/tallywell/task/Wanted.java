package tallywell.task;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What a call of {@link WorkUp} is to write.
 *
 * @param summary where the workbook goes; without it beside the run, named after it
 * @param tables folder for the tables, if wanted
 * @param charts folder for the pictures of traces, if wanted
 * @param document where the pages to sign go, if wanted
 * @param dataPackage folder for a data package, if wanted
 * @param overwrite whether existing files may be replaced
 */
public record Wanted(
        Optional<Path> summary,
        Optional<Path> tables,
        Optional<Path> charts,
        Optional<Path> document,
        Optional<Path> dataPackage,
        boolean overwrite) {
    /** The workbook alone, in a place of one's own. */
    public static Wanted summary(Path to) {
        return new Wanted(
                Optional.of(to), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false);
    }

    /** With the tables in a folder. */
    public Wanted withTables(Path folder) {
        return new Wanted(summary, Optional.of(folder), charts, document, dataPackage, overwrite);
    }

    /** In place of files that exist. */
    public Wanted overwriting() {
        return new Wanted(summary, tables, charts, document, dataPackage, true);
    }
}
