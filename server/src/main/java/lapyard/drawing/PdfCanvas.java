package lapyard.drawing;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;

/**
 * The shapes of a page as the drawing operators of PDF (PDF 32000-1:2008, annex A), in millimetres with y down, as on the
 * page. Text is marked as such for whoever has a page read out; lines within a group that has a title are a figure of that
 * name; other lines are mere decoration.
 */
final class PdfCanvas {
    /** Control points of a quarter circle lie so far along the tangents, in radii: the error is below 0.03 %. */
    private static final double QUARTER = 4 * (Math.sqrt(2) - 1) / 3;

    private final PdfFonts fonts;
    private final PdfPictures pictures;
    private final StringBuilder out = new StringBuilder(1 << 14);
    private final List<Part> parts = new ArrayList<>();
    private final List<Shape.Link> links = new ArrayList<>();
    private final int firstMark;
    private int nextMark;

    /** What marked content is open: the figure or text that it belongs to, or {@link #DECORATION}. */
    private Part open;

    private static final Part DECORATION = new Part("", new ArrayList<>());

    private String title = "";
    private Part figure;
    private Part text;
    private Pen pen = new Pen();

    /** The graphics state as the operators so far have left it. */
    private static final class Pen {
        private String fill = "";
        private String line = "";
        private double widthMm;
        private List<Double> dashMm = List.of();
    }

    /**
     * Content of a page that is read as one.
     *
     * @param figure the words of a figure; empty for a paragraph
     * @param marks  numbers of its marked content on the page, in reading order
     */
    record Part(String figure, List<Integer> marks) {}

    /** @param firstMark number of the first marked content, above those of what is on the page already */
    PdfCanvas(PdfFonts fonts, PdfPictures pictures, double heightMm, int firstMark) {
        this.fonts = fonts;
        this.pictures = pictures;
        this.firstMark = firstMark;
        this.nextMark = firstMark;
        double points = PdfWriter.POINTS_IN_MM;
        out.append("q ").append(points).append(" 0 0 ").append(-points).append(" 0 ").append(heightMm * points);
        out.append(" cm 1 J 1 j\n");
    }

    /** The operators of all shapes so far; nothing may be drawn after this. */
    byte[] operators() {
        mark(null);
        return out.append("Q\n").toString().getBytes(StandardCharsets.ISO_8859_1);
    }

    List<Part> parts() {
        return parts;
    }

    List<Shape.Link> links() {
        return links;
    }

    int marks() {
        return nextMark - firstMark;
    }

    void draw(List<Shape> shapes) {
        shapes.forEach(this::draw);
    }

    private void draw(Shape shape) {
        if (shape instanceof Shape.Group group) {
            group(group);
        } else if (shape instanceof Shape.Window window) {
            window(window);
        } else if (shape instanceof Shape.Lines lines) {
            if (!lines.lines().isEmpty()) {
                markDrawn();
                pen(lines.stroke());
                lines.lines().forEach(this::line);
                out.append("S\n");
            }
        } else if (shape instanceof Shape.Area area) {
            area(area);
        } else if (shape instanceof Shape.Circle circle) {
            markDrawn();
            circle.fill().ifPresent(this::fill);
            circle.stroke().ifPresent(this::pen);
            circle(circle.centre(), circle.radiusMm());
            out.append(circle.fill().isEmpty() ? "S\n" : circle.stroke().isEmpty() ? "f\n" : "B\n");
        } else if (shape instanceof Shape.Text words) {
            text(words);
        } else if (shape instanceof Shape.Picture picture) {
            picture(picture);
        } else if (shape instanceof Shape.Link link) {
            links.add(link);
        } else {
            throw new IllegalStateException("no way to draw " + shape.getClass());
        }
    }

    private void group(Shape.Group group) {
        if (group.title().isEmpty()) {
            draw(group.shapes());
            return;
        }
        String before = title;
        Part figureBefore = figure;
        title = group.title();
        figure = null;
        text = null;
        draw(group.shapes());
        title = before;
        figure = figureBefore;
        text = null;
    }

    /** State that is set within a window is unset behind it, and marked content does not cross its edge. */
    private void window(Shape.Window window) {
        mark(null);
        Pen before = pen;
        pen = new Pen();
        out.append("q ");
        number(window.x());
        number(window.y());
        number(window.widthMm());
        number(window.heightMm());
        out.append("re W n\n");
        draw(window.shapes());
        mark(null);
        out.append("Q\n");
        pen = before;
    }

    private void area(Shape.Area area) {
        markDrawn();
        boolean hatched = area.hatch().isPresent();
        if (!hatched) {
            rings(area, area.fill(), area.stroke());
            return;
        }
        if (area.fill().isPresent()) rings(area, area.fill(), Optional.empty());
        Hatch hatch = area.hatch().get();
        List<List<Point>> marks = hatch.within(area.rings());
        if (!marks.isEmpty()) {
            pen(hatch.stroke());
            marks.forEach(this::line);
            out.append("S\n");
        }
        if (area.stroke().isPresent()) rings(area, Optional.empty(), area.stroke());
    }

    private void rings(Shape.Area area, Optional<String> fill, Optional<Stroke> stroke) {
        if (fill.isEmpty() && stroke.isEmpty()) return;
        fill.ifPresent(this::fill);
        stroke.ifPresent(this::pen);
        for (List<Point> ring : area.rings()) {
            line(ring);
            out.append("h ");
        }
        out.append(fill.isEmpty() ? "S\n" : stroke.isEmpty() ? "f*\n" : "B*\n");
    }

