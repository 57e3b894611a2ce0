package tallywell.paper;

import java.util.Optional;

/**
 * A cell of a table.
 *
 * @param text what it says
 * @param face letters
 * @param ink colour of the letters
 * @param ground colour behind them
 */
record Cell(String text, Face face, Ink ink, Optional<Ink> ground) {
    static Cell of(String text) {
        return new Cell(text, Face.PLAIN, Ink.TEXT, Optional.empty());
    }

    static Cell bold(String text) {
        return new Cell(text, Face.BOLD, Ink.TEXT, Optional.empty());
    }

    static Cell on(Ink ground, Ink ink, String text) {
        return new Cell(text, Face.BOLD, ink, Optional.of(ground));
    }
}
