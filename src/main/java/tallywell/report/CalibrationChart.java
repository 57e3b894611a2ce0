package tallywell.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFNoFillProperties;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.ScatterStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFScatterChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import tallywell.curve.Calibration;
import tallywell.curve.Curve;
import tallywell.curve.Line;
import tallywell.curve.Standard;
import tallywell.plate.Content;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.report.CalibrationPlaces.Section;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Draws the standards of a step and the curve through them, beside the facts; it follows the cells. */
final class CalibrationChart {
    private static final int LEFT = 4;
    private static final int RIGHT = 9;
    private static final int CURVE_STEPS = 60;

    /** As long as a formula may be (ECMA-376 leaves it to applications; spreadsheets allow this much). */
    private static final int LONGEST_REFERENCE = 8_000;

    private CalibrationChart() {}

    static void draw(Draft draft, Sheet sheet, StepAnalysis step, Section section) {
        Calibration calibration = step.calibration().orElseThrow();
        XSSFDrawing drawing = sheet.poi().createDrawingPatriarch();
        int top = section.factsHead();
        XSSFClientAnchor anchor =
                drawing.createAnchor(0, 0, 0, 0, LEFT, top, RIGHT, top + CalibrationPlaces.CHART_ROWS - 1);
        XSSFChart chart = drawing.createChart(anchor);
        XDDFValueAxis bottom = chart.createValueAxis(AxisPosition.BOTTOM);
        XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
        bottom.setTitle(step.step().analyte().name() + " (g/L)");
        left.setTitle("net ΔA");
        left.setCrosses(AxisCrosses.MIN);
        bottom.setCrosses(AxisCrosses.MIN);
        bottom.setMinimum(0);
        bottom.setNumberFormat("General");
        left.setNumberFormat("0.0##");
        grid(left);
        XDDFScatterChartData data = (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, bottom, left);
        data.setStyle(ScatterStyle.LINE_MARKER);
        standards(data, step, section);
        curve(data, calibration, section, calibration.curve() instanceof Line);
        wells(
                data,
                draft,
                step,
                "samples",
                MarkerStyle.DIAMOND,
                Look.Ink.SOFT,
                Content.Sample.class,
                Content.Spike.class);
        wells(data, draft, step, "controls", MarkerStyle.TRIANGLE, Look.Ink.AMBER, Content.Control.class);
        chart.plot(data);
        chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
        chart.setAutoTitleDeleted(true);
    }

    /** Marks the used wells of some roles that have a value where they stand on the curve; none if there are too many. */
    private static void wells(
            XDDFScatterChartData data,
            Draft draft,
            StepAnalysis step,
            String title,
            MarkerStyle marker,
            String colour,
            Class<?>... roles) {
        // A column may hold empty texts, which would turn the levels into numbers of rows: only wells with a value.
        List<WellResult> wells = step.where(well -> well.used()
                && well.concentration().isPresent()
                && Arrays.stream(roles).anyMatch(role -> role.isInstance(well.content())));
        String levels = cells(draft, step, wells, WellPlaces.Working.CONCENTRATION.column());
        String nets = cells(draft, step, wells, WellColumns.NET_DELTA_A.column());
        if (wells.isEmpty() || Math.max(levels.length(), nets.length()) > LONGEST_REFERENCE) {
            return;
        }
        Double[] x = wells.stream()
                .map(well -> WellsSheet.plain(step, well).orElseThrow())
                .toArray(Double[]::new);
        Double[] y = wells.stream().map(well -> well.netDeltaA().orElseThrow()).toArray(Double[]::new);
        XDDFScatterChartData.Series series =
                (XDDFScatterChartData.Series) data.addSeries(source(x, levels), source(y, nets));
        series.setTitle(title, null);
        series.setMarkerStyle(marker);
        XDDFShapeProperties look = new XDDFShapeProperties();
        look.setFillProperties(new XDDFNoFillProperties());
        look.setLineProperties(line(colour, 1));
        series.getCTScatterSer().getMarker().setSpPr(look.getXmlObject());
        series.setLineProperties(noLine());
    }

    /** Cells of a column of the sheet Wells, those below each other joined. */
    private static String cells(Draft draft, StepAnalysis step, List<WellResult> wells, int column) {
        List<String> areas = new ArrayList<>();
        for (int from = 0; from < wells.size(); ) {
            int first = row(draft, step, wells.get(from));
            int to = from;
            while (to + 1 < wells.size() && row(draft, step, wells.get(to + 1)) == first + to + 1 - from) {
                to++;
            }
            int last = first + to - from;
            areas.add(
                    WellPlaces.SHEET + "!" + (last == first ? At.fixed(first, column) : At.fixed(first, last, column)));
            from = to + 1;
        }
        String all = String.join(",", areas);
        return areas.size() > 1 ? "(" + all + ")" : all;
    }

    private static int row(Draft draft, StepAnalysis step, WellResult well) {
        return draft.wells().row(step.number(), well.well());
    }

