package tallywell.paper;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/**
 * The structure of a document beside its looks: headings, paragraphs, tables, figures, in the order they are read (ISO
 * 32000-1:2008, 14.7 and 14.8).
 */
final class Tags {
    private static final COSName NUMS = COSName.getPDFName("Nums");
    private static final COSName LAYOUT = COSName.getPDFName("Layout");

    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement top;
    private final List<COSArray> pages = new ArrayList<>();

    Tags(PDDocument document) {
        document.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo info = new PDMarkInfo();
        info.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(info);
        top = child(root, "Document");
    }

    /** The element that holds all others. */
    PDStructureElement top() {
        return top;
    }

    /** A new element at the end of another, of one of the standard types. */
    static PDStructureElement child(PDStructureNode parent, String type) {
        PDStructureElement element = new PDStructureElement(type, parent);
        parent.appendKid(element);
        return element;
    }

    /** Says of a heading cell that it heads its column. */
    static void headsColumn(PDStructureElement cell) {
        heads(cell, "Column");
    }

    /** Says of a heading cell that it heads its row. */
    static void headsRow(PDStructureElement cell) {
        heads(cell, "Row");
    }

    private static void heads(PDStructureElement cell, String scope) {
        COSDictionary attributes = new COSDictionary();
        attributes.setName(COSName.O, "Table");
        attributes.setName(COSName.getPDFName("Scope"), scope);
        cell.getCOSObject().setItem(COSName.A, attributes);
    }

    /** Says where a figure stands on its page. */
    static void place(PDStructureElement figure, float left, float bottom, float right, float top) {
        COSDictionary attributes = new COSDictionary();
        attributes.setItem(COSName.O, LAYOUT);
        COSArray box = new COSArray();
        box.setFloatArray(new float[] {left, bottom, right, top});
        attributes.setItem(COSName.BBOX, box);
        attributes.setName(COSName.getPDFName("Placement"), "Block");
        figure.getCOSObject().setItem(COSName.A, attributes);
    }

    /** The list, still empty, of the elements of a new page by the numbers of their marks. */
    COSArray page() {
        COSArray marks = new COSArray();
        pages.add(marks);
        return marks;
    }

    /** How many pages there are. */
    int pages() {
        return pages.size();
    }

    /** Ties marks on pages to their elements. */
    void finish() {
        COSArray numbers = new COSArray();
        for (int i = 0; i < pages.size(); i++) {
            numbers.add(COSInteger.get(i));
            numbers.add(pages.get(i));
        }
        COSDictionary tree = new COSDictionary();
        tree.setItem(NUMS, numbers);
        root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
        root.getCOSObject().setInt(COSName.PARENT_TREE_NEXT_KEY, pages.size());
    }
}
