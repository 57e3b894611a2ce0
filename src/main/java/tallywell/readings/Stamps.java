package tallywell.readings;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times that stand as stamps of date and time, by ISO 8601 or with dates such as 31.12.2025, over midnight too. */
final class Stamps {
    private static final Pattern DATE =
            Pattern.compile("(\\d{4})-(\\d\\d)-(\\d\\d)|(\\d{1,2})[.](\\d{1,2})[.](\\d{4})");
    private static final Pattern STAMP = Pattern.compile(
            "(" + DATE.pattern() + ")[ T]+(\\d{1,2}:\\d\\d(?::\\d\\d(?:[.,]\\d{1,9})?)?)( ?(?:Z|[-+]\\d\\d:?\\d\\d))?");

    private Stamps() {}

    /**
     * The times of some rows in s from the midnight before the first.
     *
     * @return empty unless each row holds a stamp, all of them with an offset or none
     */
    static Optional<double[]> seconds(Sheet sheet, int column, int[] rows) {
        List<String> texts = new ArrayList<>();
        for (int row : rows) {
            texts.add(sheet.text(row, column));
        }
        return seconds(texts);
    }

    /** The same, of times of day with their dates in a column of their own beside them. */
    static Optional<double[]> secondsBeside(Sheet sheet, int column, int[] rows) {
        for (int beside : new int[] {column - 1, column + 1}) {
            List<String> texts = new ArrayList<>();
            for (int row : rows) {
                String date = sheet.text(row, beside);
                if (!DATE.matcher(date).matches()) {
                    break;
                }
                texts.add(date + " " + sheet.text(row, column));
            }
            if (texts.size() == rows.length) {
                return seconds(texts);
            }
        }
        return Optional.empty();
    }

    private static Optional<double[]> seconds(List<String> texts) {
        double[] seconds = new double[texts.size()];
        LocalDateTime start = LocalDateTime.MIN;
        boolean offset = false;
        for (int i = 0; i < seconds.length; i++) {
            Matcher stamp = STAMP.matcher(texts.get(i));
            if (!stamp.matches() || i > 0 && offset != (stamp.group(9) != null)) {
                return Optional.empty();
            }
            offset = stamp.group(9) != null;
            try {
                LocalDateTime at = at(stamp);
                start = i == 0 ? at.truncatedTo(ChronoUnit.DAYS) : start;
                seconds[i] = ChronoUnit.NANOS.between(start, at) / 1e9;
            } catch (DateTimeException e) {
                // No day of the calendar: then it is no stamp either, and the caller says what the cell holds.
                return Optional.empty();
            }
        }
        return Optional.of(seconds);
    }

    private static LocalDateTime at(Matcher stamp) {
        boolean iso = stamp.group(2) != null;
        LocalDate date = iso
                ? LocalDate.of(number(stamp.group(2)), number(stamp.group(3)), number(stamp.group(4)))
                : LocalDate.of(number(stamp.group(7)), number(stamp.group(6)), number(stamp.group(5)));
        String clock = stamp.group(8).replace(',', '.');
        LocalDateTime local = date.atTime(LocalTime.parse(clock.indexOf(':') < 2 ? "0" + clock : clock));
        String offset = stamp.group(9);
        if (offset == null) {
            return local;
        }
        String zone = offset.strip().replaceFirst("([-+]\\d\\d)(\\d\\d)", "$1:$2");
        // In one time for all, since the offset may change along a series.
        return OffsetDateTime.of(local, java.time.ZoneOffset.of(zone))
                .withOffsetSameInstant(java.time.ZoneOffset.UTC)
                .toLocalDateTime();
    }

    private static int number(String digits) {
        return Integer.parseInt(digits);
    }
}
