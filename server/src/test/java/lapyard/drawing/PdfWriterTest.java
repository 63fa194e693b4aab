package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.geometry.Point;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** What the writer wrote is read back by a library that took no part in writing. */
class PdfWriterTest {
    /** A point is 1/72 inch (PDF 32000-1:2008, 8.3.2.3), an inch 25.4 mm. */
    private static double points(double mm) {
        return mm / 25.4 * 72;
    }

    @Test
    void sheetsHaveTheirExactSizeInPoints() throws Exception {
        List<Page> pages = List.of(new Page("a", 210, 297, List.of(TestPages.line()), List.of()), new Page("b", 420, 297, List.of(TestPages.text("two")), List.of()),
                new Page("c", 215.9, 279.4, List.of(TestPages.line()), List.of()));
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(pages))) {
            assertEquals(3, pdf.getNumberOfPages());
            assertSize(595.276, 841.890, pdf.getPage(0));
            assertSize(1190.551, 841.890, pdf.getPage(1));
            assertSize(612, 792, pdf.getPage(2));
            assertEquals("a", pdf.getDocumentInformation().getTitle());
        }
    }

    private static void assertSize(double width, double height, PDPage page) {
        for (PDRectangle box : List.of(page.getMediaBox(), page.getCropBox(), page.getTrimBox())) {
            assertEquals(width, box.getWidth(), 0.002);
            assertEquals(height, box.getHeight(), 0.002);
            assertEquals(0, box.getLowerLeftX());
            assertEquals(0, box.getLowerLeftY());
        }
    }

    @Test
    void textIsTextInEmbeddedFonts() throws Exception {
        Page page = new Page("p", 210, 297, List.of(
                TestPages.text("Größe 2400 × 1200, 7' 10 1/2\""),
                new Shape.Text(new Point(20, 140), "Bold as well", 4, Shape.Anchor.START, 0, true, "#23303A")), List.of());
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
            String text = new PDFTextStripper().getText(pdf);
            assertTrue(text.contains("Größe 2400 × 1200, 7' 10 1/2\""), text);
            assertTrue(text.contains("Bold as well"), text);
            int fonts = 0;
            for (COSName name : pdf.getPage(0).getResources().getFontNames()) {
                PDFont font = pdf.getPage(0).getResources().getFont(name);
                assertTrue(font.isEmbedded(), font.getName());
                assertTrue(font.getName().contains("DejaVuSans"), font.getName());
                fonts++;
            }
            assertEquals(2, fonts);
        }
    }

    @Test
    void aKnownLengthMeasuresItsPointsAndLiesInItsPlace() throws Exception {
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(TestPages.plain())))) {
            var line = PdfLines.of(pdf.getPage(0)).stream()
                    .filter(l -> Math.abs(l.y1() - l.y2()) < 0.01)
                    .filter(l -> Math.abs(l.y1() - points(148.5 - 100)) < 0.05)
                    .findFirst()
                    .orElseThrow();
            assertEquals(points(60), Math.abs(line.x2() - line.x1()), 0.01);
            assertEquals(points(20), Math.min(line.x1(), line.x2()), 0.01);
        }
    }

    @Test
    void isTheSameToTheByteEachTimeAndTellsNoTime() throws Exception {
        byte[] once = PdfWriter.write(List.of(TestPages.plain()));
        assertArrayEquals(once, PdfWriter.write(List.of(TestPages.plain())));
        try (PDDocument pdf = Loader.loadPDF(once)) {
            assertEquals(null, pdf.getDocumentInformation().getCreationDate());
            assertEquals(2, pdf.getDocument().getDocumentID().size());
        }
        byte[] other = PdfWriter.write(List.of(TestPages.saying("another")));
        try (PDDocument one = Loader.loadPDF(once);
                PDDocument two = Loader.loadPDF(other)) {
            assertFalse(one.getDocument().getDocumentID().get(0).equals(two.getDocument().getDocumentID().get(0)));
        }
    }

    @Test
    void whatPeopleTypeIsStillAPage() throws Exception {
        for (String words : TestPages.HOSTILE) {
            Page page = TestPages.saying(TextMeasure.cut(words, 4, false, 150));
            try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
                String text = new PDFTextStripper().getText(pdf);
                assertFalse(text.isBlank());
                for (COSName name : pdf.getPage(0).getResources().getFontNames()) {
                    assertTrue(pdf.getPage(0).getResources().getFont(name).isEmbedded());
                }
            }
        }
    }

    /** A sign that the font lacks may not steal the place of a letter in the text behind it. */
    @Test
    void signsThatTheFontLacksLeaveTheOtherTextAlone() throws Exception {
        Page page = new Page("p", 210, 297, List.of(
                TestPages.text("before \u65E5\uD83C\uDF31"),
                new Shape.Text(new Point(20, 140), "turned words", 4, Shape.Anchor.START, 0, false, "#23303A")), List.of());
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
            String text = new PDFTextStripper().getText(pdf);
            assertTrue(text.contains("before \uFFFD"), text);
            assertTrue(text.contains("turned words"), text);
        }
    }

    @Test
    void noPagesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> PdfWriter.write(List.of()));
    }

    @Test
    void linesHatchesAndRingsArriveAsLines() throws Exception {
        Page page = new Page("p", 210, 297, List.of(new Shape.Area(
                List.of(TestPages.square(10, 10, 40)), Optional.empty(),
                Optional.of(new Hatch(Hatch.Mark.LINES, 0, 2, TestPages.PEN)), Optional.empty())), List.of());
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
            assertEquals(20, PdfLines.of(pdf.getPage(0)).size());
            assertFalse(pdf.getPage(0).getResources().getXObjectNames().iterator().hasNext());
        }
    }

    @Test
    void aFileHasWhatViewersAskFor() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PdfWriter writer = new PdfWriter(bytes, "Back yard");
        writer.add(new Page("Contents", 210, 297, List.of(TestPages.text("one"), new Shape.Link(20, 100, 60, 10, 1, "the plan", Tag.AROUND)), List.of()));
        writer.add(writer.paint(TestPages.plain()), List.of(TestPages.text("page 2 of 2")));
        writer.finish(List.of(new PdfWriter.Bookmark("Plan", 1, List.of(new PdfWriter.Bookmark("bed A", 1, List.of())))));
        try (PDDocument pdf = Loader.loadPDF(bytes.toByteArray())) {
            assertEquals("Back yard", pdf.getDocumentInformation().getTitle());
            assertEquals("en-GB", pdf.getDocumentCatalog().getLanguage());
            assertTrue(pdf.getDocumentCatalog().getViewerPreferences().displayDocTitle());
            assertTrue(pdf.getDocumentCatalog().getMarkInfo().isMarked());
            assertEquals(List.of("1", "2"), List.of(pdf.getDocumentCatalog().getPageLabels().getLabelsByPageIndices()));
            PDOutlineItem plan = pdf.getDocumentCatalog().getDocumentOutline().getFirstChild();
            assertEquals("Plan", plan.getTitle());
            assertEquals(1, pdf.getPages().indexOf(plan.findDestinationPage(pdf)));
            assertEquals("bed A", plan.getFirstChild().getTitle());
            PDAnnotationLink link = (PDAnnotationLink) pdf.getPage(0).getAnnotations().get(0);
            assertEquals(1, ((PDPageDestination) link.getDestination()).retrievePageNumber());
            assertEquals(points(20), link.getRectangle().getLowerLeftX(), 0.01);
            assertEquals(points(297 - 110), link.getRectangle().getLowerLeftY(), 0.01);
            assertTrue(new PDFTextStripper().getText(pdf).contains("page 2 of 2"));
        }
    }

    @Test
    void aLinkThatLeadsNowhereIsRefused() {
        Page page = new Page("p", 210, 297, List.of(new Shape.Link(20, 100, 60, 10, 6, "the slip", Tag.AROUND)), List.of());
        assertTrue(assertThrows(IllegalArgumentException.class, () -> PdfWriter.write(List.of(page))).getMessage().contains("page 7"));
    }

    /** PDF 32000-1:2008, 14.7.4 and 14.8: what is read out hangs in the structure tree, the rest is marked as an artifact. */
    @Test
    void whatIsReadOutIsTagged() throws Exception {
        Page page = new Page("p", 210, 297, List.of(TestPages.line(), TestPages.text("first"), new Shape.Group(
                "bed", "Bed of herbs", "bed", List.of(TestPages.hatched(), TestPages.text("second")))), List.of());
        try (PDDocument pdf = Loader.loadPDF(PdfWriter.write(List.of(page)))) {
            PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
            extractor.processPage(pdf.getPage(0));
            assertEquals(
                    List.of("Artifact", "P first", "Figure", "P second"),
                    extractor.getMarkedContents().stream()
                            .map(part -> (part.getTag() + " " + part.getContents().stream().map(Object::toString).collect(Collectors.joining())).strip())
                            .toList());
            PDStructureElement section = (PDStructureElement)
                    ((PDStructureElement) pdf.getDocumentCatalog().getStructureTreeRoot().getKids().get(0)).getKids().get(0);
            List<PDStructureElement> parts = section.getKids().stream().map(PDStructureElement.class::cast).toList();
            assertEquals(List.of("P", "Figure", "P"), parts.stream().map(PDStructureElement::getStructureType).toList());
            assertEquals("Bed of herbs", parts.get(1).getAlternateDescription());
        }
    }
}
