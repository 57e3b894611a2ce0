package tallywell.table;

import java.util.ArrayList;
import java.util.List;

/** Cuts one line into cells for a trial; a quoted cell ends with its line at the latest. */
final class SampleLine {
    private SampleLine() {}

    static List<String> cut(String line, Delimiter delimiter) {
        List<String> cells = new ArrayList<>();
        int at = 0;
        while (at <= line.length()) {
            int start = at;
            if (at < line.length() && line.charAt(at) == '"') {
                int close = line.indexOf('"', at + 1);
                at = close < 0 ? line.length() : close + 1;
            }
            while (at < line.length() && !isGap(line, at, delimiter)) {
                at++;
            }
            String cell = line.substring(start, at).strip();
            if (!(delimiter.isBlank() && cell.isEmpty())) {
                cells.add(unquoted(cell));
            }
            at++;
        }
        return cells;
    }

    private static boolean isGap(String line, int at, Delimiter delimiter) {
        char c = line.charAt(at);
        return switch (delimiter) {
            case BLANKS -> c == ' ';
            case WIDE_BLANKS -> c == ' ' && at + 1 < line.length() && line.charAt(at + 1) == ' ';
            default -> c == delimiter.character();
        };
    }

    private static String unquoted(String cell) {
        return cell.length() >= 2 && cell.startsWith("\"") && cell.endsWith("\"")
                ? cell.substring(1, cell.length() - 1).strip()
                : cell;
    }
}
