package tallywell.readings;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A time as it is written: what it is in seconds may depend on what the rest of the file shows.
 *
 * @param amount the time in s, or what each of the digits counts for
 * @param digits a number as written, its decimal mark not known yet; null if there is none
 * @param open what is left open
 */
record Moment(double amount, @Nullable String digits, Open open) {
    /** What is left open. */
    enum Open {
        /** Nothing: the unit is known. */
        NOTHING,
        /** The unit of a bare number. */
        UNIT,
        /** Whether two parts are minutes and seconds, or hours and minutes. */
        PARTS
    }

    private static final Pattern CLOCK = Pattern.compile("(\\d{1,4}):(\\d\\d)(?::(\\d\\d)(?:[.,](\\d+))?)?");
    private static final Pattern CLOCK_TENTHS = Pattern.compile("(\\d{1,4}):(\\d\\d)[.,](\\d+)");
    private static final Pattern HOURS_MINUTES_SECONDS =
            Pattern.compile("(?:(\\d+) ?h ?)?(?:(\\d+) ?m(?:in)? ?)?(?:(\\d+(?:[.,]\\d+)?) ?s(?:ec)?)?");
    private static final Pattern HALF_DAY = Pattern.compile("(1[0-2]|0?\\d):(\\d\\d)(:\\d\\d)? ?([AaPp])[.]?[Mm][.]?");
    private static final Pattern MEASURE = Pattern.compile(
            "([-+]?\\d[\\d.,' ]*?) ?(\\p{L}+)[.]?(?: (\\d[\\d.,]*) ?(\\p{L}+)[.]?)?(?: (\\d[\\d.,]*) ?(\\p{L}+)[.]?)?");

    /** A number of units. */
    static Moment of(String number, TimeUnit unit) {
        return new Moment(unit.seconds(), number, Open.NOTHING);
    }

    /** A number without a unit. */
    static Moment bare(String number) {
        return new Moment(1, number, Open.UNIT);
    }

    /** A known time. */
    static Moment seconds(double seconds) {
        return new Moment(seconds, null, Open.NOTHING);
    }

    /** Reads {@code 0:30}, {@code 1:05:30.5}, {@code 30 s} or {@code 1 min 30 s}; bare numbers are left to the caller. */
    static Optional<Moment> parse(String text) {
        Matcher clock = CLOCK.matcher(text);
        if (clock.matches()) {
            double first = Double.parseDouble(clock.group(1));
            int second = Integer.parseInt(clock.group(2));
            if (second >= 60 || clock.group(3) != null && Integer.parseInt(clock.group(3)) >= 60) {
                return Optional.empty();
            }
            if (clock.group(3) == null) {
                return Optional.of(new Moment(first * 60 + second, null, Open.PARTS));
            }
            String rest = clock.group(4) == null ? "" : "." + clock.group(4);
            return Optional.of(seconds(first * 3600 + second * 60 + Double.parseDouble(clock.group(3) + rest)));
        }
        Matcher tenths = CLOCK_TENTHS.matcher(text);
        if (tenths.matches() && Integer.parseInt(tenths.group(2)) < 60) {
            // Only seconds are written with decimals.
            return Optional.of(seconds(Double.parseDouble(tenths.group(1)) * 60
                    + Double.parseDouble(tenths.group(2) + "." + tenths.group(3))));
        }
        Matcher half = HALF_DAY.matcher(text);
        if (half.matches()) {
            int hour = Integer.parseInt(half.group(1)) % 12 + (half.group(4).equalsIgnoreCase("p") ? 12 : 0);
            return parse(hour + ":" + half.group(2) + (half.group(3) == null ? ":00" : half.group(3)));
        }
        Matcher parts = HOURS_MINUTES_SECONDS.matcher(text);
        if (parts.matches() && parts.groupCount() == 3 && count(parts) >= 2) {
            double seconds = 0;
            for (int i = 1; i <= 3; i++) {
                String part = parts.group(i);
                seconds = seconds * 60 + (part == null ? 0 : Double.parseDouble(part.replace(',', '.')));
            }
            return Optional.of(seconds(seconds));
        }
        Matcher measure = MEASURE.matcher(text);
        return measure.matches() ? composite(measure) : Optional.empty();
    }

    private static int count(Matcher parts) {
        int count = 0;
        for (int i = 1; i <= parts.groupCount(); i++) {
            count += parts.group(i) == null ? 0 : 1;
        }
        return count;
    }

    private static Optional<Moment> composite(Matcher measure) {
        Optional<TimeUnit> unit = TimeUnit.of(measure.group(2));
        if (unit.isEmpty() || NumberForm.of(measure.group(1)) == NumberForm.NONE) {
            return Optional.empty();
        }
        if (measure.group(3) == null) {
            return Optional.of(of(measure.group(1), unit.get()));
        }
        double seconds = 0;
        double last = Double.MAX_VALUE;
        for (int i = 1; i <= 5 && measure.group(i) != null; i += 2) {
            Optional<TimeUnit> each = TimeUnit.of(measure.group(i + 1));
            String digits = measure.group(i);
            if (each.isEmpty() || each.get().seconds() >= last || !digits.matches("\\d{1,6}([.,]\\d{1,3})?")) {
                return Optional.empty();
            }
            last = each.get().seconds();
            seconds += Double.parseDouble(digits.replace(',', '.')) * last;
        }
        return Optional.of(seconds(seconds));
    }

    /** A time of two parts whose second part is known. */
    Moment closed(TimeUnit second) {
        return seconds(amount * second.seconds());
    }

    /** The number as written, empty if the time holds no number whose decimal mark could be in doubt. */
    Optional<String> number() {
        return Optional.ofNullable(digits);
    }

    /** The time in seconds. */
    double seconds(Interpretation as) {
        double count = digits == null ? 1 : value(digits, as.mark());
        return switch (open) {
            case NOTHING -> amount * count;
            case UNIT -> as.bareUnit().seconds() * count;
            case PARTS -> amount * as.twoPart().seconds();
        };
    }

    private static double value(String number, DecimalMark mark) {
        NumberForm form = NumberForm.of(number);
        DecimalMark own = form.fits(mark) ? mark : mark == DecimalMark.POINT ? DecimalMark.COMMA : DecimalMark.POINT;
        return own.parse(number);
    }
}
