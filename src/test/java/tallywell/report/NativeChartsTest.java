package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTLineSer;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumRef;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTScatterSer;

/** The charts of the summary show what stands in its cells, and nothing else. */
class NativeChartsTest {
    private static XSSFWorkbook book(String folder) throws Exception {
        return new XSSFWorkbook(new ByteArrayInputStream(SummaryWorkbookTest.write(SampleRuns.report(folder))));
    }

    private static List<XSSFChart> charts(XSSFWorkbook book, String sheet) {
        return book.getSheet(sheet).getDrawingPatriarch().getCharts();
    }

    private static List<Double> cells(XSSFWorkbook book, String reference) {
        List<Double> values = new ArrayList<>();
        for (String area : reference.replaceAll("[()]", "").split(",")) {
            for (CellReference cell : new AreaReference(area, book.getSpreadsheetVersion()).getAllReferencedCells()) {
                values.add(book.getSheet(cell.getSheetName())
                        .getRow(cell.getRow())
                        .getCell(cell.getCol())
                        .getNumericCellValue());
            }
        }
        return values;
    }

    private static List<Double> shown(CTNumRef reference) {
        return Arrays.stream(reference.getNumCache().getPtArray())
                .map(point -> Double.valueOf(point.getV()))
                .toList();
    }

    private static void assertFollows(XSSFWorkbook book, CTNumRef reference) {
        // The ends of the line stand a billionth beyond the standards, so that these are not lost by rounding.
        assertThat(shown(reference))
                .as(reference.getF())
                .usingElementComparator((one, other) -> Math.abs(one - other) < 1e-8 ? 0 : Double.compare(one, other))
                .containsExactlyElementsOf(cells(book, reference.getF()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cider-l-malic", "cider-malic-kinetic", "juice-glucose-fructose", "cuvette-typed"})
    void calibrationChartMarksStandardsSamplesAndControlsFromTheirCells(String folder) throws Exception {
        try (XSSFWorkbook book = book(folder)) {
            for (XSSFChart chart : charts(book, "Calibration")) {
                Map<String, Integer> sizes = new TreeMap<>();
                for (CTScatterSer series :
                        chart.getCTChart().getPlotArea().getScatterChartArray(0).getSerArray()) {
                    assertFollows(book, series.getXVal().getNumRef());
                    assertFollows(book, series.getYVal().getNumRef());
                    sizes.put(
                            series.getTx().getV(),
                            shown(series.getYVal().getNumRef()).size());
                }
                assertThat(sizes).containsKeys("standards", "line", "samples");
                assertThat(sizes.get("samples")).isGreaterThan(1);
            }
        }
    }

    @Test
    void wellsWithoutAValueAreNoPointsOfTheChart() throws Exception {
        Report report = SampleRuns.report("cider-l-malic");
        long expected = report.analysis().steps().get(0).wells().stream()
                .filter(well -> well.content() instanceof tallywell.plate.Content.Sample)
                .filter(well -> well.used() && well.concentration().isPresent())
                .count();
        try (XSSFWorkbook book = book("cider-l-malic")) {
            for (CTScatterSer series : charts(book, "Calibration")
                    .get(0)
                    .getCTChart()
                    .getPlotArea()
                    .getScatterChartArray(0)
                    .getSerArray()) {
                if (series.getTx().getV().equals("samples")) {
                    assertThat(shown(series.getYVal().getNumRef())).hasSize((int) expected);
                }
            }
        }
    }

    @Test
    void recoveriesStandBetweenTheirLimits() throws Exception {
        Report report = SampleRuns.report("cider-l-malic");
        List<Double> recoveries = report.analysis().results().stream()
                .filter(each -> each.recoveryPercent().isPresent())
                .map(each -> each.recoveryPercent().getAsDouble())
                .toList();
        try (XSSFWorkbook book = book("cider-l-malic")) {
            XSSFChart chart = charts(book, "Checks").get(0);
            Map<String, List<Double>> series = new TreeMap<>();
            for (CTLineSer each :
                    chart.getCTChart().getPlotArea().getLineChartArray(0).getSerArray()) {
                assertFollows(book, each.getVal().getNumRef());
                series.put(each.getTx().getV(), shown(each.getVal().getNumRef()));
            }
            assertThat(series.get("recovery")).isEqualTo(recoveries);
            // The layout of the sample states 8 % and 10 %.
            assertThat(series.get("lower limit")).containsExactly(92.0, 90.0);
            assertThat(series.get("upper limit")).containsExactly(108.0, 110.0);
        }
    }
}
