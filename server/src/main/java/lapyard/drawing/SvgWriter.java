package lapyard.drawing;

import java.io.StringWriter;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSOutput;
import org.w3c.dom.ls.LSSerializer;

/** Writes a page as SVG 1.1. */
public final class SvgWriter {
    private SvgWriter() {}

    private static final class Serializing {
        /** The JDK's own, whatever else stands on the class path. */
        private static final DOMImplementationLS LS;

        static {
            try {
                LS = (DOMImplementationLS) DocumentBuilderFactory.newDefaultInstance()
                        .newDocumentBuilder()
                        .getDOMImplementation()
                        .getFeature("LS", "3.0");
            } catch (ParserConfigurationException e) {
                throw new IllegalStateException("no XML serializer in this Java", e);
            }
        }
    }

    /**
     * The page in real millimetres: width and height are those of the sheet and one user unit is 1 mm. It holds no
     * script and refers to nothing outside itself; the same page always gives the same characters.
     */
    public static String write(Page page) {
        SVGOMDocument document = SvgDocument.of(page);
        StringWriter out = new StringWriter();
        out.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        LSSerializer serializer = Serializing.LS.createLSSerializer();
        // Leaves out the attributes that SVG itself gives as defaults.
        serializer.getDomConfig().setParameter("discard-default-content", true);
        serializer.getDomConfig().setParameter("xml-declaration", false);
        // Names are ours and texts are PlainText: looking at each attribute again takes a fifth of the time.
        serializer.getDomConfig().setParameter("well-formed", false);
        LSOutput to = Serializing.LS.createLSOutput();
        to.setEncoding("UTF-8");
        to.setCharacterStream(out);
        if (!serializer.write(document, to)) throw new IllegalStateException("the drawing could not be written as SVG");
        return out.append('\n').toString();
    }
}
