package lapyard.drawing;

import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.UserAgentAdapter;
import org.apache.batik.ext.awt.RenderingHintsKeyExt;
import org.apache.fop.apps.FOPException;
import org.apache.fop.apps.io.ResourceResolverFactory;
import org.apache.fop.configuration.ConfigurationException;
import org.apache.fop.configuration.DefaultConfigurationBuilder;
import org.apache.fop.fonts.DefaultFontConfig;
import org.apache.fop.fonts.DefaultFontConfigurator;
import org.apache.fop.fonts.FontCacheManagerFactory;
import org.apache.fop.fonts.FontDetectorFactory;
import org.apache.fop.fonts.FontInfo;
import org.apache.fop.fonts.FontManager;
import org.apache.fop.fonts.FontSetup;
import org.apache.fop.pdf.PDFArray;
import org.apache.fop.pdf.PDFPage;
import org.apache.fop.svg.PDFBridgeContext;
import org.apache.fop.svg.PDFDocumentGraphics2D;
import org.apache.fop.svg.font.FOPFontFamilyResolverImpl;
import org.apache.xmlgraphics.java2d.GraphicContext;

/** Writes pages as one PDF: lines as lines, text as text in an embedded font. */
public final class PdfWriter {
    private PdfWriter() {}

    /** PDF 1.4, section 4.2.1: user space is in units of 1/72 inch. */
    static final double POINTS_IN_MM = 72 / 25.4;

    /** Hexadecimal digits of each half of the file's identifier. */
    private static final int ID_DIGITS = 32;

    /**
     * The same pages always give the same bytes: the file tells no time of writing, and its identifier is a digest of
     * the rest of it.
     *
     * @param pages one or more, each of its own size
     * @throws IllegalArgumentException for no pages
     */
    public static byte[] write(List<Page> pages) {
        if (pages.isEmpty()) {
            throw new IllegalArgumentException("a PDF needs a page");
        }
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Sheets sheets = new Sheets();
            sheets.setFontInfo(fonts(Fonts.ready()));
            sheets.getPDFDocument().getInfo().setTitle(pages.get(0).title());
            sheets.getPDFDocument().getInfo().setCreator("Lapyard");
            FontFamilyResolver resolver = new FOPFontFamilyResolverImpl(sheets.getFontInfo());
            sheets.begin(out, pages.get(0));
            for (Page page : pages) {
                sheets.turnTo(page);
                PDFBridgeContext context = new PDFBridgeContext(agent(resolver), sheets.getFontInfo(), null, null);
                Painter.paint(page, context, sheets, 1);
                context.dispose();
            }
            sheets.finish();
            return withoutClock(out.toByteArray());
        } catch (ConfigurationException | FOPException e) {
            throw new IllegalStateException("the PDF fonts could not be set up", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The library writes the time and a random identifier; both are overwritten in place, so that no offset moves. */
    private static byte[] withoutClock(byte[] pdf) {
        String text = new String(pdf, StandardCharsets.ISO_8859_1);
        int date = text.indexOf("/CreationDate (");
        Arrays.fill(pdf, date, text.indexOf(')', date) + 1, (byte) ' ');
        int id = text.lastIndexOf("/ID [<") + 6;
        int again = text.indexOf("> <", id) + 3;
        Arrays.fill(pdf, id, id + ID_DIGITS, (byte) '0');
        Arrays.fill(pdf, again, again + ID_DIGITS, (byte) '0');
        byte[] digits = digest(pdf).substring(0, ID_DIGITS).getBytes(StandardCharsets.ISO_8859_1);
        System.arraycopy(digits, 0, pdf, id, ID_DIGITS);
        System.arraycopy(digits, 0, pdf, again, ID_DIGITS);
        return pdf;
    }

    private static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static UserAgentAdapter agent(FontFamilyResolver resolver) {
        return new UserAgentAdapter() {
            @Override
            public FontFamilyResolver getFontFamilyResolver() {
                return resolver;
            }
        };
    }

    /** As the library's own configurator does, but without its cache in a file that all programs of a person share. */
    private static FontInfo fonts(Fonts fonts) throws ConfigurationException, FOPException {
        String entry = "<font embed-url=\"%s\"><font-triplet name=\"" + Fonts.FAMILY
                + "\" style=\"normal\" weight=\"%s\"/></font>";
        String xml = "<pdf><fonts>" + entry.formatted(fonts.normal.toUri(), "normal")
                + entry.formatted(fonts.bold.toUri(), "bold") + "</fonts></pdf>";
        var config = new DefaultConfigurationBuilder().build(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
        var resolver = ResourceResolverFactory.createDefaultInternalResourceResolver(fonts.normal.toUri());
        var manager = new FontManager(resolver, FontDetectorFactory.createDisabled(), FontCacheManagerFactory.createDisabled());
        var found = new DefaultFontConfigurator(manager, null, true)
                .configure(new DefaultFontConfig.DefaultFontConfigParser().parse(config, true));
        FontInfo info = new FontInfo();
        FontSetup.setup(info, found, resolver, false);
        return info;
    }

    /** A PDF canvas in millimetres whose sheets have exact sizes; the library rounds them to whole points. */
    private static final class Sheets extends PDFDocumentGraphics2D {
        private Page page;

        Sheets() {
            super(false);
            setDeviceDPI(NORMAL_PDF_RESOLUTION);
            setGraphicContext(new GraphicContext());
            setRenderingHint(RenderingHintsKeyExt.KEY_TRANSCODING, RenderingHintsKeyExt.VALUE_TRANSCODING_VECTOR);
        }

        void begin(ByteArrayOutputStream out, Page first) throws IOException {
            page = first;
            setupDocument(out, points(first.widthMm()), points(first.heightMm()));
        }

        void turnTo(Page next) {
            page = next;
            nextPage(points(next.widthMm()), points(next.heightMm()));
            // One millimetre of paper is exactly 72/25.4 points, however the sheet's size was rounded.
            setSVGDimension((float) (points(next.widthMm()) / POINTS_IN_MM), (float) (points(next.heightMm()) / POINTS_IN_MM));
            preparePainting();
        }

        private static int points(double mm) {
            return (int) Math.ceil(mm * POINTS_IN_MM);
        }

        @Override
        protected void startPage() throws IOException {
            super.startPage();
            double above = points(page.heightMm()) / POINTS_IN_MM - page.heightMm();
            transform(AffineTransform.getTranslateInstance(0, above));
            PDFPage made = getPDFContext().getCurrentPage();
            PDFArray box = new PDFArray(
                    made, new double[] {0, 0, page.widthMm() * POINTS_IN_MM, page.heightMm() * POINTS_IN_MM});
            for (String name : List.of("MediaBox", "CropBox", "BleedBox", "TrimBox")) {
                made.put(name, box);
            }
        }
    }
}
