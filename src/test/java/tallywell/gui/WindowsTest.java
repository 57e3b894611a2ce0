package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JDialog;
import javax.swing.JOptionPane;
import javax.swing.JSpinner;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import tallywell.desk.LayoutDesk;
import tallywell.desk.PlateShow;
import tallywell.files.LayoutReader;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;

/** The main stories in real windows, with mouse and keys. */
@Tag("windows")
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+")
class WindowsTest extends WindowFixture {
    /** Fills in the dialog of {@link Reason} that is about to open, and agrees. */
    private void answerReason(String why) throws Exception {
        await("the dialog", () -> dialog() != null);
        on(() -> {
            JDialog dialog = dialog();
            ((JComboBox<?>) Windows.find(dialog, "reason")).getEditor().setItem(why);
            ((JTextField) Windows.find(dialog, "person")).setText("J. Vale");
            optionPane(dialog).setValue(JOptionPane.OK_OPTION);
            return "";
        });
    }

    @Test
    void theWorkedExampleIsOneClickAwayAndASelectionIsTheSameEverywhere() throws Exception {
        RunPage page = example();
        assertThat(on(() -> page.results().getRowCount())).isEqualTo(36);
        assertThat(on(page::sentence)).contains("passes its acceptance");
        click(at(page.plate(), "E6"));
        assertThat(on(() -> page.results().selected().orElseThrow().result().slot()))
                .hasValue(34);
        assertThat(on(() -> page.trace().traces().size())).isEqualTo(1);
        on(() -> {
            page.results().setRowSelectionInterval(4, 4);
            return "";
        });
        List<Well> wells = on(() -> page.results().selected().orElseThrow().wells());
        assertThat(on(() -> List.copyOf(page.desk().selection().wells()))).isEqualTo(wells);
        assertThat(on(() -> page.trace().traces().size())).isEqualTo(wells.size());
    }

