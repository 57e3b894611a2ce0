package tallywell.assess;

import java.util.Locale;

/** What to do with a result, worst last. */
public enum Verdict {
    /** It can stand. */
    REPORT,
    /** A person should look before it stands. */
    CHECK,
    /** It cannot stand; do it again. */
    REPEAT;

    /** The word that stands in files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
