package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tallywell.quantity.Numbers;

/**
 * The lines that name a wavelength for some readings. A line that says that it is the wavelength counts first; then a
 * title near the readings, or one that speaks of nothing else. What a remark, a test or a list mentions does not count.
 * Two that contradict each other leave the wavelength in doubt.
 */
final class WavelengthMentions {
    private static final Set<String> UNIT = Set.of("nm", "нм", "纳米");

    private enum Strength {
        CHANCE,
        VALUE,
        TITLE,
        PURE,
        EXPLICIT
    }

    private record Mention(double nm, Strength strength, boolean near, Line line) {}

    private final List<Mention> mentions = new ArrayList<>();

    /** Takes up a line, the nearest first. */
    void add(Facts facts, Line line, boolean near) {
        if (facts.wavelengthNm().isPresent()) {
            mentions.add(
                    new Mention(facts.wavelengthNm().getAsDouble(), strength(facts, line.text(), near), near, line));
        }
    }

    private static Strength strength(Facts facts, String text, boolean near) {
        if (facts.has(Meaning.NOTE) || facts.has(Meaning.ACTION)) {
            return Strength.CHANCE;
        }
        List<String> words = Words.split(text.toLowerCase(Locale.ROOT).replace('_', ' '));
        boolean named = words.stream()
                .anyMatch(word -> !UNIT.contains(word) && Words.of(word).contains(Meaning.WAVELENGTH));
        if (named) {
            return Strength.EXPLICIT;
        }
        boolean pure = words.stream().allMatch(Claim::isOfReadings);
        boolean setting = text.matches("(?s)[^:=：]*\\p{L}[^:=：]*[:=：].*");
        boolean value = setting && text.matches("(?iu)(?s)[^:=：]*[:=：]\\s*\\d{3,4} ?(nm|нм|纳米)\\s*");
        return pure ? Strength.PURE : near && !setting ? Strength.TITLE : value ? Strength.VALUE : Strength.CHANCE;
    }

    /** The facts with the wavelength that stands nearest so far. */
    Facts nearest(Facts facts) {
        return mentions.isEmpty() ? facts : facts.withWavelength(mentions.get(0).nm());
    }

    /** The facts with the wavelength that the lines settle, or with a doubt. */
    Facts settle(Facts facts) {
        Optional<Mention> nearest = mentions.stream()
                .filter(mention -> mention.near() && mention.strength() != Strength.CHANCE)
                .findFirst();
        List<Mention> explicit = with(Strength.EXPLICIT);
        List<Mention> pure = with(Strength.PURE);
        List<Mention> titles = with(Strength.TITLE);
        if (nearest.isPresent()
                && nearest.get().strength() != Strength.TITLE
                && explicit.stream()
                        .filter(mention -> !mention.near())
                        .map(Mention::nm)
                        .toList()
                        .contains(nearest.get().nm())
                && distinct(near(explicit)) <= 1) {
            // A caption picks one of several wavelengths that settings further up list.
            return facts.withWavelength(nearest.get().nm());
        }
        for (List<Mention> level : List.of(explicit, pure, titles, with(Strength.VALUE))) {
            if (level.isEmpty()) {
                continue;
            }
            Mention first = level.get(0);
            List<Mention> against = new ArrayList<>(level);
            if (level == explicit) {
                against.addAll(pure);
            }
            Optional<Mention> other = against.stream()
                    .filter(mention -> mention.nm() != first.nm())
                    .filter(mention -> level == explicit || mention.near() == first.near())
                    .findFirst();
            return other.isPresent() ? doubtful(facts, first, other.get()) : facts.withWavelength(first.nm());
        }
        return facts;
    }

    private List<Mention> with(Strength strength) {
        return mentions.stream()
                .filter(mention -> mention.strength() == strength)
                .toList();
    }

    private static List<Mention> near(List<Mention> of) {
        return of.stream().filter(Mention::near).toList();
    }

    private static int distinct(List<Mention> of) {
        Set<Double> values = new TreeSet<>();
        of.forEach(mention -> values.add(mention.nm()));
        return values.size();
    }

    private static Facts doubtful(Facts facts, Mention one, Mention other) {
        return facts.withDoubt(
                "found '" + other.line().text() + "' (" + other.line().place().text() + ") and '"
                        + one.line().text() + "' (" + one.line().place().text()
                        + "), which name two wavelengths for the same readings; expected one");
    }

    /** The line that a wavelength rests on. */
    Optional<Line> ground(double nm) {
        return mentions.stream()
                .filter(mention -> mention.nm() == nm && mention.strength() != Strength.CHANCE)
                .max(java.util.Comparator.comparing(Mention::strength))
                .map(Mention::line);
    }

    /** Lines that mention a wavelength by chance only. */
    List<String> chances() {
        return with(Strength.CHANCE).stream()
                .map(mention -> "'" + mention.line().text() + "' mentions " + Numbers.plain(mention.nm())
                        + " nm, but not as the wavelength of the readings; left out")
                .toList();
    }
}
