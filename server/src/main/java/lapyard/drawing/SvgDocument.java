package lapyard.drawing;

import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.xml.XMLConstants;
import lapyard.geometry.Point;
import org.apache.batik.dom.GenericDOMImplementation;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** A page as an SVG 1.1 document of plain elements, as nobody asks them for more; one user unit is one millimetre of paper. */
record SvgDocument(Document document) {
    private static final String XLINK = "http://www.w3.org/1999/xlink";
    private static final String SVG = "http://www.w3.org/2000/svg";

    static Document of(Page page) {
        Document made = GenericDOMImplementation.getDOMImplementation().createDocument(SVG, "svg", null);
        new SvgDocument(made).fill(page);
        return made;
    }

    private void fill(Page page) {
        Element root = document.getDocumentElement();
        root.setAttributeNS(XMLConstants.XMLNS_ATTRIBUTE_NS_URI, "xmlns", SVG);
        String wide = number(page.widthMm());
        String high = number(page.heightMm());
        set(root, "version", "1.1", "width", wide + "mm", "height", high + "mm", "viewBox", "0 0 " + wide + " " + high);
        set(root, "font-family", Fonts.FAMILIES, "stroke-linecap", "round", "stroke-linejoin", "round", "fill", "none");
        title(root, page.title());
        page.shapes().forEach(shape -> add(root, shape));
        root.appendChild(document.createTextNode("\n"));
    }

    private void title(Element parent, String words) {
        if (!words.isEmpty()) child(parent, "title").appendChild(document.createTextNode(words));
    }

    private Element child(Element parent, String name, String... attributes) {
        parent.appendChild(document.createTextNode("\n"));
        Element made = document.createElementNS(SVG, name);
        set(made, attributes);
        parent.appendChild(made);
        return made;
    }

    /** @param attributes each name with its value behind it */
    private static void set(Element made, String... attributes) {
        for (int i = 0; i < attributes.length; i += 2) made.setAttribute(attributes[i], attributes[i + 1]);
    }

    private void add(Element parent, Shape shape) {
        if (shape instanceof Shape.Group group) {
            Element made = child(parent, "g", "id", group.id());
            if (!group.layer().isEmpty()) made.setAttribute("class", group.layer());
            title(made, group.title());
            group.shapes().forEach(inner -> add(made, inner));
        } else if (shape instanceof Shape.Window window) {
            window(parent, window);
        } else if (shape instanceof Shape.Lines lines) {
            lines(parent, lines);
        } else if (shape instanceof Shape.Area area) {
            area(parent, area);
        } else if (shape instanceof Shape.Circle circle) {
            Point centre = circle.centre();
            painted(child(parent, "circle", "cx", number(centre.x()), "cy", number(centre.y()), "r", number(circle.radiusMm())), circle.fill(), circle.stroke());
        } else if (shape instanceof Shape.Text text) {
            text(parent, text);
        } else if (shape instanceof Shape.Picture picture) {
            picture(parent, picture);
        } else if (!(shape instanceof Shape.Link)) {
            throw new IllegalStateException("no way to draw " + shape.getClass());
        }
    }

    private void window(Element parent, Shape.Window window) {
        Element clip = child(parent, "clipPath", "id", window.id());
        box(child(clip, "rect"), window.x(), window.y(), window.widthMm(), window.heightMm());
        Element made = child(parent, "g", "clip-path", "url(#" + window.id() + ")");
        window.shapes().forEach(inner -> add(made, inner));
    }

    private void lines(Element parent, Shape.Lines lines) {
        if (lines.lines().isEmpty()) return;
        Element made = lines.lines().size() == 1
                ? child(parent, "polyline", "points", points(lines.lines().get(0)))
                : child(parent, "path", "d", paths(lines.lines(), ""));
        stroke(made, lines.stroke());
    }

