package tallywell.desk;

import java.util.LinkedHashMap;
import java.util.Map;
import tallywell.plate.Content;
import tallywell.plate.Layout;

/** Finds the legend word of a content: that of the same content already on the plate, else a free one. */
final class LegendWords {
    private LegendWords() {}

    /** The words in use with what they stand for. */
    static Map<String, Content> of(Layout layout) {
        Map<String, Content> words = new LinkedHashMap<>();
        layout.wells().forEach((well, content) -> {
            if (!(content instanceof Content.Sample) && !(content instanceof Content.Unused)) {
                words.putIfAbsent(content.word(), content);
            }
        });
        return words;
    }

    /** The content with the word that it has on this plate. */
    static Content fit(Layout layout, Content content) {
        if (content instanceof Content.Sample || content instanceof Content.Unused) {
            return content;
        }
        Map<String, Content> words = of(layout);
        for (Content each : words.values()) {
            if (each.equals(worded(content, each.word()))) {
                return each;
            }
        }
        return worded(content, free(words, content));
    }

    private static String free(Map<String, Content> words, Content content) {
        if (content instanceof Content.Standard) {
            for (char letter = 'a'; letter <= 'm'; letter++) {
                if (!words.containsKey(String.valueOf(letter))) {
                    return String.valueOf(letter);
                }
            }
        }
        String stem = stem(content);
        if (content instanceof Content.Blank && !words.containsKey(stem)) {
            return stem;
        }
        for (int i = first(content); ; i++) {
            if (!words.containsKey(stem + i)) {
                return stem + i;
            }
        }
    }

    private static String stem(Content content) {
        if (content instanceof Content.Blank blank) {
            return blank.triggered() ? "o" : "n";
        }
        if (content instanceof Content.Control) {
            return "q";
        }
        if (content instanceof Content.SampleBlank) {
            return "s";
        }
        return content instanceof Content.Spike ? "p" : "z";
    }

    /** Sample blanks and spikes are numbered after their sample where that word is free. */
    private static int first(Content content) {
        if (content instanceof Content.SampleBlank blank) {
            return blank.of();
        }
        return content instanceof Content.Spike spike ? spike.of() : 1;
    }

    private static Content worded(Content content, String word) {
        if (content instanceof Content.Blank blank) {
            return new Content.Blank(word, blank.group(), blank.triggered());
        }
        if (content instanceof Content.Standard standard) {
            return new Content.Standard(word, standard.group(), standard.level());
        }
        if (content instanceof Content.Control control) {
            String name = control.name().isEmpty() ? word : control.name();
            return new Content.Control(
                    word, control.group(), name, control.assigned(), control.tolerance(), control.dilution());
        }
        if (content instanceof Content.SampleBlank blank) {
            return new Content.SampleBlank(word, blank.group(), blank.of());
        }
        if (content instanceof Content.Spike spike) {
            return new Content.Spike(word, spike.group(), spike.of(), spike.added(), spike.fraction());
        }
        return content;
    }
}
