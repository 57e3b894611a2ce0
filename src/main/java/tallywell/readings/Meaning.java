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
    /** Readings of absorbance, by a name that means nothing else. */
    ABSORBANCE,
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
    /** What a detector may measure instead of absorbance: transmission, fluorescence, turbidity, a voltage … */
    OTHER_SIGNAL,
    /** The step or the length of a series of readings. */
    INTERVAL,
    /** Something done to a plate or a reader that takes its time and is no reading. */
    ACTION,
    /** Remarks, lists and tests, in which a wavelength is named by chance. */
    NOTE,
    /** Pages, injections and the like, which part lines but not readings. */
    EVENT,
    /** Names of what is in the wells. */
    SAMPLE,
    /** Where a sample came from. */
    SOURCE,
    /** Remarks of the reader on single readings. */
    MARK,
    /** Announces the unit of the readings. */
    UNIT_KEY,
    /** Announces what was measured. */
    READING_KEY,
    /** Stands over numbers and is not understood. */
    UNKNOWN,
    /** Says that a reading is not to be trusted. */
    FLAGGED,
    /** No, off, without. */
    NOT
}
