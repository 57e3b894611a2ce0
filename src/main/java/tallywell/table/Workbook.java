package tallywell.table;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.apache.poi.util.XMLHelper;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.DefaultHandler;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** A workbook in Office Open XML (ISO/IEC 29500), read as a stream of cells, sheet by sheet. */
final class Workbook {
    private static final String DAMAGED = "found a damaged workbook; expected a whole xlsx file; export it again";
    private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";
    /** No sheet of readings unpacks to more; a file made to fill memory or time may. */
    private static final long MOST_UNPACKED = 1L << 30;

    private static final int HEAD = 4096;

    /** So many parts a workbook may have: one for each sheet and some more. */
    private static final long MOST_PARTS = 100_000;

    static {
        ZipSecureFile.setMaxFileCount(MOST_PARTS);
    }

    private final Path file;
    private final Limits limits;

    Workbook(Path file, Limits limits) {
        this.file = file;
        this.limits = limits;
    }

    /** Reads all sheets. */
    List<Table> sheets() throws IOException, InputException {
        inspect();
        try (OPCPackage opened = OPCPackage.open(file.toFile(), PackageAccess.READ)) {
            checkStrings(opened);
            XSSFReader reader = new XSSFReader(opened);
            // Phonetic hints are no part of a text.
            SheetCells.Strings strings = new SheetCells.Strings(new ReadOnlySharedStringsTable(opened, false));
            Clocks clocks = clocks(reader);
            List<Table> tables = new ArrayList<>();
            XSSFReader.SheetIterator sheets = (XSSFReader.SheetIterator) reader.getSheetsData();
            while (sheets.hasNext()) {
                try (InputStream in = sheets.next()) {
                    SheetCells cells = new SheetCells(new CellCollector(file, limits), strings, clocks);
                    parse(in, cells);
                    List<String> hidden = new ArrayList<>(cells.hidden());
                    if (clocks.hiddenSheets().contains(sheets.getSheetName())) {
                        hidden.add(0, "the sheet is hidden; it was read like any other");
                    }
                    tables.add(new Table(file, sheets.getSheetName(), cells.cells(), hidden));
                }
            }
            return tables;
        } catch (SheetCells.Stopped e) {
            throw e.reason();
        } catch (SAXParseException e) {
            throw new InputException(Place.file(file), DAMAGED, e);
        } catch (SAXException | OpenXML4JException | ParserConfigurationException | IOException e) {
            throw new InputException(Place.file(file), DAMAGED, e);
        } catch (RuntimeException e) {
            // The library answers damaged packages with unchecked exceptions of many kinds.
            throw new InputException(Place.file(file), DAMAGED, e);
        }
    }

    private void parse(InputStream in, DefaultHandler handler)
            throws IOException, SAXException, ParserConfigurationException {
        XMLReader xml = XMLHelper.newXMLReader();
        xml.setFeature(NO_DOCTYPE, true);
        xml.setContentHandler(handler);
        xml.setErrorHandler(handler);
        xml.parse(new InputSource(new Bounded(in, MOST_UNPACKED)));
    }

    private Clocks clocks(XSSFReader reader)
            throws IOException, SAXException, ParserConfigurationException, OpenXML4JException {
        Clocks clocks = new Clocks();
        try (InputStream book = reader.getWorkbookData()) {
            parse(book, clocks);
        }
        try (InputStream styles = reader.getStylesData()) {
            if (styles != null) {
                parse(styles, clocks);
            }
        }
        return clocks;
    }

    /** Looks at the parts before the library does. */
    private void inspect() throws InputException {
        boolean book = false;
        try (ZipFile zip = new ZipFile(file.toFile())) {
            Enumeration<? extends ZipEntry> entries = zip.entries();
            while (entries.hasMoreElements()) {
                ZipEntry entry = entries.nextElement();
                book |= entry.getName().equals("[Content_Types].xml");
                if (entry.getName().endsWith(".xml") && hasDoctype(zip, entry)) {
                    throw new InputException(
                            Place.in(file, entry.getName()),
                            "found a document type declaration, which can point to other files; expected a workbook"
                                    + " without one; save it again from a spreadsheet program");
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            throw new InputException(Place.file(file), DAMAGED, e);
        }
        if (!book) {
            throw new InputException(
                    Place.file(file), "found a zip file that is no workbook; expected a text file or a workbook");
        }
    }

    private static boolean hasDoctype(ZipFile zip, ZipEntry entry) throws IOException {
        try (InputStream in = zip.getInputStream(entry)) {
            // Without its zero bytes UTF-16 reads the same.
            String head = new String(in.readNBytes(HEAD), StandardCharsets.ISO_8859_1).replace("\0", "");
            return head.contains("<!DOCTYPE");
        }
    }

    /** The strings of a workbook lie in memory together, so their size must be known to be bearable. */
    private void checkStrings(OPCPackage opened) throws IOException, InputException {
        for (PackagePart part : opened.getPartsByContentType(XSSFRelation.SHARED_STRINGS.getContentType())) {
            try (InputStream in = part.getInputStream()) {
                byte[] chunk = new byte[1 << 16];
                long size = 0;
                for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
                    size += n;
                    // In memory each takes several times its bytes.
                    limits.checkBytes(file, size * 4);
                }
            }
        }
    }

    /** Ends a stream that unpacks to more than a bound. */
    private static final class Bounded extends FilterInputStream {
        private long left;

        Bounded(InputStream in, long most) {
            super(in);
            left = most;
        }

        @Override
        public int read() throws IOException {
            int read = super.read();
            count(read < 0 ? 0 : 1);
            return read;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            int read = super.read(bytes, from, length);
            count(Math.max(read, 0));
            return read;
        }

        private void count(int read) throws IOException {
            left -= read;
            if (left < 0) {
                throw new IOException("a part of the workbook unpacks to more than 1 GB");
            }
        }
    }
}
