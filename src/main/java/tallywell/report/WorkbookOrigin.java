package tallywell.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Which program wrote a workbook last, and who did the work, as its document properties say.
 *
 * @param application the program, such as {@code Tallywell}; empty if the workbook does not say
 * @param author who did the work; empty if the workbook does not say
 */
public record WorkbookOrigin(String application, String author) {
    private static final long LARGEST = 1 << 20;

    /** Whether the workbook is as this program wrote it, and no other has saved it since. */
    public boolean isOurs() {
        return application.equals("Tallywell");
    }

    /**
     * Reads the properties.
     *
     * @return empty if the file is no workbook in the xlsx form
     * @throws IOException if the file cannot be read
     */
    public static Optional<WorkbookOrigin> of(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            if (zip.getEntry("xl/workbook.xml") == null) {
                return Optional.empty();
            }
            return Optional.of(new WorkbookOrigin(
                    text(zip, "docProps/app.xml", "Application"), text(zip, "docProps/core.xml", "creator")));
        } catch (java.util.zip.ZipException | XMLStreamException e) {
            return Optional.empty();
        }
    }

    private static String text(ZipFile zip, String part, String element) throws IOException, XMLStreamException {
        ZipEntry entry = zip.getEntry(part);
        if (entry == null || entry.getSize() > LARGEST) {
            return "";
        }
        XMLInputFactory factory = XMLInputFactory.newFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try (InputStream in = zip.getInputStream(entry)) {
            XMLStreamReader reader = factory.createXMLStreamReader(in);
            while (reader.hasNext()) {
                if (reader.next() == XMLStreamConstants.START_ELEMENT
                        && reader.getLocalName().equals(element)) {
                    return reader.getElementText().strip();
                }
            }
            return "";
        }
    }
}
