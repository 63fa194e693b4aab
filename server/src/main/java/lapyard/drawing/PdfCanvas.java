package lapyard.drawing;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;

/**
 * The shapes of a page as the drawing operators of PDF (PDF 32000-1:2008, annex A), in millimetres with y down, as on the
 * page. Each text belongs to the element of its tag; lines within a group that has a title are a figure of that name; other
 * lines are mere decoration.
 */
final class PdfCanvas {
    /** Control points of a quarter circle lie so far along the tangents, in radii: the error is below 0.03 %. */
    private static final double QUARTER = 4 * (Math.sqrt(2) - 1) / 3;

    private final PdfFonts fonts;
    private final PdfPictures pictures;
    private final StringBuilder out = new StringBuilder(1 << 14);
    private final List<Shape.Link> links = new ArrayList<>();
    private final PageTags tags;
    private final double widthMm;
    private final double heightMm;

    /** What is not read out, in place of an element. */
    private static final int NOTHING = -1;

    private static final double[] NO_BOX = {};
    private static final int DECORATION = -2;
    private static final int RUNNING_HEAD = -3;
    private static final int RUNNING_FOOT = -4;

    /** The element of the marked content that is open. */
    private int open = NOTHING;

    private String title = "";

    /** Elements of lines within a title and of text without a tag of its own, where there are any yet. */
    private int figure = NOTHING;

    private int text = NOTHING;

    /** What the lines of the figure have taken of the page so far: left, top, right and low. */
    private double[] box = NO_BOX;

    /** The box of the figure that is open; nothing where that is no figure. */
    private double[] openBox = NO_BOX;

    private Pen pen = new Pen();

    /** The graphics state as the operators so far have left it. */
    private static final class Pen {
        private String fill = "";
        private String line = "";
        private double widthMm;
        private List<Double> dashMm = List.of();
    }

    /** @param tags of the page, to which those of what is drawn are added */
    PdfCanvas(PdfFonts fonts, PdfPictures pictures, double widthMm, double heightMm, PageTags tags) {
        this.fonts = fonts;
        this.pictures = pictures;
        this.tags = tags;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
        double points = PdfWriter.POINTS_IN_MM;
        out.append("q ").append(points).append(" 0 0 ").append(-points).append(" 0 ").append(heightMm * points);
        out.append(" cm 1 J 1 j\n");
    }

    /** The operators of all shapes so far; nothing may be drawn after this. */
    byte[] operators() {
        mark(NOTHING);
        return out.append("Q\n").toString().getBytes(StandardCharsets.ISO_8859_1);
    }

    List<Shape.Link> links() {
        return links;
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
            if (link.tag() != Tag.AROUND) tags.link(tags.of(link.tag()), links.size());
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
        int figureBefore = figure;
        double[] boxBefore = box;
        title = group.title();
        figure = NOTHING;
        text = NOTHING;
        draw(group.shapes());
        title = before;
        figure = figureBefore;
        box = boxBefore;
        text = NOTHING;
    }

    /** State that is set within a window is unset behind it, and marked content does not cross its edge. */
    private void window(Shape.Window window) {
        mark(NOTHING);
        Pen before = pen;
        pen = new Pen();
        out.append("q ");
        number(window.x());
        number(window.y());
        number(window.widthMm());
        number(window.heightMm());
        out.append("re W n\n");
        draw(window.shapes());
        mark(NOTHING);
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
        mark(element(words.tag()));
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
        for (int i = 0; i < drawable.length(); i++) hex(out, face.number(drawable.charAt(i)));
        // the blank parts it from the next text where a page is read out
        hex(out, face.number(' '));
        out.append("> Tj ET\n");
    }

    /** A figure of its own, whatever group it stands in; a picture fills the unit square, y up (PDF 32000-1:2008, 8.9.5). */
    private void picture(Shape.Picture picture) {
        int own = tags.figure(picture.words(), picture.tag());
        tags.box(own, points(picture.x(), picture.y(), picture.x() + picture.widthMm(), picture.y() + picture.heightMm()));
        mark(own);
        text = NOTHING;
        figure = NOTHING;
        out.append("q ");
        number(picture.widthMm());
        out.append("0 0 ");
        number(-picture.heightMm());
        number(picture.x());
        number(picture.y() + picture.heightMm());
        out.append("cm /").append(pictures.name(picture.photo())).append(" Do Q\n");
    }

    private int element(Tag tag) {
        if (tag == Tag.RUNNING_HEAD) return RUNNING_HEAD;
        if (tag == Tag.RUNNING_FOOT) return RUNNING_FOOT;
        if (tag == Tag.REPEATED) return DECORATION;
        if (tag == Tag.AROUND) {
            if (text == NOTHING) text = tags.paragraph();
            return text;
        }
        text = NOTHING;
        return tags.of(tag);
    }

    private void markDrawn() {
        if (title.isEmpty()) {
            mark(DECORATION);
            return;
        }
        if (figure == NOTHING) {
            figure = tags.figure(title, Tag.AROUND);
            box = new double[] {widthMm, heightMm, 0, 0};
        }
        mark(figure);
        openBox = box;
    }

    /** Opens marked content of an element unless it is open; {@link #NOTHING} closes what is open. */
    private void mark(int element) {
        if (element == open) return;
        if (open != NOTHING) {
            out.append("EMC\n");
            if (openBox.length > 0) tags.box(open, points(openBox[0], openBox[1], openBox[2], openBox[3]));
        }
        open = element;
        openBox = NO_BOX;
        if (element == RUNNING_HEAD || element == RUNNING_FOOT) {
            out.append("/Artifact <</Type /Pagination /Subtype ").append(element == RUNNING_HEAD ? "/Header" : "/Footer").append(">> BDC\n");
        } else if (element == DECORATION) {
            out.append("/Artifact BMC\n");
        } else if (element != NOTHING) {
            out.append('/').append(tags.role(element).standard).append(" <</MCID ").append(tags.mark(element)).append(">> BDC\n");
        }
    }

    /** A box in the units of a PDF page, whose y runs up. */
    private double[] points(double left, double top, double right, double low) {
        double points = PdfWriter.POINTS_IN_MM;
        return new double[] {left * points, (heightMm - low) * points, right * points, (heightMm - top) * points};
    }

    /** The figure that is drawn takes this too, as far as it lies on the page. */
    private void takes(double x, double y) {
        if (openBox.length == 0) return;
        openBox[0] = Math.max(0, Math.min(openBox[0], x));
        openBox[1] = Math.max(0, Math.min(openBox[1], y));
        openBox[2] = Math.min(widthMm, Math.max(openBox[2], x));
        openBox[3] = Math.min(heightMm, Math.max(openBox[3], y));
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
            takes(point.x(), point.y());
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
        takes(x - r, y - r);
        takes(x + r, y + r);
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
        SvgDocument.number(out, mm);
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

    /** A number as four hexadecimal digits. */
    static void hex(StringBuilder out, int number) {
        for (int shift = 12; shift >= 0; shift -= 4) out.append(Character.forDigit(number >> shift & 15, 16));
    }
}
