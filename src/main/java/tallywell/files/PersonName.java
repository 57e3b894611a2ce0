package tallywell.files;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What is left of a person's name when everything is taken away that does not tell people apart: letter case, blanks, points and commas,
 * the order of its parts, and letters of other alphabets that look the same.
 *
 * <p>The way is that of the skeletons of Unicode Technical Standard 39, section 4 (normalise, map look-alikes, normalise), with a table
 * of the Greek and Cyrillic letters that look like Latin ones, of the digits 0 and 1, and of {@code rn} for {@code m}; from memory, not its
 * whole list, which a library would carry at 14 MB. Names that are told to be one by mistake cost a refusal with a message; the other
 * way round costs the second person.
 */
final class PersonName {
    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{M}\\p{N}]+");
    private static final Map<Integer, String> ALIKE = new HashMap<>();

    static {
        alike("ΑΒΕΖΗΙΚΜΝΟΡΤΥΧ", "abezhikmnoptyx");
        alike("АВЕЅІЈКМНОРСТУХ", "abesijkmhopctyx");
        alike("аеорсухіјѕһԁԛԝӏ", "aeopcyxijshdqwi");
        alike("αονιρυκχ", "aovipukx");
        alike("ıɑɡ01l|", "iagoiii");
    }

    private PersonName() {}

    private static void alike(String letters, String latin) {
        for (int i = 0; i < letters.length(); i++) {
            ALIKE.put((int) letters.charAt(i), latin.substring(i, i + 1));
        }
    }

    /** The skeleton; the same for all spellings of one name. */
    static String skeleton(String name) {
        String parts = mapped(
                        mapped(Normalizer.normalize(name, Normalizer.Form.NFKC)).toLowerCase(Locale.ROOT))
                .replace("rn", "m");
        return BETWEEN.splitAsStream(Normalizer.normalize(parts, Normalizer.Form.NFKC))
                .filter(part -> !part.isEmpty())
                .sorted()
                .collect(Collectors.joining(" "));
    }

    private static String mapped(String text) {
        StringBuilder mapped = new StringBuilder(text.length());
        text.codePoints()
                .filter(each -> !HiddenCharacters.isHidden(each))
                .forEach(each -> mapped.append(ALIKE.getOrDefault(each, Character.toString(each))));
        return mapped.toString();
    }
}
