package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.desk.PlateShow;
import tallywell.desk.SampleRows;

/** Colours and words, without a screen. */
class LookTest {
    /** WCAG 2.2, 1.4.3: text at least 4.5 : 1. */
    private static final double READABLE = 4.5;

    static Stream<Palette> palettes() {
        return Stream.of(Palette.LIGHT, Palette.DARK);
    }

    @Test
    void contrastIsThatOfTheStandard() {
        // WCAG 2.2: black on white is 21 : 1; #767676 on white is the known limit of 4.54 : 1.
        assertThat(ValueScale.contrast(Color.BLACK, Color.WHITE)).isEqualTo(21.0);
        assertThat(ValueScale.contrast(new Color(0x767676), Color.WHITE)).isBetween(4.53, 4.55);
    }

    @ParameterizedTest
    @MethodSource("palettes")
    void textStandsOutOnItsGround(Palette palette) {
        for (Color ground : List.of(palette.paper(), palette.card(), palette.tint(), palette.finished())) {
            assertThat(ValueScale.contrast(palette.ink(), ground)).isGreaterThan(READABLE);
            assertThat(ValueScale.contrast(palette.soft(), ground)).isGreaterThan(READABLE);
        }
        for (Color colour : List.of(palette.accent(), palette.good(), palette.attention())) {
            assertThat(ValueScale.contrast(colour, palette.card())).isGreaterThan(READABLE);
        }
        assertThat(ValueScale.contrast(palette.onAccent(), palette.accent())).isGreaterThan(READABLE);
        assertThat(ValueScale.contrast(palette.onAttention(), palette.attention()))
                .isGreaterThan(READABLE);
        for (Color well : List.of(palette.sample(), palette.standard(), palette.control())) {
            assertThat(ValueScale.contrast(ValueScale.textOn(well), well)).isGreaterThan(READABLE);
        }
    }

    /** sRGB to CIE L* (CIE 15), apart from the code that makes the colours. */
    private static double lightness(Color colour) {
        double y = 0;
        double[] weights = {0.2126, 0.7152, 0.0722};
        int[] channels = {colour.getRed(), colour.getGreen(), colour.getBlue()};
        for (int i = 0; i < 3; i++) {
            double c = channels[i] / 255.0;
            y += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return y > 216.0 / 24389 ? 116 * Math.cbrt(y) - 16 : y * 24389 / 27;
    }

    @Test
    void theScaleFallsEvenlyInLightness() {
        ValueScale scale = new ValueScale();
        double total = lightness(scale.at(0)) - lightness(scale.at(1));
        assertThat(total).isGreaterThan(60);
        for (int i = 0; i < 10; i++) {
            double step = lightness(scale.at(i / 10.0)) - lightness(scale.at((i + 1) / 10.0));
            assertThat(step).as("step " + i).isBetween(total / 10 * 0.85, total / 10 * 1.15);
        }
    }

    @Test
    void everyValueCanBeReadOnItsColour() {
        ValueScale scale = new ValueScale();
        for (int i = 0; i <= 100; i++) {
            Color ground = scale.at(i / 100.0);
            assertThat(ValueScale.contrast(ValueScale.textOn(ground), ground))
                    .as("at " + i + " %")
                    .isGreaterThan(3.0);
        }
    }

    @Test
    void everyWordTheWindowsAskForIsInTheBundle() throws IOException {
        Set<String> missing = new TreeSet<>();
        Pattern asked = Pattern.compile("Text[.]of\\(\\s*\"([^\"]+)\"\\s*[,)]");
        try (Stream<Path> files = Files.list(Path.of("src/main/java/tallywell/gui"))) {
            for (Path file : files.toList()) {
                Matcher matcher = asked.matcher(Files.readString(file));
                while (matcher.find()) {
                    if (!Text.has(matcher.group(1))) {
                        missing.add(matcher.group(1));
                    }
                }
            }
        }
        for (PlateShow show : PlateShow.values()) {
            if (!Text.has("show." + show)) {
                missing.add("show." + show);
            }
        }
        for (String column : SampleRows.COLUMNS) {
            if (!Text.has("samples." + column)) {
                missing.add("samples." + column);
            }
        }
        assertThat(missing).isEmpty();
    }
}
