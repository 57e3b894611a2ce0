package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** Where the replicates of a well stand. */
public enum Replicates {
    /** In the columns to the right. */
    BESIDE,
    /** In the rows below. */
    BELOW,
    /** In the well of the other half that a turn of the plate by 180 degrees brings here. */
    MIRRORED;

    /**
     * The wells of one sample.
     *
     * @param first its first well
     * @param count how many wells, at least 1; two at most where mirrored
     * @return fewer than {@code count} where the plate ends
     */
    List<Well> from(Well first, int count, PlateFormat format) {
        List<Well> wells = new ArrayList<>(List.of(first));
        for (int i = 1; i < count; i++) {
            Well next = switch (this) {
                case BESIDE -> new Well(first.row(), first.column() + i);
                case BELOW -> new Well(first.row() + i, first.column());
                case MIRRORED -> new Well(format.rows() - 1 - first.row(), format.columns() - 1 - first.column());
            };
            if (format.holds(next) && !wells.contains(next)) {
                wells.add(next);
            }
        }
        return wells;
    }
}
