package tallywell.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.method.Planning;
import tallywell.method.Sample;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.plan.Plan;
import tallywell.plan.Planner;
import tallywell.plate.Layout;

/** The sheet for the bench on paper. */
class BenchDocumentTest {
    /** Wells that hold anything, so that one method goes on any plate. */
    private static final Planning PLANNING = new Planning(
            List.of(), 0.10, OptionalDouble.empty(), 1000, Map.of(), 100, OptionalDouble.of(300), Optional.empty());

    @TempDir
    private Path folder;

    private static Layout layout(String name) throws InputException {
        return new LayoutReader().read(Path.of("plate-layouts", name + ".yaml"));
    }

    private static Plan plan(String method, Layout layout, String name, String expected) throws InputException {
        List<WantedSample> samples = new ArrayList<>();
        for (int slot : layout.slots()) {
            Sample sample = Sample.plain(slot);
            samples.add(new WantedSample(
                    new Sample(
                            slot,
                            name + slot,
                            sample.dilution(),
                            sample.volumeUl(),
                            sample.solid(),
                            sample.densityGPerMl(),
                            sample.group(),
                            sample.id(),
                            sample.note()),
                    false,
                    expected,
                    "list.csv, line " + (slot + 1)));
        }
        return Planner.plan(new Planner.Wanted(
                "run.yaml",
                "Late pressings",
                "Odile Brandt",
                new MethodReader()
                        .parse(Path.of(method), new MethodLibrary().file(method).orElseThrow()),
                layout,
                samples,
                List.of(),
                PLANNING));
    }

    private static byte[] written(Plan plan) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new BenchDocument().write(plan, "run.yaml", Instant.EPOCH, ZoneOffset.UTC, "0.1.0-test", out);
        return out.toByteArray();
    }

    private static int pages(byte[] document) throws IOException {
        try (PDDocument read = Loader.loadPDF(document)) {
            return read.getNumberOfPages();
        }
    }

    private static String text(byte[] document) throws IOException {
        try (PDDocument read = Loader.loadPDF(document)) {
            return new PDFTextStripper().getText(read);
        }
    }

    static Stream<String> methods() {
        return new MethodLibrary().ids().stream();
    }

    @ParameterizedTest
    @MethodSource("methods")
    void plateOfThirtySixSamplesFitsOnOnePage(String method) throws Exception {
        assertThat(pages(written(plan(method, layout("thirty-six-in-duplicate"), "Tank ", ""))))
                .isEqualTo(1);
    }

    /**
     * By hand: 6.5 g/L in the middle, 1 in 50, is 0.13 g/L; the factor is 0.332 cm² · 134.09 g/mol / (6300 L/mol/cm · 0.020
     * mL) = 0.3533 g/L, so net ΔA 0.37. 20 µL of 1000 are 1 in 50.
     */
    @Test
    void sheetSaysWhatToDiluteAndWhatToExpect() throws Exception {
        byte[] document = written(plan("l-malic-340", layout("thirty-six-in-duplicate"), "Tank ", "3-10 g/L"));
        assertThat(Checker.faults(document)).isEmpty();
        assertThat(text(document))
                .contains("Late pressings", "Odile Brandt", "page 1 of 1")
                .contains("36  Tank 36", "÷ 50: 20 + 980 µL 0.37", "dil. 50")
                .contains("NAD solution", "L-malate dehydrogenase", "+ 13 min", "azide");
    }

    @Test
    void samePlanGivesTheSameBytes() throws Exception {
        Layout layout = layout("thirty-six-in-duplicate");
        assertThat(written(plan("l-malic-340", layout, "Tank ", "3-10 g/L")))
                .isEqualTo(written(plan("l-malic-340", layout, "Tank ", "3-10 g/L")));
    }

    @Test
    void moreThanAPageHoldsGoesOnOnTheNext() throws Exception {
        StringBuilder text = new StringBuilder("tallywell: layout/1\nname: large\nplate: 384\nwells:\n");
        int slot = 1;
        for (int row = 0; row < 16; row++) {
            text.append("  ").append((char) ('A' + row)).append(':');
            for (int column = 0; column < 24; column++) {
                text.append(' ').append(row == 0 && column < 4 ? "o" : row == 0 && column < 12 ? "a" : "" + slot++);
            }
            text.append('\n');
        }
        Path file = folder.resolve("large.yaml");
        Files.writeString(file, text + "legend:\n  o: {role: blank}\n  a: {role: standard, level: 0.2 g/L}\n");
        Layout large = new LayoutReader().read(file);
        Plan plan = plan("l-malic-340", large, "Tank ", "");
        byte[] document = written(plan);
        assertThat(Checker.faults(document)).isEmpty();
        assertThat(pages(document)).isBetween(2, 8);
        assertThat(text(document)).contains("372  Tank 372", "In this order", "Cautions");
    }

    @Test
    void oddNamesAreHarmless() throws Exception {
        byte[] document = written(
                plan("l-malic-340", layout("thirty-six-in-duplicate"), "=1+1 🧃 תפוח\u0007 " + "long ".repeat(40), ""));
        assertThat(Checker.faults(document)).isEmpty();
        assertThat(text(document)).contains("=1+1 \uFFFD");
    }
}