    private void text(Shape.Text words) {
        String drawable = TextMeasure.drawable(words.text());
        if (drawable.isEmpty()) return;
        markText();
        fill(words.colour());
        PdfFonts.Face face = words.bold() ? fonts.bold : fonts.normal;
        double wide = words.anchor() == Shape.Anchor.START ? 0 : TextMeasure.widthMm(drawable, words.sizeMm(), words.bold());
        double back = words.anchor() == Shape.Anchor.MIDDLE ? wide / 2 : wide;
        double cos = Math.cos(Math.toRadians(words.turnDeg()));
        double sin = Math.sin(Math.toRadians(words.turnDeg()));
        out.append("BT /").append(face.name).append(' ');
        number(words.sizeMm());
        out.append("Tf ");
        // letters stand upright on a page whose y runs down
        exact(cos);
        exact(-sin);
        exact(-sin);
        exact(-cos);
        number(words.at().x() - back * cos);
        number(words.at().y() + back * sin);
        out.append("Tm <");
        for (int i = 0; i < drawable.length(); i++) hex(face.number(drawable.charAt(i)));
        // the blank parts it from the next text where a page is read out
        hex(face.number(' '));
        out.append("> Tj ET\n");
    }

    /** A figure of its own, whatever group it stands in; a picture fills the unit square, y up (PDF 32000-1:2008, 8.9.5). */
    private void picture(Shape.Picture picture) {
        Part own = new Part(picture.words(), new ArrayList<>());
        parts.add(own);
        mark(own);
        text = null;
        figure = null;
        out.append("q ");
        number(picture.widthMm());
        out.append("0 0 ");
        number(-picture.heightMm());
        number(picture.x());
        number(picture.y() + picture.heightMm());
        out.append("cm /").append(pictures.name(picture.photo())).append(" Do Q\n");
    }

    private void markText() {
        if (text == null) {
            text = new Part("", new ArrayList<>());
            parts.add(text);
        }
        mark(text);
    }

    private void markDrawn() {
        if (title.isEmpty()) {
            mark(DECORATION);
            return;
        }
        if (figure == null) {
            figure = new Part(title, new ArrayList<>());
            parts.add(figure);
        }
        mark(figure);
    }

    /** Opens marked content of a part unless it is open; null closes what is open. */
    private void mark(Part part) {
        if (part == open) return;
        if (open != null) out.append("EMC\n");
        open = part;
        if (part == null) return;
        if (part == DECORATION) {
            out.append("/Artifact BMC\n");
            return;
        }
        out.append(part.figure().isEmpty() ? "/P" : "/Figure").append(" <</MCID ").append(nextMark).append(">> BDC\n");
        part.marks().add(nextMark++);
    }

    private void fill(String colour) {
        if (colour.equals(pen.fill)) return;
        pen.fill = colour;
        colour(colour);
        out.append("rg\n");
    }

    private void pen(Stroke stroke) {
        if (!stroke.colour().equals(pen.line)) {
            pen.line = stroke.colour();
            colour(stroke.colour());
            out.append("RG\n");
        }
        if (stroke.widthMm() != pen.widthMm) {
            pen.widthMm = stroke.widthMm();
            number(stroke.widthMm());
            out.append("w\n");
        }
        if (!stroke.dashMm().equals(pen.dashMm)) {
            pen.dashMm = stroke.dashMm();
            out.append('[');
            stroke.dashMm().forEach(this::number);
            out.append("] 0 d\n");
        }
    }

    private void colour(String colour) {
        for (int i = 1; i < 7; i += 2) number(Integer.parseInt(colour, i, i + 2, 16) / 255.0);
    }

    private void line(List<Point> points) {
        String verb = "m ";
        for (Point point : points) {
            number(point.x());
            number(point.y());
            out.append(verb);
            verb = "l ";
        }
    }

    private void circle(Point centre, double r) {
        double k = r * QUARTER;
        double x = centre.x();
        double y = centre.y();
        number(x + r);
        number(y);
        out.append("m ");
        curve(x + r, y + k, x + k, y + r, x, y + r);
        curve(x - k, y + r, x - r, y + k, x - r, y);
        curve(x - r, y - k, x - k, y - r, x, y - r);
        curve(x + k, y - r, x + r, y - k, x + r, y);
        out.append("h ");
    }

    private void curve(double... numbers) {
        for (double number : numbers) number(number);
        out.append("c ");
    }

    private void number(double mm) {
        SvgWriter.number(out, mm);
        out.append(' ');
    }

    /** A sine or cosine, to a millionth. */
    private void exact(double number) {
        long millionths = Math.round(number * 1e6);
        if (millionths % 1_000_000 == 0) {
            out.append(millionths / 1_000_000).append(' ');
        } else {
            out.append(millionths < 0 ? "-0." : "0.");
            String digits = Long.toString(Math.abs(millionths));
            out.append("0".repeat(6 - digits.length())).append(digits).append(' ');
        }
    }

    private void hex(int number) {
        for (int shift = 12; shift >= 0; shift -= 4) out.append(Character.forDigit(number >> shift & 15, 16));
    }
}
