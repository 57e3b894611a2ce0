package tallywell.table;

/** Tells UTF-8 from other encodings of one byte a character, by the rules of RFC 3629. */
enum Utf8 {
    /** Seven bits only. */
    ASCII,
    /** Well-formed UTF-8 with characters beyond ASCII. */
    VALID,
    /** Not UTF-8. */
    INVALID;

    /** Checks all bytes. */
    static Utf8 check(byte[] bytes) {
        Utf8 found = ASCII;
        int i = 0;
        while (i < bytes.length) {
            int lead = bytes[i] & 0xFF;
            if (lead < 0x80) {
                i++;
                continue;
            }
            int more = lead >= 0xC2 && lead <= 0xDF
                    ? 1
                    : lead >= 0xE0 && lead <= 0xEF ? 2 : lead >= 0xF0 && lead <= 0xF4 ? 3 : 0;
            if (more == 0 || !continues(bytes, i, more) || !shortest(lead, bytes[i + 1] & 0xFF)) {
                return INVALID;
            }
            found = VALID;
            i += more + 1;
        }
        return found;
    }

    private static boolean continues(byte[] bytes, int at, int more) {
        for (int i = at + 1; i <= at + more; i++) {
            if (i >= bytes.length || (bytes[i] & 0xC0) != 0x80) {
                return false;
            }
        }
        return true;
    }

    /** Overlong forms, surrogates and values beyond U+10FFFF show in the second byte. */
    private static boolean shortest(int lead, int second) {
        return switch (lead) {
            case 0xE0 -> second >= 0xA0;
            case 0xED -> second <= 0x9F;
            case 0xF0 -> second >= 0x90;
            case 0xF4 -> second <= 0x8F;
            default -> true;
        };
    }
}
