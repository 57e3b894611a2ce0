package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.quantity.Dilution;

/** Layouts, methods and sample lists in one line each. */
class WordsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            thirty-six-in-duplicate        | 96 wells: 8 standards, 36 samples in duplicate
            forty-in-duplicate             | 96 wells: 5 standards, 1 control, 40 samples in duplicate
            forty-four-without-standards   | 96 wells: 2 controls, 44 samples in duplicate
            24-nine-in-duplicate           | 24 wells: 1 standard, 1 control, 9 samples in duplicate
            triplicates                    | 96 wells: 5 standards, 1 control, 24 samples in triplicate
            """)
    void aLayoutIsItsStandardsControlsAndSamples(String file, String words) throws InputException {
        Layout layout = new LayoutReader().read(Path.of("plate-layouts", file + ".yaml"));
        assertThat(LayoutWords.of(layout)).isEqualTo(words);
    }

    @Test
    void anEmptyPlateAndUnequalReplicatesAreSaid() {
        Layout empty = LayoutEdits.empty("x", PlateFormat.P96);
        assertThat(LayoutWords.of(empty)).isEqualTo("96 wells: nothing yet");
        Layout one = LayoutEdits.paint(empty, DeskFixture.wells("A1"), new tallywell.plate.Content.Sample(1));
        assertThat(LayoutWords.held(one)).isEqualTo("1 sample in single wells");
        Layout unequal = LayoutEdits.paint(one, DeskFixture.wells("A2", "A3"), new tallywell.plate.Content.Sample(2));
        assertThat(LayoutWords.held(unequal)).isEqualTo("2 samples in 1 to 2 wells each");
    }

    /** By hand from the volumes in the file: 10, 210 and 215 µL in all; 215 µL over 33.2 mm² is 6.5 mm. */
    @Test
    void aMethodIsItsVolumesPathAndTime() throws InputException {
        String text = """
                tallywell: method/1
                id: x
                title: X
                signal: {wavelength: 340 nm, direction: rises}
                steps:
                  - analyte: {name: x}
                    volumes: {sample: 10 µL, before-trigger: 210 µL, after-trigger: 215 µL}
                    timing: {after: 20 min}
                light-path: {beam: vertical, well-area: 33.2 mm2}
                creep: {correct: none}
                calibration: {by: standards, model: line, weights: none}
                report: {unit: g/L}
                """;
        var method = new MethodReader().parse(Path.of("x"), text);
        assertThat(MethodWords.of(method, Shown.POINT)).isEqualTo("10 + 200 + 5 µL, d 0.65 cm, 20 min");
        assertThat(MethodWords.of(method, new Shown(','))).isEqualTo("10 + 200 + 5 µL, d 0,65 cm, 20 min");
    }

    @Test
    void everyBuiltInMethodHasALineOfItsOwn() throws InputException {
        RunStore store = new RunStore();
        for (String id : store.builtIn()) {
            assertThat(MethodWords.of(store.builtIn(id).value(), Shown.POINT))
                    .as(id)
                    .contains(" µL")
                    .doesNotContain("000000");
        }
    }

    private static Sample sample(int slot, String name, double dilution) {
        Sample plain = Sample.plain(slot);
        return new Sample(
                slot, name, new Dilution(dilution), plain.volumeUl(), plain.solid(), plain.densityGPerMl(), "", "", "");
    }

    private static Layout withSamples(int count) {
        Layout empty = LayoutEdits.empty("x", PlateFormat.P96);
        return LayoutEdits.fillSamples(
                empty,
                empty.format().all().subList(0, count),
                1,
                new Filling(Filling.Order.ROWS, 1, Replicates.BELOW, true));
    }

    @Test
    void aListIsCountedAndItsDilutionsSaid() {
        Optional<Layout> three = Optional.of(withSamples(3));
        SampleList named = SampleList.of(List.of(sample(1, "a", 5), sample(2, "b", 20), sample(3, "c", 5)));
        assertThat(SampleWords.of(named, three, Shown.POINT))
                .isEqualTo(new SampleWords("3 samples, dilutions 5 to 20", true));
        assertThat(SampleWords.of(SampleList.plain(List.of(1, 2, 3)), three, Shown.POINT))
                .isEqualTo(new SampleWords("3 samples by number, undiluted", true));
        SampleList some = SampleList.of(List.of(sample(1, "a", 10), sample(2, "2", 10)));
        assertThat(SampleWords.of(some, three, Shown.POINT))
                .isEqualTo(new SampleWords("2 of 3 samples, 1 with names, dilution 10", true));
    }

    @Test
    void aListWithNumbersThatAreNotOnThePlateDoesNotFit() {
        SampleList list = SampleList.plain(List.of(1, 2, 3, 4));
        assertThat(SampleWords.of(list, Optional.of(withSamples(2)), Shown.POINT))
                .isEqualTo(new SampleWords("not on the plate: 3, 4", false));
        assertThat(SampleWords.of(list, Optional.empty(), Shown.POINT).fits()).isTrue();
    }
}
