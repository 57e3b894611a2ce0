package tallywell.readings;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the heading of a column of times, or of a run of columns headed by times, says of their unit. */
record TimeHeading(Optional<TimeUnit> unit, Optional<TimeUnit> twoPart, boolean clock) {
    private static final Pattern PARTS = Pattern.compile(
            "(?<![a-z])(h{1,2}|m{1,2}|min|std)[:.](m{1,2}|min|s{1,2}|sec|sek)([:.](s{1,2}|sec|sek)(\\.[0f0s]+)?)?(?![a-z])");

    /** Nothing known. */
    static TimeHeading none() {
        return new TimeHeading(Optional.empty(), Optional.empty(), false);
    }

    /** Reads a heading such as {@code Time [s]}, {@code time_min} or {@code Zeit (mm:ss)}. */
    static TimeHeading of(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        Matcher parts = PARTS.matcher(lower);
        if (parts.find()) {
            if (parts.group(3) != null) {
                return new TimeHeading(Optional.empty(), Optional.empty(), true);
            }
            boolean hours = parts.group(1).startsWith("h") || parts.group(1).equals("std");
            return new TimeHeading(Optional.empty(), Optional.of(hours ? TimeUnit.MINUTE : TimeUnit.SECOND), true);
        }
        for (String word : Words.split(lower.replace('_', ' '))) {
            Optional<TimeUnit> unit = TimeUnit.of(word);
            if (unit.isPresent()) {
                return new TimeHeading(unit, Optional.empty(), false);
            }
        }
        return none();
    }

    /** Whether anything is known. */
    boolean isKnown() {
        return unit.isPresent() || twoPart.isPresent() || clock;
    }

    /** The time in a cell under this heading; empty if it holds none. */
    Optional<Moment> read(String cell) {
        NumberForm form = NumberForm.of(cell);
        if (form != NumberForm.NONE) {
            if (clock) {
                // A spreadsheet that has lost its formats shows times as fractions of a day.
                boolean fraction = form != NumberForm.WHOLE || cell.matches("0+");
                return fraction ? Optional.of(Moment.of(cell, TimeUnit.DAY)) : Optional.empty();
            }
            return Optional.of(unit.map(each -> Moment.of(cell, each)).orElseGet(() -> Moment.bare(cell)));
        }
        Optional<Moment> moment = Moment.parse(cell);
        return moment.map(
                each -> each.open() == Moment.Open.PARTS && twoPart.isPresent() ? each.closed(twoPart.get()) : each);
    }
}
