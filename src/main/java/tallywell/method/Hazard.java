package tallywell.method;

import java.util.Locale;

/**
 * What a substance on the bench does.
 *
 * @param substance its name
 * @param words what it does, in words
 * @param precaution what to do about it
 * @param source where that comes from
 */
public record Hazard(String substance, String words, String precaution, String source) {
    /** The hazard in one line. */
    public String text() {
        return substance.substring(0, 1).toUpperCase(Locale.ROOT) + substance.substring(1) + ": " + words + ". "
                + precaution;
    }
}