    /** Draws a chart of nothing, so that the classes for charts are there. */
    static void prepare(Sheet sheet) {
        XSSFDrawing drawing = sheet.poi().createDrawingPatriarch();
        XSSFChart chart = drawing.createChart(drawing.createAnchor(0, 0, 0, 0, 0, 0, 1, 1));
        XDDFValueAxis bottom = chart.createValueAxis(AxisPosition.BOTTOM);
        XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
        bottom.setTitle("x");
        grid(left);
        XDDFScatterChartData data = (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, bottom, left);
        data.setStyle(ScatterStyle.LINE_MARKER);
        Double[] values = {0.0, 1.0};
        XDDFScatterChartData.Series series = (XDDFScatterChartData.Series)
                data.addSeries(source(values, "Summary!$A$1:$A$2"), source(values, "Summary!$A$1:$A$2"));
        series.setMarkerStyle(MarkerStyle.CIRCLE);
        series.setLineProperties(line(Look.Ink.BEET, 1));
        chart.plot(data);
        chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    }

    private static void grid(XDDFValueAxis axis) {
        XDDFShapeProperties properties = axis.getOrAddMajorGridProperties();
        properties.setLineProperties(line(Look.Ink.LINE, 0.5));
    }

    private static void standards(XDDFScatterChartData data, StepAnalysis step, Section section) {
        List<WellResult> points = section.points();
        Double[] levels = new Double[points.size()];
        Double[] nets = new Double[points.size()];
        for (int i = 0; i < points.size(); i++) {
            int index = step.calibrationWells().indexOf(points.get(i).well());
            Standard standard = index < 0
                    ? null
                    : step.calibration().orElseThrow().standards().get(index);
            levels[i] = standard == null ? null : (Double) standard.level();
            nets[i] = standard == null ? null : (Double) standard.response();
        }
        XDDFScatterChartData.Series series = (XDDFScatterChartData.Series) data.addSeries(
                source(levels, sheetRange(section.points(1))),
                source(nets, sheetRange(section.points(Scope.USED.net))));
        series.setTitle("standards", null);
        series.setMarkerStyle(MarkerStyle.CIRCLE);
        XDDFShapeProperties marker = new XDDFShapeProperties();
        marker.setFillProperties(solid(Look.Ink.SPRUCE));
        marker.setLineProperties(line(Look.Ink.SPRUCE, 0.75));
        series.getCTScatterSer().getMarker().setSpPr(marker.getXmlObject());
        series.setLineProperties(noLine());
    }

    private static String sheetRange(String cells) {
        return CalibrationPlaces.SHEET + "!" + cells;
    }

    private static void curve(XDDFScatterChartData data, Calibration calibration, Section section, boolean isLine) {
        Curve curve = calibration.curve();
        double from = calibration.lowest();
        double to = calibration.highest();
        XDDFScatterChartData.Series series;
        if (isLine) {
            series = (XDDFScatterChartData.Series) data.addSeries(
                    source(new Double[] {from, to}, ends(section, Fact.LOWEST, Fact.HIGHEST)),
                    source(
                            new Double[] {curve.at(from), curve.at(to)},
                            ends(section, Fact.NET_LOWEST, Fact.NET_HIGHEST)));
        } else {
            Double[] x = new Double[CURVE_STEPS + 1];
            Double[] y = new Double[CURVE_STEPS + 1];
            for (int i = 0; i <= CURVE_STEPS; i++) {
                x[i] = from + (to - from) * i / CURVE_STEPS;
                y[i] = curve.at(x[i]);
            }
            series = (XDDFScatterChartData.Series)
                    data.addSeries(XDDFDataSourcesFactory.fromArray(x), XDDFDataSourcesFactory.fromArray(y));
        }
        series.setTitle(isLine ? "line" : "curve", null);
        series.setMarkerStyle(MarkerStyle.NONE);
        series.setSmooth(!isLine);
        series.setLineProperties(line(Look.Ink.BEET, 1.75));
    }

    private static String ends(Section section, Fact from, Fact to) {
        return sheetRange(section.own(from, Scope.USED) + ":" + section.own(to, Scope.USED));
    }

    private static XDDFNumericalDataSource<Double> source(Double[] values, String cells) {
        return XDDFDataSourcesFactory.fromArray(values, cells);
    }

    static XDDFSolidFillProperties solid(String rgb) {
        int value = Integer.parseInt(rgb, 16);
        return new XDDFSolidFillProperties(
                XDDFColor.from(new byte[] {(byte) (value >> 16), (byte) (value >> 8), (byte) value}));
    }

    static XDDFLineProperties noLine() {
        return new XDDFLineProperties(new XDDFNoFillProperties());
    }

    static XDDFLineProperties line(String rgb, double points) {
        XDDFLineProperties line = new XDDFLineProperties(solid(rgb));
        line.setWidth(points);
        return line;
    }
}
