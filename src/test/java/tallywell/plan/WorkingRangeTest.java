package tallywell.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.notice.InputException;

class WorkingRangeTest {
    static Stream<CSVRecord> rows() throws IOException {
        var in = WorkingRangeTest.class.getResourceAsStream("/reference/enzymatic_factors.csv");
        assertThat(in).isNotNull();
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new InputStreamReader(in, StandardCharsets.UTF_8)).getRecords().stream();
    }

    /** Factors of published methods, as the header of the table states. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void factorIsThatOfThePublishedMethod(CSVRecord row) throws InputException {
        AssayMethod method = new MethodReader()
                .parse(
                        Path.of("published.yaml"),
                        String.join(
                                "\n",
                                List.of(
                                        "tallywell: method/1",
                                        "id: published",
                                        "signal: {species: NADH, absorptivity: " + row.get("eps") + " L/mmol/cm}",
                                        "steps:",
                                        "  - analyte: {name: analyte, molar-mass: " + row.get("M_g_mol") + " g/mol}",
                                        "    volumes: {sample: " + row.get("v_mL") + " mL, before-trigger: "
                                                + row.get("V_mL") + " mL, after-trigger: " + row.get("V_mL") + " mL}",
                                        "light-path: {beam: fixed, length: " + row.get("d_cm") + " cm}",
                                        "calibration: {by: absorptivity}",
                                        "report: {unit: g/L}")));
        double factor = WorkingRange.of(method, method.steps().get(0), Optional.empty())
                .factor()
                .orElseThrow();
        double inUnit = row.get("unit").equals("mg/L") ? 1000 * factor : factor;
        double published = Double.parseDouble(row.get("factor_recomputed"));
        assertThat(inUnit)
                .as(row.get("method") + ": " + row.get("source"))
                .isCloseTo(published, within(6e-7 * published + 6e-7));
    }

    /**
     * On a plate read from above the factor is area · M / (10 ε v s) whatever the volume: 33.2 mm² and 20 µL make M ·
     * 332 / (6300 · 20) g/L, by hand: L-malic 0.353309, citric 0.506229, ethanol (two NADH) 0.060694, urea 0.079121.
     */
    @ParameterizedTest
    @CsvSource({
        "l-malic-340, 0, 0.353309",
        "citric-340, 0, 0.506229",
        "ethanol-340, 0, 0.060694",
        "ammonia-urea-340, 1, 0.079121"
    })
    void builtInFactorsByHand(String id, int step, double factor) throws InputException {
        AssayMethod method = new MethodLibrary().find(id).orElseThrow();
        assertThat(WorkingRange.of(method, method.steps().get(step), Optional.empty())
                        .factor()
                        .orElseThrow())
                .isCloseTo(factor, within(1e-6));
    }

    @Test
    void withoutConstantsThereIsNoFactor() throws InputException {
        AssayMethod method = new MethodReader().parse(Path.of("bare.yaml"), """
                        tallywell: method/1
                        id: bare
                        signal: {species: NADH}
                        steps: [{analyte: {name: analyte}}]
                        calibration: {by: standards, model: line}
                        report: {unit: g/L}
                        """);
        WorkingRange range = WorkingRange.of(method, method.steps().get(0), Optional.empty());
        assertThat(range.factor()).isEmpty();
        assertThat(range.highest()).isEmpty();
    }
}
