package lapyard.drawing;

import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.geometry.Point;

/** Writes a page as SVG 1.1, of plain elements; one user unit is one millimetre of paper. */
public final class SvgWriter {
    private final StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");

    private SvgWriter() {}

    /**
     * The page in real millimetres: width and height are those of the sheet and one user unit is 1 mm. It holds no
     * script and refers to nothing outside itself; the same page always gives the same characters.
     */
    public static String write(Page page) {
        SvgWriter writer = new SvgWriter();
        writer.begin("svg").put("xmlns", "http://www.w3.org/2000/svg").put("version", "1.1")
                .put("width", number(page.widthMm()) + "mm").put("height", number(page.heightMm()) + "mm")
                .put("viewBox", "0 0 " + number(page.widthMm()) + " " + number(page.heightMm()))
                .put("font-family", Fonts.FAMILIES).put("stroke-linecap", "round").put("stroke-linejoin", "round").put("fill", "none").out.append('>');
        writer.title(page.title());
        page.shapes().forEach(writer::add);
        return writer.out.append("\n</svg>\n").toString();
    }

    private SvgWriter begin(String name) {
        out.append("\n<").append(name);
        return this;
    }

    private SvgWriter put(String name, String value) {
        out.append(' ').append(name).append("=\"");
        escaped(value, "&quot;");
        out.append('"');
        return this;
    }

    private SvgWriter put(String name, double mm) {
        out.append(' ').append(name).append("=\"");
        number(out, mm);
        out.append('"');
        return this;
    }

    /** Ends an element that holds nothing. */
    private void end() {
        out.append("/>");
    }

    /** Ends one that holds text. */
    private void end(String text, String name) {
        out.append('>');
        escaped(text, "\"");
        out.append("</").append(name).append('>');
    }

    private void title(String words) {
        if (!words.isEmpty()) begin("title").end(words, "title");
    }

    private void group(String title, List<Shape> shapes) {
        out.append('>');
        title(title);
        shapes.forEach(this::add);
        out.append("</g>");
    }

    private void add(Shape shape) {
        if (shape instanceof Shape.Group group) {
            begin("g").put("id", group.id());
            if (!group.layer().isEmpty()) put("class", group.layer());
            group(group.title(), group.shapes());
        } else if (shape instanceof Shape.Window window) {
            begin("clipPath").put("id", window.id()).out.append('>');
            begin("rect").box(window.x(), window.y(), window.widthMm(), window.heightMm()).end();
            out.append("</clipPath>");
            begin("g").put("clip-path", "url(#" + window.id() + ")").group("", window.shapes());
        } else if (shape instanceof Shape.Lines lines) {
            if (!lines.lines().isEmpty()) rings(lines.lines(), false, Optional.empty(), Optional.of(lines.stroke()));
        } else if (shape instanceof Shape.Area area) {
            area(area);
        } else if (shape instanceof Shape.Circle circle) {
            begin("circle").put("cx", circle.centre().x()).put("cy", circle.centre().y()).put("r", circle.radiusMm());
            painted(circle.fill(), circle.stroke());
        } else if (shape instanceof Shape.Text text) {
            text(text);
        } else if (shape instanceof Shape.Picture picture) {
            begin("image").box(picture.x(), picture.y(), picture.widthMm(), picture.heightMm()).put("preserveAspectRatio", "none")
                    .put("xmlns:xlink", "http://www.w3.org/1999/xlink")
                    .put("xlink:href", "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(picture.photo().bytes())).out.append('>');
            title(picture.words());
            out.append("</image>");
        } else if (!(shape instanceof Shape.Link)) {
            throw new IllegalStateException("no way to draw " + shape.getClass());
        }
    }

    private void area(Shape.Area area) {
        if (area.hatch().isEmpty()) {
            rings(area.rings(), true, area.fill(), area.stroke());
            return;
        }
        Hatch hatch = area.hatch().get();
        if (area.fill().isPresent()) rings(area.rings(), true, area.fill(), Optional.empty());
        List<List<Point>> marks = hatch.within(area.rings());
        if (!marks.isEmpty()) begin("path").put("class", "hatch").put("d", paths(marks, "")).painted(Optional.empty(), Optional.of(hatch.stroke()));
        if (area.stroke().isPresent()) rings(area.rings(), true, Optional.empty(), area.stroke());
    }

    private void rings(List<List<Point>> rings, boolean closed, Optional<String> fill, Optional<Stroke> stroke) {
        if (rings.size() == 1) {
            begin(closed ? "polygon" : "polyline").put("points", points(rings.get(0)));
        } else {
            begin("path").put("d", paths(rings, closed ? "Z" : ""));
            if (closed) put("fill-rule", "evenodd");
        }
        painted(fill, stroke);
    }

    /** Ends an element with how it is painted. */
    private void painted(Optional<String> fill, Optional<Stroke> stroke) {
        fill.ifPresent(colour -> put("fill", colour));
        stroke.ifPresent(pen -> {
            put("stroke", pen.colour()).put("stroke-width", pen.widthMm());
            if (!pen.dashMm().isEmpty()) put("stroke-dasharray", pen.dashMm().stream().map(SvgWriter::number).collect(Collectors.joining(" ")));
        });
        end();
    }

    private void text(Shape.Text text) {
        if (text.text().isEmpty()) return;
        begin("text").put("x", text.at().x()).put("y", text.at().y()).put("font-size", text.sizeMm()).put("fill", text.colour());
        if (text.bold()) put("font-weight", "bold");
        if (text.anchor() != Shape.Anchor.START) put("text-anchor", text.anchor() == Shape.Anchor.MIDDLE ? "middle" : "end");
        if (text.turnDeg() != 0) put("transform", "rotate(" + number(-text.turnDeg()) + " " + number(text.at().x()) + " " + number(text.at().y()) + ")");
        end(text.text(), "text");
    }

    private SvgWriter box(double x, double y, double wide, double high) {
        return put("x", x).put("y", y).put("width", wide).put("height", high);
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
