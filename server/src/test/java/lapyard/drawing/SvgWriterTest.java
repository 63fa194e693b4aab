package lapyard.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import lapyard.geometry.Point;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXParseException;

class SvgWriterTest {
    private static final String DTD = "<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"svg11-flat.dtd\">";

    /** The JDK's parser, which took no part in writing. */
    private static Document read(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    /** Faults that a validating parser finds against the DTD of SVG 1.1 (W3C, second edition). */
    static List<String> faults(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setValidating(true);
        DocumentBuilder builder = factory.newDocumentBuilder();
        builder.setEntityResolver((publicId, systemId) -> {
            InputSource source = new InputSource(
                    SvgWriterTest.class.getResourceAsStream("/org/apache/batik/dom/svg/resources/svg11-flat.dtd"));
            source.setSystemId("svg11-flat.dtd");
            return source;
        });
        List<String> faults = new ArrayList<>();
        builder.setErrorHandler(new ErrorHandler() {
            @Override
            public void warning(SAXParseException e) {}

            @Override
            public void error(SAXParseException e) {
                faults.add(e.getMessage());
            }

            @Override
            public void fatalError(SAXParseException e) {
                faults.add(e.getMessage());
            }
        });
        builder.parse(new InputSource(new StringReader(svg.replaceFirst("\\?>\n", "?>\n" + DTD + "\n"))));
        return faults;
    }

    @Test
    void isInRealMillimetresWithOneUnitToTheMillimetre() throws Exception {
        Element root = read(SvgWriter.write(TestPages.plain())).getDocumentElement();
        assertEquals("210mm", root.getAttribute("width"));
        assertEquals("148.5mm", root.getAttribute("height"));
        assertEquals("0 0 210 148.5", root.getAttribute("viewBox"));
        Element line = (Element) root.getElementsByTagName("polyline").item(0);
        String[] ends = line.getAttribute("points").split("[ ,]");
        assertEquals(60.0, Double.parseDouble(ends[2]) - Double.parseDouble(ends[0]), 1e-9);
    }

    @Test
    void isValidAgainstTheDtdOfSvg11() throws Exception {
        assertEquals(List.of(), faults(SvgWriter.write(TestPages.plain())));
        String broken = SvgWriter.write(TestPages.plain()).replaceFirst("<circle ", "<circel ");
        assertFalse(faults(broken).isEmpty(), "the check finds nothing at all");
    }

    /** SVG 1.1 (W3C, second edition): 11.3 fill-rule, 11.4 stroke-dasharray, 7.6 rotate, 10.9 text-anchor, 14.3 clipPath; y points down, so degrees are clockwise. */
    @Test
    void holesDashesTurnedTextsAndWindowsAreAsTheStandardNamesThem() throws Exception {
        Shape.Lines dashed = Shape.Lines.of(new Stroke("#23303A", 0.25, List.of(2.0, 1.5)), new Point(0, 0), new Point(9, 0));
        Shape.Text turned = new Shape.Text(new Point(20, 120), "Path", 4, Shape.Anchor.MIDDLE, 90, true, "#4B3626");
        String svg = SvgWriter.write(new Page("", 210, 297, List.of(TestPages.hatched(), turned, new Shape.Window("seen", 10, 12, 30, 40, List.of(dashed))), List.of()));
        assertEquals(List.of(), faults(svg));
        Document document = read(svg);
        assertEquals(0, document.getElementsByTagName("title").getLength());
        String rings = "M30 20L80 20L80 70L30 70ZM45 35L65 35L65 55L45 55Z";
        Element fill = the(document, "path", 0);
        assertEquals(List.of("#F4F1E8", "", "evenodd", rings), said(fill, "fill", "stroke", "fill-rule", "d"));
        assertEquals(List.of("hatch", "", "#4B3626", "0.18"), said(the(document, "path", 1), "class", "fill", "stroke", "stroke-width"));
        assertEquals(List.of("", "#23303A", "0.5", rings), said(the(document, "path", 2), "fill", "stroke", "stroke-width", "d"));
        assertEquals(List.of("20", "120", "rotate(-90 20 120)", "bold", "middle", "#4B3626"),
                said(the(document, "text", 0), "x", "y", "transform", "font-weight", "text-anchor", "fill"));
        Element clip = the(document, "clipPath", 0);
        assertEquals("seen", clip.getAttribute("id"));
        assertEquals(List.of("10", "12", "30", "40"), said((Element) clip.getElementsByTagName("rect").item(0), "x", "y", "width", "height"));
        Element line = the(document, "polyline", 0);
        assertEquals(List.of("0,0 9,0", "2 1.5", "#23303A"), said(line, "points", "stroke-dasharray", "stroke"));
        assertEquals("url(#seen)", ((Element) line.getParentNode()).getAttribute("clip-path"));
    }

    private static Element the(Document document, String name, int at) {
        return (Element) document.getElementsByTagName(name).item(at);
    }

    private static List<String> said(Element element, String... attributes) {
        return java.util.stream.Stream.of(attributes).map(element::getAttribute).toList();
    }

    @Test
    void isTheSameToTheByteEachTime() {
        assertEquals(SvgWriter.write(TestPages.plain()), SvgWriter.write(TestPages.plain()));
    }

    @Test
    void whatPeopleTypeIsTextAndNothingElse() throws Exception {
        for (String words : TestPages.HOSTILE) {
            String svg = SvgWriter.write(TestPages.saying(words));
            Document document = read(svg);
            assertEquals(0, document.getElementsByTagName("script").getLength());
            assertEquals(1, document.getElementsByTagName("text").getLength());
            String text = document.getElementsByTagName("text").item(0).getTextContent();
            assertEquals(PlainText.of(words), text);
            assertEquals(text, document.getElementsByTagName("title").item(0).getTextContent());
            assertEquals(List.of(), faults(svg));
        }
    }

    @Test
    void refersToNothingOutsideAndRunsNothing() {
        String svg = SvgWriter.write(TestPages.plain());
        for (String never : List.of("href", "url(", "<script", "<image", "<style", "<foreignObject", " on", "DOCTYPE", "ENTITY")) {
            assertFalse(svg.contains(never), never);
        }
        assertEquals(
                List.of("http://www.w3.org/2000/svg"),
                java.util.regex.Pattern.compile("https?://[^\"]*").matcher(svg).results().map(r -> r.group()).distinct().toList());
    }

    @Test
    void idsAreXmlNamesAndDifferForDifferentCodes() {
        assertEquals("bed-M", Shape.id("bed", "M"));
        assertFalse(Shape.id("bed", "a b").equals(Shape.id("bed", "a_b")));
        for (String words : TestPages.HOSTILE) {
            assertTrue(Shape.id("bed", words).matches("[A-Za-z_][A-Za-z0-9._-]*"));
        }
        assertThrows(IllegalArgumentException.class, () -> new Shape.Group("two words", "", "", List.of()));
    }

    @Test
    void numbersAreShortAndNeverInAnotherLanguagesForm() {
        assertEquals("0", SvgDocument.number(-0.0001));
        assertEquals("0.001", SvgDocument.number(0.001));
        assertEquals("-12.05", SvgDocument.number(-12.05));
        assertEquals("1000000", SvgDocument.number(1e6));
        assertEquals("0.1", SvgDocument.number(0.1));
    }

    @Test
    void whatCannotBeDrawnIsRefusedWithItsValue() {
        assertThrows(IllegalArgumentException.class, () -> new Page("", 0, 100, List.of(), List.of()));
        assertThrows(IllegalArgumentException.class, () -> Stroke.of("red\" onload=\"x", 1));
        assertThrows(IllegalArgumentException.class, () -> Stroke.of("#23303A", -1));
        assertThrows(IllegalArgumentException.class, () -> Shape.Lines.of(TestPages.PEN, new Point(0, 0)));
    }
}
