package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import tallywell.plate.Mark;

/** What words of the trade mean. To teach the importer a word, add it to the resource that {@link Vocabulary} reads. */
final class Words {
    private static final Map<String, Set<Meaning>> WHOLE = new HashMap<>();
    private static final Map<Meaning, List<String>> PARTS = new EnumMap<>(Meaning.class);
    private static final Map<Meaning, List<String>> PHRASES = new EnumMap<>(Meaning.class);
    private static final Map<String, Mark> MARKS = new HashMap<>();

    static {
        for (Meaning meaning : Meaning.values()) {
            if (meaning != Meaning.UNKNOWN) {
                Vocabulary.of(meaning.name()).forEach(word -> learn(meaning, word));
            }
        }
        Vocabulary.of("OVER").forEach(word -> learn(Mark.OVER, word));
        Vocabulary.of("MISSING").forEach(word -> learn(Mark.MISSING, word));
        Vocabulary.of("SHEET_ERROR").forEach(word -> learn(Mark.MISSING, word));
    }

    private Words() {}

    private static void learn(Meaning meaning, String word) {
        if (word.startsWith("\"")) {
            PHRASES.computeIfAbsent(meaning, key -> new ArrayList<>()).add(word.substring(1, word.length() - 1));
        } else if (word.startsWith("~")) {
            PARTS.computeIfAbsent(meaning, key -> new ArrayList<>()).add(word.substring(1));
        } else {
            WHOLE.computeIfAbsent(word, key -> EnumSet.noneOf(Meaning.class)).add(meaning);
        }
    }

    private static void learn(Mark mark, String word) {
        MARKS.put(word, mark);
        MARKS.put(word.replace('-', ' '), mark);
    }

    /** What a cell says instead of a number; {@link Mark#NONE} if it is no such word. */
    static Mark mark(String cell) {
        String text = cell.strip();
        if (text.length() > 32) {
            return Mark.NONE;
        }
        if (text.matches("[<≤] ?\\d*[.,]?\\d+")) {
            // Below what the reader can tell; a word of its own would be better than a number that it did not give.
            return Mark.MISSING;
        }
        if (text.matches("[*#+]+|[+]?\\d*[.,]?\\d+ ?[+]|(>=?|≥|≧) ?[+]?\\d*[.,]?\\d+( ?[A-Za-z]{1,3})?")) {
            return Mark.OVER;
        }
        return MARKS.getOrDefault(text.toLowerCase(Locale.ROOT), Mark.NONE);
    }

    /** The meanings of all words of a text. */
    static Set<Meaning> in(String text) {
        Set<Meaning> found = EnumSet.noneOf(Meaning.class);
        String lower = text.toLowerCase(Locale.ROOT).replace('_', ' ');
        for (String word : split(lower)) {
            found.addAll(of(word));
        }
        String spaced = " " + String.join(" ", split(lower)) + " ";
        PHRASES.forEach((meaning, phrases) -> {
            for (String phrase : phrases) {
                if (spaced.contains(" " + phrase + " ")) {
                    found.add(meaning);
                }
            }
        });
        return found;
    }

    /** The meanings of one word in lower case. */
    static Set<Meaning> of(String word) {
        Set<Meaning> found = EnumSet.noneOf(Meaning.class);
        found.addAll(WHOLE.getOrDefault(word, Set.of()));
        PARTS.forEach((meaning, parts) -> {
            for (String part : parts) {
                if (word.contains(part)) {
                    found.add(meaning);
                }
            }
        });
        // Uncorrected is raw, although it holds corrected.
        if (found.contains(Meaning.RAW)) {
            found.remove(Meaning.PROCESSED);
        }
        return found;
    }

    /** Words of letters, and numbers; signs between them are dropped. */
    static List<String> split(String lower) {
        List<String> words = new ArrayList<>();
        int at = 0;
        while (at < lower.length()) {
            char c = lower.charAt(at);
            int from = at;
            if (isLetter(c)) {
                while (at < lower.length() && (isLetter(lower.charAt(at)) || lower.charAt(at) == '²')) {
                    at++;
                }
                words.add(lower.substring(from, at));
            } else if (Character.isDigit(c)) {
                while (at < lower.length() && (Character.isDigit(lower.charAt(at)) || isJoint(lower, at))) {
                    at++;
                }
                words.add(lower.substring(from, at));
            } else {
                at++;
            }
        }
        return words;
    }

    private static boolean isLetter(char c) {
        return Character.isLetter(c) || c == '°' || c == '∆';
    }

    private static boolean isJoint(String text, int at) {
        char c = text.charAt(at);
        return (c == '.' || c == ',' || c == ':') && at + 1 < text.length() && Character.isDigit(text.charAt(at + 1));
    }
}
