package lapyard.drawing;

import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

public final class SvgWriter {
    private SvgWriter() {}

    /**
     * The page in real millimetres: width and height are those of the sheet and one user unit is 1 mm. It holds no
     * script and refers to nothing outside itself; the same page always gives the same characters.
     */
    public static String write(Page page) {
        StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        write(SvgDocument.of(page).getDocumentElement(), out);
        return out.append('\n').toString();
    }

    private static void write(Node node, StringBuilder out) {
        if (!(node instanceof Element)) {
            escaped(node.getNodeValue(), "\"", out);
            return;
        }
        out.append('<').append(node.getNodeName());
        NamedNodeMap attributes = node.getAttributes();
        for (int i = 0; i < attributes.getLength(); i++) {
            Node attribute = attributes.item(i);
            out.append(' ').append(attribute.getNodeName()).append("=\"");
            escaped(attribute.getNodeValue(), "&quot;", out);
            out.append('"');
        }
        if (node.getFirstChild() == null) {
            out.append("/>");
            return;
        }
        out.append('>');
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) write(child, out);
        out.append("</").append(node.getNodeName()).append('>');
    }

    /** XML 1.0, sections 2.4 and 3.3.3: what would end a text or an attribute. Texts are PlainText, with nothing else to look after. */
    static void escaped(String text, String quote, StringBuilder out) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append(quote);
                default -> out.append(c);
            }
        }
    }
}
