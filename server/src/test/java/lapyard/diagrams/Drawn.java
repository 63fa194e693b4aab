package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.SvgWriter;
import lapyard.drawing.TextBox;
import lapyard.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A page as others see it: its SVG read by the JDK's parser, its texts as polygons of JTS. */
public final class Drawn {
    private static final GeometryFactory JTS = new GeometryFactory();

    private final Page page;
    private final Document document;

    private Drawn(Page page, Document document) {
        this.page = page;
        this.document = document;
    }

    public static Drawn of(Page page) throws Exception {
        var builder = DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder();
        return new Drawn(page, builder.parse(new InputSource(new StringReader(SvgWriter.write(page)))));
    }

    Element group(String id) {
        NodeList groups = document.getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            if (((Element) groups.item(i)).getAttribute("id").equals(id)) {
                return (Element) groups.item(i);
            }
        }
        throw new AssertionError("no group " + id);
    }

    List<String> ids() {
        List<String> ids = new ArrayList<>();
        NodeList groups = document.getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            ids.add(((Element) groups.item(i)).getAttribute("id"));
        }
        return ids;
    }

    String title(String id) {
        return group(id).getElementsByTagName("title").item(0).getTextContent();
    }

    /** The box round all coordinates of the polygons of a group: left, top, right, bottom in millimetres of the sheet. */
    double[] polygons(String id) {
        double[] box = {1e9, 1e9, -1e9, -1e9};
        NodeList polygons = group(id).getElementsByTagName("polygon");
        assertTrue(polygons.getLength() > 0, "no polygon in " + id);
        for (int i = 0; i < polygons.getLength(); i++) {
            double[] xy = Arrays.stream(((Element) polygons.item(i)).getAttribute("points").split("[ ,]"))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            for (int k = 0; k < xy.length; k += 2) {
                box[0] = Math.min(box[0], xy[k]);
                box[1] = Math.min(box[1], xy[k + 1]);
                box[2] = Math.max(box[2], xy[k]);
                box[3] = Math.max(box[3], xy[k + 1]);
            }
        }
        return box;
    }

    List<String> texts() {
        List<String> texts = new ArrayList<>();
        NodeList all = document.getElementsByTagName("text");
        for (int i = 0; i < all.getLength(); i++) {
            texts.add(all.item(i).getTextContent());
        }
        return texts;
    }

    boolean says(String text) {
        return texts().contains(text);
    }

    /** Values of an attribute anywhere on the page. */
    List<String> values(String attribute) {
        List<String> values = new ArrayList<>();
        NodeList all = document.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            String value = ((Element) all.item(i)).getAttribute(attribute);
            if (!value.isEmpty()) {
                values.add(value);
            }
        }
        return values;
    }

    public static List<Shape.Text> textShapes(List<Shape> shapes) {
        List<Shape.Text> texts = new ArrayList<>();
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Text text && !text.text().isEmpty()) {
                texts.add(text);
            } else if (shape instanceof Shape.Group group) {
                texts.addAll(textShapes(group.shapes()));
            }
        }
        return texts;
    }

    private static Polygon polygon(List<Point> ring) {
        List<Coordinate> closed = new ArrayList<>(ring.stream().map(p -> new Coordinate(p.x(), p.y())).toList());
        closed.add(closed.get(0));
        return JTS.createPolygon(closed.toArray(Coordinate[]::new));
    }

    /** Pairs of texts that lie on each other, and texts that leave the sheet. */
    public List<String> collisions() {
        List<String> found = new ArrayList<>();
        STRtree tree = new STRtree();
        Polygon sheet = polygon(
                new Box(0, 0, page.widthMm(), page.heightMm()).corners());
        record Held(String text, Polygon box) {}
        List<Held> all = textShapes(page.shapes()).stream().map(t -> new Held(t.text(), polygon(TextBox.of(t)))).toList();
        all.forEach(held -> tree.insert(held.box.getEnvelopeInternal(), held));
        for (Held one : all) {
            if (!sheet.covers(one.box)) {
                found.add(one.text + " leaves the sheet");
            }
            for (Object near : tree.query(one.box.getEnvelopeInternal())) {
                Held other = (Held) near;
                if (other != one && one.box.intersection(other.box).getArea() > 1e-3) {
                    found.add(one.text + " on " + other.text);
                }
            }
        }
        return found;
    }
}
