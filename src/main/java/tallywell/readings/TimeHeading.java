package tallywell.readings;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the heading of a column of times, or of a run of columns headed by times, says of their unit. */
record TimeHeading(Optional<TimeUnit> unit, Optional<TimeUnit> twoPart, boolean clock, boolean dotted) {
    private static final Pattern DOTTED = Pattern.compile("(?<![a-z])m{1,2}(?:in)?[.]s{1,2}(?:ec|ek)?(?![a-z])");

    private static final Pattern PARTS = Pattern.compile(
            "(?<![a-z])(h{1,2}|m{1,2}|min|std)[:.](m{1,2}|min|s{1,2}|sec|sek)([:.](s{1,2}|sec|sek)(\\.[0f0s]+)?)?(?![a-z])");

    /** Nothing known. */
    static TimeHeading none() {
        return new TimeHeading(Optional.empty(), Optional.empty(), false, false);
    }

    /** Reads a heading such as {@code Time [s]}, {@code time_min} or {@code Zeit (mm:ss)}. */
    static TimeHeading of(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        if (DOTTED.matcher(lower).find()) {
            return new TimeHeading(Optional.empty(), Optional.of(TimeUnit.SECOND), true, true);
        }
        Matcher parts = PARTS.matcher(lower);
        if (parts.find()) {
            if (parts.group(3) != null) {
                return new TimeHeading(Optional.empty(), Optional.empty(), true, false);
            }
            boolean hours = parts.group(1).startsWith("h") || parts.group(1).equals("std");
            return new TimeHeading(
                    Optional.empty(), Optional.of(hours ? TimeUnit.MINUTE : TimeUnit.SECOND), true, false);
        }
        for (String word : Words.split(lower.replace('_', ' '))) {
            Optional<TimeUnit> unit = TimeUnit.of(word);
            if (unit.isPresent()) {
                return new TimeHeading(unit, Optional.empty(), false, false);
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
            if (dotted) {
                return dotted(cell);
            }
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

    /** Minutes and seconds with a mark between them that elsewhere is decimal: two digits must follow it. */
    private static Optional<Moment> dotted(String cell) {
        Matcher parts = Pattern.compile("(\\d{1,4})[.,](\\d\\d)").matcher(cell);
        if (cell.matches("\\d{1,4}")) {
            return Optional.of(Moment.of(cell, TimeUnit.MINUTE));
        }
        return parts.matches() && Integer.parseInt(parts.group(2)) < 60
                ? Optional.of(
                        Moment.seconds(60.0 * Integer.parseInt(parts.group(1)) + Integer.parseInt(parts.group(2))))
                : Optional.empty();
    }
}
