package tallywell.readings;

/** What a word of the trade says about the numbers near it. */
enum Meaning {
    /** Times of readings. */
    TIME,
    /** A time of the calendar or the clock on the wall, or a duration of something else than the reading. */
    OTHER_TIME,
    TEMPERATURE,
    /** A counter of readings. */
    CYCLE,
    WELL,
    ROW,
    COLUMN,
    PLATE,
    /** What kind of plate, where PLATE would say which one. */
    PLATE_KIND,
    WAVELENGTH,
    /** A wavelength that is not the one read at, or a width in nanometres. */
    OTHER_WAVELENGTH,
    /** Readings. */
    VALUE,
    /** Thousandths of a unit of absorbance. */
    MILLI,
    /** As the detector gave them. */
    RAW,
    /** Something was subtracted, divided or otherwise done. */
    PROCESSED,
    /** Where it heads a column or a grid, path lengths or readings brought to a path length. */
    PATH,
    /** Calculated over several readings. */
    STATISTIC,
    /** Another quantity altogether. */
    OTHER,
    /** Names of what is in the wells. */
    SAMPLE,
    /** Where a sample came from. */
    SOURCE,
    /** Remarks of the reader on single readings. */
    MARK,
    /** No, off, without. */
    NOT
}
