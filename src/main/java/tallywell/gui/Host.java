package tallywell.gui;

import java.nio.file.Path;
import java.util.Optional;

/** What pages ask of the window that they stand in. */
interface Host {
    /** Goes to the start page; asks first if something is unsaved. */
    void start();

    /** Asks for a place to save to; empty if given up. */
    Optional<Path> askSave(String title, Path suggested);

    /** A layout was saved. */
    void savedLayout(Path file);
}
