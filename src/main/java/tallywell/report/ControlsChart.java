package tallywell.report;

import java.util.Arrays;
import java.util.Objects;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrossBetween;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.Grouping;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFLineChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;

/** Draws the recoveries of controls and spikes between their limits; it follows the cells of the table above it. */
final class ControlsChart {
    /** How many rows it takes. */
    static final int ROWS = 14;

    private final String[] names;
    private final String sheet;
    private final int first;

    /**
     * A chart of a table.
     *
     * @param names of the controls
     * @param sheet name of the sheet with the table
     * @param first first row of the table, from 0: name, lower limit, recovery, upper limit from the first column on
     */
    ControlsChart(String[] names, String sheet, int first) {
        this.names = names.clone();
        this.sheet = sheet;
        this.first = first;
    }

    /**
     * Draws it.
     *
     * @param values lower limit, recovery and upper limit of each control; null where there is none
     * @param top row of its upper edge, from 0
     */
    void draw(Sheet on, Double[][] values, int top) {
        XSSFDrawing drawing = on.poi().createDrawingPatriarch();
        XSSFClientAnchor anchor = drawing.createAnchor(0, 0, 0, 0, 0, top, 5, top + ROWS - 1);
        XSSFChart chart = drawing.createChart(anchor);
        XDDFCategoryAxis bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
        XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
        left.setTitle("recovery (%)");
        left.setCrosses(AxisCrosses.MIN);
        left.setCrossBetween(AxisCrossBetween.BETWEEN);
        left.setNumberFormat("0");
        left.setMinimum(lowerEnd(values));
        left.getOrAddMajorGridProperties().setLineProperties(CalibrationChart.line(Look.Ink.LINE, 0.5));
        XDDFLineChartData data = (XDDFLineChartData) chart.createData(ChartTypes.LINE, bottom, left);
        data.setGrouping(Grouping.STANDARD);
        data.setVaryColors(false);
        series(data, values[0], 1, "lower limit", MarkerStyle.DASH, Look.Ink.BEET);
        series(data, values[2], 3, "upper limit", MarkerStyle.DASH, Look.Ink.BEET);
        series(data, values[1], 2, "recovery", MarkerStyle.CIRCLE, Look.Ink.SPRUCE);
        chart.plot(data);
        chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
        chart.setAutoTitleDeleted(true);
    }

    /** A round number well below what is shown, so that the limits do not stand at the upper edge. */
    private static double lowerEnd(Double[][] values) {
        double least = Arrays.stream(values)
                .flatMap(Arrays::stream)
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .min()
                .orElse(0);
        return Math.min(Math.max(0, Math.floor(least / 10 - 2) * 10), 70);
    }

    private void series(
            XDDFLineChartData data, Double[] values, int column, String title, MarkerStyle marker, String colour) {
        int last = first + names.length - 1;
        XDDFCategoryDataSource controls =
                XDDFDataSourcesFactory.fromArray(names, sheet + "!" + At.fixed(first, last, 0));
        XDDFLineChartData.Series series = (XDDFLineChartData.Series) data.addSeries(
                controls, XDDFDataSourcesFactory.fromArray(values, sheet + "!" + At.fixed(first, last, column)));
        series.setTitle(title, null);
        series.setSmooth(false);
        series.setMarkerStyle(marker);
        XDDFShapeProperties look = new XDDFShapeProperties();
        look.setFillProperties(CalibrationChart.solid(colour));
        look.setLineProperties(CalibrationChart.line(colour, 0.75));
        series.getCTLineSer().getMarker().setSpPr(look.getXmlObject());
        // A limit is a line from control to control; what was found is points.
        boolean limit = marker == MarkerStyle.DASH;
        series.setLineProperties(limit ? CalibrationChart.line(colour, 1.5) : CalibrationChart.noLine());
    }
}
