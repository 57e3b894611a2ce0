package tallywell.quantity;

/**
 * Text in a cell of a CSV file that spreadsheet programs show as text, whatever it begins with: they take a cell that begins with
 * {@code = + - @}, a tab or a line end for a formula. An apostrophe in front stops that, as it does where a person types one.
 * A text that could be mistaken for one with an apostrophe gets one as well, so that every text comes back as it was.
 *
 * <p>Source: OWASP, "CSV Injection", for the characters; the apostrophe is common practice.
 */
public final class CellText {
    private static final String STARTS = "=+-@\t\r\n";

    private CellText() {}

    /** The text as a cell holds it. */
    public static String shown(String text) {
        return isTaken(text) ? "'" + text : text;
    }

    /** The text that a cell means. */
    public static String meant(String cell) {
        return cell.startsWith("'") && isTaken(cell.substring(1)) ? cell.substring(1) : cell;
    }

    /** Whether a formula would begin here, behind any apostrophes. */
    private static boolean isTaken(String text) {
        int at = 0;
        while (at < text.length() && text.charAt(at) == '\'') {
            at++;
        }
        return at < text.length() && STARTS.indexOf(text.charAt(at)) >= 0;
    }
}
