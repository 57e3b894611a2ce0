package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.Well;

/**
 * A list: each row names a well, in one column or in two (letters, numbers), and holds readings of it in one column or
 * several (wavelengths, kinds of value, times). Wells may come in any order, and again and again for each time, plate or
 * wavelength. Several such lists may stand side by side.
 */
final class WellsDown implements Form {
    static final int MOST_HEADING_ROWS = 2;

    /** Headed so, a column that looks like wells names samples, or the wells they came from. */
    private static final Set<Meaning> ELSEWHERE = EnumSet.of(Meaning.SAMPLE, Meaning.SOURCE);

    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        List<WellPosition> positions = positions(sheet, row);
        List<Piece> pieces = new ArrayList<>();
        List<Notice> notes = new ArrayList<>();
        int first = row;
        int last = row;
        for (int i = 0; i < positions.size(); i++) {
            int limit = i + 1 < positions.size() ? positions.get(i + 1).first() : Integer.MAX_VALUE;
            int from = i == 0 ? 0 : positions.get(i).first();
            WellList listing = new WellList(sheet, positions.get(i), from, limit, row);
            boolean found = listing.collect();
            if (!found && positions.size() == 1 && listing.isList()) {
                // Read again one row lower, it would lose its first well and its headings.
                return Optional.of(new Finding(List.of(), listing.top, listing.last, List.of(listing.leftOut())));
            }
            if (found) {
                pieces.addAll(listing.pieces);
                notes.addAll(listing.notes);
                first = Math.min(first, listing.top);
                last = Math.max(last, listing.last);
            }
        }
        return pieces.isEmpty() && notes.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(pieces, first, last, notes));
    }

    /** The columns that name wells in this row, those in the next ones alike. */
    private static List<WellPosition> positions(Sheet sheet, int row) throws InputException {
        List<WellPosition> found = new ArrayList<>();
        Optional<WellPosition> pair = pair(sheet, row, true);
        if (pair.isPresent()) {
            return List.of(pair.get());
        }
        for (int column = 0; column < sheet.width(row); column++) {
            WellPosition single = new WellPosition(column, -1, -1);
            if (single.well(sheet, row).isPresent()) {
                found.add(single);
            }
        }
        if (found.isEmpty()) {
            return pair(sheet, row, false).stream().toList();
        }
        return sideBySide(sheet, row, found);
    }

    /** Two neighbouring columns that name wells together. */
    private static Optional<WellPosition> pair(Sheet sheet, int row, boolean headed) {
        for (int column = 0; column + 1 < sheet.width(row); column++) {
            for (WellPosition pair : List.of(
                    new WellPosition(column, column, column + 1),
                    new WellPosition(column, column + 1, column),
                    new WellPosition(column, column, column + 1, true),
                    new WellPosition(column, column + 1, column, true))) {
                if (headed ? pair.isHeaded(sheet, row) : !pair.numbered() && pair.isPair(sheet, row)) {
                    return Optional.of(pair);
                }
            }
        }
        return Optional.empty();
    }

    /** Lists side by side have readings behind each well; a second column that merely looks like wells has none. */
    private static List<WellPosition> sideBySide(Sheet sheet, int row, List<WellPosition> found) throws InputException {
        List<WellPosition> kept = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            int to = i + 1 < found.size() ? found.get(i + 1).first() : sheet.width(row);
            boolean reading = false;
            for (int column = found.get(i).first() + 1; column < to; column++) {
                reading |= sheet.look(row, column).isReading();
            }
            if (reading) {
                kept.add(found.get(i));
            }
        }
        if (kept.size() == found.size()) {
            return kept;
        }
        return List.of(chosen(sheet, row, found));
    }

    /**
     * Of several columns that look like wells the one headed as such, else the one whose wells never repeat.
     *
     * @throws InputException if more than one would do
     */
    private static WellPosition chosen(Sheet sheet, int row, List<WellPosition> found) throws InputException {
        List<WellPosition> headed = found.stream()
                .filter(each -> headings(sheet, row, each).contains(Meaning.WELL))
                .toList();
        List<WellPosition> ofPlate = headed.stream()
                .filter(each -> headings(sheet, row, each).stream().noneMatch(ELSEWHERE::contains))
                .toList();
        List<WellPosition> left = ofPlate.isEmpty() ? headed : ofPlate;
        if (left.isEmpty()) {
            List<WellPosition> unnamed = found.stream()
                    .filter(each -> headings(sheet, row, each).stream().noneMatch(ELSEWHERE::contains))
                    .toList();
            left = unnamed.stream().filter(each -> isOnce(sheet, row, each)).toList();
            left = left.isEmpty() ? List.of(unnamed.isEmpty() ? found.get(0) : unnamed.get(0)) : left;
        }
        boolean readings = sheet.filled(row).stream()
                .anyMatch(column -> sheet.look(row, column).isReading());
        for (WellPosition other : left) {
            if (readings && !other.well(sheet, row).equals(left.get(0).well(sheet, row))) {
                throw sheet.fault(
                        row,
                        other.first(),
                        "two columns of wells, '" + sheet.text(row, left.get(0).first()) + "' and",
                        "one, or a heading that tells the wells of the plate from those the samples came from");
            }
        }
        return left.get(0);
    }

    private static Set<Meaning> headings(Sheet sheet, int row, WellPosition position) {
        for (int up = row - 1; up >= Math.max(0, row - MOST_HEADING_ROWS); up--) {
            Set<Meaning> meanings = Words.in(sheet.text(up, position.first()));
            if (!meanings.isEmpty()) {
                return meanings;
            }
        }
        return Set.of();
    }

    private static boolean isOnce(Sheet sheet, int row, WellPosition position) {
        Set<Well> seen = new java.util.HashSet<>();
        for (int at = row; at < sheet.rows(); at++) {
            Optional<Well> well = position.well(sheet, at);
            if (well.isEmpty()) {
                return true;
            }
            if (!seen.add(well.get())) {
                return false;
            }
        }
        return true;
    }
}
