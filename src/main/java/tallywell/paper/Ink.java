package tallywell.paper;

/** Colours of the printed form; each can be told from its neighbours in grey, too. */
enum Ink {
    TEXT(0x22303C),
    SOFT(0x4F5D69),
    LINE(0xB9B3A8),
    BEET(0x8C2F5B),
    SPRUCE(0x1F6F5C),
    AMBER(0x7A4E0C),
    WHITE(0xFFFFFF),
    HEAD(0xEFEAE0),
    GOOD(0xE2F0EB),
    ATTENTION(0xFBEFD6),
    BAD(0xF6E3EC),
    SAMPLE(0xFFFFFF),
    STANDARD(0xDDE6E2),
    CONTROL(0xC9BFC6);

    private static final float FULL = 255;

    private final int rgb;

    Ink(int rgb) {
        this.rgb = rgb;
    }

    float red() {
        return (rgb >> 16 & 0xFF) / FULL;
    }

    float green() {
        return (rgb >> 8 & 0xFF) / FULL;
    }

    float blue() {
        return (rgb & 0xFF) / FULL;
    }
}
