package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.budget.SimulatedPlate;
import tallywell.budget.Simulation;
import tallywell.notice.InputException;
import tallywell.workup.Assay;

class BudgetSheetTest {
    private static final int HEAD = 3;
    private static final String STATED = """
            uncertainty:
              by: validation
              standard: {expanded: 1 %}
              validation: {precision: 2.5 %, bias: 0.8 %}
            """;

    private static Report simulated(Report plain, int trials) {
        PlateBudget budget = plain.assessment().budget();
        return new Report(
                plain.run(),
                plain.analysis(),
                plain.assessment(),
                plain.provenance(),
                Optional.of(SimulatedPlate.of(budget, trials, 1)));
    }

    private static XSSFWorkbook book(Report report) throws IOException {
        return new XSSFWorkbook(new ByteArrayInputStream(SummaryWorkbookTest.write(report)));
    }

    /** Columns by title; of two with one title the first. */
    private static Map<String, Integer> columns(XSSFSheet sheet, int row) {
        Map<String, Integer> columns = new HashMap<>();
        sheet.getRow(row).forEach(cell -> columns.putIfAbsent(cell.getStringCellValue(), cell.getColumnIndex()));
        return columns;
    }

    private static double number(Row row, int column) {
        return row.getCell(column).getNumericCellValue();
    }

    private static List<String> texts(XSSFSheet sheet) {
        List<String> texts = new ArrayList<>();
        sheet.forEach(row -> row.forEach(cell -> {
            if (cell.getCellType() == CellType.STRING) {
                texts.add(cell.getStringCellValue());
            }
        }));
        return texts;
    }

    @ParameterizedTest
    @ValueSource(strings = {"cider-l-malic", "juice-glucose-fructose", "cider-malic-kinetic", "puree-citric-solids"})
    void eachResultHasARowWithWhatItIsUncertainFrom(String folder) throws Exception {
        Report report = SampleRuns.report(folder);
        List<Optional<ResultBudget>> budgets = report.assessment().budget().results();
        assertThat(budgets).anyMatch(Optional::isPresent);
        try (XSSFWorkbook book = book(report)) {
            XSSFSheet sheet = book.getSheet("Budget");
            Map<String, Integer> at = columns(sheet, HEAD);
            for (int i = 0; i < budgets.size(); i++) {
                Row row = sheet.getRow(HEAD + 1 + i);
                assertThat(row.getCell(0).getStringCellValue())
                        .isEqualTo(report.analysis().results().get(i).name());
                if (budgets.get(i).isEmpty()) {
                    assertThat(row.getCell(at.get("u")).getCellType()).isEqualTo(CellType.BLANK);
                    assertThat(row.getCell(at.get("remark")).getStringCellValue())
                            .isEqualTo("no value");
                    continue;
                }
                ResultBudget each = budgets.get(i).orElseThrow();
                assertThat(number(row, at.get("value")))
                        .isEqualTo(each.result().value().orElseThrow());
                assertThat(number(row, at.get("u"))).isEqualTo(each.byBudget());
                assertThat(number(row, at.get("k"))).isEqualTo(each.coverageFactor());
                assertThat(number(row, at.get("U"))).isEqualTo(each.expandedUncertainty());
                assertThat(row.getCell(at.get("U")).getCellType()).isEqualTo(CellType.FORMULA);
                double sum = 0;
                for (Map.Entry<String, Double> share : each.shares().entrySet()) {
                    double shown = number(row, at.get(share.getKey()));
                    assertThat(shown).isCloseTo(100 * share.getValue(), within(1e-12));
                    sum += shown;
                }
                assertThat(sum).isCloseTo(100, within(1e-9));
            }
        }
    }

    /**
     * The standard error of a standard deviation of 20 000 draws is 0.5 %; beyond five of these only what first order
     * leaves out could explain a difference.
     */
    @Test
    void drawsOfTheCiderAgreeWithPropagationWithinTwoAndAHalfPerCent() throws Exception {
        Report report = simulated(SampleRuns.report("cider-l-malic"), 20_000);
        PlateBudget budget = report.assessment().budget();
        SimulatedPlate drawn = report.simulated().orElseThrow();
        assertThat(Math.abs(drawn.farthest(budget).orElseThrow().relative())).isLessThan(0.025);
        try (XSSFWorkbook book = book(report)) {
            XSSFSheet sheet = book.getSheet("Budget");
            Map<String, Integer> at = columns(sheet, HEAD);
            int u = at.get("95 % from") - 1;
            assertThat(sheet.getRow(HEAD).getCell(u).getStringCellValue()).isEqualTo("u");
            int compared = 0;
            for (int i = 0; i < budget.results().size(); i++) {
                Row row = sheet.getRow(HEAD + 1 + i);
                if (drawn.outputs().get(i).isEmpty()) {
                    assertThat(row.getCell(u).getCellType()).isEqualTo(CellType.BLANK);
                    continue;
                }
                Simulation.Output output = drawn.outputs().get(i).orElseThrow();
                assertThat(number(row, u)).isEqualTo(output.standardUncertainty());
                assertThat(number(row, u + 1)).isEqualTo(output.low());
                assertThat(number(row, u + 2)).isEqualTo(output.high());
                ResultBudget each = budget.results().get(i).orElseThrow();
                assertThat(number(row, u + 3))
                        .isCloseTo(100 * (output.standardUncertainty() / each.byBudget() - 1), within(1e-9));
                compared++;
            }
            assertThat(compared).isEqualTo(36);
            assertThat(texts(sheet)).contains("by 20000 draws");
        }
    }

