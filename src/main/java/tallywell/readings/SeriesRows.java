package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.notice.Notice;

/**
 * Rows above a list that say something of each column of readings: its cycle, its time, the temperature at that time …
 * Each is named at its left; only the one named as times gives the times, the others are left out.
 *
 * @param times the row of times; -1 if there is none
 * @param label what names the times
 * @param first the first of the rows; the row of the first well if there are none
 * @param others the other rows
 */
record SeriesRows(int times, String label, int first, List<Integer> others) {
    private static final Set<Meaning> NAMES = EnumSet.of(
            Meaning.TIME,
            Meaning.OTHER_TIME,
            Meaning.CYCLE,
            Meaning.TEMPERATURE,
            Meaning.OTHER,
            Meaning.STATISTIC,
            Meaning.OTHER_SIGNAL);

    private static final int MOST = 10;

    /**
     * Looks above the first well of a list.
     *
     * @throws InputException if two rows are named as times
     */
    static SeriesRows above(Sheet sheet, int start, int from) throws InputException {
        List<Integer> rows = new ArrayList<>();
        int row = start - 1;
        while (row >= Math.max(0, start - MOST) && !labelOf(sheet, row, from).isEmpty()) {
            rows.add(0, row--);
        }
        if (rows.size() < 2) {
            return new SeriesRows(-1, "", start, List.of());
        }
        int times = -1;
        for (int each : rows) {
            Set<Meaning> meanings = LineMeanings.of(labelOf(sheet, each, from));
            if (meanings.contains(Meaning.TIME) && !meanings.contains(Meaning.OTHER_TIME)) {
                if (times >= 0) {
                    throw sheet.fault(each, from, "a second row of times", "one row of times above the readings");
                }
                times = each;
            }
        }
        int found = times;
        List<Integer> others = rows.stream().filter(each -> each != found).toList();
        return new SeriesRows(times, times < 0 ? "" : labelOf(sheet, times, from), rows.get(0), others);
    }

    boolean isEmpty() {
        return times < 0 && others.isEmpty();
    }

    /** The rows that are left out. */
    List<Notice> notes(Sheet sheet, int from) {
        return others.stream()
                .map(row -> Notice.information(
                        sheet.table().place(row), "left out: the row '" + labelOf(sheet, row, from) + "'"))
                .toList();
    }

    /** The words left of at least two numbers or times, if they name what stands in the row; empty otherwise. */
    private static String labelOf(Sheet sheet, int row, int from) {
        String label = "";
        int numbers = 0;
        for (int column = from; column < sheet.width(row); column++) {
            Look look = sheet.look(row, column);
            boolean time = look.isNumber()
                    || look == Look.CLOCK
                    || look == Look.TEXT
                            && Moment.parse(sheet.text(row, column)).isPresent();
            if (time) {
                numbers++;
            } else if (look != Look.EMPTY && look != Look.MISSING) {
                if (numbers > 0) {
                    return "";
                }
                label = sheet.text(row, column);
            }
        }
        boolean named = LineMeanings.of(label).stream().anyMatch(NAMES::contains);
        return numbers >= 2 && named ? label : "";
    }
}
