package tallywell.readings;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A column beside the wells: what its heading says and what its cells look like.
 *
 * @param index its number in the sheet
 * @param heading the words over it, empty if none
 * @param facts what they say
 * @param time what they say of times
 * @param looks how many cells look how
 * @param filled how many cells are not empty
 */
record Column(int index, String heading, Facts facts, TimeHeading time, Map<Look, Integer> looks, int filled) {
    /** Units that mean nothing but a time where they stand alone. */
    private static final Set<String> TIME_ALONE = Set.of("s", "sec", "secs", "seconds", "sek", "sekunden", "s.");

    /** What a column is for. */
    enum Role {
        TIME,
        CYCLE,
        WAVELENGTH,
        PLATE,
        /** Words that may tell readings apart. */
        WORDS,
        /** Remarks on readings. */
        MARK,
        /** Readings, named as such. */
        VALUE,
        /** Numbers with decimals or marks that nothing names. */
        UNNAMED,
        /** Whole numbers that nothing names. */
        WHOLE,
        /** Known to be something else. */
        OTHER,
        EMPTY
    }

    static Column of(Sheet sheet, int index, String heading, int[] rows) {
        Map<Look, Integer> looks = new EnumMap<>(Look.class);
        int[] counts = new int[Look.values().length];
        int filled = 0;
        for (int row : rows) {
            Look look = sheet.look(row, index);
            counts[look.ordinal()]++;
            filled += look == Look.EMPTY ? 0 : 1;
        }
        for (Look look : Look.values()) {
            looks.put(look, counts[look.ordinal()]);
        }
        return new Column(index, heading, Facts.ofHeading(heading), TimeHeading.of(heading), looks, filled);
    }

    /** The same column, known better. */
    Column with(Facts known) {
        return new Column(index, heading, known, time, looks, filled);
    }

    private int count(Look look) {
        return looks.getOrDefault(look, 0);
    }

    int numbers() {
        return decimals() + count(Look.WHOLE);
    }

    int decimals() {
        int sum = count(Look.STORED);
        for (Look look : Look.values()) {
            sum += look.isDecimal() ? count(look) : 0;
        }
        return sum;
    }

    int marks() {
        return count(Look.OVER) + count(Look.MISSING);
    }

    private boolean isNamedReading() {
        return facts.has(Meaning.VALUE)
                || facts.has(Meaning.RAW)
                || facts.has(Meaning.PROCESSED)
                || facts.has(Meaning.MILLI)
                || facts.plate().isPresent() && decimals() > 0
                || facts.wavelengthNm().isPresent();
    }

    /** What the column is for, as far as it shows on its own. */
    Role role() {
        if (filled == 0) {
            return isNamedReading() && !facts.isOtherQuantity() ? Role.VALUE : Role.EMPTY;
        }
        if (facts.has(Meaning.OTHER_TIME) && facts.wavelengthNm().isEmpty() && !facts.has(Meaning.VALUE)) {
            return Role.OTHER;
        }
        if (facts.has(Meaning.WELL) && 2 * count(Look.WELL) > filled) {
            return Role.OTHER;
        }
        boolean numeric = numbers() + marks() >= filled - count(Look.EMPTY) - count(Look.TEXT) && numbers() > 0;
        if (2 * count(Look.CLOCK) > filled) {
            return Role.TIME;
        }
        boolean timeAlone = TIME_ALONE.contains(heading.toLowerCase(Locale.ROOT).replaceAll("[\\[\\]()]", ""));
        if ((facts.has(Meaning.TIME) || timeAlone)
                && facts.time().isEmpty()
                && facts.wavelengthNm().isEmpty()) {
            return Role.TIME;
        }
        if (facts.has(Meaning.PLATE)
                && !facts.has(Meaning.PLATE_KIND)
                && !facts.has(Meaning.VALUE)
                && !(facts.plate().isPresent() && decimals() > 0)) {
            return Role.PLATE;
        }
        boolean whole = decimals() == 0 && numbers() > 0;
        if (facts.has(Meaning.WAVELENGTH) && facts.wavelengthNm().isEmpty() && !facts.has(Meaning.OTHER_WAVELENGTH)) {
            return Role.WAVELENGTH;
        }
        if (facts.has(Meaning.CYCLE) && whole && !facts.has(Meaning.VALUE) || isCounter() && facts.has(Meaning.CYCLE)) {
            return Role.CYCLE;
        }
        if (facts.has(Meaning.MARK) && numbers() == 0) {
            return Role.MARK;
        }
        if (facts.isOtherQuantity() || facts.has(Meaning.TEMPERATURE)) {
            return Role.OTHER;
        }
        if (!numeric && numbers() * 2 < filled) {
            return numbers() + marks() == filled && isNamedReading()
                    ? Role.VALUE
                    : isMarksOnly() ? markRole() : Role.WORDS;
        }
        if (facts.has(Meaning.SAMPLE) && !isNamedReading()) {
            return Role.WORDS;
        }
        if (isNamedReading()) {
            return Role.VALUE;
        }
        return whole && marks() == 0 ? Role.WHOLE : Role.UNNAMED;
    }

    /** Whether it may hold the times of readings for want of a better column: stamps of date and time. */
    boolean isStamp() {
        return role() == Role.OTHER
                && facts.has(Meaning.OTHER_TIME)
                && (facts.has(Meaning.TIME) || isNamedStamp() || count(Look.CLOCK) * 2 > filled)
                && filled > 1;
    }

    private boolean isNamedStamp() {
        String words = heading.toLowerCase(Locale.ROOT);
        return words.contains("timestamp") || words.contains("datetime");
    }

    private Role markRole() {
        return isNamedReading() ? Role.VALUE : Role.UNNAMED;
    }

    private boolean isMarksOnly() {
        return marks() == filled;
    }

    private boolean isCounter() {
        return decimals() == 0 && marks() == 0 && numbers() == filled;
    }
}
