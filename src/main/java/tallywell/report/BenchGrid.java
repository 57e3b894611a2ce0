package tallywell.report;

import tallywell.plate.PlateFormat;

/**
 * The columns of the bench sheet: one for row letters, then twelve equal parts, however many columns the plate has.
 * Plates with fewer columns spread their wells over several parts, larger plates divide each part.
 */
final class BenchGrid {
    private static final int PARTS = 12;
    private static final double PART_CHARACTERS = 8.6;

    /** The block with the dilutions. */
    static final Block LEFT = new Block(0, 1, 4, 6);

    /** The block with the mixes. */
    static final Block RIGHT = new Block(7, 8, 11, 12);

    private final int columns;
    private final int perPart;
    private final int perWell;

    BenchGrid(PlateFormat format) {
        columns = format.columns();
        perPart = Math.max(1, columns / PARTS);
        perWell = PARTS % columns == 0 ? PARTS / columns : 1;
    }

    /**
     * A block of lines, in parts.
     *
     * @param tick where the box to tick stands
     * @param text first part of the text
     * @param value first part of the value
     * @param last part
     */
    record Block(int tick, int text, int value, int last) {}

    /** The first column of a part; part 0 is that of the row letters. */
    int from(int part) {
        return part == 0 ? 0 : 1 + (part - 1) * perPart;
    }

    /** The last column of a part. */
    int to(int part) {
        return part == 0 ? 0 : part * perPart;
    }

    int last() {
        return to(PARTS);
    }

    int wellFrom(int column) {
        return 1 + column * perWell;
    }

    int wellTo(int column) {
        return (column + 1) * perWell;
    }

    void widths(Sheet sheet) {
        sheet.width(0, 4);
        for (int column = 1; column <= last(); column++) {
            sheet.width(column, PART_CHARACTERS / perPart);
        }
    }
}
