package tallywell.method;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** An option that files spell as a word. */
public interface Worded {
    /** The word as files spell it. */
    String word();

    /** The option that a word spells, if one does. */
    static <E extends Enum<E> & Worded> Optional<E> of(Class<E> options, String word) {
        return Arrays.stream(options.getEnumConstants())
                .filter(each -> each.word().equals(word))
                .findFirst();
    }

    /** All words of an option, for messages. */
    static <E extends Enum<E> & Worded> String words(Class<E> options) {
        return Arrays.stream(options.getEnumConstants()).map(Worded::word).collect(Collectors.joining(", "));
    }
}
