package lapyard.drawing;

import java.io.IOException;
import java.io.OutputStream;
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
 * holds. An element of the library takes 1.6 kB until the file ends, and a large set has several hundred thousand: those of a page are
 * written with it.
 */
final class PdfStructure {
    private final PdfFile document;
    private final PDFParentTree parents = new PDFParentTree();
    private final PDFStructElem whole;
    private final PDFArray sections = new PDFArray();
    private int nextParent;

    PdfStructure(PdfFile document) {
        this.document = document;
        document.getRoot().makeTagged();
        PDFStructTreeRoot root = document.makeStructTreeRoot(parents);
        whole = new PDFStructElem(root, StandardStructureTypes.Grouping.DOCUMENT);
        document.assignObjectNumber(whole);
        whole.setParent(root);
        document.addTrailerObject(whole);
        root.addKid(whole);
    }

    /** @param links annotations of the page, which are not written yet */
    void add(PDFPage page, PageTags tags, List<PDFDictionary> links) {
        int first = document.reserve(tags.elements());
        int[] annotations = links.stream().mapToInt(link -> link.getObjectNumber().getNumber()).toArray();
        sections.add(new PDFReference(first + " 0 R"));
        document.packed(first, tags.written(first, page.getObjectNumber().getNumber(), whole.getObjectNumber().getNumber(), annotations));
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

    /** After the last page. */
    void end() {
        if (sections.length() > 0) whole.put("K", sections);
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
