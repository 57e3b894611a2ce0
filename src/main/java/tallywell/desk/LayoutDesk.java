package tallywell.desk;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import tallywell.files.LayoutReader;
import tallywell.files.LayoutWriter;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** A layout being drawn. For the event thread only. */
public final class LayoutDesk {
    private final History<Layout> history;
    private final Selection selection;
    private Optional<Path> file;

    /** Begins with a layout. */
    public LayoutDesk(Layout layout, Optional<Path> file) {
        history = new History<>(layout);
        selection = new Selection(layout.format());
        this.file = file;
        history.onChange(() -> selection.format(history.now().format()));
    }

    /** Opens a layout file. */
    public static LayoutDesk open(Path file) throws InputException {
        return new LayoutDesk(new LayoutReader().read(file), Optional.of(file));
    }

    /** The layout with undo and redo. */
    public History<Layout> history() {
        return history;
    }

    /** The selected wells. */
    public Selection selection() {
        return selection;
    }

    /** Where it was saved last. */
    public Optional<Path> file() {
        return file;
    }

    /** The layout as a run takes it: from its file, or as it stands where that is in no file. */
    public Origin<Layout> drawn() {
        return file.filter(path -> !history.isUnsaved())
                .map(path -> Origin.file(path, layout()))
                .orElseGet(() -> Origin.unsaved(layout().name(), layout()));
    }

    /** Gives a title to a layout that still has the one of every new layout; another stays. */
    public void title(String untouched, String title, String what) {
        if (layout().name().equals(untouched) && !title.isBlank()) {
            edit(layout -> LayoutEdits.rename(layout, title), what);
        }
    }

    /** The layout now. */
    public Layout layout() {
        return history.now();
    }

    /** Puts a content into the selected wells. */
    public void paint(Content content, String what) {
        edit(layout -> LayoutEdits.paint(layout, selection.wells(), content), what);
    }

    /** Changes the layout. */
    public void edit(UnaryOperator<Layout> edit, String what) {
        history.edit(edit.apply(layout()), what);
    }

    /** Takes another plate; wells that it does not have are lost, which undo brings back. */
    public void format(PlateFormat format, String what) {
        edit(
                layout -> new Layout(
                        layout.name(),
                        tallywell.plate.WellMap.of(
                                format, well -> layout.format().holds(well) ? layout.at(well) : new Content.Unused())),
                what);
    }

    /** The selected rectangle for a spreadsheet. */
    public String copy() {
        return LayoutEdits.copy(layout(), selection.wells());
    }

    /** Puts cells of a spreadsheet where the selection begins. */
    public void paste(String text, String what) throws InputException {
        Set<Well> wells = selection.wells();
        Well at = wells.isEmpty() ? selection.cursor() : topLeft(wells);
        history.edit(LayoutEdits.paste(layout(), at, text), what);
    }

    private static Well topLeft(Set<Well> wells) {
        return new Well(
                wells.stream().mapToInt(Well::row).min().orElse(0),
                wells.stream().mapToInt(Well::column).min().orElse(0));
    }

    /**
     * Writes a layout into a file; not for the event thread.
     *
     * @throws InputException if no reader would take it: a sample blank or spike whose sample is not on the plate
     * @throws OutputException if the file cannot be written
     */
    public static void write(Layout layout, Path target) throws InputException, OutputException {
        for (Finding finding : LayoutFindings.of(layout)) {
            if (finding.needsLook() && finding.title().startsWith("Belongs to")) {
                throw new InputException(Notice.error(
                        Place.well(finding.wells().get(0).toString()),
                        "found a sample blank or spike whose sample is not on the plate; put the sample on, or clear"
                                + " the well"));
            }
        }
        SafeFile.write(target, new LayoutWriter().text(layout));
    }

    /** Says that a layout is in a file now. */
    public void saved(Layout layout, Path target) {
        file = Optional.of(target);
        history.saved(layout, layout);
    }

    /** Writes the layout and says so; not for the event thread while a window shows it. */
    public void save(Path target) throws InputException, OutputException {
        write(layout(), target);
        saved(layout(), target);
    }
}
