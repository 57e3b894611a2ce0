package tallywell.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/**
 * Text broken into lines as they are seen.
 *
 * @param lines from left to right as seen
 * @param meant what was meant, where letters were replaced or turned round
 */
record TextBlock(List<String> lines, Optional<String> meant) {
    TextBlock {
        lines = List.copyOf(lines);
    }

    /**
     * Breaks a text.
     *
     * @param most lines; the last of them is cut where there would be more
     */
    static TextBlock of(Letters letters, String text, Face face, double size, double width, int most)
            throws IOException {
        String clean = letters.clean(text, face);
        List<String> lines = new ArrayList<>(letters.lines(clean, face, size, width));
        if (lines.size() > most) {
            String last = lines.get(most - 1);
            lines = new ArrayList<>(lines.subList(0, most));
            lines.set(most - 1, letters.cut(last + "……", face, size, width).replaceFirst("…+$", "…"));
        }
        boolean isOther = clean.indexOf(Letters.REPLACEMENT) >= 0 || clean.length() != text.length();
        for (int i = 0; i < lines.size(); i++) {
            String seen = Direction.seen(lines.get(i));
            isOther |= !seen.equals(lines.get(i));
            lines.set(i, seen);
        }
        return new TextBlock(lines, isOther ? Optional.of(text) : Optional.empty());
    }

    /** The element that the lines belong to: a part of the given one that says what was meant, where it must be said. */
    PDStructureElement holder(PDStructureElement element) {
        if (meant.isEmpty()) {
            return element;
        }
        PDStructureElement span = Tags.child(element, "Span");
        span.setActualText(meant.get());
        return span;
    }
}
