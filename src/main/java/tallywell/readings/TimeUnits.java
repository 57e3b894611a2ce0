package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Settles the unit of times that stand without one: a title such as Time (min), or a line that speaks of the
 * interval, the cycle or the length of the kinetics and whose duration is the step or the whole length in one unit only.
 * Other durations, such as those of an incubation or in the name of a sample, say nothing.
 */
final class TimeUnits {
    private static final Pattern DURATION = Pattern.compile(
            "(?<![\\d.,:])(\\d+(?:[.,]\\d+)?) ?(\\p{L}{1,9})|(?<![\\d:])(\\d{1,3}:\\d\\d:\\d\\d)(?![\\d:])");
    /** A word for time with a unit in brackets or after "in", as titles over a table have it. */
    private static final Pattern NAMED = Pattern.compile(
            "(?iu)(?<!\\p{L})(" + Vocabulary.alternatives("TIME") + ")(?!\\p{L})[ :,/]*(in |en |\\[|\\(|（)? ?\\p{L}+");

    private static final double SAME = 0.01;

    private TimeUnits() {}

    /**
     * The units that remain possible, and the lines they rest on.
     *
     * @param possible one, or all that remain
     * @param grounds the lines that settle it; empty if it is open
     */
    record Settled(List<TimeUnit> possible, List<Line> grounds) {}

    /** The units that remain possible for bare numbers. */
    static Settled bare(List<Draft> drafts, List<Line> lines) {
        Map<TimeUnit, Line> named = new EnumMap<>(TimeUnit.class);
        for (Line line : lines) {
            if (NAMED.matcher(line.text()).find() && isOfTimes(line.text())) {
                TimeHeading.of(line.text()).unit().ifPresent(unit -> named.putIfAbsent(unit, line));
            }
        }
        return named.size() == 1
                ? new Settled(List.copyOf(named.keySet()), List.copyOf(named.values()))
                : remaining(drafts, lines, List.of(TimeUnit.SECOND, TimeUnit.MINUTE, TimeUnit.HOUR));
    }

    /** A title that gives the unit of times speaks of nothing else: each of its words is known. */
    private static boolean isOfTimes(String line) {
        Set<Meaning> meanings = Words.in(line);
        return !meanings.contains(Meaning.OTHER_TIME)
                && !meanings.contains(Meaning.ACTION)
                && !meanings.contains(Meaning.NOTE)
                && !meanings.contains(Meaning.SAMPLE)
                && Words.split(line.toLowerCase(Locale.ROOT)).stream().allMatch(Claim::isOfReadings);
    }

    /** Whether a line above columns may say what their bare headings are: it tells of nothing done, remarked or named. */
    static boolean isOfReadings(String line) {
        Set<Meaning> meanings = Words.in(line);
        return !meanings.contains(Meaning.ACTION)
                && !meanings.contains(Meaning.NOTE)
                && !meanings.contains(Meaning.INTERVAL)
                && !(meanings.contains(Meaning.SAMPLE) && !durations(line).isEmpty());
    }

    /** The units that remain possible for the second part of times such as 12:30. */
    static Settled twoPart(List<Draft> drafts, List<Line> lines) {
        return remaining(drafts, lines, List.of(TimeUnit.SECOND, TimeUnit.MINUTE));
    }

    private static Settled remaining(List<Draft> drafts, List<Line> lines, List<TimeUnit> possible) {
        List<Line> spoken =
                lines.stream().filter(line -> speaksOfSeries(line.text())).toList();
        Map<TimeUnit, Line> supported = new EnumMap<>(TimeUnit.class);
        for (TimeUnit unit : possible) {
            for (Draft draft : drafts) {
                Optional<double[]> extent = draft.extent();
                if (extent.isPresent()) {
                    double step = extent.get()[0] * unit.seconds();
                    double span = extent.get()[1] * unit.seconds();
                    spoken.stream()
                            .filter(line -> durations(line.text()).stream()
                                    .anyMatch(each -> same(each, step) || same(each, span)))
                            .findFirst()
                            .ifPresent(line -> supported.putIfAbsent(unit, line));
                }
            }
        }
        return supported.size() == 1
                ? new Settled(List.copyOf(supported.keySet()), List.copyOf(supported.values()))
                : new Settled(possible, List.of());
    }

    /** Whether a line speaks of the interval, the cycle or the length of a series, and of nothing done beside it. */
    private static boolean speaksOfSeries(String line) {
        Set<Meaning> meanings = Words.in(line);
        return meanings.contains(Meaning.INTERVAL)
                && !meanings.contains(Meaning.ACTION)
                && !meanings.contains(Meaning.NOTE)
                && !meanings.contains(Meaning.SAMPLE);
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
