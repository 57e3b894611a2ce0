package tallywell.notice;

/**
 * One thing that the user should be told.
 *
 * @param severity how much it weighs
 * @param place where it points to
 * @param text found, then expected, then the remedy; a sentence without a full stop
 */
public record Notice(Severity severity, Place place, String text) {
    /** An error at a place. */
    public static Notice error(Place place, String text) {
        return new Notice(Severity.ERROR, place, text);
    }

    /** Something a person should look at. */
    public static Notice attention(Place place, String text) {
        return new Notice(Severity.ATTENTION, place, text);
    }

    /** Something good to know. */
    public static Notice information(Place place, String text) {
        return new Notice(Severity.INFORMATION, place, text);
    }

    /** The notice as one line: place, colon, text. */
    @Override
    public String toString() {
        return place.text().isEmpty() ? text : place.text() + ": " + text;
    }
}
