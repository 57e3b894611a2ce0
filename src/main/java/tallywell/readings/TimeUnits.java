package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Settles the unit of times that stand without one: a duration with its unit, named anywhere in the words of the file,
 * that is the step or the whole length of the series in one unit only.
 */
final class TimeUnits {
    private static final Pattern DURATION = Pattern.compile(
            "(?<![\\d.,:\\p{L}])(\\d+(?:[.,]\\d+)?) ?(\\p{L}{1,9})|(?<![\\d:])(\\d{1,3}:\\d\\d:\\d\\d)(?![\\d:])");
    /** A word for time with a unit in brackets or after "in", as titles over a table have it. */
    private static final Pattern NAMED = Pattern.compile(
            "(?iu)(?<!\\p{L})(time|times|zeit|zeiten|temps|tiempo|tempo|tijd|czas)(?!\\p{L})[ :,/]*(in |en |\\[|\\()? ?\\p{L}+");

    private static final double SAME = 0.01;

    private TimeUnits() {}

    /** The units that remain possible for bare numbers. */
    static List<TimeUnit> bare(List<Draft> drafts, List<String> words) {
        Set<TimeUnit> named = EnumSet.noneOf(TimeUnit.class);
        for (String line : words) {
            if (NAMED.matcher(line).find() && !Words.in(line).contains(Meaning.OTHER_TIME)) {
                TimeHeading.of(line).unit().ifPresent(named::add);
            }
        }
        return named.size() == 1
                ? List.copyOf(named)
                : remaining(drafts, words, List.of(TimeUnit.SECOND, TimeUnit.MINUTE, TimeUnit.HOUR));
    }

    /** The units that remain possible for the second part of times such as 12:30. */
    static List<TimeUnit> twoPart(List<Draft> drafts, List<String> words) {
        return remaining(drafts, words, List.of(TimeUnit.SECOND, TimeUnit.MINUTE));
    }

    private static List<TimeUnit> remaining(List<Draft> drafts, List<String> words, List<TimeUnit> possible) {
        List<Double> durations =
                words.stream().flatMap(line -> durations(line).stream()).toList();
        List<TimeUnit> supported = new ArrayList<>();
        for (TimeUnit unit : possible) {
            boolean fits = false;
            for (Draft draft : drafts) {
                Optional<double[]> extent = draft.extent();
                if (extent.isPresent()) {
                    double step = extent.get()[0] * unit.seconds();
                    double span = extent.get()[1] * unit.seconds();
                    fits |= durations.stream().anyMatch(each -> same(each, step) || same(each, span));
                }
            }
            if (fits) {
                supported.add(unit);
            }
        }
        return supported.size() == 1 ? supported : possible;
    }

    private static boolean same(double one, double other) {
        return other > 0 && Math.abs(one - other) <= SAME * other;
    }

    private static List<Double> durations(String line) {
        List<Double> durations = new ArrayList<>();
        Matcher matcher = DURATION.matcher(line);
        while (matcher.find()) {
            if (matcher.group(3) != null) {
                Moment.parse(matcher.group(3)).ifPresent(moment -> durations.add(moment.amount()));
                continue;
            }
            TimeUnit.of(matcher.group(2))
                    .ifPresent(unit ->
                            durations.add(Double.parseDouble(matcher.group(1).replace(',', '.')) * unit.seconds()));
        }
        return durations;
    }
}
