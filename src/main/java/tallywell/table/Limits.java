package tallywell.table;

import java.nio.file.Path;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/**
 * How much a file may hold, by the memory that the program may use: so that a file too large is refused before it fills
 * the memory, and not by filling it.
 *
 * @param bytes most bytes of one file, or of the unpacked text of a workbook
 * @param cells most cells of one table
 */
record Limits(long bytes, int cells) {
    private static final long MEGABYTE = 1 << 20;
    private static final long MOST = 1 << 30;

    /** The limits of this process. Bytes, cells (4 bytes each) and readings (8 bytes each) must fit side by side. */
    static Limits ofThisProcess() {
        long share = Runtime.getRuntime().maxMemory() * 3 / 10;
        return new Limits(Math.min(MOST, share), (int) Math.min(MOST / 4, share / 4));
    }

    /** The limits for cells that are copied together one by one, into arrays that grow by copying. */
    Limits forCopies() {
        return new Limits(bytes / 2, cells / 3);
    }

    /** Refuses a size. */
    void checkBytes(Path file, long size) throws InputException {
        if (size > bytes) {
            throw new InputException(
                    Place.file(file),
                    "found " + size / MEGABYTE + " MB; expected at most " + bytes / MEGABYTE
                            + " MB with the memory given; split the export, or start Java with a larger -Xmx");
        }
    }

    /** Refuses a number of cells. */
    void checkCells(Path file, long found) throws InputException {
        if (found > cells) {
            throw new InputException(
                    Place.file(file),
                    "found more than " + cells + " cells; expected fewer with the memory given; split the export, or"
                            + " start Java with a larger -Xmx");
        }
    }
}
