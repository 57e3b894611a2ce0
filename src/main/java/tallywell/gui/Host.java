package tallywell.gui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutShelf;
import tallywell.desk.Origin;
import tallywell.desk.RunDraft;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.plate.Layout;

/** What pages ask of the window that they stand in. */
interface Host {
    /** Goes to the start page; asks first if something is unsaved. */
    void start();

    /** Opens a run in place of the present page. */
    void openRun(RunDraft draft);

    /** Opens a run in place of the present page, and says something of it. */
    void openRun(RunDraft draft, String hint);

    /** Opens a run file in place of the present page. */
    void openRun(Path file);

    /** Opens a layout in place of the present page. */
    void openLayout(LayoutDesk desk);

    /** Opens a layout file in place of the present page. */
    void openLayout(Path file);

    /** Goes on to the run that waits for a layout, else to a new one, with this layout in its place. */
    void useLayout(Origin<Layout> drawn);

    /** Asks for files to open. */
    List<Path> askOpen(String title);

    /** Asks for a place to save to; empty if given up. */
    Optional<Path> askSave(String title, Path suggested);

    /** Asks for a folder that is made, saying what goes into it; empty if given up. */
    Optional<Path> askFolder(String title, String about, Path suggested);

    /** A layout was saved. */
    void savedLayout(Path file);

    /** A run was saved. */
    void savedRun(Path file);

    /** Where work is done that would hold the window up, one piece after the other. */
    Executor back();

    /** What may take long: opening, saving, writing. */
    Jobs jobs();

    /** Where the window changes. */
    Executor front();

    /** The layouts at hand. */
    LayoutShelf shelf();

    /** How numbers are shown. */
    Shown shown();

    /** The folder of the program in the home of the user. */
    Path home();

    /** What the program remembers. */
    Settings settings();
}