    @Test
    void theKeyboardMovesOverThePlate() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "B2"));
        robot.keyPress(KeyEvent.VK_DOWN);
        robot.keyRelease(KeyEvent.VK_DOWN);
        robot.keyPress(KeyEvent.VK_SHIFT);
        robot.keyPress(KeyEvent.VK_RIGHT);
        robot.keyRelease(KeyEvent.VK_RIGHT);
        robot.keyRelease(KeyEvent.VK_SHIFT);
        robot.waitForIdle();
        assertThat(on(() -> page.desk().selection().words())).isEqualTo("C2, C3");
        assertThat(on(() -> page.plate().getAccessibleContext().getAccessibleDescription()))
                .startsWith("C3");
    }

    @Test
    void aLayoutIsDrawnFromNothingAndSaved() throws Exception {
        press("start.draw");
        await("the editor", () -> window.layoutPage().isPresent());
        LayoutPage page = window.layoutPage().orElseThrow();
        robot.waitForIdle();
        drag(at(page.plate(), "A1"), at(page.plate(), "H1"));
        press("role-BLANK");
        press("apply");
        drag(at(page.plate(), "A2"), at(page.plate(), "H3"));
        press("role-STANDARD");
        on(() -> {
            ((JTextField) Windows.find(window, "levels")).setText("0,05 0,1 0,2 0,4 0,5 0,6 0,8 1 g/L");
            return "";
        });
        placeReplicates(1);
        press("apply");
        drag(at(page.plate(), "A4"), at(page.plate(), "H12"));
        press("role-SAMPLE");
        placeReplicates(0);
        press("apply");
        Path file = home.resolve("drawn.yaml");
        on(() -> {
            page.desk().saved(page.desk().layout(), file);
            return "";
        });
        robot.keyPress(KeyEvent.VK_CONTROL);
        robot.keyPress(KeyEvent.VK_S);
        robot.keyRelease(KeyEvent.VK_S);
        robot.keyRelease(KeyEvent.VK_CONTROL);
        await("the file", () -> Files.exists(file) && !page.desk().history().isUnsaved());
        Layout layout = new LayoutReader().read(file);
        assertThat(layout.where(Content.Blank.class::isInstance)).hasSize(8);
        assertThat(layout.where(Content.Standard.class::isInstance)).hasSize(16);
        assertThat(layout.slots()).hasSize(36);
        assertThat(on(() -> page.desk().history().isUnsaved())).isFalse();
    }

    private void placeReplicates(int choice) throws Exception {
        on(() -> {
            Windows.all(window).stream()
                    .filter(each -> "replicates".equals(each.getName()) && each.isShowing())
                    .forEach(each -> ((JComboBox<?>) each).setSelectedIndex(choice));
            return "";
        });
    }

    @Test
    void exportsLayoutAndMethodDroppedGiveResults() throws Exception {
        press("start.exports");
        await("the run", () -> window.runPage().isPresent());
        RunPage page = window.runPage().orElseThrow();
        Path cider = Path.of("samples/cider-l-malic");
        on(() -> {
            page.take(List.of(cider.resolve("after.csv"), cider.resolve("before.csv")));
            return "";
        });
        await("the readings", () -> page.desk().draft().readings().size() == 2);
        assertThat(on(() -> page.said().words())).contains("before.csv; after it: after.csv");
        on(() -> {
            page.take(List.of(cider.resolve("method.yaml"), Path.of("plate-layouts/thirty-six-with-controls.yaml")));
            return "";
        });
        await("the results", () -> page.results().getRowCount() > 36);
        assertThat(on(page::sentence)).contains("acceptance");
    }

    @Test
    void excludingAsksForAReasonAndIsUndone() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "A2"));
        SwingUtilities.invokeLater(() -> press(page));
        answerReason("bubble");
        await(
                "the exclusion",
                () -> page.desk().draft().excluded().size() == 1 && !page.desk().isBusy());
        assertThat(on(() -> page.plate().faces().wells().get(new Well(0, 1)).excluded()))
                .isTrue();
        assertThat(on(() -> window.settings().person())).isEqualTo("J. Vale");
        robot.keyPress(KeyEvent.VK_CONTROL);
        robot.keyPress(KeyEvent.VK_Z);
        robot.keyRelease(KeyEvent.VK_Z);
        robot.keyRelease(KeyEvent.VK_CONTROL);
        await("the undo", () -> page.desk().draft().excluded().isEmpty());
    }

    private static void press(RunPage page) {
        Windows.all(page).stream()
                .filter(each -> each instanceof AbstractButton button
                        && Text.of("exclude").equals(button.getText()))
                .map(AbstractButton.class::cast)
                .findFirst()
                .orElseThrow()
                .doClick(0);
    }

    @Test
    void theFinishedPartIsDraggedAndKeptWithItsReason() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "D1"));
        robot.waitForIdle();
        double from = on(() -> page.trace().traces().get(0).finishedFromMin().orElseThrow());
        Point edge = on(() -> page.trace().onScreen(from));
        Point later = on(() -> page.trace().onScreen(12));
        drag(edge, later);
        answerReason("slow");
        await(
                "the choice",
                () -> page.desk().draft().finishedFrom().size() == 1
                        && !page.desk().isBusy());
        double timeS = on(() -> page.desk().draft().finishedFrom().get(0).timeS());
        assertThat(timeS).isBetween(690.0, 750.0);
        assertThat(on(() -> page.trace().traces().get(0).finishedFromMin().orElseThrow()))
                .isBetween(11.4, 12.6);
    }

    @Test
    void theFinishedPartIsMovedByKeysAndGivenUpOrKept() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "D1"));
        robot.waitForIdle();
        double from = on(() -> page.trace().traces().get(0).finishedFromMin().orElseThrow());
        Point middle = on(() -> page.trace().onScreen(from + 2));
        click(middle);
        type(KeyEvent.VK_RIGHT, 3);
        await("the words", () -> sideWordsNow().contains("Finished from"));
        type(KeyEvent.VK_ESCAPE, 1);
        await("the words", () -> !sideWordsNow().contains("Finished from"));
        type(KeyEvent.VK_RIGHT, 3);
        type(KeyEvent.VK_ENTER, 1);
        answerReason("slow");
        await(
                "the choice",
                () -> page.desk().draft().finishedFrom().size() == 1
                        && !page.desk().isBusy());
        // Readings every 15 s: three further on.
        assertThat(on(() -> page.desk().draft().finishedFrom().get(0).timeS())).isCloseTo(60 * from + 45, within(1.0));
    }

    private void type(int key, int times) {
        for (int i = 0; i < times; i++) {
            robot.keyPress(key);
            robot.keyRelease(key);
        }
        robot.waitForIdle();
    }

    private void hold(Point from, Point to) {
        robot.mouseMove(from.x, from.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        for (int i = 1; i <= 6; i++) {
            robot.mouseMove(from.x + (to.x - from.x) * i / 6, from.y + (to.y - from.y) * i / 6);
        }
        robot.waitForIdle();
    }

    private void letGo() {
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    private String sideWords() throws Exception {
        return on(() -> ((javax.swing.JTextArea) Windows.find(window, "side-words")).getText());
    }

    @Test
    void theResultFollowsWhileTheFinishedPartIsDragged() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "D1"));
        double from = on(() -> page.trace().traces().get(0).finishedFromMin().orElseThrow());
        Point edge = on(() -> page.trace().onScreen(from));
        Point early = on(() -> page.trace().onScreen(2));
        String before = sideWords();
        hold(edge, early);
        await(
                "the live result",
                () -> sideWordsNow().startsWith("D1: ΔA") && !sideWordsNow().startsWith(before.substring(0, 14)));
        assertThat(sideWords()).contains(Text.of("trace.dragging", "2,0"));
        assertThat(on(() -> page.desk().history().undoable())).isEmpty();
        letGo();
        answerReason("slow");
        await(
                "the choice",
                () -> page.desk().isFinishedByHand(List.of(new Well(3, 0)))
                        && !page.desk().isBusy());
        press("finish-by-rule");
        await(
                "the rule",
                () -> page.desk().draft().finishedFrom().isEmpty()
                        && !page.desk().isBusy());
        assertThat(sideWords()).startsWith(before.substring(0, 14));
    }

    private String sideWordsNow() {
        return ((javax.swing.JTextArea) Windows.find(window, "side-words")).getText();
    }

    @Test
    void theTriggerIsDraggedForAllWellsSaidAndMovedBack() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "D1"));
        Point trigger = on(() -> page.trace().onScreen(0));
        Point later = on(() -> page.trace().onScreen(1));
        hold(trigger, later);
        await("the live words", () -> sideWordsNow().contains("s of the file"));
        letGo();
        await(
                "the trigger",
                () -> page.desk().draft().readings().get(0).triggerAtS().get(0) > 270
                        && !page.desk().isBusy());
        assertThat(on(() -> page.desk().draft().readings().get(0).triggerAtS().get(0)))
                .isBetween(280.0, 290.0);
        assertThat(on(() -> page.said().words())).contains("The trigger of all wells was moved from 225 s to");
        press("offer");
        await(
                "the trigger as it was",
                () -> page.desk().draft().readings().get(0).triggerAtS().get(0) == 225
                        && !page.desk().isBusy());
    }

    @Test
    void theExportIsWrittenBesideTheRunAndALockedWorkbookUnderAnotherName() throws Exception {
        RunPage page = example();
        Path run = on(() -> page.desk().draft().file().orElseThrow());
        press("export");
        await("the summary", () -> page.said().words().contains("run.xlsx"));
        assertThat(run.resolveSibling("tables/wells.csv")).isRegularFile();
        try (var charts = Files.list(run.resolveSibling("charts"))) {
            assertThat(charts.count()).isGreaterThan(2);
        }
        Files.delete(run.resolveSibling("run.xlsx"));
        on(() -> {
            page.said().clear();
            return "";
        });
        // A folder with something in it where the workbook goes can be replaced no more than a workbook that is open.
        Files.createDirectories(run.resolveSibling("run.xlsx").resolve("open"));
        press("export");
        await("the words", () -> page.said().words().contains("run.xlsx"));
        assertThat(on(() -> Windows.all(window).stream()
                        .filter(each -> "offer".equals(each.getName()))
                        .map(each -> ((AbstractButton) each).getText())
                        .toList()))
                .containsExactly(Text.of("again"), Text.of("export.other"));
        on(() -> {
            Windows.all(window).stream()
                    .filter(each -> "offer".equals(each.getName()))
                    .map(AbstractButton.class::cast)
                    .skip(1)
                    .findFirst()
                    .orElseThrow()
                    .doClick(0);
            return "";
        });
        await("the summary", () -> page.said().words().contains("run-2.xlsx"));
        assertThat(run.resolveSibling("run-2.xlsx")).isRegularFile();
        assertThat(run.resolveSibling("tables-2/results.csv")).isRegularFile();
    }

    @Test
    void anExportIsCalledOlderOnceSomethingHasChanged() throws Exception {
        RunPage page = example();
        press("export");
        await("the summary", () -> page.said().words().contains("run.xlsx"));
        assertThat(on(() -> page.said().words())).contains("run.pdf").contains("2 tables");
        on(() -> {
            page.desk().selection().only(List.of(new Well(0, 1)));
            page.desk().exclude("bubble", "J. Vale");
            return "";
        });
        await("the words", () -> page.said().words().equals(Text.of("export.older", "run.xlsx")));
        press("offer");
        await("the summary", () -> page.said().words().contains("run.pdf"));
    }

    @Test
    void aRunOpenedAgainUnchangedHasItsUndoHistoryStill() throws Exception {
        RunPage page = example();
        Path run = on(() -> page.desk().draft().file().orElseThrow());
        on(() -> {
            page.desk().selection().only(List.of(new Well(0, 1)));
            page.desk().exclude("bubble", "J. Vale");
            return "";
        });
        press("save");
        await(
                "the saving",
                () -> !page.desk().history().isUnsaved() && !page.desk().isBusy());
        on(() -> {
            window.start();
            return "";
        });
        await("the start page", () -> window.runPage().isEmpty());
        on(() -> {
            window.openRun(run);
            return "";
        });
        await("the run", () -> window.runPage().isPresent());
        RunPage again = on(() -> window.runPage().orElseThrow());
        assertThat(on(() -> again.desk().history().undoable())).isPresent();
        on(() -> {
            again.desk().history().undo();
            return "";
        });
        assertThat(on(() -> again.desk().draft().excluded())).isEmpty();
    }

    @Test
    void theResultsCanBeCutDownToWhatNeedsAttentionAndNoCellIsCut() throws Exception {
        RunPage page = example();
        press("attention");
        assertThat(on(() -> page.results().getRowCount())).isEqualTo(1);
        // A well of another sample is not in the table now, and selecting it must not fail.
        click(at(page.plate(), "E6"));
        assertThat(on(() -> page.results().selected())).isEmpty();
        press("attention");
        assertThat(on(() -> page.results().getRowCount())).isEqualTo(36);
        for (int size : new int[] {13, 18, 22}) {
            EventQueue.invokeAndWait(() -> Theme.install(false, size));
            robot.waitForIdle();
            List<String> cut = on(() -> cut(page.results()));
            assertThat(cut).as("text size " + size).isEmpty();
        }
    }

    @Test
    void whatIsToBeRepeatedBecomesTheNextRun() throws Exception {
        RunPage page = example();
        press("repeats");
        await(
                "the next run",
                () -> window.runPage().filter(next -> next != page).isPresent());
        RunPage next = window.runPage().orElseThrow();
        assertThat(on(() -> next.desk().draft().title())).endsWith(", repeats");
        assertThat(on(() -> next.desk().draft().sampleList().bySlot().values()))
                .singleElement()
                .satisfies(sample -> {
                    assertThat(sample.name()).isEqualTo("Lees 12");
                    assertThat(sample.dilution().factor()).isEqualTo(20);
                });
        assertThat(on(() -> next.said().words())).isEqualTo(Text.of("repeats.about"));
        assertThat(on(() -> Windows.find(window, "repeats").isVisible())).isFalse();
    }

    /** How many lines the signs take depends on the width, which another text size changes, too. */
    @Test
    void noLineOfTheLegendIsCutWhenTextOrWindowChanges() throws Exception {
        RunPage page = example();
        Legend legend = (Legend) on(() -> Windows.all(page).stream()
                .filter(each -> each instanceof Legend)
                .findFirst()
                .orElseThrow());
        for (int size : new int[] {13, 18, 22}) {
            EventQueue.invokeAndWait(() -> Theme.install(false, size));
            for (int width = 1366; width > 900; width -= 31) {
                Dimension narrower = new Dimension(width, 768);
                EventQueue.invokeAndWait(() -> window.setSize(narrower));
                robot.waitForIdle();
                assertThat(on(legend::getHeight))
                        .as("at text size " + size + " in a window of " + width)
                        .isEqualTo(on(legend::getPreferredSize).height);
            }
        }
    }

    /** The cells of a table whose text is wider than they are. */
    private static List<String> cut(javax.swing.JTable table) {
        List<String> cut = new java.util.ArrayList<>();
        for (int row = 0; row < table.getRowCount(); row++) {
            for (int column = 0; column < table.getColumnCount(); column++) {
                java.awt.Component cell = table.prepareRenderer(table.getCellRenderer(row, column), row, column);
                Rectangle room = table.getCellRect(row, column, true);
                if (cell instanceof javax.swing.JLabel label && label.getPreferredSize().width > room.width) {
                    cut.add(row + "/" + column + " " + label.getText() + ": " + label.getPreferredSize().width + " in "
                            + room.width + ", at least "
                            + table.getColumnModel().getColumn(column).getMinWidth());
                }
            }
        }
        return cut;
    }

    @Test
    void anExclusionWithoutAReasonIsAskedForOneAndTypingAlwaysGoesIntoIt() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "A2"));
        SwingUtilities.invokeLater(() -> press(page));
        await("the focus", () -> dialog() != null && reasonEditor().isFocusOwner());
        keys(KeyEvent.VK_SPACE);
        assertThat(on(() -> reasonEditor().getText())).isEqualTo(" ");
        on(() -> {
            optionPane(dialog()).setValue(JOptionPane.OK_OPTION);
            return "";
        });
        await("the words", () -> dialog() != null && missing(dialog()).equals(Text.of("reason.missing")));
        await("the focus", () -> reasonEditor().isFocusOwner());
        keys(KeyEvent.VK_F, KeyEvent.VK_O, KeyEvent.VK_A, KeyEvent.VK_M);
        on(() -> {
            optionPane(dialog()).setValue(JOptionPane.OK_OPTION);
            return "";
        });
        await("the exclusion", () -> page.desk().draft().excluded().size() == 1);
        assertThat(on(() -> page.desk().draft().excluded().get(new Well(0, 1)).reason()))
                .isEqualTo("foam");
    }

    private static JTextField reasonEditor() {
        return (JTextField)
                ((JComboBox<?>) Windows.find(dialog(), "reason")).getEditor().getEditorComponent();
    }

    private static String missing(JDialog dialog) {
        return ((javax.swing.JLabel) Windows.find(dialog, "reason-missing")).getText();
    }

    private static JOptionPane optionPane(JDialog dialog) {
        return (JOptionPane) Windows.all(dialog).stream()
                .filter(JOptionPane.class::isInstance)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aTurnedPlateIsSaidAndCuredWithOneClick() throws Exception {
        RunPage page = example();
        on(() -> {
            Layout layout = page.desk().draft().layout().orElseThrow().value();
            Layout turned = new Layout(
                    "Upside",
                    tallywell.plate.WellMap.of(
                            layout.format(), well -> layout.at(new Well(7 - well.row(), 11 - well.column()))));
            page.desk()
                    .history()
                    .edit(page.desk().draft().withLayout(tallywell.desk.Origin.unsaved("Upside", turned)), "turn");
            return "";
        });
        await("the doubt", () -> page.said().words().contains("turned by 180°"));
        press("offer");
        await(
                "the cure",
                () -> page.desk().doubts().isEmpty()
                        && page.desk().worked().assessment().isPresent());
        assertThat(on(() -> page.desk().draft().layout().orElseThrow().value().name()))
                .isEqualTo("Upside, turned by 180 degrees");
        assertThat(on(() -> page.said().words())).isEmpty();
    }

    @Test
    void thePlanIsShownAndItsSheetWrittenBesideTheRun() throws Exception {
        RunPage page = example();
        Path run = on(() -> page.desk().draft().file().orElseThrow());
        press("plan");
        await("the plan", () -> planWindow() != null);
        on(() -> {
            ((AbstractButton) Windows.find(planWindow(), "plan-write")).doClick(0);
            return "";
        });
        await("the sheet", () -> Files.exists(run.resolveSibling("run-bench.xlsx")));
        assertThat(run.resolveSibling("run-plan.yaml")).isRegularFile();
    }

    private static JDialog planWindow() {
        for (java.awt.Window each : java.awt.Window.getWindows()) {
            if (each instanceof JDialog dialog && dialog.isShowing() && dialog.getContentPane() instanceof PlanDialog) {
                return dialog;
            }
        }
        return null;
    }

    @Test
    void aKilledProgramOffersTheUnsavedWork() throws Exception {
        RunPage page = example();
        on(() -> {
            page.desk().selection().only(List.of(new Well(6, 4)));
            page.desk().exclude("bubble", "J. Vale");
            return "";
        });
        await(
                "the keeping",
                () -> Files.exists(home.resolve("unsaved/run.properties"))
                        && !page.desk().isBusy());
        EventQueue.invokeAndWait(window::dispose);
        assertThat(window.rest()).isTrue();
        window = start();
        await(
                "the offer",
                () -> Windows.all(window).stream()
                        .anyMatch(each -> each instanceof AbstractButton button
                                && button.isShowing()
                                && Text.of("kept.open").equals(button.getText())));
        on(() -> {
            Windows.all(window).stream()
                    .filter(each -> each instanceof AbstractButton button
                            && Text.of("kept.open").equals(button.getText()))
                    .map(AbstractButton.class::cast)
                    .forEach(button -> button.doClick(0));
            return "";
        });
        await(
                "the run",
                () -> window.runPage()
                        .map(again -> again.desk().draft().excluded().containsKey(new Well(6, 4))
                                && again.desk().worked().analysis().isPresent())
                        .orElse(false));
    }

    /** Depends on the speed of the machine, so that it is run by hand and not with the others. */
    @Test
    @Tag("timed")
    void theEventThreadIsNeverHeldUp() throws Exception {
        RunPage page = example();
        Stalls stalls = new Stalls();
        for (int round = 0; round < 2; round++) {
            for (PlateShow show : PlateShow.values()) {
                stalls.during(() -> press("show-" + show));
            }
            int column = round + 2;
            stalls.during(() -> on(() -> {
                page.desk().selection().columns(column, column, false);
                page.desk().exclude("bubble", "J. Vale");
                return "";
            }));
            await("the results", () -> !page.desk().isBusy());
            // The first round warms the program up, as an analyst's first look does.
            if (round == 0) {
                stalls.forget();
            }
        }
        assertThat(stalls.longestMs()).as(stalls.toString()).isLessThan(Stalls.ALLOWED_MS);
    }

    @Test
    void everyPlateOpensInTheEditor() throws Exception {
        for (tallywell.plate.PlateFormat format : tallywell.plate.PlateFormat.KNOWN) {
            on(() -> {
                window.openLayout(
                        new LayoutDesk(tallywell.desk.LayoutEdits.empty("x", format), java.util.Optional.empty()));
                return "";
            });
            robot.waitForIdle();
            LayoutPage page = window.layoutPage().orElseThrow();
            click(at(page.plate(), format.last().toString()));
            assertThat(on(() -> page.desk().selection().wells())).containsExactly(format.last());
        }
    }

    @Test
    void fieldsHaveNamesForScreenReaders() throws Exception {
        press("start.draw");
        await("the editor", () -> window.layoutPage().isPresent());
        List<String> nameless = on(() -> Windows.all(window).stream()
                .filter(each -> each instanceof JTextField || each instanceof JComboBox<?> || each instanceof JSpinner)
                .filter(each -> !(each.getParent() instanceof JSpinner.DefaultEditor))
                .filter(each -> SwingUtilities.getAncestorOfClass(JComboBox.class, each) == null)
                .filter(each -> each.getAccessibleContext().getAccessibleName() == null)
                .map(Object::toString)
                .toList());
        assertThat(nameless).isEmpty();
    }
}
