package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.notice.InputException;

/**
 * Factors of published methods through the whole calculation: a net ΔA of 1 in a cuvette must come out as the factor that
 * the method prints. Each row of the table names its source and whether the figure was seen or is from memory.
 */
class EnzymaticFactorsTest {
    static Stream<CSVRecord> rows() throws IOException {
        var in = EnzymaticFactorsTest.class.getResourceAsStream("/reference/enzymatic_factors.csv");
        assertThat(in).isNotNull();
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new InputStreamReader(in, StandardCharsets.UTF_8)).getRecords().stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void publishedFactorComesOut(CSVRecord row) throws InputException {
        double factor = value(row);
        String source = row.get("method") + " (" + row.get("status") + "): " + row.get("source");
        assertThat(factor)
                .as(source)
                .isCloseTo(
                        Double.parseDouble(row.get("factor_recomputed")),
                        org.assertj.core.data.Offset.offset(6e-7 * factor + 6e-7));
        String published = row.get("factor_published");
        if (published.startsWith("(")) {
            return;
        }
        // One unit of the last digit that is printed, for every row alike: whether a method rounded or cut off, and
        // took 180
        // or 180.16 g/mol, its page does not say. All printed factors are from memory, so that agreement says no more
        // than
        // that the memory of volumes and the memory of factors agree.
        BigDecimal printed = new BigDecimal(published);
        double lastDigit = Math.pow(10, -printed.scale());
        assertThat(factor).as(source).isCloseTo(printed.doubleValue(), org.assertj.core.data.Offset.offset(lastDigit));
    }

    private static double value(CSVRecord row) throws InputException {
        String method = String.join(
                "\n",
                List.of(
                        "tallywell: method/1",
                        "id: published",
                        "signal: {species: NADH, wavelength: " + row.get("lambda_nm") + " nm, absorptivity: "
                                + row.get("eps") + " L/mmol/cm}",
                        "steps:",
                        "  - analyte: {name: analyte, molar-mass: " + row.get("M_g_mol") + " g/mol}",
                        "    volumes: {sample: " + row.get("v_mL") + " mL, before-trigger: " + row.get("V_mL")
                                + " mL, after-trigger: " + row.get("V_mL") + " mL}",
                        "light-path: {beam: fixed, length: " + row.get("d_cm") + " cm}",
                        "calibration: {by: absorptivity}",
                        "report: {unit: " + row.get("unit") + "}"));
        Analysis analysis = Plates.small()
                .method(method)
                .layout("o 1 .", ". . .", "o: {role: blank}")
                .read(false, "0.1 0.2 0 0 0 0")
                .read(true, "0.15 1.25 0 0 0 0")
                .analyse();
        return analysis.results().get(0).value().orElseThrow();
    }
}
