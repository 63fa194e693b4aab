package lapyard.drawing;

import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.geometry.Point;

/** Writes a page as SVG 1.1: plain elements, as nobody asks them for more; one user unit is one millimetre of paper. */
public final class SvgWriter {
    private static final String XLINK = "http://www.w3.org/1999/xlink";

    private final StringBuilder out = new StringBuilder(1 << 14).append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");

    private SvgWriter() {}

    /**
     * The page in real millimetres: width and height are those of the sheet and one user unit is 1 mm. It holds no
     * script and refers to nothing outside itself; the same page always gives the same characters.
     */
    public static String write(Page page) {
        SvgWriter writer = new SvgWriter();
        writer.element("svg", "stroke-linecap", "round", "fill", "none", "width", number(page.widthMm()) + "mm", "stroke-linejoin", "round",
                "font-family", Fonts.FAMILIES, "height", number(page.heightMm()) + "mm",
                "viewBox", "0 0 " + number(page.widthMm()) + " " + number(page.heightMm()), "xmlns", "http://www.w3.org/2000/svg", "version", "1.1");
        writer.inside("svg", page.title(), page.shapes(), "\n");
        return writer.out.append('\n').toString();
    }

    /** Begins an element whose end is still open. @param attributes names and values in turn; one without a value is left out */
    private void element(String name, String... attributes) {
        out.append("\n<").append(name);
        for (int i = 0; i < attributes.length; i += 2) {
            if (attributes[i + 1].isEmpty()) continue;
            out.append(' ').append(attributes[i]).append("=\"");
            escaped(attributes[i + 1], "&quot;");
            out.append('"');
        }
    }

    /** What stands in an element, and its end. */
    private void inside(String name, String title, List<Shape> shapes, String last) {
        if (title.isEmpty() && shapes.isEmpty() && last.isEmpty()) {
            out.append("/>");
            return;
        }
        out.append('>');
        if (!title.isEmpty()) {
            element("title");
            end("title", title);
        }
        shapes.forEach(this::draw);
        out.append(last).append("</").append(name).append('>');
    }

    private void end(String name, String words) {
        out.append('>');
        escaped(words, "\"");
        out.append("</").append(name).append('>');
    }

    private void draw(Shape shape) {
        if (shape instanceof Shape.Group group) {
            element("g", "class", group.layer(), "id", group.id());
            inside("g", group.title(), group.shapes(), "");
        } else if (shape instanceof Shape.Window window) {
            element("clipPath", "id", window.id());
            out.append('>');
            element("rect", "x", number(window.x()), "width", number(window.widthMm()), "height", number(window.heightMm()), "y", number(window.y()));
            out.append("/></clipPath>");
            element("g", "clip-path", "url(#" + window.id() + ")");
            inside("g", "", window.shapes(), "");
        } else if (shape instanceof Shape.Lines lines) {
            if (!lines.lines().isEmpty()) drawn("polyline", lines.lines(), "", Optional.empty(), Optional.of(lines.stroke()), "", "");
        } else if (shape instanceof Shape.Area area) {
            area(area);
        } else if (shape instanceof Shape.Circle circle) {
            Optional<Stroke> pen = circle.stroke();
            element("circle", "fill", circle.fill().orElse(""), "stroke-dasharray", dashes(pen), "stroke-width", width(pen), "r", number(circle.radiusMm()),
                    "cx", number(circle.centre().x()), "cy", number(circle.centre().y()), "stroke", pen.map(Stroke::colour).orElse(""));
            out.append("/>");
        } else if (shape instanceof Shape.Text text) {
            text(text);
        } else if (shape instanceof Shape.Picture picture) {
            element("image", "x", number(picture.x()), "y", number(picture.y()), "width", number(picture.widthMm()), "height", number(picture.heightMm()),
                    "preserveAspectRatio", "none", "xmlns:xlink", XLINK,
                    "xlink:href", "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(picture.photo().bytes()));
            inside("image", picture.words(), List.of(), "");
        } else if (!(shape instanceof Shape.Link)) {
            throw new IllegalStateException("no way to draw " + shape.getClass());
        }
    }

    private void area(Shape.Area area) {
        List<List<Point>> marks = area.hatch().map(hatch -> hatch.within(area.rings())).orElse(List.of());
        if (area.hatch().isEmpty()) drawn("polygon", area.rings(), "Z", area.fill(), area.stroke(), "", "evenodd");
        else if (area.fill().isPresent()) drawn("polygon", area.rings(), "Z", area.fill(), Optional.empty(), "", "evenodd");
        if (!marks.isEmpty()) drawn("path", marks, "", Optional.empty(), Optional.of(area.hatch().get().stroke()), "hatch", "");
        if (area.hatch().isPresent() && area.stroke().isPresent()) drawn("polygon", area.rings(), "Z", Optional.empty(), area.stroke(), "", "evenodd");
    }

    /** @param ofOne the element of a single line; several are a path */
    private void drawn(String ofOne, List<List<Point>> lines, String end, Optional<String> fill, Optional<Stroke> pen, String kind, String rule) {
        boolean path = lines.size() > 1 || ofOne.equals("path");
        element(path ? "path" : ofOne, "fill", fill.orElse(""), "stroke-dasharray", dashes(pen), "stroke-width", width(pen), path ? "d" : "points",
                path ? paths(lines, end) : points(lines.get(0)), "class", kind, "fill-rule", path ? rule : "", "stroke", pen.map(Stroke::colour).orElse(""));
        out.append("/>");
    }

    private void text(Shape.Text text) {
        if (text.text().isEmpty()) return;
        String x = number(text.at().x());
        String y = number(text.at().y());
        element("text", "fill", text.colour(), "x", x, "font-size", number(text.sizeMm()), "y", y,
                "transform", text.turnDeg() == 0 ? "" : "rotate(" + number(-text.turnDeg()) + " " + x + " " + y + ")", "font-weight", text.bold() ? "bold" : "",
                "text-anchor", text.anchor() == Shape.Anchor.START ? "" : text.anchor() == Shape.Anchor.MIDDLE ? "middle" : "end");
        end("text", text.text());
    }

    private static String width(Optional<Stroke> pen) {
        return pen.map(stroke -> number(stroke.widthMm())).orElse("");
    }

    private static String dashes(Optional<Stroke> pen) {
        return pen.stream().flatMap(stroke -> stroke.dashMm().stream()).map(SvgWriter::number).collect(Collectors.joining(" "));
    }

    private static String points(List<Point> points) {
        return points.stream().map(at -> number(at.x()) + "," + number(at.y())).collect(Collectors.joining(" "));
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

    /** XML 1.0, sections 2.4 and 3.3.3: what would end a text or an attribute. Texts are PlainText, with nothing else to look after. */
    private void escaped(String text, String quote) {
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
