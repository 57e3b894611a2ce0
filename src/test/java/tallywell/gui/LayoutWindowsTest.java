package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import com.formdev.flatlaf.FlatLaf;
import java.awt.Component;
import java.awt.Container;
import java.awt.EventQueue;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.swing.AbstractButton;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import javax.swing.JSpinner;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.Origin;
import tallywell.desk.Replicates;
import tallywell.desk.RunDraft;
import tallywell.desk.SampleRows;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.desk.WellFace;
import tallywell.files.LayoutReader;
import tallywell.method.SampleList;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.Wells;

/** Layouts, sample tables and looks in real windows. */
@Tag("windows")
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+")
class LayoutWindowsTest extends WindowFixture {
    private static final int DILUTION = SampleRows.COLUMNS.indexOf("dilution");

    private LayoutPage draw() throws Exception {
        press("start.draw");
        await("the editor", () -> window.layoutPage().isPresent());
        LayoutPage page = window.layoutPage().orElseThrow();
        await("the focus", () -> page.plate().isFocusOwner());
        return page;
    }

    private static void answer(Object value) throws Exception {
        await("the dialog", () -> dialog() != null);
        on(() -> {
            pane(dialog()).setValue(value);
            return "";
        });
    }

    private static JOptionPane pane(Component dialog) {
        return Windows.all((Container) dialog).stream()
                .filter(JOptionPane.class::isInstance)
                .map(JOptionPane.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private SampleDialog table(int samples) throws Exception {
        return on(() -> {
            List<List<String>> rows = SampleRows.of(
                    IntStream.rangeClosed(1, samples).boxed().toList(), SampleList.of(List.of()), Shown.POINT);
            SampleDialog panel = new SampleDialog(rows, Shown.POINT);
            JFrame frame = new JFrame("samples");
            frame.setContentPane(panel);
            frame.setBounds(0, 0, 1180, 560);
            frame.setVisible(true);
            frame.toFront();
            panel.grid().requestFocusInWindow();
            return panel;
        });
    }

    private static String cell(SampleDialog table, int row, int column) throws Exception {
        return on(() -> table.grid().cells().rows().get(row).get(column));
    }

    private void select(SampleDialog table, int row, int column) throws Exception {
        on(() -> {
            table.grid().changeSelection(row, column, false, false);
            return "";
        });
    }

    @Test
    void typingInTheSampleTableReplacesEnterGoesDownAndTabRight() throws Exception {
        SampleDialog table = table(4);
        select(table, 0, DILUTION);
        await("the focus", () -> table.grid().isFocusOwner());
        keys(KeyEvent.VK_1, KeyEvent.VK_0, KeyEvent.VK_ENTER, KeyEvent.VK_5, KeyEvent.VK_TAB, KeyEvent.VK_2);
        keys(KeyEvent.VK_0, KeyEvent.VK_ENTER);
        assertThat(cell(table, 0, DILUTION)).isEqualTo("10");
        assertThat(cell(table, 1, DILUTION)).isEqualTo("5");
        assertThat(cell(table, 1, DILUTION + 1)).isEqualTo("20");
        select(table, 0, DILUTION);
        keys(KeyEvent.VK_F2);
        await("the editor", () -> table.grid().isEditing());
        // F2, as a double click, goes on with what is there; Enter goes down from it too, and typing there begins anew.
        keys(KeyEvent.VK_END, KeyEvent.VK_0, KeyEvent.VK_ENTER, KeyEvent.VK_7, KeyEvent.VK_BACK_SPACE, KeyEvent.VK_8);
        keys(KeyEvent.VK_ENTER);
        assertThat(cell(table, 0, DILUTION)).isEqualTo("100");
        assertThat(cell(table, 1, DILUTION)).isEqualTo("8");
        select(table, 0, DILUTION);
        with(KeyEvent.VK_SHIFT, KeyEvent.VK_DOWN, KeyEvent.VK_DOWN, KeyEvent.VK_DOWN);
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_D);
        assertThat(cell(table, 3, DILUTION)).isEqualTo("100");
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(cell(table, 3, DILUTION)).isEmpty();
        on(() -> {
            table.dilution("1+9", false);
            return "";
        });
        assertThat(cell(table, 0, DILUTION)).isEqualTo("1+9");
        assertThat(cell(table, 2, DILUTION)).isEmpty();
    }

    @Test
    void aPlateIsDrawnWithTheKeyboardAlone() throws Exception {
        LayoutPage page = draw();
        keys(KeyEvent.VK_C, KeyEvent.VK_B);
        keys(KeyEvent.VK_HOME, KeyEvent.VK_RIGHT);
        with(KeyEvent.VK_SHIFT, KeyEvent.VK_RIGHT, KeyEvent.VK_PAGE_DOWN, KeyEvent.VK_D);
        assertThat(on(() -> page.desk().selection().wells())).hasSize(16);
        robot.keyPress(KeyEvent.VK_CONTROL);
        robot.keyPress(KeyEvent.VK_L);
        robot.keyRelease(KeyEvent.VK_L);
        robot.keyRelease(KeyEvent.VK_CONTROL);
        answer(JOptionPane.OK_OPTION);
        await("the standards", () -> levels(page) == 8);
        on(() -> page.plate().requestFocusInWindow());
        await("the focus", () -> page.plate().isFocusOwner());
        keys(KeyEvent.VK_PAGE_UP, KeyEvent.VK_RIGHT);
        with(KeyEvent.VK_SHIFT, KeyEvent.VK_END, KeyEvent.VK_PAGE_DOWN, KeyEvent.VK_S);
        keys(KeyEvent.VK_ENTER);
        assertThat(on(() -> page.desk().layout().slots())).hasSize(36);
        assertThat(on(() -> page.desk().layout().where(Content.Blank.class::isInstance)))
                .hasSize(8);
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_UP);
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_SPACE);
        assertThat(on(() -> page.desk().selection().wells())).hasSize(71);
        keys(KeyEvent.VK_F6);
        await("the details", () -> !page.plate().isFocusOwner());
        keys(KeyEvent.VK_F6);
        await("the plate", () -> page.plate().isFocusOwner());
        keys(KeyEvent.VK_F2, KeyEvent.VK_M, KeyEvent.VK_U, KeyEvent.VK_S, KeyEvent.VK_T, KeyEvent.VK_ENTER);
        await("the title", () -> page.desk().layout().name().equals("must"));
    }

    private static long levels(LayoutPage page) {
        return page.desk().layout().where(Content.Standard.class::isInstance).stream()
                .map(well -> page.desk().layout().at(well).word())
                .distinct()
                .count();
    }

    @Test
    void aSeriesProposesAsManyLevelsAsTheWellsHoldAndShowsWhichGoesWhere() throws Exception {
        Layout empty = LayoutEdits.empty("x", PlateFormat.P96);
        List<Well> eight = Wells.rectangle(new Well(0, 1), new Well(3, 2));
        FillingFields filling = on(() -> FillingFields.of(Replicates.BESIDE, place -> {}));
        SeriesDialog dialog = on(() -> new SeriesDialog(empty, eight, "", filling, Shown.POINT));
        JSpinner count = (JSpinner) Windows.find(dialog, "series-count");
        JTextArea words = (JTextArea) Windows.find(dialog, "series-words");
        assertThat(on(count::getValue)).isEqualTo(4);
        assertThat(on(() -> words.getText())).startsWith("0.1 g/L: A2, A3 · 0.2 g/L: B2, B3");
        assertThat(on(() -> dialog.line())).isEqualTo("0.1  0.2  0.3  0.4 g/L");
        JComboBox<?> places = (JComboBox<?>) Windows.find(dialog, "replicates");
        on(() -> {
            count.setValue(6);
            places.setSelectedIndex(0);
            return "";
        });
        assertThat(on(count::getValue)).isEqualTo(6);
        assertThat(on(() -> words.getText())).contains("A2, B2").contains(Text.of("series.homeless", 2));
    }

    @Test
    void howReplicatesArePlacedIsChosenOnceForAllRolesAndTheNextPlate() throws Exception {
        LayoutPage page = draw();
        on(() -> {
            page.roles().choose(WellFace.Shape.STANDARD);
            replicates(page).setSelectedIndex(1);
            page.roles().choose(WellFace.Shape.SAMPLE);
            return "";
        });
        assertThat(on(() -> replicates(page).getSelectedIndex())).isEqualTo(1);
        on(() -> {
            window.showStart();
            return "";
        });
        LayoutPage next = draw();
        assertThat(on(() -> replicates(next).getSelectedIndex())).isEqualTo(1);
    }

    private static JComboBox<?> replicates(LayoutPage page) {
        return Windows.all(page.roles()).stream()
                .filter(each ->
                        "replicates".equals(each.getName()) && each.getParent().isVisible())
                .map(each -> (JComboBox<?>) each)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aPlateThatWasDrawnGoesOnToARunUnsaved() throws Exception {
        LayoutPage page = draw();
        keys(KeyEvent.VK_SPACE, KeyEvent.VK_S);
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_A);
        keys(KeyEvent.VK_S);
        pressLater(window, "use");
        answer(Text.of("layout.use.so"));
        await("the run", () -> window.runPage().isPresent());
        RunDraft draft = on(() -> window.runPage().orElseThrow().desk().draft());
        assertThat(draft.layout().orElseThrow().value().slots()).hasSize(48);
        assertThat(draft.layout().orElseThrow().value().name()).isEqualTo("48 samples in duplicate");
        assertThat(on(() -> window.runPage().orElseThrow().desk().history().isUnsaved()))
                .isTrue();
        assertThat(on(() -> page.desk().file())).isEmpty();
    }

    @Test
    void aSavedPlateIsTitledAfterItsFileAndGoesToTheRunThatWaitsForIt() throws Exception {
        on(() -> {
            window.openRun(RunDraft.EMPTY.withTitle("waiting"));
            window.openLayout(
                    new LayoutDesk(LayoutEdits.empty(Text.of("layout.new"), PlateFormat.P96), Optional.empty()));
            return "";
        });
        LayoutPage page = window.layoutPage().orElseThrow();
        await("the focus", () -> page.plate().isFocusOwner());
        keys(KeyEvent.VK_C, KeyEvent.VK_S);
        Path file = home.resolve("must_in-duplicate.yaml");
        on(() -> {
            page.desk().saved(page.desk().layout(), file);
            return "";
        });
        keys(KeyEvent.VK_RIGHT, KeyEvent.VK_B);
        pressLater(window, "use");
        answer(Text.of("layout.use.save"));
        await("the run", () -> window.runPage().isPresent());
        RunDraft draft = on(() -> window.runPage().orElseThrow().desk().draft());
        assertThat(draft.title()).isEqualTo("waiting");
        assertThat(draft.layout().flatMap(Origin::file)).hasValue(file);
        assertThat(Files.exists(file)).isTrue();
        assertThat(new LayoutReader().read(file).name()).isEqualTo("Must in duplicate");
    }

    @Test
    void whatIsNotSavedOfADrawingLeavesTheRunAsItWas() throws Exception {
        Layout before = LayoutEdits.paint(
                LayoutEdits.empty("x", PlateFormat.P96), List.of(new Well(0, 0)), LayoutEdits.blank());
        Path file = home.resolve("x.yaml");
        LayoutDesk.write(before, file);
        on(() -> {
            window.openRun(RunDraft.EMPTY.withLayout(LayoutDesk.open(file).drawn()));
            window.openLayout(LayoutDesk.open(file));
            window.layoutPage().orElseThrow().desk().edit(layout -> LayoutEdits.rename(layout, "y"), "rename");
            return "";
        });
        EventQueue.invokeLater(window::start);
        await("the dialog", () -> dialog() != null);
        assertThat(on(() -> pane(dialog()).getMessage()))
                .isEqualTo("The layout \"y\" has not been saved.\nThe last change: rename.");
        answer(Text.of("leave.drop"));
        await("the run", () -> window.runPage().isPresent());
        assertThat(on(() -> window.runPage()
                        .orElseThrow()
                        .desk()
                        .draft()
                        .layout()
                        .orElseThrow()
                        .value()))
                .isEqualTo(before);
    }

    @Test
    void theLookChosenWithTheKeyboardIsTheOneThatStays() throws Exception {
        JComboBox<?> look = (JComboBox<?>) on(() -> Windows.find(window, "look"));
        on(look::requestFocusInWindow);
        await("the focus", look::isFocusOwner);
        keys(KeyEvent.VK_DOWN, KeyEvent.VK_DOWN, KeyEvent.VK_ENTER);
        await("the dark look", FlatLaf::isLafDark);
        assertThat(on(look::getSelectedIndex)).isEqualTo(Settings.Look.DARK.ordinal());
        assertThat(window.settings().look()).isEqualTo(Settings.Look.DARK);
        // In the open list nothing changes before it is chosen.
        with(KeyEvent.VK_ALT, KeyEvent.VK_DOWN);
        await("the list", look::isPopupVisible);
        keys(KeyEvent.VK_UP);
        assertThat(window.settings().look()).isEqualTo(Settings.Look.DARK);
        keys(KeyEvent.VK_ENTER);
        await("the light look", () -> !FlatLaf.isLafDark());
        assertThat(window.settings().look()).isEqualTo(Settings.Look.LIGHT);
        assertThat(on(look::getSelectedIndex)).isEqualTo(Settings.Look.LIGHT.ordinal());
    }

    @Test
    void textGrowsAndShrinksFromTheLayoutAndTheRunPage() throws Exception {
        LayoutPage page = draw();
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_EQUALS);
        await("larger text", () -> page.getFont().getSize() == Theme.USUAL + 1);
        robot.keyPress(KeyEvent.VK_SHIFT);
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_EQUALS);
        robot.keyRelease(KeyEvent.VK_SHIFT);
        await("larger text", () -> page.getFont().getSize() == Theme.USUAL + 2);
        on(() -> {
            window.openRun(RunDraft.EMPTY);
            return "";
        });
        AbstractButton open = (AbstractButton) on(() -> Windows.find(window, "open-files"));
        on(open::requestFocusInWindow);
        await("the focus", open::isFocusOwner);
        with(KeyEvent.VK_CONTROL, KeyEvent.VK_0);
        await("usual text", () -> open.getFont().getSize() == Theme.USUAL);
    }

    @ParameterizedTest
    @ValueSource(ints = {13, 18})
    void noButtonOrFieldIsCutOnTheStartAndLayoutPages(int size) throws Exception {
        EventQueue.invokeAndWait(() -> Theme.install(false, size));
        on(() -> {
            window.showStart();
            return "";
        });
        robot.waitForIdle();
        assertThat(on(() -> cut(window))).isEmpty();
        LayoutPage page = draw();
        assertThat(on(() -> cut(window))).isEmpty();
        on(() -> {
            page.roles().choose(WellFace.Shape.STANDARD);
            return "";
        });
        robot.waitForIdle();
        assertThat(on(() -> cut(window))).isEmpty();
    }

    /** The words of buttons and choices that have less width than they ask for, or stand beyond the window. */
    private static List<String> cut(MainWindow window) {
        return Windows.all(window).stream()
                .filter(each -> each.isShowing()
                        && (each instanceof JButton
                                        && !((JButton) each).getText().isEmpty()
                                || each instanceof JComboBox<?>))
                .filter(each -> each.getWidth() < each.getPreferredSize().width
                        || each.getLocationOnScreen().x + each.getWidth() > window.getX() + window.getWidth())
                .map(each -> each instanceof JButton button ? button.getText() : each.toString())
                .toList();
    }

    @Test
    void aFieldOfTheTitleIsEmptyUntilThereIsATitle() throws Exception {
        LayoutPage page = draw();
        JTextField title = (JTextField) on(() -> Windows.find(page, "layout-title"));
        assertThat(on(() -> title.getText())).isEmpty();
        on(() -> {
            page.desk().edit(layout -> LayoutEdits.rename(layout, "Wines"), "");
            return "";
        });
        assertThat(on(() -> title.getText())).isEqualTo("Wines");
    }
}
