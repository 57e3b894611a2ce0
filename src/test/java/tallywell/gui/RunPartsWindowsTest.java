package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Font;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JDialog;
import javax.swing.JLabel;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import tallywell.desk.Faces;
import tallywell.desk.WellFace;
import tallywell.plate.PlateFormat;
import tallywell.plate.WellMap;

/** The parts of the page of a run: focus, checks, calibration, legend, excluded wells. */
@Tag("windows")
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+")
class RunPartsWindowsTest extends WindowFixture {
    @Test
    void f6GoesFromPlateToTraceToResultsAndBack() throws Exception {
        RunPage page = example();
        click(at(page.plate(), "A2"));
        await("the plate", () -> page.plate().isFocusOwner());
        keys(KeyEvent.VK_F6);
        await("the trace", () -> focusIsIn(page.trace()));
        keys(KeyEvent.VK_F6);
        await("the results", () -> page.results().isFocusOwner());
        keys(KeyEvent.VK_F6);
        await("the plate", () -> page.plate().isFocusOwner());
        // Without a trace there is nothing to do in its place.
        keys(KeyEvent.VK_ESCAPE, KeyEvent.VK_F6);
        await("the results", () -> page.results().isFocusOwner());
    }

    private static boolean focusIsIn(Component part) {
        Component owner = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
        return owner != null && SwingUtilities.isDescendingFrom(owner, part);
    }

    @Test
    void theChecksSayWhatTellsThemApartAndCloseAtTheBottomRight() throws Exception {
        RunPage page = example();
        press("checks");
        await("the checks", () -> checksWindow() != null);
        JDialog dialog = on(RunPartsWindowsTest::checksWindow);
        List<String> texts = on(() -> Windows.all(dialog).stream()
                .map(each -> each instanceof JLabel label
                        ? label.getText()
                        : each instanceof JTextArea area ? area.getText() : "")
                .filter(Objects::nonNull)
                .toList());
        List<String> limits = texts.stream()
                .filter(each -> each.startsWith("limit of detection"))
                .toList();
        assertThat(limits).hasSizeGreaterThan(1).doesNotHaveDuplicates();
        int told = texts.indexOf("repeatability of ΔA");
        assertThat(texts.get(told + 3)).isEqualTo(Text.of("checks.for.information"));
        int untold = texts.indexOf("no sample in four wells or more; up to three the limits of the method decide");
        assertThat(texts.get(untold + 2)).isEqualTo("not assessed");
        Rectangle close = on(() -> {
            Component button = Windows.find(dialog, "checks-close");
            return SwingUtilities.convertRectangle(button.getParent(), button.getBounds(), dialog.getContentPane());
        });
        Rectangle room = on(() -> dialog.getContentPane().getBounds());
        assertThat(room.width - close.getMaxX()).isBetween(8.0, 24.0);
        assertThat(room.height - close.getMaxY()).isBetween(8.0, 24.0);
        assertThat(close.width).isLessThan(room.width / 4);
    }

    private static JDialog checksWindow() {
        for (java.awt.Window each : java.awt.Window.getWindows()) {
            if (each instanceof JDialog dialog
                    && dialog.isShowing()
                    && Text.of("checks.title").equals(dialog.getTitle())) {
                return dialog;
            }
        }
        return null;
    }

    @Test
    void aCurveIsPromisedUntilTheRunIsWorkedUpAndWhereThereWereNoCreepNoneIsShown() throws Exception {
        press("start.exports");
        await("the run", () -> window.runPage().isPresent());
        RunPage page = window.runPage().orElseThrow();
        press("side-calibration");
        assertThat(sideWords()).isEqualTo(Text.of("calibration.later"));
        Path cider = Path.of("samples/cider-l-malic");
        on(() -> {
            page.desk().drop(List.of(cider.resolve("method.yaml")), drop -> {});
            return "";
        });
        await("the method", () -> page.desk().draft().method().isPresent());
        assertThat(sideWords()).isEqualTo(Text.of("calibration.later"));
        on(() -> {
            page.take(List.of(
                    cider.resolve("after.csv"),
                    cider.resolve("before.csv"),
                    Path.of("plate-layouts/thirty-six-with-controls.yaml")));
            return "";
        });
        await("the results", () -> page.results().getRowCount() > 36);
        assertThat(sideWords()).startsWith("net ΔA = ");
        press("show-CREEP");
        assertThat(on(() -> Windows.all(page).stream()
                        .filter(Legend.class::isInstance)
                        .map(each -> each.getAccessibleContext().getAccessibleName())
                        .toList()))
                .containsExactly(Text.of("legend.none.CREEP"));
    }

    @Test
    void theStrokeOfAnExcludedWellLeavesItsValueAsItWas() {
        BufferedImage before = drawn(face(false));
        BufferedImage after = drawn(face(true));
        int ink = darkest(before);
        int kept = 0;
        for (int x = 0; x < before.getWidth(); x++) {
            for (int y = 0; y < before.getHeight(); y++) {
                if (before.getRGB(x, y) == ink) {
                    kept++;
                    assertThat(after.getRGB(x, y)).isEqualTo(ink);
                }
            }
        }
        assertThat(kept).isPositive();
        assertThat(darkest(after)).isEqualTo(ink);
        assertThat(java.util.Arrays.equals(pixels(before), pixels(after))).isFalse();
    }

    private static WellFace face(boolean excluded) {
        return new WellFace(
                WellFace.Shape.SAMPLE, "", "888", OptionalDouble.empty(), List.of(), excluded, Optional.empty(), "");
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    private static int darkest(BufferedImage image) {
        return java.util.Arrays.stream(pixels(image))
                .boxed()
                .min(java.util.Comparator.comparingInt(rgb -> (rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255)))
                .orElseThrow();
    }

    private static BufferedImage drawn(WellFace face) {
        BufferedImage image = new BufferedImage(80, 40, BufferedImage.TYPE_INT_RGB);
        var g = image.createGraphics();
        Faces faces = new Faces(WellMap.of(PlateFormat.P96, well -> face), 0, 0, "", "");
        new WellPainter(Palette.now(), faces, new Font(Font.SANS_SERIF, Font.PLAIN, 13))
                .paint(g, face, new Rectangle2D.Double(2, 2, 76, 36));
        g.dispose();
        return image;
    }

    private String sideWords() throws Exception {
        return on(() -> ((JTextArea) Windows.find(window, "side-words")).getText());
    }
}
