package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

class ExportTest {
    private static final OptionalDouble AT_340 = OptionalDouble.of(340);

    @TempDir
    private Path folder;

    private Path file(String text) throws Exception {
        return Files.writeString(folder.resolve("export.csv"), text);
    }

    private Export read(String text) throws Exception {
        return new Importer().read(file(text), Choice.none());
    }

    @Test
    void wavelengthOfTheMethodPicksAmongSeveral() throws Exception {
        Export export = read("well,405 nm,340 nm\nA1,0.5,0.3\nA2,0.6,0.4\n");
        assertThat(export.blocks()).hasSize(2);
        assertThat(export.one(Choice.none(), AT_340).series().absorbance(new Well(0, 1), 0))
                .isEqualTo(0.4);
        assertThat(export.one(Choice.none().withWavelengthNm(405), AT_340).number())
                .isEqualTo(1);
        assertThat(export.one(Choice.none().withBlock(1), AT_340).number()).isEqualTo(1);
    }

    @Test
    void otherWavelengthThanTheMethodsIsRefusedUnlessNamed() throws Exception {
        Export export = read("well,365 nm\nA1,0.5\nA2,0.6\n");
        assertThatThrownBy(() -> export.one(Choice.none(), AT_340))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found no readings at 340 nm")
                .hasMessageContaining("wavelength:");
        assertThat(export.one(Choice.none().withWavelengthNm(365), AT_340).number())
                .isEqualTo(1);
        assertThat(export.one(Choice.none(), OptionalDouble.empty()).number()).isEqualTo(1);
    }

    @Test
    void wavelengthOfTheMethodDoesNotPickBesideBlocksThatStateNone() throws Exception {
        Export export = read("Before trigger\n,1,2,3\nA,0.1,0.2,0.3\nB,0.4,0.5,0.6\n\nAfter trigger 340 nm\n,1,2,3\n"
                + "A,0.7,0.8,0.9\nB,1.0,1.1,1.2\n");
        assertThat(export.blocks()).hasSize(2);
        assertThatThrownBy(() -> export.one(Choice.none(), AT_340))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("beside others that state no wavelength")
                .hasMessageContaining("block: in the run file")
                .hasMessageContaining("block 1: 'Before trigger'");
        assertThat(export.one(Choice.none().withBlock(2), AT_340).number()).isEqualTo(2);
    }

    @Test
    void columnsThatOnlyTheirNamesTellApartAreRefusedWhateverWavelengthIsChosen() {
        String text = "well,absorbance,absorbance 340 nm second\nA1,0.1,0.2\nA2,0.3,0.4\n";
        assertThatThrownBy(() -> read(text)).hasMessageContaining("beside each other");
        assertThatThrownBy(() -> new Importer().read(file(text), Choice.none().withWavelengthNm(340)))
                .hasMessageContaining("beside each other")
                .hasMessageContaining("block 1");
    }

    @Test
    void readingLargerThanAnyAbsorbanceIsTakenOnlyByNumberOfItsBlock() throws Exception {
        String text = "well,absorbance\nA1,0.1\nA2,65535\n";
        assertThatThrownBy(() -> read(text)).hasMessageContaining("found the reading 65535 of A2");
        Export export = new Importer().read(file(text), Choice.none().withBlock(1));
        assertThat(export.explanation().text()).contains("found the reading 65535 of A2");
    }

    @Test
    void wavelengthThatTheFileDoesNotStateSortsOutNothing() throws Exception {
        Export export = read("well,absorbance\nA1,0.5\nA2,0.6\n");
        assertThat(export.one(Choice.none().withWavelengthNm(340), AT_340).number())
                .isEqualTo(1);
    }

    @Test
    void severalPlatesAreRefusedWithTheKeyThatDecides() throws Exception {
        Export export = read("plate,well,absorbance\nx,A1,0.1\nx,A2,0.2\ny,A1,0.3\ny,A2,0.4\n");
        assertThatThrownBy(() -> export.one(Choice.none(), AT_340))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found 2 blocks of readings")
                .hasMessageContaining("plate: in the run file")
                .hasMessageContaining("block 2: plate 'y'");
        assertThat(export.one(Choice.none().withPlate("Y"), AT_340).series().absorbance(new Well(0, 0), 0))
                .isEqualTo(0.3);
        assertThatThrownBy(() -> export.one(Choice.none().withPlate("z"), AT_340))
                .hasMessageContaining("found no block that fits");
    }

    @Test
    void listInfersItsPlateAndGridShowsIt() throws Exception {
        Block list = read("well,absorbance\nA1,0.1\nD6,0.2\n").blocks().get(0);
        assertThat(list.wholePlate()).isFalse();
        assertThat(list.series().format()).isEqualTo(new PlateFormat(4, 6));
        Block grid = read(",1,2,3\nA,0.1,0.2,0.3\nB,0.4,0.5,OVER\n").blocks().get(0);
        assertThat(grid.wholePlate()).isTrue();
        assertThat(grid.series().mark(new Well(1, 2), 0)).isEqualTo(Mark.OVER);
    }

    @Test
    void endPointKeepsTheTimeThatItsTitleStates() throws Exception {
        Block block = read("Read 2, 10 min\n,1,2,3\nA,0.1,0.2,0.3\nB,0.4,0.5,0.6\n")
                .blocks()
                .get(0);
        assertThat(block.series().isTimed()).isFalse();
        assertThat(block.timeS()).hasValue(600);
    }

    @Test
    void explanationSaysWhatWasUnderstoodAndWhatWasLeftOut() throws Exception {
        Export export = read("Absorbance 340 nm\n;1;2;3;Mean\nA;0,101;OVER;0,103;0,1\nB;0,2;0,3;;0,2\n\nTemperature\n"
                + ";1;2;3\nA;37,1;37,0;37,0\nB;37,0;37,0;37,1\n");
        assertThat(export.explanation().text())
                .contains("ASCII")
                .contains("semicolon")
                .contains("decimal comma")
                .contains("grid with headings, lines 2 to 4")
                .contains("340 nm")
                .contains("6 wells of a plate of 6")
                .contains("1 over range")
                .contains("1 missing")
                .contains("line 2: left out: 1 column beside the grid (Mean)")
                .contains("left out: 'Temperature', no readings of absorbance");
    }

    @Test
    void ownReadingsAreReadBack() throws Exception {
        Export export = read("time_s,A1,A2\n0,0.1,OVER\n30,0.2,\n");
        StringBuilder csv = new StringBuilder();
        ReadingsCsv writer = new ReadingsCsv(csv);
        writer.header();
        writer.rows(export);
        Export again = read(csv.toString());
        StringBuilder second = new StringBuilder();
        ReadingsCsv other = new ReadingsCsv(second);
        other.header();
        other.rows(again);
        assertThat(second.toString().replace(",absorbance,", ",,"))
                .isEqualTo(csv.toString().replace(",absorbance,", ",,"));
    }
}
