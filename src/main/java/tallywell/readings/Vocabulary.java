package tallywell.readings;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The words that the importer knows, of all languages together. They stand in one resource, {@code words.txt}, by
 * language; here they are sorted by kind: a {@link Meaning}, or one of the lists below.
 */
final class Vocabulary {
    private static final String RESOURCE = "/tallywell/readings/words.txt";
    private static final Pattern WORD = Pattern.compile("\"[^\"]+\"|\\S+");
    private static final Map<String, Set<String>> KINDS = load();

    private Vocabulary() {}

    private static Map<String, Set<String>> load() {
        Map<String, Set<String>> kinds = new LinkedHashMap<>();
        InputStream resource = Vocabulary.class.getResourceAsStream(RESOURCE);
        if (resource == null) {
            throw new IllegalStateException(RESOURCE + " must be in the jar");
        }
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(resource, StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                int colon = line.indexOf(':');
                if (line.isBlank() || line.startsWith("#") || line.startsWith("[")) {
                    continue;
                }
                Set<String> words = kinds.computeIfAbsent(line.substring(0, colon), none -> new LinkedHashSet<>());
                Matcher word = WORD.matcher(line.substring(colon + 1));
                while (word.find()) {
                    words.add(word.group());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return kinds;
    }

    /** The words of a kind as the resource has them: with a tilde parts of words, in quotation marks runs of words. */
    static Set<String> of(String kind) {
        Set<String> words = KINDS.get(kind);
        if (words == null) {
            throw new IllegalArgumentException("kind of words must stand in " + RESOURCE + " but was " + kind);
        }
        return words;
    }

    /** The whole words of several kinds as alternatives of a pattern, the longest first. */
    static String alternatives(String... kinds) {
        return java.util.Arrays.stream(kinds)
                .flatMap(kind -> of(kind).stream())
                .filter(word -> !word.startsWith("~") && !word.startsWith("\""))
                .distinct()
                .sorted(Comparator.comparingInt(String::length).reversed().thenComparing(Comparator.naturalOrder()))
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
    }
}
