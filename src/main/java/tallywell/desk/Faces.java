package tallywell.desk;

import tallywell.plate.WellMap;

/**
 * What a whole plate shows.
 *
 * @param wells each well
 * @param low value at the pale end of the scale
 * @param high value at the deep end of the scale; equal to low where there is no scale
 * @param lowText the pale end in words
 * @param highText the deep end in words, with unit
 */
public record Faces(WellMap<WellFace> wells, double low, double high, String lowText, String highText) {
    /** Whether the wells are coloured by value. */
    public boolean hasScale() {
        return high > low;
    }
}
