package tallywell.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.method.Run;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.report.HostileRun;
import tallywell.report.Report;
import tallywell.report.SampleRuns;

/** The summary on paper: conforming, complete, the same every time, and not to be shaken by odd names. */
class SummaryDocumentTest {
    private static final String HASH = "0123456789abcdef".repeat(4);

    static Stream<String> samples() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("samples"))) {
            return folders
                    .filter(each -> Files.exists(each.resolve("run.yaml")))
                    .map(each -> each.getFileName().toString())
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    private static byte[] written(Report... reports) throws IOException {
        try (SummaryDocument document = new SummaryDocument()) {
            for (Report report : reports) {
                document.add(report);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.write("run.xlsx", HASH, out);
            return out.toByteArray();
        }
    }

    private static List<String> pages(byte[] document) throws IOException {
        try (PDDocument read = Loader.loadPDF(document)) {
            List<String> pages = new ArrayList<>();
            for (int i = 1; i <= read.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                pages.add(stripper.getText(read));
            }
            return pages;
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void summaryOfEverySampleConformsToPdfAAndPdfUa(String sample) throws Exception {
        byte[] document = written(SampleRuns.report(sample));
        assertThat(Checker.faults(document)).isEmpty();
    }

    /** Else the test above would say nothing. */
    @Test
    void checkerFindsFaultsWhereThereAreSome() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PDDocument broken = Loader.loadPDF(written(SampleRuns.report("cuvette-typed")))) {
            broken.getDocumentCatalog().getCOSObject().removeItem(COSName.LANG);
            broken.getDocumentCatalog().getCOSObject().removeItem(COSName.OUTPUT_INTENTS);
            broken.save(out);
        }
        assertThat(Checker.faults(out.toByteArray()))
                .anyMatch(fault -> fault.startsWith("2a"))
                .anyMatch(fault -> fault.startsWith("ua1"));
    }

    @Test
    void sameReportGivesTheSameBytes() throws Exception {
        byte[] first = written(SampleRuns.report("cider-malic-kinetic"));
        byte[] second = written(SampleRuns.report("cider-malic-kinetic"));
        assertThat(second).isEqualTo(first);
    }

    @Test
    void everyPageSaysWhereItBelongs() throws Exception {
        Report report = SampleRuns.report("cider-malic-kinetic");
        List<String> pages = pages(written(report));
        assertThat(pages).hasSizeGreaterThan(2);
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i))
                    .contains("page " + (i + 1) + " of " + pages.size())
                    .contains("Cider lees and late pressings")
                    .contains("inputs " + RunIdentity.hash(report));
        }
        assertThat(pages.get(0)).contains("run.xlsx, SHA-256 " + HASH);
    }

    /** Thirty-six samples and two controls are what a plate usually holds. */
    @Test
    void usualPlateHasItsResultsCautionsAndSignaturesOnPageOne() throws Exception {
        Report report = SampleRuns.report("cider-l-malic");
        String first = pages(written(report)).get(0);
        assertThat(first)
                .contains("Odile Brandt", "The batch passes its acceptance", "Ice cider", "cider control, low")
                .contains("> 4.00", "above the highest", "repeat at dilution")
                .contains("Not for diagnosis.", "Approved by");
    }

    @Test
    void whatAPersonDecidedStandsOnPageOneWithReasonAndName() throws Exception {
        Run.Exclusion bubble = new Run.Exclusion(List.of(new Well(0, 1)), "bubble", "J. Vale", 0);
        List<String> pages = pages(written(excluded(Map.of(new Well(0, 1), bubble))));
        assertThat(pages.get(0))
                .contains("Decided by a person", "A2 (sample 4) does not count: bubble (J. Vale).")
                .contains("Not for diagnosis.", "Checked by", "Approved by");
        assertThat(String.join(" ", pages)).contains("± U holds").contains("calibration");
    }

    private static Report excluded(Map<Well, Run.Exclusion> wells) throws Exception {
        return SampleRuns.report(SampleRuns.assay("cider-l-malic").withExclusions(wells));
    }

    /** The first sample wells of the upper half, each for a reason of its own; the samples keep their other well. */
    private static Report excluded(int wells, String reason) throws Exception {
        Layout layout = SampleRuns.assay("cider-l-malic").layout();
        Map<Well, Run.Exclusion> excluded = new HashMap<>();
        for (Well well : layout.format().all()) {
            if (layout.at(well).role().equals("sample") && excluded.size() < wells) {
                excluded.put(well, new Run.Exclusion(List.of(well), well + ": " + reason, "J. Vale", 0));
            }
        }
        return excluded(excluded);
    }

    private static String signed(List<String> pages) {
        List<String> signed =
                pages.stream().filter(page -> page.contains("Approved by")).toList();
        assertThat(signed).hasSize(1);
        return signed.get(0);
    }

    /** The page fills, until the signatures go to the next and what is signed for goes with them. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 6, 12, 36})
    void signaturesStandBelowTheDecisionsAndCautions(int wells) throws Exception {
        String signed = signed(pages(written(excluded(wells, "drop on its rim"))));
        assertThat(signed).contains("Not for diagnosis.", "Checked by");
        assertThat(signed.split("does not count", -1)).hasSize(wells + 1);
    }

    @Test
    void decisionsLongerThanAPageLeaveTheSignaturesWithTheCautions() throws Exception {
        List<String> pages = pages(written(excluded(36, "drop on its rim, as on the photograph. ".repeat(10))));
        assertThat(signed(pages)).contains("Not for diagnosis.", "Checked by");
        assertThat(String.join("", pages).split("does not count", -1)).hasSize(37);
    }

    @Test
    void facesAreEmbeddedAndChartsHoldNoPixels() throws Exception {
        try (PDDocument read = Loader.loadPDF(written(SampleRuns.report("cider-malic-kinetic")))) {
            int drawings = 0;
            for (PDPage page : read.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).isTrue();
                    assertThat(font.getName()).contains("+DejaVuSans");
                }
                for (COSName name : page.getResources().getXObjectNames()) {
                    assertThat(page.getResources().isImageXObject(name)).isFalse();
                    drawings++;
                }
            }
            assertThat(drawings).isGreaterThanOrEqualTo(4);
        }
    }

    @Test
    void longTableGoesOnUnderItsHeading() throws Exception {
        List<String> pages = pages(written(SampleRuns.report("juice-glucose-fructose")));
        assertThat(pages.get(1)).contains("Verdict").contains("Perry medium");
        assertThat(pages.get(0)).doesNotContain("Perry medium");
    }

    @Test
    void manyRunsHaveASectionAndABookmarkEach() throws Exception {
        byte[] document = written(SampleRuns.report("cider-l-malic"), SampleRuns.report("cuvette-typed"));
        assertThat(Checker.faults(document)).isEmpty();
        try (PDDocument read = Loader.loadPDF(document)) {
            List<String> titles = new ArrayList<>();
            read.getDocumentCatalog().getDocumentOutline().children().forEach(each -> titles.add(each.getTitle()));
            assertThat(titles).hasSize(2).first().asString().contains("Autumn cider");
            assertThat(read.getDocumentInformation().getTitle()).isEqualTo("Summary of 2 runs");
        }
        assertThat(String.join("", pages(document)).split("SHA-256 " + HASH, -1))
                .hasSize(3);
    }

    private static List<String> oddNames() {
        return List.of(
                "=HYPERLINK(\"http://example.org\")",
                "@SUM(A1)",
                "must 🍏 and 🧃 of tank 1 👩🏽‍🔬",
                "סיידר 12% (תפוח)",
                "عصير التفاح ٢٠٢٦",
                "bell\u0007 nul\u0000 escape\u001b[31m\u0085",
                "half a pair \uD83C and \uDF4F, no letter \uFFFE \uE000",
                "tab\tnew\nline\r\u2028end\u202E turned",
                "<b>&amp;</b>]]> -- %PDF-1.7 endstream endobj (a\\) @title @time",
                "e\u0301\u0302\u0303".repeat(40),
                "x".repeat(10_000),
                "many words ".repeat(1_000));
    }

    @Test
    void oddNamesAreKeptAndHarmless() throws Exception {
        byte[] document = written(HostileRun.report(oddNames(), "note"));
        Files.write(Path.of("target", "odd.pdf"), document);
        assertThat(Checker.faults(document)).isEmpty();
        assertThat(pages(document).get(0))
                .contains("The batch passes its acceptance")
                .contains("=HYPERLINK(\"http://exam", "@SUM(A1)", "<b>&amp;</b>]]>", "tab new line");
    }

    /** Title, operator and run file have the odd name, too, which then stands in the properties. */
    @ParameterizedTest
    @MethodSource("oddNames")
    void oddTitlesAreKept(String name) throws Exception {
        try (PDDocument read = Loader.loadPDF(written(HostileRun.report(name, "note")))) {
            String title = read.getDocumentInformation().getTitle();
            assertThat(title).hasSameSizeAs(name);
            assertThat(new String(read.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8))
                    .contains("<rdf:li xml:lang=\"x-default\">"
                            + title.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;"));
        }
    }

    @Test
    void whatHasNoLetterIsReplacedVisiblyAndKeptInTheText() throws Exception {
        byte[] document = written(HostileRun.report("tank 🧃 1", "note"));
        assertThat(pages(document).get(0)).contains("tank \uFFFD 1");
        assertThat(actualTexts(document)).contains("tank 🧃 1");
    }

    /** Unicode Standard Annex 9: the letters of a Hebrew word stand from right to left, those of a number do not. */
    @Test
    void hebrewIsSeenFromRightToLeft() {
        assertThat(Direction.seen("סיידר 12 (א)")).isEqualTo("(א) 12 רדייס");
        assertThat(Direction.seen("tank סיידר 7")).isEqualTo("tank 7 רדייס");
    }

    private static List<String> actualTexts(byte[] document) throws IOException {
        List<String> texts = new ArrayList<>();
        try (PDDocument read = Loader.loadPDF(document)) {
            read.getDocument().getXrefTable().keySet().forEach(key -> {
                var object = read.getDocument().getObjectFromPool(key).getObject();
                if (object instanceof org.apache.pdfbox.cos.COSDictionary dictionary
                        && dictionary.getString(COSName.ACTUAL_TEXT) != null) {
                    texts.add(dictionary.getString(COSName.ACTUAL_TEXT));
                }
            });
        }
        return texts;
    }

    /** The D50 white that all three colours together make, to the last place of ICC.1:2010, 7.2.16. */
    @Test
    void coloursOfTheProfileAddUpToItsWhite() {
        String text = new String(Srgb.profile(), StandardCharsets.ISO_8859_1);
        assertThat(text.substring(36, 40)).isEqualTo("acsp");
        double[] sum = new double[3];
        for (String tag : List.of("rXYZ", "gXYZ", "bXYZ")) {
            double[] xyz = xyz(tag);
            for (int i = 0; i < 3; i++) {
                sum[i] += xyz[i];
            }
        }
        assertThat(sum).containsExactly(new double[] {0.9642, 1.0, 0.8249}, org.assertj.core.data.Offset.offset(2e-4));
    }

    private static double[] xyz(String tag) {
        java.nio.ByteBuffer profile = java.nio.ByteBuffer.wrap(Srgb.profile());
        int at = new String(profile.array(), StandardCharsets.ISO_8859_1).indexOf(tag);
        int offset = profile.getInt(at + 4);
        double[] values = new double[3];
        for (int i = 0; i < 3; i++) {
            values[i] = profile.getInt(offset + 8 + 4 * i) / 65536.0;
        }
        return values;
    }
}
