package tallywell.files;

import java.util.Locale;
import java.util.Optional;

/**
 * Characters that nobody sees: they make two names that look the same different, or turn what stands behind them round.
 *
 * <p>Source: Unicode general categories Cf and Cc, with the fillers and blanks without ink that are letters or symbols by category
 * (from memory). The joiners U+200C and U+200D stay where writing needs them: behind letters of scripts that join, and in pictures
 * made of several.
 */
public final class HiddenCharacters {
    private static final String FILLERS = "\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0\u034f";

    private HiddenCharacters() {}

    /** The first of them in a text, in words. */
    public static Optional<String> first(String text) {
        int at = indexIn(text);
        return at < 0 ? Optional.empty() : Optional.of(name(text.codePointAt(at)));
    }

    /** Where the first of them stands; below 0 if there is none. */
    static int indexIn(String text) {
        int before = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int each = text.codePointAt(i);
            if (isHidden(each) && !(isJoiner(each) && isJoined(before))) {
                return i;
            }
            before = each;
        }
        return -1;
    }

    /** The text without them. */
    static String without(String text) {
        StringBuilder left = new StringBuilder(text);
        for (int at = indexIn(text); at >= 0; at = indexIn(left.toString())) {
            left.delete(at, at + Character.charCount(left.codePointAt(at)));
        }
        return left.toString();
    }

    static boolean isHidden(int each) {
        int type = Character.getType(each);
        boolean steers = type == Character.CONTROL && each != '\t' && each != '\n' && each != '\r';
        return steers || type == Character.FORMAT || FILLERS.indexOf(each) >= 0;
    }

    private static boolean isJoiner(int each) {
        return each == 0x200C || each == 0x200D;
    }

    private static boolean isJoined(int before) {
        int type = Character.getType(before);
        Character.UnicodeScript script = Character.UnicodeScript.of(before);
        boolean picture = type == Character.OTHER_SYMBOL || type == Character.MODIFIER_SYMBOL || before == 0xFE0F;
        return picture
                || script != Character.UnicodeScript.LATIN
                        && script != Character.UnicodeScript.GREEK
                        && script != Character.UnicodeScript.CYRILLIC
                        && script != Character.UnicodeScript.COMMON
                        && script != Character.UnicodeScript.INHERITED
                        && script != Character.UnicodeScript.UNKNOWN;
    }

    private static String name(int each) {
        String name = Character.getName(each);
        return String.format(Locale.ROOT, "U+%04X", each)
                + (name == null ? "" : " (" + name.toLowerCase(Locale.ROOT) + ")");
    }
}
