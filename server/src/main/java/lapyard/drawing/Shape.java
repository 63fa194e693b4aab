package lapyard.drawing;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import lapyard.geometry.Point;

/** Something on a {@link Page}, in paper millimetres, y down. */
public sealed interface Shape {
    /** An XML name, as far as drawings need one. */
    Pattern ID = Pattern.compile("[A-Za-z][A-Za-z0-9._-]*");

    Pattern NOT_IN_ID = Pattern.compile("[^A-Za-z0-9.-]");

    /**
     * Shapes that belong together.
     *
     * @param id     an XML name, used once on a page; see {@link Shape#id}
     * @param title  shown by viewers when pointed at; empty for none
     * @param layer  a word by which others may restyle or hide such groups; empty for none
     */
    record Group(String id, String title, String layer, List<Shape> shapes) implements Shape {
        public Group {
            if (!ID.matcher(id).matches()) throw new IllegalArgumentException("a group's id is an XML name, was " + id);
            title = PlainText.of(title);
            shapes = List.copyOf(shapes);
        }
    }

    /**
     * Shapes of which only what lies in a box is seen.
     *
     * @param id an XML name, used once on a page
     * @param x  of the upper left corner
     */
    record Window(String id, double x, double y, double widthMm, double heightMm, List<Shape> shapes) implements Shape {
        public Window {
            if (!(widthMm > 0 && heightMm > 0)) {
                throw new IllegalArgumentException("a window measures above 0 mm each way, was " + widthMm + " x " + heightMm);
            }
            shapes = List.copyOf(shapes);
        }
    }

    /** One or more open lines of two or more points each, drawn with one pen. */
    record Lines(List<List<Point>> lines, Stroke stroke) implements Shape {
        public Lines {
            lines = lines.stream().map(List::copyOf).toList();
            if (lines.stream().anyMatch(line -> line.size() < 2)) throw new IllegalArgumentException("a line needs 2 points");
        }

        public static Lines of(Stroke stroke, Point... points) {
            return new Lines(List.of(List.of(points)), stroke);
        }
    }

    /**
     * An area of one or more closed rings; where rings lie in each other, every other one is a hole.
     *
     * @param fill   colour, empty for none
     * @param hatch  drawn over the fill and cut at the rings
     * @param stroke of the rings, empty for none
     */
    record Area(List<List<Point>> rings, Optional<String> fill, Optional<Hatch> hatch, Optional<Stroke> stroke)
            implements Shape {
        public Area {
            rings = rings.stream().map(List::copyOf).toList();
            if (rings.isEmpty() || rings.stream().anyMatch(ring -> ring.size() < 3)) {
                throw new IllegalArgumentException("an area needs a ring of 3 points");
            }
            fill.ifPresent(Stroke::requireColour);
        }

        public static Area outline(List<Point> ring, Stroke stroke) {
            return new Area(List.of(ring), Optional.empty(), Optional.empty(), Optional.of(stroke));
        }

        public static Area filled(List<Point> ring, String colour) {
            return new Area(List.of(ring), Optional.of(colour), Optional.empty(), Optional.empty());
        }
    }

    record Circle(Point centre, double radiusMm, Optional<String> fill, Optional<Stroke> stroke) implements Shape {
        public Circle {
            if (!(radiusMm > 0)) throw new IllegalArgumentException("a circle's radius is above 0 mm, was " + radiusMm);
            fill.ifPresent(Stroke::requireColour);
        }

        public static Circle dot(Point centre, double radiusMm, String colour) {
            return new Circle(centre, radiusMm, Optional.of(colour), Optional.empty());
        }
    }

    /**
     * One line of text; whatever cannot be written on paper (controls, broken characters) is left out.
     *
     * @param at      on the base line, at the anchor
     * @param sizeMm  font size; capitals are 0.729 of it high
     * @param turnDeg about {@code at}, degrees counter-clockwise as seen
     * @param tag     what it is, for whoever has the page read out
     */
    record Text(Point at, String text, double sizeMm, Anchor anchor, double turnDeg, boolean bold, String colour, Tag tag)
            implements Shape {
        public Text(Point at, String text, double sizeMm, Anchor anchor, double turnDeg, boolean bold, String colour) {
            this(at, text, sizeMm, anchor, turnDeg, bold, colour, Tag.AROUND);
        }

        public Text {
            text = PlainText.of(text);
            Stroke.requireColour(colour);
            if (!(sizeMm > 0) || !Double.isFinite(turnDeg)) {
                throw new IllegalArgumentException("text needs a size above 0 mm, was " + sizeMm);
            }
        }

        public Text as(Tag tag) {
            return new Text(at, text, sizeMm, anchor, turnDeg, bold, colour, tag);
        }

        /** Height of capitals without accents in parts of the size, DejaVu Sans. */
        public static final double CAPITALS = 0.729;
    }

    /**
     * Leads to another page of the same file when it is clicked; nothing is drawn. Formats without pages leave it out.
     *
     * @param x    of the upper left corner
     * @param page from 0
     * @param words where it leads, for whoever cannot see it
     * @param tag   of the text that it lies on; {@link Tag#AROUND} for none
     */
    record Link(double x, double y, double widthMm, double heightMm, int page, String words, Tag tag) implements Shape {
        public Link {
            words = PlainText.of(words);
        }
    }

    /**
     * A photo, stretched to a box.
     *
     * @param x     of the upper left corner
     * @param photo a JPEG that lies as it is seen, see {@link PaperPhoto}
     * @param words what it shows, for whoever cannot see it
     * @param tag   of the cell that it stands in; {@link Tag#AROUND} for none
     */
    record Picture(double x, double y, double widthMm, double heightMm, Photo photo, String words, Tag tag) implements Shape {
        public Picture {
            if (!(widthMm > 0 && heightMm > 0)) throw new IllegalArgumentException("a picture measures above 0 mm each way, was " + widthMm + " x " + heightMm);
            if (!photo.type().equals("image/jpeg") || photo.up() != 1) throw new IllegalArgumentException("a picture on a page is an upright JPEG");
            words = PlainText.of(words);
        }
    }

    enum Anchor {
        START,
        MIDDLE,
        END
    }

    /**
     * An XML name made of a prefix and any text, different for different texts: letters, digits, points and
     * hyphens stay, everything else becomes its number between underscores.
     */
    static String id(String prefix, String any) {
        return prefix + "-" + NOT_IN_ID.matcher(any).replaceAll(other -> "_" + Integer.toHexString(other.group().codePointAt(0)) + "_");
    }
}
