package tallywell.readings;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import tallywell.notice.InputException;
import tallywell.plate.Well;

/**
 * Wells head the columns; each row below is one reading of all of them, named by its time, its number, its wavelength or
 * a word in a column of its own. Wells may be named in two rows, letters over numbers.
 */
final class WellsAcross implements Form {
    /** Rows of units or names between wells and readings. */
    static final int MOST_SUBTITLES = 3;

    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        WellHeads heads = heads(sheet, row);
        if (heads.wells.isEmpty()) {
            return Optional.empty();
        }
        int data = sheet.nextFilled(heads.last + 1);
        int subtitles = 0;
        while (data < sheet.rows() && subtitles < MOST_SUBTITLES && !heads.isData(sheet, data)) {
            if (heads.holdsWells(sheet, data) && !isNames(sheet, row, heads, data)) {
                return Optional.empty();
            }
            subtitles++;
            data = sheet.nextFilled(data + 1);
        }
        boolean lonely = heads.wells.size() == 1 && !isHeadedByTime(sheet, row);
        if (data >= sheet.rows() || !heads.isData(sheet, data) || lonely) {
            return Optional.empty();
        }
        for (int column : sheet.filled(row)) {
            if (sheet.look(row, column) == Look.TEXT && WellHeading.isSeveral(sheet.text(row, column))) {
                throw sheet.fault(row, column, "the heading", "one well over each column");
            }
        }
        return Optional.of(new AcrossSections(sheet, row, heads).collect(data));
    }

    /** Whether names such as S1, S2, S3 stand under the wells: nothing heads them, while times head the wells. */
    private static boolean isNames(Sheet sheet, int row, WellHeads heads, int below) {
        return isHeadedByTime(sheet, row)
                && sheet.filled(below).stream().allMatch(heads.columns::contains)
                && heads.isData(sheet, sheet.nextFilled(below + 1));
    }

    private static boolean isHeadedByTime(Sheet sheet, int row) {
        return sheet.filled(row).stream()
                .anyMatch(column -> Words.in(sheet.text(row, column)).contains(Meaning.TIME));
    }

    private static WellHeads heads(Sheet sheet, int row) {
        WellHeads heads = new WellHeads(row);
        boolean plain = IntStream.range(0, sheet.width(row))
                .anyMatch(column -> sheet.look(row, column).isDecimal());
        if (plain) {
            return heads;
        }
        for (int column = 0; column < sheet.width(row); column++) {
            Look look = sheet.look(row, column);
            if (look == Look.WELL) {
                heads.add(column, sheet.well(row, column).orElseThrow(), Facts.none());
            } else if (look == Look.TEXT) {
                Optional<WellHeading> heading = WellHeading.parse(sheet.text(row, column));
                Optional<Well> labelled = heading.isPresent() ? Optional.empty() : labelled(sheet, row, column);
                if (heading.isPresent()) {
                    heads.add(column, heading.get().well(), heading.get().facts());
                } else if (labelled.isPresent()) {
                    heads.add(column, labelled.get(), Facts.none());
                }
            }
        }
        return heads.wells.isEmpty() ? twoRows(sheet, row) : heads;
    }

    /** A well with the name of its sample behind it, among other wells. */
    private static Optional<Well> labelled(Sheet sheet, int row, int column) {
        boolean others = sheet.filled(row).stream()
                .anyMatch(other -> other != column
                        && (sheet.look(row, other) == Look.WELL
                                || WellHeading.labelled(sheet.text(row, other)).isPresent()));
        return others ? WellHeading.labelled(sheet.text(row, column)) : Optional.empty();
    }

    /** Letters in one row, numbers in the next. */
    private static WellHeads twoRows(Sheet sheet, int row) {
        WellHeads heads = new WellHeads(row + 1);
        Set<Well> seen = new LinkedHashSet<>();
        int letters = 0;
        for (int column = 0; column < sheet.width(row); column++) {
            int letter = sheet.look(row, column) == Look.ROW ? sheet.plateRow(row, column) : -1;
            int number = sheet.plateColumn(row + 1, column);
            letters += letter >= 0 ? 1 : 0;
            if (letter >= 0 && number >= 0) {
                Well well = new Well(letter, number);
                seen.add(well);
                heads.add(column, well, Facts.none());
            }
        }
        // A transposed grid has letters over its readings, but not a number under each.
        boolean sure = letters >= 2 && seen.size() == letters && heads.wells.size() == letters;
        return sure ? heads : new WellHeads(row);
    }
}
