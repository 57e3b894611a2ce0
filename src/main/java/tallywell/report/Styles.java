package tallywell.report;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The cell styles of one workbook, each made when it is first wanted. */
final class Styles {
    /** Metric twins of this face are on every desktop, so that widths set by us fit. */
    static final String FONT = "Arial";

    private final XSSFWorkbook workbook;
    private final Map<Look, Integer> indexes = new HashMap<>();
    private final Map<Look.Face, XSSFFont> fonts = new EnumMap<>(Look.Face.class);

    Styles(XSSFWorkbook workbook) {
        this.workbook = workbook;
        XSSFFont standard = workbook.getFontAt(0);
        set(standard, Look.Face.BODY);
        fonts.put(Look.Face.BODY, standard);
        indexes.put(Look.PLAIN, 0);
    }

    /** The number of the style in the workbook. */
    int of(Look look) {
        Integer known = indexes.get(look);
        if (known == null) {
            known = (int) make(look).getIndex();
            indexes.put(look, known);
        }
        return known;
    }

    private XSSFCellStyle make(Look look) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setFont(font(look.face()));
        if (look.fill() != Look.Fill.NONE) {
            style.setFillForegroundColor(colour(look.fill().colour));
            style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        }
        if (!look.format().isEmpty()) {
            style.setDataFormat(workbook.createDataFormat().getFormat(look.format()));
        }
        align(style, look);
        edge(style, look.edge());
        style.setQuotePrefixed(look.quoted());
        return style;
    }

    private static void align(XSSFCellStyle style, Look look) {
        switch (look.align()) {
            case LEFT -> style.setAlignment(HorizontalAlignment.LEFT);
            case CENTRE -> style.setAlignment(HorizontalAlignment.CENTER);
            case RIGHT -> style.setAlignment(HorizontalAlignment.RIGHT);
            case INDENT -> {
                style.setAlignment(HorizontalAlignment.LEFT);
                style.setIndention((short) 1);
            }
            case TOP, MIDDLE, AUTO -> {}
        }
        if (look.align() == Look.Align.CENTRE || look.align() == Look.Align.MIDDLE) {
            style.setVerticalAlignment(VerticalAlignment.CENTER);
        } else if (look.wrap() || look.edge() == Look.Edge.UNDER || look.align() == Look.Align.TOP) {
            style.setVerticalAlignment(VerticalAlignment.TOP);
        }
        if (look.wrap()) {
            style.setWrapText(true);
        }
    }

    private static void edge(XSSFCellStyle style, Look.Edge edge) {
        switch (edge) {
            case NONE -> {}
            case UNDER -> {
                style.setBorderBottom(BorderStyle.THIN);
                style.setBottomBorderColor(colour(Look.Ink.LINE));
            }
            case HEAD -> {
                style.setBorderBottom(BorderStyle.MEDIUM);
                style.setBottomBorderColor(colour(Look.Ink.SOFT));
            }
            case BOX -> box(style, BorderStyle.THIN, Look.Ink.SOFT);
            case DOUBLE -> box(style, BorderStyle.DOUBLE, Look.Ink.SPRUCE);
            case HEAVY -> box(style, BorderStyle.MEDIUM, Look.Ink.BEET);
            case DASHED -> box(style, BorderStyle.DASHED, Look.Ink.SOFT);
            case DOTTED -> box(style, BorderStyle.MEDIUM_DASHED, Look.Ink.INK);
        }
    }

    private static void box(XSSFCellStyle style, BorderStyle border, String colour) {
        style.setBorderBottom(border);
        style.setBorderTop(border);
        style.setBorderLeft(border);
        style.setBorderRight(border);
        style.setBottomBorderColor(colour(colour));
        style.setTopBorderColor(colour(colour));
        style.setLeftBorderColor(colour(colour));
        style.setRightBorderColor(colour(colour));
    }

    private XSSFFont font(Look.Face face) {
        XSSFFont known = fonts.get(face);
        if (known == null) {
            known = workbook.createFont();
            set(known, face);
            fonts.put(face, known);
        }
        return known;
    }

    private static void set(XSSFFont font, Look.Face face) {
        font.setFontName(FONT);
        font.setFontHeightInPoints((short) face.points);
        font.setColor(colour(face.colour));
        font.setBold(face.bold());
        font.setItalic(face.italic());
        font.setStrikeout(face == Look.Face.STRUCK);
        if (face == Look.Face.LINK) {
            font.setUnderline(org.apache.poi.ss.usermodel.Font.U_SINGLE);
        }
    }

    /** A colour from its RGB in hexadecimal. */
    static XSSFColor colour(String rgb) {
        int value = Integer.parseInt(rgb, 16);
        // Opacity comes first (ECMA-376-1:2016, 18.8.3, rgb: ARGB).
        return new XSSFColor(new byte[] {(byte) 0xFF, (byte) (value >> 16), (byte) (value >> 8), (byte) value}, null);
    }
}
