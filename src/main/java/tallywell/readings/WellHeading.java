package tallywell.readings;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.plate.Well;

/**
 * A heading that names a well among other things known: {@code A1 (340 nm)}, {@code Well A1}, {@code 340 A01}.
 *
 * @param well the well
 * @param facts what else it says
 */
record WellHeading(Well well, Facts facts) {
    private static final Pattern LABELLED =
            Pattern.compile("([A-Za-z]{1,2}\\d{1,2})(?: ?[(\\[:,/=-]|\\s)\\s*(\\S.{0,40})");
    private static final Pattern WORD = Pattern.compile("(?<![A-Za-z0-9])([A-Za-z]{1,2}\\d{1,2})(?![A-Za-z0-9.,])");

    private static final Pattern PLAIN =
            Pattern.compile("[\\[(<{]?([A-Za-z]{1,2})(?: ?[-:_./] ?| )?(\\d{1,4})[\\])>}]?[:=]?");
    /** Numbers first: only with capital letters, since small ones are units. */
    private static final Pattern TURNED = Pattern.compile("(\\d{1,2}) ?-? ?([A-Z])");

    /** The well that a cell names and nothing else: A1, a01, A-1, A:1, [A1], 1A. */
    static Optional<Well> plain(String text) {
        if (text.length() > 8) {
            return Optional.empty();
        }
        Matcher plain = PLAIN.matcher(text);
        if (plain.matches()) {
            return Well.parse(plain.group(1) + plain.group(2));
        }
        Matcher turned = TURNED.matcher(text);
        return turned.matches() ? Well.parse(turned.group(2) + turned.group(1)) : Optional.empty();
    }

    /** Whether a heading names more than one well, as it does where two cells ran together. */
    static boolean isSeveral(String text) {
        return text.length() <= 60
                && !text.matches("\\w+ ?([(].*[)]|\\[.*\\])")
                && !Facts.ofHeading(text).isOtherQuantity()
                && WORD.matcher(text)
                                .results()
                                .filter(word -> Well.parse(word.group(1)).isPresent())
                                .count()
                        > 1;
    }

    /** The well at the start of a heading that goes on with a name, as in {@code A1 (blank)}. */
    static Optional<Well> labelled(String text) {
        Matcher label = LABELLED.matcher(text);
        return label.matches() && !Facts.ofHeading(label.group(2)).isOtherQuantity()
                ? Well.parse(label.group(1))
                : Optional.empty();
    }

    static Optional<WellHeading> parse(String text) {
        if (text.length() > 60) {
            return Optional.empty();
        }
        Matcher word = WORD.matcher(text.replace('_', ' '));
        if (!word.find()) {
            return Optional.empty();
        }
        Optional<Well> well = Well.parse(word.group(1));
        String rest = (text.substring(0, word.start(1)) + " " + text.substring(word.end(1)))
                .replace('_', ' ')
                .strip();
        if (well.isEmpty() || word.find()) {
            return Optional.empty();
        }
        Facts facts = Facts.ofHeading(rest);
        boolean understood = facts.wavelengthNm().isPresent()
                || facts.has(Meaning.WELL)
                || facts.has(Meaning.VALUE)
                || facts.has(Meaning.RAW)
                || facts.has(Meaning.PROCESSED)
                || facts.plate().isPresent()
                || rest.matches("[\\W]*|[\\W]*\\d{3}[\\W]*");
        if (!understood || facts.isOtherQuantity()) {
            return Optional.empty();
        }
        if (facts.wavelengthNm().isEmpty() && rest.matches("\\W*\\d{3}\\W*")) {
            double nm = Double.parseDouble(rest.replaceAll("\\D", ""));
            facts = Facts.isWavelength(nm) ? facts.withWavelength(nm) : facts;
        }
        return Optional.of(new WellHeading(well.get(), facts.has(Meaning.WELL) ? facts.withLabel("") : facts));
    }
}
