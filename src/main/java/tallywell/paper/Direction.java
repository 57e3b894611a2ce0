package tallywell.paper;

import java.text.Bidi;
import java.util.ArrayList;
import java.util.List;

/**
 * The order in which a line is seen: parts that are written from right to left are turned round (Unicode Standard Annex
 * 9). Letters stand as they are in the face; Arabic ones are not joined.
 */
final class Direction {
    private static final String OPEN = "()[]{}<>«»‹›";

    private Direction() {}

    /** The letters of a line from left to right as seen. */
    static String seen(String line) {
        Bidi bidi = new Bidi(line, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
        if (bidi.isLeftToRight()) {
            return line;
        }
        int runs = bidi.getRunCount();
        byte[] levels = new byte[runs];
        Object[] parts = new Object[runs];
        for (int i = 0; i < runs; i++) {
            levels[i] = (byte) bidi.getRunLevel(i);
            String run = line.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
            parts[i] = levels[i] % 2 == 0 ? run : turned(run);
        }
        Bidi.reorderVisually(levels, 0, parts, 0, runs);
        StringBuilder seen = new StringBuilder(line.length());
        for (Object part : parts) {
            seen.append(part);
        }
        return seen.toString();
    }

    /** A letter stays before the marks that it carries. */
    private static String turned(String run) {
        List<String> clusters = new ArrayList<>();
        for (int i = 0; i < run.length(); i += Character.charCount(run.codePointAt(i))) {
            int letter = run.codePointAt(i);
            int type = Character.getType(letter);
            boolean isMark = type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK;
            if (isMark && !clusters.isEmpty()) {
                int last = clusters.size() - 1;
                clusters.set(last, clusters.get(last) + Character.toString(letter));
            } else {
                clusters.add(mirrored(letter));
            }
        }
        StringBuilder turned = new StringBuilder(run.length());
        for (int i = clusters.size() - 1; i >= 0; i--) {
            turned.append(clusters.get(i));
        }
        return turned.toString();
    }

    private static String mirrored(int letter) {
        int at = OPEN.indexOf(letter);
        return at < 0 ? Character.toString(letter) : OPEN.substring(at ^ 1, (at ^ 1) + 1);
    }
}
