package lapyard.drawing;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;

/** The logical structure of a PDF and the marked content of its pages, as a reader of the file sees them. */
public final class PdfTags {
    /** @param words all that is read out of it, its kids' among it */
    public record Element(String type, String words, String alternative, COSDictionary made, List<Element> kids) {
        /** This one and all below it, as they are read. */
        public Stream<Element> all() {
            return Stream.concat(Stream.of(this), kids.stream().flatMap(Element::all));
        }

        public List<Element> all(String type) {
            return all().filter(one -> one.type.equals(type)).toList();
        }
    }

    /** Marked content: of an element where it has a number, else an artifact. */
    public record Marked(String tag, int number, String artifact, String subtype, StringBuilder words) {}

    /** What is painted on a page. */
    public static final class Painted extends PDFGraphicsStreamEngine {
        public final List<Marked> marked = new ArrayList<>();
        /** What is painted outside of all marked content, or in two at once. */
        public final List<String> astray = new ArrayList<>();
        private final Deque<Marked> open = new ArrayDeque<>();

        private Painted(PDPage page) {
            super(page);
        }

        private void painted(String what) {
            if (open.size() != 1) astray.add(what + " in " + open.size() + " marks");
            if (!open.isEmpty() && what.length() > 0) open.peek().words.append(what);
        }

        @Override
        public void beginMarkedContentSequence(COSName tag, COSDictionary properties) {
            COSDictionary said = properties == null ? new COSDictionary() : properties;
            open.push(new Marked(tag.getName(), said.getInt(COSName.MCID, -1), said.getNameAsString(COSName.TYPE, ""), said.getNameAsString(COSName.SUBTYPE, ""), new StringBuilder()));
            marked.add(open.peek());
        }

        @Override
        public void endMarkedContentSequence() {
            open.pop();
        }

        @Override
        protected void showGlyph(Matrix matrix, PDFont font, int code, Vector displacement) throws IOException {
            painted(font.toUnicode(code));
        }

        @Override
        public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {}

        @Override
        public void drawImage(PDImage image) {
            painted("");
        }

        @Override
        public void clip(int windingRule) {}

        @Override
        public void moveTo(float x, float y) {}

        @Override
        public void lineTo(float x, float y) {}

        @Override
        public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

        @Override
        public Point2D getCurrentPoint() {
            return new Point2D.Double();
        }

        @Override
        public void closePath() {}

        @Override
        public void endPath() {}

        @Override
        public void strokePath() {
            painted("");
        }

        @Override
        public void fillPath(int windingRule) {
            painted("");
        }

        @Override
        public void fillAndStrokePath(int windingRule) {
            painted("");
        }

        @Override
        public void shadingFill(COSName shading) {
            painted("");
        }
    }

    private final PDDocument pdf;
    private final Map<COSDictionary, Painted> pages = new HashMap<>();

    /** Number of an element's marked content, by page and mark. */
    private final Map<COSDictionary, Map<Integer, COSDictionary>> owners = new HashMap<>();

    private PdfTags(PDDocument pdf) throws IOException {
        this.pdf = pdf;
        for (PDPage page : pdf.getPages()) {
            Painted painted = new Painted(page);
            painted.processPage(page);
            pages.put(page.getCOSObject(), painted);
        }
    }

    public static PdfTags of(PDDocument pdf) throws IOException {
        return new PdfTags(pdf);
    }

    public Painted painted(PDPage page) {
        return pages.get(page.getCOSObject());
    }

    /** The element at the top. */
    public Element whole() {
        COSBase top = pdf.getDocumentCatalog().getStructureTreeRoot().getK();
        COSBase only = top instanceof COSArray array ? array.getObject(0) : top;
        return element((COSDictionary) only, pdf.getDocumentCatalog().getStructureTreeRoot().getCOSObject());
    }

    /** The element that the tree says owns a mark, after {@link #whole}. */
    public COSDictionary owner(PDPage page, int mark) {
        return owners.getOrDefault(page.getCOSObject(), Map.of()).get(mark);
    }

    /** The element that the parent tree says owns a mark (ISO 32000-1:2008, 14.7.4.4). */
    public COSBase byParentTree(PDPage page, int mark) throws IOException {
        PDParentTreeValue marks = (PDParentTreeValue) pdf.getDocumentCatalog().getStructureTreeRoot().getParentTree().getValue(page.getStructParents());
        return ((COSArray) marks.getCOSObject()).getObject(mark);
    }

    private Element element(COSDictionary made, COSBase parent) {
        if (made.getDictionaryObject(COSName.P) != parent) throw new AssertionError("an element is not below its parent: " + made);
        StringBuilder words = new StringBuilder();
        List<Element> kids = new ArrayList<>();
        COSBase below = made.getDictionaryObject(COSName.K);
        COSArray all = below instanceof COSArray array ? array : new COSArray();
        for (int i = 0; i < all.size(); i++) {
            COSBase kid = all.getObject(i);
            if (kid instanceof COSInteger mark) {
                COSDictionary page = made.getCOSDictionary(COSName.PG);
                Marked marked = pages.get(page).marked.stream().filter(one -> one.number == mark.intValue()).findFirst().orElseThrow();
                if (!marked.tag.equals(made.getNameAsString(COSName.S))) throw new AssertionError(marked + " belongs to " + made);
                if (owners.computeIfAbsent(page, one -> new HashMap<>()).put(mark.intValue(), made) != null) throw new AssertionError("owned twice: " + marked);
                words.append(marked.words);
            } else if (kid instanceof COSDictionary one && one.getNameAsString(COSName.TYPE).equals("StructElem")) {
                kids.add(element(one, made));
                words.append(kids.get(kids.size() - 1).words);
            }
        }
        return new Element(made.getNameAsString(COSName.S), words.toString().strip(), made.getString(COSName.ALT, ""), made, kids);
    }
}
