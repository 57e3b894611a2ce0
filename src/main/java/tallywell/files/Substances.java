package tallywell.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import tallywell.method.Hazard;
import tallywell.method.Reagent;
import tallywell.method.Step;
import tallywell.notice.InputException;

/** The table of substances that comes with the program: which of them a method names, and what they do. */
final class Substances {
    private static final String FILE = "/tallywell/substances/substances.yaml";

    private final List<Entry> entries;

    /** A line of the table. */
    private record Entry(List<Pattern> words, Hazard hazard) {
        boolean isIn(String text) {
            return words.stream().anyMatch(word -> word.matcher(text).find());
        }
    }

    private Substances(List<Entry> entries) {
        this.entries = entries;
    }

    /** The table. */
    static Substances known() {
        try (InputStream stream = Substances.class.getResourceAsStream(FILE)) {
            if (stream == null) {
                throw new IllegalStateException("the program file is damaged: " + FILE + " is missing");
            }
            return read(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException | InputException e) {
            throw new IllegalStateException("the program file is damaged: " + FILE, e);
        }
    }

    private static Substances read(String text) throws InputException {
        YamlMapping top = YamlDocument.parse(Path.of(FILE), text, "substances/1", "substances");
        List<Entry> entries = new ArrayList<>();
        for (YamlNode item : top.need("substances", "'substances:'").list("one substance an item")) {
            YamlMapping keys = item.mapping("a substance").only("name", "words", "hazard", "precaution", "source");
            List<Pattern> words = new ArrayList<>();
            for (YamlNode word : keys.need("words", "'words: [azide]'").list("one word an item")) {
                words.add(whole(word.text()));
            }
            entries.add(new Entry(
                    List.copyOf(words),
                    new Hazard(
                            keys.need("name", "'name: ...'").text(),
                            keys.need("hazard", "'hazard: ...'").text(),
                            keys.need("precaution", "'precaution: ...'").text(),
                            keys.need("source", "'source: ...'").text())));
        }
        return new Substances(entries);
    }

    /** A word as such, not as part of a longer one: ethanol is not in triethanolamine. */
    private static Pattern whole(String word) {
        return Pattern.compile(
                "(?<![\\p{L}\\d])" + Pattern.quote(word) + "(?![\\p{L}\\d])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }

    /**
     * What the reagents and standards of a method do, in the order of the table.
     *
     * @param reagents of the method
     * @param steps of the method; where one says what its standard is weighed from, that counts, else its analyte
     */
    List<Hazard> of(List<Reagent> reagents, List<Step> steps) {
        List<String> named = new ArrayList<>();
        reagents.forEach(each -> named.add(each.name() + "; " + each.holds()));
        for (Step step : steps) {
            named.add(step.standard()
                    .map(each -> each.form().name())
                    .orElse(step.analyte().name()));
        }
        String all = String.join("\n", named).toLowerCase(Locale.ROOT);
        return entries.stream()
                .filter(each -> each.isIn(all))
                .map(Entry::hazard)
                .toList();
    }
}
