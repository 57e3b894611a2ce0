package tallywell.readings;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.table.Table;

/**
 * When an export says that it was read: the first date above or beside its readings, with a time of day in the same or
 * the next row. It serves to tell which of two exports is the earlier, never for anything that is reported, so that a
 * date whose day and month could be swapped is taken as day first: both exports have it alike.
 */
final class ReadMoment {
    private static final int MOST_ROWS = 80;
    private static final int MOST_CELLS = 6;
    private static final int CENTURY = 2000;
    private static final int TWO_DIGITS = 100;
    private static final int HALF_DAY = 12;
    private static final int HOURS = 24;
    private static final int SIXTY = 60;
    private static final Pattern YEAR_FIRST = Pattern.compile("(?<!\\d)(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})(?!\\d)");
    private static final Pattern YEAR_LAST =
            Pattern.compile("(?<!\\d)(\\d{1,2})[-/.](\\d{1,2})[-/.](\\d{4}|\\d{2})(?!\\d)");
    private static final Pattern TIME =
            Pattern.compile("(?<![\\d:.])(\\d{1,2}):(\\d{2})(?::(\\d{2}))?(?![\\d:])(?:\\s*([AaPp])\\.?[Mm])?");

    private ReadMoment() {}

    /** The moment, where the tables of a file say one. */
    static Optional<LocalDateTime> of(List<Table> tables) {
        return tables.stream().flatMap(table -> in(rows(table)).stream()).findFirst();
    }

    /** Rows of few cells, as text; rows of readings are passed over, since their times run from the start of a series. */
    private static List<String> rows(Table table) {
        List<String> rows = new ArrayList<>();
        for (int row = 0; row < Math.min(MOST_ROWS, table.rows()); row++) {
            List<String> cells = new ArrayList<>();
            for (int cell = 0; cell < table.width(row); cell++) {
                String text = table.text(row, cell).strip();
                if (!text.isEmpty()) {
                    cells.add(text);
                }
            }
            rows.add(cells.size() > MOST_CELLS ? "" : String.join("  ", cells));
        }
        return rows;
    }

    static Optional<LocalDateTime> in(List<String> rows) {
        for (int row = 0; row < rows.size(); row++) {
            Optional<LocalDate> date = date(rows.get(row));
            if (date.isPresent()) {
                Optional<LocalTime> time = time(rows.get(row));
                if (time.isEmpty() && row + 1 < rows.size()) {
                    time = time(rows.get(row + 1));
                }
                if (time.isPresent()) {
                    return Optional.of(date.get().atTime(time.get()));
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<LocalDate> date(String text) {
        Matcher first = YEAR_FIRST.matcher(text);
        if (first.find()) {
            return date(number(first, 1), number(first, 2), number(first, 3));
        }
        Matcher last = YEAR_LAST.matcher(text);
        if (!last.find()) {
            return Optional.empty();
        }
        int year = number(last, 3) < TWO_DIGITS ? CENTURY + number(last, 3) : number(last, 3);
        return date(year, number(last, 2), number(last, 1)).or(() -> date(year, number(last, 1), number(last, 2)));
    }

    private static Optional<LocalDate> date(int year, int month, int day) {
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static Optional<LocalTime> time(String text) {
        Matcher found = TIME.matcher(text);
        while (found.find()) {
            String half = found.group(4);
            int hour = number(found, 1);
            if (half != null && hour <= HALF_DAY) {
                hour = hour % HALF_DAY + (half.equalsIgnoreCase("p") ? HALF_DAY : 0);
            }
            int second = found.group(3) == null ? 0 : number(found, 3);
            if (hour < HOURS && number(found, 2) < SIXTY && second < SIXTY) {
                return Optional.of(LocalTime.of(hour, number(found, 2), second));
            }
        }
        return Optional.empty();
    }

    private static int number(Matcher of, int group) {
        return Integer.parseInt(of.group(group));
    }
}
