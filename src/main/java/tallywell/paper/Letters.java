package tallywell.paper;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The faces of one document, of which the letters used are embedded: widths, line breaks, and what has no letter. */
final class Letters {
    /** Stands for what the faces have no letter for. */
    static final int REPLACEMENT = 0xFFFD;

    private final Map<Face, PDType0Font> fonts = new EnumMap<>(Face.class);
    private final Map<Face, Widths> widths = new EnumMap<>(Face.class);

    Letters(PDDocument document) throws IOException {
        for (Face face : Face.values()) {
            TrueTypeFont font = read(face);
            // Ligatures would be letters that nothing could be copied from.
            font.setEnableGsub(false);
            fonts.put(face, PDType0Font.load(document, font, true));
            widths.put(face, new Widths(font));
        }
    }

    private static TrueTypeFont read(Face face) throws IOException {
        try (InputStream in = Letters.class.getResourceAsStream(face.resource())) {
            if (in == null) {
                throw new IllegalStateException("the program file is damaged: " + face.resource() + " is missing");
            }
            return new TTFParser().parse(new RandomAccessReadBuffer(in));
        }
    }

    /** Advance widths of one face, looked up once. */
    private static final class Widths {
        private final TrueTypeFont font;
        private final CmapLookup letters;
        private final double unitsPerEm;
        private final Map<Integer, Double> known = new HashMap<>();

        Widths(TrueTypeFont font) throws IOException {
            this.font = font;
            this.letters = font.getUnicodeCmapLookup();
            this.unitsPerEm = font.getUnitsPerEm();
        }

        boolean has(int letter) {
            return letters.getGlyphId(letter) > 0;
        }

        double of(int letter) throws IOException {
            Double width = known.get(letter);
            if (width == null) {
                width = font.getAdvanceWidth(letters.getGlyphId(letter)) / unitsPerEm;
                known.put(letter, width);
            }
            return width;
        }
    }

    PDFont font(Face face) {
        return Objects.requireNonNull(fonts.get(face), "every face is read");
    }

    private Widths of(Face face) {
        return Objects.requireNonNull(widths.get(face), "every face is read");
    }

    /** Whether a face can show a letter. */
    boolean has(int letter, Face face) {
        return of(face).has(letter);
    }

    /** Width in points of a text that {@link #clean} returned. */
    double width(String text, Face face, double size) throws IOException {
        Widths of = of(face);
        double width = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            width += of.of(text.codePointAt(i));
        }
        return width * size;
    }

    /**
     * A text of which every letter can be shown: white space becomes blanks, marks that only steer the writing go, and
     * whatever else has no letter is replaced, visibly.
     */
    String clean(String text, Face face) {
        StringBuilder clean = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int letter = text.codePointAt(i);
            if (Character.isWhitespace(letter) || Character.isSpaceChar(letter)) {
                clean.append(' ');
            } else if (!isSteering(letter)) {
                clean.appendCodePoint(isShown(letter) && has(letter, face) ? letter : REPLACEMENT);
            }
        }
        return clean.toString();
    }

    /** Formats, and the selectors of variants that follow a letter. */
    private static boolean isSteering(int letter) {
        return Character.getType(letter) == Character.FORMAT
                || letter >= 0xFE00 && letter <= 0xFE0F
                || letter >= 0xE0100 && letter <= 0xE01EF;
    }

    private static boolean isShown(int letter) {
        int type = Character.getType(letter);
        return type != Character.CONTROL
                && type != Character.UNASSIGNED
                && type != Character.SURROGATE
                && type != Character.PRIVATE_USE;
    }

    /** Lines no wider than some points, broken at blanks, or within a word that is too long for a line of its own. */
    List<String> lines(String clean, Face face, double size, double width) throws IOException {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : clean.split(" ", -1)) {
            String rest = word;
            String tried = line.length() == 0 ? rest : line + " " + rest;
            if (width(tried, face, size) <= width) {
                line.setLength(0);
                line.append(tried);
                continue;
            }
            if (line.length() > 0) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (width(rest, face, size) > width) {
                int end = fitting(rest, face, size, width);
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            line.append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    /** How many chars fit, at least one letter. */
    private int fitting(String word, Face face, double size, double width) throws IOException {
        int end = Character.charCount(word.codePointAt(0));
        while (end < word.length()) {
            int next = end + Character.charCount(word.codePointAt(end));
            if (width(word.substring(0, next), face, size) > width) {
                break;
            }
            end = next;
        }
        return end;
    }

    /** One line, cut with an ellipsis where it does not fit. */
    String cut(String clean, Face face, double size, double width) throws IOException {
        if (width(clean, face, size) <= width) {
            return clean;
        }
        return clean.substring(0, fitting(clean, face, size, width - width("…", face, size))) + "…";
    }
}
