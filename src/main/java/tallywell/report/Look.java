package tallywell.report;

/**
 * How a cell looks.
 *
 * @param face letters
 * @param fill ground
 * @param format number format; empty for none in particular
 * @param align where the content stands
 * @param edge border
 * @param wrap whether long text goes on in a further line
 * @param quoted whether the cell is marked as text that must never be read as a formula
 */
record Look(Face face, Fill fill, String format, Align align, Edge edge, boolean wrap, boolean quoted) {
    static final Look PLAIN = new Look(Face.BODY, Fill.NONE, "", Align.AUTO, Edge.NONE, false, false);

    Look face(Face other) {
        return new Look(other, fill, format, align, edge, wrap, quoted);
    }

    Look fill(Fill other) {
        return new Look(face, other, format, align, edge, wrap, quoted);
    }

    Look format(String other) {
        return new Look(face, fill, other, align, edge, wrap, quoted);
    }

    Look align(Align other) {
        return new Look(face, fill, format, other, edge, wrap, quoted);
    }

    Look edge(Edge other) {
        return new Look(face, fill, format, align, other, wrap, quoted);
    }

    Look wrapped() {
        return new Look(face, fill, format, align, edge, true, quoted);
    }

    Look asText() {
        return new Look(face, fill, format, align, edge, wrap, true);
    }

    /** Colours as RGB. */
    static final class Ink {
        static final String INK = "22303C";
        static final String SOFT = "5B6B78";
        static final String LINE = "D9D4CB";
        static final String BEET = "8C2F5B";
        static final String SPRUCE = "1F6F5C";
        static final String AMBER = "8A5A12";
        static final String WHITE = "FFFFFF";

        private Ink() {}
    }

    /** Letters: size in points, colour, weight. */
    enum Face {
        BODY(10, Ink.INK),
        BOLD(10, Ink.INK),
        SOFT(9, Ink.SOFT),
        SMALL(8, Ink.INK),
        LARGE(16, Ink.INK),
        INVERSE(8, Ink.WHITE),
        STRUCK(9, Ink.SOFT),
        TITLE(18, Ink.BEET),
        SECTION(12, Ink.BEET),
        COMPUTED(10, Ink.INK),
        LINK(10, Ink.BEET),
        GOOD(10, Ink.SPRUCE),
        ATTENTION(10, Ink.AMBER),
        BAD(10, Ink.BEET);

        final int points;
        final String colour;

        Face(int points, String colour) {
            this.points = points;
            this.colour = colour;
        }

        boolean bold() {
            return this == BOLD
                    || this == LARGE
                    || this == TITLE
                    || this == SECTION
                    || this == GOOD
                    || this == ATTENTION
                    || this == BAD;
        }

        boolean italic() {
            return this == COMPUTED;
        }
    }

    /** Grounds. */
    enum Fill {
        NONE(""),
        PAPER("FBF9F5"),
        HEAD("EFEAE0"),
        WORKING("E6E9EC"),
        INPUT("FDF3DA"),
        COMPUTED("EDE8F4"),
        GOOD("E2F0EB"),
        ATTENTION("FBEFD6"),
        BAD("F6E3EC"),
        SAMPLE("F7E9B9"),
        CONTROL("F3D9E5"),
        STANDARD("DCEBE6"),
        BLANK("FFFFFF"),
        SPIKE("E3DAF0"),
        VALUE_1("FBF3D0"),
        VALUE_2("D8DFC4"),
        VALUE_3("A9C4BE"),
        VALUE_4("739EB4"),
        VALUE_5("3F72A0"),
        VALUE_6("1D4477");

        final String colour;

        Fill(String colour) {
            this.colour = colour;
        }
    }

    /** Where the content of a cell stands. */
    enum Align {
        AUTO,
        LEFT,
        CENTRE,
        RIGHT,
        TOP,
        MIDDLE,
        INDENT
    }

    /** Borders. */
    enum Edge {
        NONE,
        UNDER,
        HEAD,
        BOX,
        DOUBLE,
        HEAVY,
        DASHED,
        DOTTED
    }
}
