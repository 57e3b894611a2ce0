package tallywell.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import tallywell.plate.Well;

/** The order in which the readings of a block stand in the file. */
final class FileOrder {
    private final List<Stretch> stretches = new ArrayList<>();

    /** Takes a reading. */
    interface Visitor<E extends Exception> {
        void visit(Well well, int index) throws E;
    }

    /**
     * Adds the readings of a piece.
     *
     * @param offsets how many readings each of its wells has from earlier pieces
     */
    void add(Piece piece, int[] offsets) {
        stretches.add(new Stretch(piece, offsets));
    }

    /** Visits all readings. */
    <E extends Exception> void forEach(Visitor<E> visitor) throws E {
        for (Stretch stretch : stretches) {
            if (stretch.ascends(true)) {
                stretch.walk(true, visitor);
            } else if (stretch.ascends(false)) {
                stretch.walk(false, visitor);
            } else {
                stretch.walkByRow(visitor);
            }
        }
    }

    private static final class Stretch {
        private final List<Well> wells;
        private final Places places;
        private final int[] offsets;

        Stretch(Piece piece, int[] offsets) {
            wells = piece.wells();
            places = piece.places();
            this.offsets = offsets;
        }

        private int size(int well) {
            return places.size().applyAsInt(well);
        }

        private long at(int well, int reading) {
            return (long) places.row().at(well, reading) << 32 | places.column().at(well, reading);
        }

        private int longest() {
            int longest = 0;
            for (int well = 0; well < wells.size(); well++) {
                longest = Math.max(longest, size(well));
            }
            return longest;
        }

        /** Whether the places in the sheet ascend if all wells come before the next reading, or the other way round. */
        boolean ascends(boolean byTime) {
            long before = -1;
            int outer = byTime ? longest() : wells.size();
            for (int i = 0; i < outer; i++) {
                int inner = byTime ? wells.size() : size(i);
                for (int j = 0; j < inner; j++) {
                    int well = byTime ? j : i;
                    int reading = byTime ? i : j;
                    if (reading >= size(well)) {
                        continue;
                    }
                    long at = at(well, reading);
                    if (at < before) {
                        return false;
                    }
                    before = at;
                }
            }
            return true;
        }

        <E extends Exception> void walk(boolean byTime, Visitor<E> visitor) throws E {
            int outer = byTime ? longest() : wells.size();
            for (int i = 0; i < outer; i++) {
                int inner = byTime ? wells.size() : size(i);
                for (int j = 0; j < inner; j++) {
                    int well = byTime ? j : i;
                    int reading = byTime ? i : j;
                    if (reading < size(well)) {
                        visitor.visit(wells.get(well), offsets[well] + reading);
                    }
                }
            }
        }

        /** A list in no order at all. */
        <E extends Exception> void walkByRow(Visitor<E> visitor) throws E {
            List<int[]> all = new ArrayList<>();
            for (int well = 0; well < wells.size(); well++) {
                for (int reading = 0; reading < size(well); reading++) {
                    all.add(new int[] {well, reading});
                }
            }
            all.sort(Comparator.comparingLong(each -> at(each[0], each[1])));
            for (int[] each : all) {
                visitor.visit(wells.get(each[0]), offsets[each[0]] + each[1]);
            }
        }

        @Override
        public String toString() {
            return wells + " " + Arrays.toString(offsets);
        }
    }
}
