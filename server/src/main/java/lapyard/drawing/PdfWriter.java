package lapyard.drawing;

import java.awt.geom.Rectangle2D;
import java.io.ByteArrayOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;
import java.util.zip.Checksum;
import lapyard.geometry.Length;
import lapyard.working.Abandonable;
import org.apache.fop.pdf.PDFArray;
import org.apache.fop.pdf.PDFDictionary;
import org.apache.fop.pdf.PDFGoTo;
import org.apache.fop.pdf.PDFName;
import org.apache.fop.pdf.PDFOutline;
import org.apache.fop.pdf.PDFPage;
import org.apache.fop.pdf.PDFPageLabels;
import org.apache.fop.pdf.PDFReference;
import org.apache.fop.pdf.PDFRoot;
import org.apache.fop.pdf.PDFStream;

/**
 * Writes pages as one PDF, each as soon as it is there: lines as lines, text as text in embedded fonts. The same pages
 * always give the same bytes: the file tells no time of writing, and its identifier is made of its length and two checksums.
 */
public final class PdfWriter {
    /** PDF 32000-1:2008, 8.3.2.3: user space is in units of 1/72 inch. */
    static final double POINTS_IN_MM = 72 / Length.INCH_MM;

    /**
     * What a PDF says of itself: its title, and that it keeps to PDF/UA-1 (XMP, ISO 16684-1:2012; ISO 14289-1:2014, clauses 5 and 7.1).
     */
    private static final String XMP = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">TITLE</rdf:li></rdf:Alt></dc:title>
            <pdfuaid:part>1</pdfuaid:part>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>""";

    private final PdfFonts fonts = new PdfFonts();
    private final PdfFile document = new PdfFile();
    private final PDFDictionary info = new PDFDictionary();
    private final PdfPictures pictures = new PdfPictures(document);
    private final Counted out;
    private final List<PDFPage> pages = new ArrayList<>();
    private final PdfStructure structure;
    private int written;
    private boolean begun;

    /**
     * Nothing is written before the first page is handed over.
     *
     * @param out   stays open
     * @param title of the whole, for the window of a viewer
     */
    public PdfWriter(OutputStream out, String title) {
        this.out = new Counted(out);
        PDFRoot root = document.getRoot();
        String plain = PlainText.of(title);
        info.put("Title", plain);
        info.put("Creator", "Lapyard");
        info.put("Producer", "Lapyard");
        root.setLanguage(Locale.UK);
        PDFDictionary view = new PDFDictionary();
        view.put("DisplayDocTitle", true);
        root.put("ViewerPreferences", view);
        root.put("Metadata", metadata(plain));
        structure = new PdfStructure(document);
    }

    /**
     * Pages as one file.
     *
     * @param pages one or more, each of its own size
     * @throws IllegalArgumentException for no pages
     */
    public static byte[] write(List<Page> pages) {
        if (pages.isEmpty()) throw new IllegalArgumentException("a PDF needs a page");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            PdfWriter writer = new PdfWriter(bytes, pages.get(0).title());
            for (Page page : pages) writer.add(page);
            writer.finish(List.of());
        } catch (IOException e) {
            throw new IllegalStateException("memory cannot be written to", e);
        }
        return bytes.toByteArray();
    }

    /** A page whose drawing is written, but not itself; far smaller than its shapes. It belongs to the writer that painted it. */
    public static final class Painted {
        private final double widthMm;
        private final double heightMm;
        private final PDFReference contents;
        /** None once the page is added, which writes them. */
        private PageTags tags;
        private final List<Shape.Link> links;

        private Painted(Page page, PageTags tags, PdfCanvas canvas, PDFReference contents) {
            widthMm = page.widthMm();
            heightMm = page.heightMm();
            this.contents = contents;
            this.tags = tags;
            links = List.copyOf(canvas.links());
        }

        public double widthMm() {
            return widthMm;
        }

        public double heightMm() {
            return heightMm;
        }
    }

    /**
     * A line of the outline that viewers show beside the pages.
     *
     * @param page  from 0
     * @param below lines that belong to this one
     */
    public record Bookmark(String title, int page, List<Bookmark> below) {
        public Bookmark {
            title = PlainText.of(title);
            below = List.copyOf(below);
        }
    }

    /** Writes a page's drawing. Which page of the file it becomes is told by {@link #add}. */
    public Painted paint(Page page) throws IOException {
        Abandonable.check();
        PageTags tags = new PageTags(page.title());
        PdfCanvas canvas = new PdfCanvas(fonts, pictures, page.widthMm(), page.heightMm(), tags);
        canvas.draw(page.shapes());
        PDFReference contents = registered(PdfStreams.packed(canvas.operators()));
        tags.close();
        output();
        return new Painted(page, tags, canvas, contents);
    }

    /** What is registered goes out and takes no more memory. */
    private void output() throws IOException {
        if (!begun) document.outputHeader(out);
        begun = true;
        document.output(out);
    }

    public void add(Page page) throws IOException {
        add(paint(page), List.of());
    }

    /** @param over what is drawn over the painted page, such as its number */
    public void add(Painted painted, List<Shape> over) throws IOException {
        List<PDFReference> contents = new ArrayList<>(List.of(painted.contents));
        if (!over.isEmpty()) {
            PdfCanvas canvas = new PdfCanvas(fonts, pictures, painted.widthMm, painted.heightMm, painted.tags);
            canvas.draw(over);
            contents.add(registered(PdfStreams.packed(canvas.operators())));
            painted.tags.close();
        }
        PDFPage page = page(written);
        Rectangle2D box = new Rectangle2D.Double(0, 0, painted.widthMm * POINTS_IN_MM, painted.heightMm * POINTS_IN_MM);
        page.setMediaBox(box);
        page.setCropBox(box);
        page.setBleedBox(box);
        page.setTrimBox(box);
        PDFArray streams = new PDFArray(page);
        contents.forEach(streams::add);
        page.put("Contents", streams);
        structure.add(page, painted.tags, link(page, painted));
        painted.tags = null;
        document.addObject(page);
        output();
        written++;
    }

    /**
     * Ends the file: fonts, outline and tags.
     *
     * @param bookmarks the outline; none where it is empty
     * @throws IllegalArgumentException where a link or bookmark leads to a page that is not there
     */
    public void finish(List<Bookmark> bookmarks) throws IOException {
        fonts.embed(document);
        if (!bookmarks.isEmpty()) {
            PDFOutline root = document.getOutlineRoot();
            bookmarks.forEach(bookmark -> outline(root, bookmark));
            document.getRoot().setPageMode(PDFRoot.PAGEMODE_USEOUTLINES);
        }
        if (pages.size() > written) {
            throw new IllegalArgumentException("a link leads to page " + pages.size() + ", but there are " + written);
        }
        PDFPageLabels labels = document.getFactory().makePageLabels();
        labels.addPageLabel(0, "1");
        document.getRoot().setPageLabels(labels);
        structure.end();
        document.end(info, out::identifier, out);
        out.flush();
    }

    private void outline(PDFOutline parent, Bookmark bookmark) {
        PDFGoTo there = new PDFGoTo(page(bookmark.page()).referencePDF());
        there.setDestination("/Fit");
        document.registerObject(there);
        PDFOutline line = new PDFOutline(bookmark.title(), there.makeReference(), false);
        parent.addOutline(line);
        document.registerObject(line);
        bookmark.below().forEach(below -> outline(line, below));
    }

    /** The page object of that place in the file, whether it is written already or not. */
    private PDFPage page(int index) {
        while (pages.size() <= index) pages.add(document.getFactory().makePage(document.getResources(), 1, 1, pages.size()));
        return pages.get(index);
    }

    private PDFReference registered(PDFStream stream) {
        document.registerObject(stream);
        // a reference by the object would keep its buffers, 24 kB a page, until memory is short
        return new PDFReference(stream.referencePDF());
    }

    /** As plain text in the file, for readers that know nothing else of PDF. @param title {@link PlainText} */
    private PDFReference metadata(String title) {
        StringBuilder escaped = new StringBuilder();
        SvgWriter.escaped(title, "\"", escaped);
        PDFStream stream = PdfStreams.plain(XMP.replace("TITLE", escaped).getBytes(StandardCharsets.UTF_8));
        stream.put("Type", new PDFName("Metadata"));
        stream.put("Subtype", new PDFName("XML"));
        return registered(stream);
    }

    /** @return the annotations of the page's links */
    private List<PDFDictionary> link(PDFPage page, Painted painted) {
        List<PDFDictionary> made = new ArrayList<>();
        for (Shape.Link link : painted.links) {
            PDFDictionary one = new PDFDictionary();
            one.put("Type", new PDFName("Annot"));
            one.put("Subtype", new PDFName("Link"));
            one.put("Rect", new PDFArray(one, new double[] {
                link.x() * POINTS_IN_MM, (painted.heightMm - link.y() - link.heightMm()) * POINTS_IN_MM,
                (link.x() + link.widthMm()) * POINTS_IN_MM, (painted.heightMm - link.y()) * POINTS_IN_MM}));
            one.put("Border", new PDFArray(one, new int[] {0, 0, 0}));
            one.put("F", 4);
            one.put("Contents", link.words());
            one.put("Dest", new PDFArray(one, new Object[] {page(link.page()).makeReference(), new PDFName("Fit")}));
            document.registerObject(one);
            made.add(one);
        }
        if (made.isEmpty()) return made;
        PDFArray all = new PDFArray(page);
        made.forEach(one -> all.add(one.makeReference()));
        page.put("Annots", all);
        // keys go from link to link as they are read (ISO 14289-1:2014, 7.18.3)
        page.put("Tabs", new PDFName("S"));
        return made;
    }

    /** Knows what went through it, at next to no cost: whoever hands the file out makes a digest of it. */
    private static final class Counted extends FilterOutputStream {
        private final Checksum one = new CRC32();
        private final Checksum other = new CRC32C();
        private long length;

        Counted(OutputStream out) {
            super(out);
        }

        @Override
        public void write(int one) throws IOException {
            write(new byte[] {(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            one.update(bytes, from, count);
            other.update(bytes, from, count);
            length += count;
            out.write(bytes, from, count);
        }

        /** 32 hexadecimal digits of what was written so far. */
        String identifier() {
            HexFormat hex = HexFormat.of();
            return hex.toHexDigits((int) one.getValue()) + hex.toHexDigits((int) other.getValue()) + hex.toHexDigits(length);
        }
    }
}
