package tallywell.workup;

/**
 * Where a reading of a well stands.
 *
 * @param taken which entry of the run's readings, from 0
 * @param index which reading of the well in that entry, from 0
 */
public record Ref(int taken, int index) {}
