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
        root.setAttribute("version", "1.1");
        root.setAttribute("width", number(page.widthMm()) + "mm");
        root.setAttribute("height", number(page.heightMm()) + "mm");
        root.setAttribute("viewBox", "0 0 " + number(page.widthMm()) + " " + number(page.heightMm()));
        root.setAttribute("font-family", Fonts.FAMILIES);
        root.setAttribute("stroke-linecap", "round");
        root.setAttribute("stroke-linejoin", "round");
        root.setAttribute("fill", "none");
        title(root, page.title());
        page.shapes().forEach(shape -> add(root, shape));
        root.appendChild(document.createTextNode("\n"));
    }

    private void title(Element parent, String words) {
        if (!words.isEmpty()) child(parent, "title").appendChild(document.createTextNode(words));
    }

    private Element child(Element parent, String name) {
        parent.appendChild(document.createTextNode("\n"));
        Element made = document.createElementNS(SVG, name);
        parent.appendChild(made);
        return made;
    }

    private void add(Element parent, Shape shape) {
        if (shape instanceof Shape.Group group) {
            Element made = child(parent, "g");
            made.setAttribute("id", group.id());
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
            Element made = child(parent, "circle");
            made.setAttribute("cx", number(circle.centre().x()));
            made.setAttribute("cy", number(circle.centre().y()));
            made.setAttribute("r", number(circle.radiusMm()));
            circle.fill().ifPresent(colour -> made.setAttribute("fill", colour));
            circle.stroke().ifPresent(stroke -> stroke(made, stroke));
        } else if (shape instanceof Shape.Text text) {
            text(parent, text);
        } else if (shape instanceof Shape.Picture picture) {
            picture(parent, picture);
        } else if (!(shape instanceof Shape.Link)) {
            throw new IllegalStateException("no way to draw " + shape.getClass());
        }
    }

    private void window(Element parent, Shape.Window window) {
        Element clip = child(parent, "clipPath");
        clip.setAttribute("id", window.id());
        Element box = child(clip, "rect");
        box(box, window.x(), window.y(), window.widthMm(), window.heightMm());
        Element made = child(parent, "g");
        made.setAttribute("clip-path", "url(#" + window.id() + ")");
        window.shapes().forEach(inner -> add(made, inner));
    }

    private void lines(Element parent, Shape.Lines lines) {
        if (lines.lines().isEmpty()) return;
        boolean one = lines.lines().size() == 1;
        Element made = child(parent, one ? "polyline" : "path");
        if (one) {
            made.setAttribute("points", points(lines.lines().get(0)));
        } else {
            made.setAttribute("d", paths(lines.lines(), ""));
        }
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
        if (!marks.isEmpty()) {
            Element made = child(parent, "path");
            made.setAttribute("class", "hatch");
            made.setAttribute("d", paths(marks, ""));
            stroke(made, hatch.stroke());
        }
        if (area.stroke().isPresent()) rings(parent, area, Optional.empty(), area.stroke());
    }

    private void rings(Element parent, Shape.Area area, Optional<String> fill, Optional<Stroke> stroke) {
        boolean one = area.rings().size() == 1;
        Element made = child(parent, one ? "polygon" : "path");
        if (one) {
            made.setAttribute("points", points(area.rings().get(0)));
        } else {
            made.setAttribute("d", paths(area.rings(), "Z"));
            made.setAttribute("fill-rule", "evenodd");
        }
        fill.ifPresent(colour -> made.setAttribute("fill", colour));
        stroke.ifPresent(pen -> stroke(made, pen));
    }

    private void text(Element parent, Shape.Text text) {
        if (text.text().isEmpty()) return;
        Element made = child(parent, "text");
        String x = number(text.at().x());
        String y = number(text.at().y());
        made.setAttribute("x", x);
        made.setAttribute("y", y);
        made.setAttribute("font-size", number(text.sizeMm()));
        made.setAttribute("fill", text.colour());
        if (text.bold()) made.setAttribute("font-weight", "bold");
        if (text.anchor() != Shape.Anchor.START) made.setAttribute("text-anchor", text.anchor() == Shape.Anchor.MIDDLE ? "middle" : "end");
        if (text.turnDeg() != 0) made.setAttribute("transform", "rotate(" + number(-text.turnDeg()) + " " + x + " " + y + ")");
        made.appendChild(document.createTextNode(text.text()));
    }

    private void picture(Element parent, Shape.Picture picture) {
        Element made = child(parent, "image");
        box(made, picture.x(), picture.y(), picture.widthMm(), picture.heightMm());
        made.setAttribute("preserveAspectRatio", "none");
        made.setAttributeNS(XMLConstants.XMLNS_ATTRIBUTE_NS_URI, "xmlns:xlink", XLINK);
        made.setAttributeNS(XLINK, "xlink:href", "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(picture.photo().bytes()));
        title(made, picture.words());
    }

    private static void box(Element made, double x, double y, double wide, double high) {
        made.setAttribute("x", number(x));
        made.setAttribute("y", number(y));
        made.setAttribute("width", number(wide));
        made.setAttribute("height", number(high));
    }

    private static void stroke(Element made, Stroke stroke) {
        made.setAttribute("stroke", stroke.colour());
        made.setAttribute("stroke-width", number(stroke.widthMm()));
        if (!stroke.dashMm().isEmpty()) {
            made.setAttribute("stroke-dasharray", stroke.dashMm().stream().map(SvgDocument::number).collect(Collectors.joining(" ")));
        }
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