    @Test
    void uncertaintyFromValidationStandsBesideTheBudget() throws Exception {
        Assay assay = SampleRuns.assay("cider-l-malic", method -> method + STATED);
        Report report = SampleRuns.report(assay);
        try (XSSFWorkbook book = book(report)) {
            XSSFSheet sheet = book.getSheet("Budget");
            Map<String, Integer> at = columns(sheet, HEAD);
            Row row = sheet.getRow(HEAD + 1);
            double value = number(row, at.get("value"));
            assertThat(number(row, at.get("u by validation")))
                    .isCloseTo(value * Math.hypot(0.025, 0.008), within(1e-12));
            ResultBudget each = report.assessment().budget().results().get(0).orElseThrow();
            assertThat(number(row, at.get("u"))).isEqualTo(each.byBudget());
            assertThat(number(row, at.get("k")))
                    .isEqualTo(each.factorByBudget())
                    .isNotEqualTo(2);
            assertThat(row.getCell(at.get("remark")).getStringCellValue())
                    .isEqualTo("reported with u by validation and k = 2");
            assertThat(at).containsKey("assigned value of the standard");
        }
    }

    @Test
    void recoveriesOfControlsHaveTheirU() throws Exception {
        Report report = SampleRuns.report("cider-l-malic");
        try (XSSFWorkbook book = book(report)) {
            XSSFSheet sheet = book.getSheet("Budget");
            int top = titled(sheet, "Recoveries") + 2;
            Row row = sheet.getRow(top);
            assertThat(row.getCell(0).getStringCellValue()).isEqualTo("cider control, high");
            Map<String, Integer> at = columns(sheet, top - 1);
            var control = report.assessment().budget().results().stream()
                    .flatMap(Optional::stream)
                    .filter(each -> each.result().name().equals("cider control, high"))
                    .findFirst()
                    .orElseThrow();
            double assigned = control.result().assigned().orElseThrow();
            assertThat(number(row, at.get("u"))).isCloseTo(100 * control.byBudget() / assigned, within(1e-9));
            double off = Math.abs(number(row, at.get("recovery")) - 100);
            assertThat(row.getCell(at.get("100 % within U")).getStringCellValue())
                    .isEqualTo(off <= number(row, at.get("U")) ? "yes" : "no");
        }
    }

    private static int titled(XSSFSheet sheet, String title) {
        for (Row row : sheet) {
            Cell cell = row.getCell(0);
            if (cell != null && cell.getStringCellValue().equals(title)) {
                return row.getRowNum();
            }
        }
        throw new AssertionError("no section " + title);
    }

    @Test
    void whyThereIsNoUStandsInWordsOnBudgetAndChecks() throws Exception {
        Report report = SampleRuns.report(onePlain());
        assertThat(report.assessment().budget().results()).allMatch(Optional::isEmpty);
        try (XSSFWorkbook book = book(report)) {
            assertThat(texts(book.getSheet("Budget")))
                    .contains("no u: no replicates that differ, and no traces that show the scatter of wells, blanks"
                            + " and standards");
            assertThat(texts(book.getSheet("Checks")))
                    .contains("no replicates that differ, so nothing shows the scatter, and results have no u");
        }
    }

    /** End points with one well of each kind, the others left unused. */
    private static Assay onePlain() throws InputException {
        List<String> seen = new ArrayList<>();
        return SampleRuns.assay(
                "cider-l-malic",
                method -> method,
                layout -> {
                    StringBuilder once = new StringBuilder();
                    for (String line : layout.split("\n", -1)) {
                        once.append(line.matches("  [A-H]:.*") ? once(line, seen) : line)
                                .append('\n');
                    }
                    return once.toString();
                },
                samples -> samples);
    }

    private static String once(String line, List<String> seen) {
        StringBuilder kept = new StringBuilder(line.substring(0, 4));
        for (String word : line.substring(4).strip().split("\\s+")) {
            boolean first = !word.equals(".") && !seen.contains(word);
            if (first) {
                seen.add(word);
            }
            kept.append(' ').append(first ? word : ".");
        }
        return kept.toString();
    }

    @Test
    void summaryLeadsToTheBudget() throws Exception {
        try (XSSFWorkbook book = book(SampleRuns.report("cider-l-malic"))) {
            assertThat(book.getSheet("Summary").getHyperlinkList())
                    .anyMatch(link -> "'Budget'!A1".equals(link.getAddress()));
            assertThat(book.getSheet("Budget").getRepeatingRows().getLastRow()).isEqualTo(HEAD);
            assertThat(book.getSheet("Budget").getPrintSetup().getLandscape()).isTrue();
        }
    }
}
