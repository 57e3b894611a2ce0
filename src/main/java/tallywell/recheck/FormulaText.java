package tallywell.recheck;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Brings formulas into one form, since each spreadsheet program writes them in its own: blanks, capital letters, quotes
 * round plain names of sheets, prefixes of newer functions and the digits of numbers are left to it. Texts inside a formula stay
 * as they are.
 */
final class FormulaText {
    private static final Pattern TEXT = Pattern.compile("\"(?:[^\"]|\"\")*\"");
    private static final Pattern QUOTED_SHEET = Pattern.compile("'([A-Za-z_][A-Za-z0-9_]*)'!");
    private static final Pattern PREFIX = Pattern.compile("_XLFN[.](?:_XLWS[.])?");
    private static final Pattern NUMBER =
            Pattern.compile("(?<![A-Z0-9_.$!])[0-9]+(?:[.][0-9]*)?(?:E[+-]?[0-9]+)?(?![A-Z0-9_(!:])");

    private FormulaText() {}

    /** A formula without its equals sign in the one form. */
    static String of(String formula) {
        StringBuilder form = new StringBuilder();
        Matcher texts = TEXT.matcher(formula);
        int at = 0;
        while (texts.find()) {
            form.append(code(formula.substring(at, texts.start()))).append(texts.group());
            at = texts.end();
        }
        return form.append(code(formula.substring(at))).toString();
    }

    private static String code(String code) {
        String plain =
                QUOTED_SHEET.matcher(code).replaceAll("$1!").replace(" ", "").toUpperCase(Locale.ROOT);
        plain = PREFIX.matcher(plain).replaceAll("");
        return NUMBER.matcher(plain).replaceAll(number -> Double.toString(Double.parseDouble(number.group())));
    }
}
