package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tallywell.desk.DeskFixture.CIDER;
import static tallywell.desk.DeskFixture.well;
import static tallywell.desk.DeskFixture.wells;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;

class FacesTest {
    private final Worked worked;

    FacesTest() throws InputException {
        worked = Worked.of(new RunStore().open(CIDER.resolve("run.yaml")).exclude(wells("G5"), "bubble", "J. Vale"));
    }

    @ParameterizedTest
    @EnumSource(PlateShow.class)
    void everyViewShowsEveryWell(PlateShow show) {
        Faces faces = ValueFaces.of(show, worked, 1, Shown.POINT);
        assertThat(faces.wells().format().wells()).isEqualTo(96);
        assertThat(faces.wells().get(well("A2")).words()).contains("sample 4");
        assertThat(faces.hasScale()).isEqualTo(show != PlateShow.ROLE && show != PlateShow.CREEP);
    }

    @Test
    void anExcludedWellSaysWhyAndWho() {
        WellFace face =
                ValueFaces.of(PlateShow.DELTA_A, worked, 1, Shown.POINT).wells().get(well("G5"));
        assertThat(face.excluded()).isTrue();
        assertThat(face.badges()).contains(WellFace.Badge.EXCLUDED);
        assertThat(face.words()).contains("excluded: bubble (J. Vale)");
    }

    @Test
    void aWellAboveTheStandardsHasABadgeAndTheBoundInsteadOfAConcentration() {
        // Slot 16 was diluted too little (samples/README.md): wells A6 and H7.
        WellFace face = ValueFaces.of(PlateShow.CONCENTRATION, worked, 1, Shown.POINT)
                .wells()
                .get(well("A6"));
        assertThat(face.badges()).contains(WellFace.Badge.HIGH);
        // The highest standard, 0.4 g/L, times the dilution of 10.
        assertThat(face.value()).isEqualTo("> 4.00");
        assertThat(face.scaled()).isEmpty();
    }

    @Test
    void everyStandardIsCalculatedBackAlsoOneBeyondTheOthers() {
        Faces faces = ValueFaces.of(PlateShow.CONCENTRATION, worked, 1, Shown.POINT);
        List<WellFace> standards = faces.wells().format().all().stream()
                .map(well -> faces.wells().get(well))
                .filter(face -> face.shape() == WellFace.Shape.STANDARD)
                .toList();
        assertThat(standards).hasSize(14).allSatisfy(face -> {
            double level = Double.parseDouble(face.label());
            assertThat(Double.parseDouble(face.value())).isCloseTo(level, within(0.05 * level));
            assertThat(face.badges()).isEmpty();
            assertThat(face.words()).doesNotContain("no value");
        });
    }

    @Test
    void numbersTakeTheDecimalMarkOfTheUser() {
        Faces faces = ValueFaces.of(PlateShow.BEFORE, worked, 1, new Shown(','));
        assertThat(faces.wells().get(well("A1")).value()).matches("0,\\d{3}");
    }

    @Test
    void settingsComeBackAndADamagedFileGivesTheUsualOnes(@TempDir Path folder) throws OutputException, IOException {
        Path file = folder.resolve("settings.properties");
        Settings settings = new Settings(file);
        settings.person("Jorun Välé");
        settings.look(Settings.Look.DARK);
        settings.size(16);
        settings.opened("run", CIDER.resolve("run.yaml"));
        settings.opened("run", folder.resolve("gone.yaml"));
        settings.save();
        Settings again = new Settings(file);
        assertThat(again.person()).isEqualTo("Jorun Välé");
        assertThat(again.look()).isEqualTo(Settings.Look.DARK);
        assertThat(again.size(13, 10, 22)).isEqualTo(16);
        assertThat(again.recent("run"))
                .containsExactly(CIDER.resolve("run.yaml").toAbsolutePath());
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertThat(new Settings(file).look()).isEqualTo(Settings.Look.SYSTEM);
    }
}
