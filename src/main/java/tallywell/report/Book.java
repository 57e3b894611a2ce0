package tallywell.report;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFName;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook in the making. The same calls give the same bytes.
 *
 * <p>Styles, print set-up, names and charts are made by POI, cells by {@link SheetText}; the two are put together when
 * the file is written.
 */
final class Book implements Closeable {
    private static final String CHARTS = "xl/charts/";
    private static final Pattern LANGUAGE = Pattern.compile(" lang=\"[A-Za-z-]*\"");
    private static final String NO_ROWS = "<sheetData/>";

    /**
     * What entries carry in place of a time: the second day that a zip file can name. With the very first moment, Java adds
     * a further field whose time depends on the zone of the machine.
     */
    private static final LocalDateTime ZIP_TIME = LocalDateTime.of(1980, 1, 2, 0, 0);

    private final XSSFWorkbook poi = new XSSFWorkbook();
    private final Styles styles = new Styles(poi);
    private final Map<String, Sheet> sheets = new LinkedHashMap<>();

    /** The workbook as POI has it. */
    XSSFWorkbook poi() {
        return poi;
    }

    /** Adds a sheet whose rows are kept in memory. */
    Sheet add(String name) {
        return add(name, new Store.Memory());
    }

    /** Adds a sheet whose rows are kept in a store until the workbook is written. */
    Sheet add(String name, Store store) {
        XSSFSheet made = poi.createSheet(name);
        made.setDisplayGridlines(false);
        Sheet sheet = new Sheet(made, styles, store);
        sheets.put("xl/worksheets/" + partName(made), sheet);
        return sheet;
    }

    private static String partName(XSSFSheet sheet) {
        String path = sheet.getPackagePart().getPartName().getName();
        return path.substring(path.lastIndexOf('/') + 1);
    }

    /** Gives cells a name that formulas and people can use. */
    void name(String name, String cells) {
        XSSFName made = poi.createName();
        made.setNameName(name);
        made.setRefersToFormula(cells);
    }

    /** Says what the document is, as file managers show it. */
    void describe(String title, String author, String version, Instant made) {
        POIXMLProperties properties = poi.getProperties();
        POIXMLProperties.CoreProperties core = properties.getCoreProperties();
        core.setTitle(xml(title));
        core.setCreator(xml(author));
        core.setSubjectProperty("Results of an enzymatic assay");
        Date time = Date.from(made);
        core.setCreated(Optional.of(time));
        core.setModified(Optional.of(time));
        core.setLastModifiedByUser("Tallywell " + version);
        properties.getExtendedProperties().setApplication("Tallywell");
    }

    /** Text without what XML forbids; properties and footers have no way to write that. */
    static String xml(String text) {
        StringBuilder allowed = new StringBuilder();
        text.codePoints()
                .filter(c -> c == '\t' || c >= ' ' && c < 0xD800 || c >= 0xE000 && c < 0xFFFE || c > 0xFFFF)
                .forEach(allowed::appendCodePoint);
        return allowed.toString();
    }

    /** Writes the workbook; nothing may be added any more. */
    void write(OutputStream out) throws IOException {
        for (Sheet sheet : sheets.values()) {
            sheet.text().finish();
            sheet.poi()
                    .setDimensionOverride(CellRangeAddress.valueOf(sheet.text().extent()));
        }
        ByteArrayOutputStream frame = new ByteArrayOutputStream();
        poi.write(frame);
        ZipOutputStream zip = new ZipOutputStream(out);
        try (ZipInputStream parts = new ZipInputStream(new ByteArrayInputStream(frame.toByteArray()))) {
            for (ZipEntry part = parts.getNextEntry(); part != null; part = parts.getNextEntry()) {
                ZipEntry entry = new ZipEntry(part.getName());
                entry.setTimeLocal(ZIP_TIME);
                Sheet sheet = sheets.get(part.getName());
                // Inputs of many runs are many megabytes of digits: packing them well would take longer than all else.
                boolean quick = sheet != null && sheet.store() instanceof Store.Disk;
                zip.setLevel(quick ? Deflater.BEST_SPEED : Deflater.DEFAULT_COMPRESSION);
                zip.putNextEntry(entry);
                write(part.getName(), parts, zip);
                zip.closeEntry();
            }
        }
        zip.finish();
        zip.flush();
    }

    private void write(String name, InputStream part, OutputStream to) throws IOException {
        Sheet sheet = sheets.get(name);
        if (sheet == null) {
            if (name.startsWith(CHARTS)) {
                // POI writes the language of the machine, which would change the bytes.
                String xml = new String(part.readAllBytes(), StandardCharsets.UTF_8);
                to.write(LANGUAGE.matcher(xml).replaceAll(" lang=\"en\"").getBytes(StandardCharsets.UTF_8));
            } else {
                part.transferTo(to);
            }
            return;
        }
        String xml = new String(part.readAllBytes(), StandardCharsets.UTF_8);
        int at = xml.indexOf(NO_ROWS);
        if (at < 0) {
            throw new IllegalStateException("no place for the rows in " + name);
        }
        to.write((xml.substring(0, at) + "<sheetData>").getBytes(StandardCharsets.UTF_8));
        try (InputStream rows = sheet.store().in()) {
            rows.transferTo(to);
        }
        to.write(("</sheetData>" + xml.substring(at + NO_ROWS.length())).getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void close() throws IOException {
        for (Sheet sheet : sheets.values()) {
            sheet.store().close();
        }
        poi.close();
    }
}
