package tallywell.table;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DateUtil;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Which cells of a workbook show their number as a time of day, a duration or a date. Such a number counts days; here it
 * becomes text, {@code h:mm:ss}, with hours beyond 24 where needed, or {@code yyyy-mm-dd h:mm:ss}, rounded to a
 * millisecond.
 */
final class Clocks extends DefaultHandler {
    private static final double MS_PER_DAY = 86_400_000;
    private static final LocalDate EPOCH = LocalDate.of(1899, 12, 30);
    private static final LocalDate EPOCH_1904 = LocalDate.of(1904, 1, 1);
    /** A time of day or a duration of a measurement is less than a year. */
    private static final double DATED = 366;

    private final Map<Integer, String> formats = new HashMap<>();
    private final List<Integer> styles = new ArrayList<>();
    private final Set<String> hiddenSheets = new HashSet<>();
    private boolean inCellStyles;
    private boolean from1904;

    /** Takes up number formats and styles as the parts of the workbook declare them. */
    @Override
    public void startElement(String uri, String name, String qName, Attributes attributes) {
        switch (name) {
            case "sheet" -> {
                String state = attributes.getValue("state");
                String sheet = attributes.getValue("name");
                if (sheet != null && state != null && !state.equals("visible")) {
                    hiddenSheets.add(sheet);
                }
            }
            case "workbookPr" -> from1904 = isTrue(attributes.getValue("date1904"));
            case "numFmt" -> {
                String code = attributes.getValue("formatCode");
                formats.put(number(attributes.getValue("numFmtId")), code == null ? "" : code);
            }
            case "cellXfs" -> inCellStyles = true;
            case "xf" -> {
                if (inCellStyles) {
                    styles.add(number(attributes.getValue("numFmtId")));
                }
            }
            default -> {}
        }
    }

    @Override
    public void endElement(String uri, String name, String qName) {
        if (name.equals("cellXfs")) {
            inCellStyles = false;
        }
    }

    private static boolean isTrue(String text) {
        return "1".equals(text) || "true".equals(text);
    }

    private static int number(String text) {
        return text != null && text.matches("\\d{1,9}") ? Integer.parseInt(text) : 0;
    }

    /** The text of a number whose style shows it as time or date; empty if the style shows it as a number. */
    Optional<String> text(double days, int style) {
        if (style < 0 || style >= styles.size()) {
            return Optional.empty();
        }
        int id = styles.get(style);
        String builtin = BuiltinFormats.getBuiltinFormat(id);
        return text(days, id, formats.getOrDefault(id, builtin == null ? "" : builtin), from1904);
    }

    /** The names of sheets that the workbook hides. */
    Set<String> hiddenSheets() {
        return hiddenSheets;
    }

    static Optional<String> text(double days, int id, String format, boolean from1904) {
        if (isPercent(format)) {
            return Optional.of(SheetCells.plain(days * 100) + " %");
        }
        if (!(days >= 0 && days < 3e6) || !DateUtil.isADateFormat(id, format)) {
            return Optional.empty();
        }
        String plain = format.replaceAll("\"[^\"]*\"|\\\\.", "").toLowerCase(Locale.ROOT);
        boolean elapsed = plain.matches(".*\\[[hms]+].*");
        boolean dated = !elapsed && (plain.contains("y") || plain.contains("d") || days >= DATED);
        boolean minutes =
                !plain.contains("s") && !plain.contains("am/pm") && !plain.contains("a/p") && plain.contains("h");
        if (!dated && minutes && Math.round(days * MS_PER_DAY) % 60_000 == 0) {
            // Whoever types 0:30 for seconds gets minutes: what the cell shows leaves open which is meant.
            long all = Math.round(days * MS_PER_DAY) / 60_000;
            return Optional.of(String.format(Locale.ROOT, "%d:%02d", all / 60, all % 60));
        }
        if (!dated) {
            return Optional.of(clock(Math.round(days * MS_PER_DAY)));
        }
        long ms = Math.round(days * MS_PER_DAY);
        LocalDate date = (from1904 ? EPOCH_1904 : EPOCH).plusDays(ms / (long) MS_PER_DAY);
        long rest = ms % (long) MS_PER_DAY;
        return Optional.of(rest == 0 ? date.toString() : date + " " + clock(rest));
    }

    /** Whether a format shows a hundred times the number, which then is no reading. */
    private static boolean isPercent(String format) {
        return format.replaceAll("\"[^\"]*\"|\\\\.", "").contains("%");
    }

    private static String clock(long ms) {
        String text = String.format(Locale.ROOT, "%d:%02d:%02d", ms / 3_600_000, ms / 60_000 % 60, ms / 1000 % 60);
        return ms % 1000 == 0 ? text : text + String.format(Locale.ROOT, ".%03d", ms % 1000);
    }
}