    private void area(Element parent, Shape.Area area) {
        if (area.hatch().isEmpty()) {
            rings(parent, area, area.fill(), area.stroke());
            return;
        }
        Hatch hatch = area.hatch().get();
        if (area.fill().isPresent()) rings(parent, area, area.fill(), Optional.empty());
        List<List<Point>> marks = hatch.within(area.rings());
        if (!marks.isEmpty()) stroke(child(parent, "path", "class", "hatch", "d", paths(marks, "")), hatch.stroke());
        if (area.stroke().isPresent()) rings(parent, area, Optional.empty(), area.stroke());
    }

    private void rings(Element parent, Shape.Area area, Optional<String> fill, Optional<Stroke> stroke) {
        Element made = area.rings().size() == 1
                ? child(parent, "polygon", "points", points(area.rings().get(0)))
                : child(parent, "path", "d", paths(area.rings(), "Z"), "fill-rule", "evenodd");
        painted(made, fill, stroke);
    }

    private static void painted(Element made, Optional<String> fill, Optional<Stroke> stroke) {
        fill.ifPresent(colour -> made.setAttribute("fill", colour));
        stroke.ifPresent(pen -> stroke(made, pen));
    }

    private void text(Element parent, Shape.Text text) {
        if (text.text().isEmpty()) return;
        String x = number(text.at().x());
        String y = number(text.at().y());
        Element made = child(parent, "text", "x", x, "y", y, "font-size", number(text.sizeMm()), "fill", text.colour());
        if (text.bold()) made.setAttribute("font-weight", "bold");
        if (text.anchor() != Shape.Anchor.START) made.setAttribute("text-anchor", text.anchor() == Shape.Anchor.MIDDLE ? "middle" : "end");
        if (text.turnDeg() != 0) made.setAttribute("transform", "rotate(" + number(-text.turnDeg()) + " " + x + " " + y + ")");
        made.appendChild(document.createTextNode(text.text()));
    }

    private void picture(Element parent, Shape.Picture picture) {
        Element made = child(parent, "image");
        box(made, picture.x(), picture.y(), picture.widthMm(), picture.heightMm());
        set(made, "preserveAspectRatio", "none");
        made.setAttributeNS(XMLConstants.XMLNS_ATTRIBUTE_NS_URI, "xmlns:xlink", XLINK);
        made.setAttributeNS(XLINK, "xlink:href", "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(picture.photo().bytes()));
        title(made, picture.words());
    }

    private static void box(Element made, double x, double y, double wide, double high) {
        set(made, "x", number(x), "y", number(y), "width", number(wide), "height", number(high));
    }

    private static void stroke(Element made, Stroke stroke) {
        set(made, "stroke", stroke.colour(), "stroke-width", number(stroke.widthMm()));
        if (!stroke.dashMm().isEmpty()) set(made, "stroke-dasharray", stroke.dashMm().stream().map(SvgDocument::number).collect(Collectors.joining(" ")));
    }

    private static String points(List<Point> points) {
        StringBuilder out = new StringBuilder(points.size() * 16);
        for (Point point : points) {
            if (!out.isEmpty()) out.append(' ');
            number(out, point.x());
            number(out.append(','), point.y());
        }
        return out.toString();
    }

    private static String paths(List<List<Point>> lines, String end) {
        StringBuilder out = new StringBuilder(lines.size() * 32);
        for (List<Point> line : lines) {
            char verb = 'M';
            for (Point point : line) {
                number(out.append(verb), point.x());
                number(out.append(' '), point.y());
                verb = 'L';
            }
            out.append(end);
        }
        return out.toString();
    }

    static String number(double mm) {
        StringBuilder out = new StringBuilder(12);
        number(out, mm);
        return out.toString();
    }

    /** To a thousandth of a millimetre, without needless zeros; the same on every machine and in every language. */
    static void number(StringBuilder out, double mm) {
        long thousandths = Math.round(mm * 1000);
        long rest = Math.abs(thousandths) % 1000;
        out.append(thousandths < 0 ? "-" : "").append(Math.abs(thousandths) / 1000);
        if (rest > 0) {
            out.append('.').append(rest < 100 ? "0" : "").append(rest < 10 ? "0" : "");
            while (rest % 10 == 0) rest /= 10;
            out.append(rest);
        }
    }
}
