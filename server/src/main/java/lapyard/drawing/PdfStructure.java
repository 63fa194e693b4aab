package lapyard.drawing;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.fop.pdf.PDFArray;
import org.apache.fop.pdf.PDFDictionary;
import org.apache.fop.pdf.PDFObject;
import org.apache.fop.pdf.PDFPage;
import org.apache.fop.pdf.PDFParentTree;
import org.apache.fop.pdf.PDFReference;
import org.apache.fop.pdf.PDFStructElem;
import org.apache.fop.pdf.PDFStructTreeRoot;
import org.apache.fop.pdf.StandardStructureTypes;

/**
 * The logical structure of one PDF (ISO 32000-1:2008, 14.7): a document of sections, one for each page, of what {@link PageTags}
 * holds. An element of the library takes 1.6 kB until the file ends, and a large set has several hundred thousand.
 */
final class PdfStructure {
    private final PdfWriter.Kept document;
    private final PDFParentTree parents = new PDFParentTree();
    private final PDFStructElem whole;
    private final List<Section> sections = new ArrayList<>();
    private int nextParent;

    /** The section of which the elements are written, and these. */
    private Section open;

    private String[] written = {};

    PdfStructure(PdfWriter.Kept document) {
        this.document = document;
        document.getRoot().makeTagged();
        PDFStructTreeRoot root = document.makeStructTreeRoot(parents);
        whole = new PDFStructElem(root, StandardStructureTypes.Grouping.DOCUMENT);
        document.assignObjectNumber(whole);
        whole.setParent(root);
        document.registerStructureElement(whole);
        root.addKid(whole);
    }

    /** @param links annotations of the page, which are not written yet */
    void add(PDFPage page, PageTags tags, List<PDFDictionary> links) {
        int first = document.reserve(tags.elements());
        int[] annotations = links.stream().mapToInt(link -> link.getObjectNumber().getNumber()).toArray();
        sections.add(new Section(tags, first, page.getObjectNumber().getNumber(), annotations));
        page.setStructParents(nextParent);
        Written byMark = new Written(tags.byMark(first));
        document.registerObject(byMark);
        parents.addToNums(nextParent++, new PDFReference(byMark.referencePDF())); // the object would keep what it holds
        int[] linked = tags.linked(annotations.length);
        for (int i = 0; i < linked.length; i++) {
            if (linked[i] == 0) continue;
            links.get(i).put("StructParent", nextParent);
            parents.addToNums(nextParent++, new PDFReference(first + linked[i] + " 0 R"));
        }
    }

    /** Hands all elements to the document, which writes them at its end. */
    void end() {
        PDFArray kids = new PDFArray();
        for (Section section : sections) {
            kids.add(new PDFReference(section.first + " 0 R"));
            for (int i = 0; i < section.tags.elements(); i++) document.addObject(new Element(section, i));
        }
        if (!sections.isEmpty()) whole.put("K", kids);
    }

    /** A page's tags with the numbers that their objects have. */
    private record Section(PageTags tags, int first, int page, int[] annotations) {}

    /** All that it holds is made when it is written. */
    private final class Element extends PDFObject {
        private final Section section;
        private final int element;

        Element(Section section, int element) {
            this.section = section;
            this.element = element;
            setObjectNumber(section.first + element);
        }

        @Override
        public int output(OutputStream out) throws IOException {
            if (open != section) {
                open = section;
                written = section.tags.written(section.first, section.page, whole.getObjectNumber().getNumber(), section.annotations);
            }
            byte[] bytes = encode(written[element]);
            out.write(bytes);
            return bytes.length;
        }
    }

    /** Something short that is written as it is. */
    private static final class Written extends PDFObject {
        private final byte[] bytes;

        Written(String text) {
            bytes = encode(text);
        }

        @Override
        public int output(OutputStream out) throws IOException {
            out.write(bytes);
            return bytes.length;
        }
    }
}
