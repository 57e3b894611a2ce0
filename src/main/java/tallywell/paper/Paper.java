package tallywell.paper;

import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * A document in the making: pages with a footer each, tags, bookmarks. It is PDF/A-2a (ISO 19005-2) and PDF/UA-1 (ISO
 * 14289-1), and the same pages of the same time are the same bytes.
 */
final class Paper implements Closeable {
    static final double MARGIN = 42;

    private static final double FOOT = Page.LONG - 26;
    private static final double FOOT_SIZE = 7;
    private static final double NUMBER_WIDTH = 70;

    private final PDDocument document = new PDDocument();
    private final Letters letters;
    private final Tags tags;
    private final List<Page> pages = new ArrayList<>();
    private final List<Identity> identities = new ArrayList<>();
    private final PDDocumentOutline outline = new PDDocumentOutline();

    Paper() throws IOException {
        letters = new Letters(document);
        tags = new Tags(document);
    }

    Letters letters() {
        return letters;
    }

    PDDocument document() {
        return document;
    }

    PDStructureElement top() {
        return tags.top();
    }

    /**
     * A new page.
     *
     * @param identity what its footer says of where it belongs
     */
    Page page(Identity identity) throws IOException {
        if (!pages.isEmpty()) {
            pages.get(pages.size() - 1).close();
        }
        Page page = new Page(document, letters, tags);
        pages.add(page);
        identities.add(identity);
        return page;
    }

    /** A bookmark to a page. */
    void bookmark(String title, Page page) {
        PDPageFitDestination destination = new PDPageFitDestination();
        destination.setPage(page.pd());
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(letters.clean(title, Face.PLAIN));
        item.setDestination(destination);
        outline.addLast(item);
    }

    /** Something that is written on pages when all of them are there. */
    interface Late {
        void write() throws IOException;
    }

    /**
     * Ends the pages and writes the document.
     *
     * @param facts what the document says of itself
     * @param late what is written on reopened pages last
     * @param out where to; left open
     */
    void write(Facts facts, Late late, OutputStream out) throws IOException {
        if (!pages.isEmpty()) {
            pages.get(pages.size() - 1).close();
        }
        for (Page page : pages) {
            page.reopen(document);
        }
        late.write();
        for (int i = 0; i < pages.size(); i++) {
            footer(pages.get(i), identities.get(i), i + 1);
            pages.get(i).close();
        }
        catalog(facts);
        tags.finish();
        // The id of a document follows from its facts and this number; without one it would follow from the clock.
        document.setDocumentId(facts.made().getEpochSecond());
        document.save(out);
    }

    private void footer(Page page, Identity identity, int number) throws IOException {
        page.line(Ink.LINE, 0.5, MARGIN, FOOT - 11, Page.SHORT - MARGIN, FOOT - 11);
        String mark = identity.mark().isEmpty() ? "" : " · " + identity.mark();
        double marked = letters.width(mark, Face.PLAIN, FOOT_SIZE);
        double room = Page.SHORT - 2 * MARGIN - NUMBER_WIDTH - marked;
        String name = letters.cut(letters.clean(identity.name(), Face.PLAIN), Face.PLAIN, FOOT_SIZE, room);
        page.furniture(Direction.seen(name) + mark, Face.PLAIN, FOOT_SIZE, Ink.SOFT, MARGIN, FOOT);
        String count = "page " + number + " of " + pages.size();
        double width = letters.width(count, Face.PLAIN, FOOT_SIZE);
        page.furniture(count, Face.PLAIN, FOOT_SIZE, Ink.SOFT, Page.SHORT - MARGIN - width, FOOT);
    }

    private void catalog(Facts facts) throws IOException {
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setLanguage("en");
        if (outline.hasChildren()) {
            catalog.setDocumentOutline(outline);
        }
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        catalog.setViewerPreferences(preferences);
        PDOutputIntent intent = new PDOutputIntent(document, new ByteArrayInputStream(Srgb.profile()));
        intent.setInfo("sRGB IEC61966-2.1");
        intent.setOutputCondition("sRGB IEC61966-2.1");
        intent.setOutputConditionIdentifier("sRGB IEC61966-2.1");
        intent.setRegistryName("http://www.color.org");
        catalog.addOutputIntent(intent);
        facts.describe(document);
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
