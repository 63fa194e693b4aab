package lapyard.diagrams;

import java.util.List;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import lapyard.drawing.Hatch;
import lapyard.drawing.Hatch.Mark;
import lapyard.drawing.Shape;
import lapyard.drawing.Stroke;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Point;
import lapyard.plan.SurfaceKind;

/** The colours of the drawings, each with a hatch of its own so that a print in black alone loses nothing. */
record Inks(boolean mono) {
    private static final String CHALK = "#F4F1E8";
    private static final String SLATE = "#23303A";
    private static final String TIMBER = "#C08A45";
    private static final String SOIL = "#4B3626";
    private static final String MULCH = "#7A5230";
    private static final String WATER = "#2B7F92";
    private static final String SNAG = "#A62B2B";
    private static final String CARRIED = "#6B4E8C";
    private static final String LINER = "#1D2429";
    private static final String LEAF = "#3E7A35";
    private static final String MOSS = "#66763F";
    private static final String GRAVEL = "#8A7B66";
    private static final String WHITE = "#FFFFFF";
    private static final String BLACK = "#000000";

    /** Line widths of ISO 128: each is the next narrower one times the root of 2. */
    static final double HAIR = 0.13;

    static final double NARROW = 0.18;
    static final double THIN = 0.25;
    static final double MEDIUM = 0.35;
    static final double WIDE = 0.5;
    static final double BROAD = 0.7;

    /**
     * The lines of a plan: line group 0.35 of ISO 128-23:1999 for construction drawings (from memory), in which narrow lines have half
     * the width of wide ones and these half of the extra wide. The first two for what is cut or stands at the edge and for outlines
     * in view, the next for signs, the rest for all that serves them.
     */
    static final double CUT = BROAD;

    static final double OUTLINE = MEDIUM;
    static final double SIGN = THIN;
    static final double SECONDARY = NARROW;
    static final double DIMENSION = NARROW;
    static final double HATCH = NARROW;

    /** A colour, how much of it on white, and the hatch in which a print in black alone shows it: its angle, spacing and width. */
    record Look(String colour, double tint, Mark mark, double angle, double spacing, double width) {}

    /** A strip under the slats. */
    static final Look BEARER = new Look(TIMBER, 0.6, Mark.LINES, 0, 1.2, HAIR);
    static final Look SCRAP = new Look(SLATE, 0.25, Mark.CROSSED, 45, 1.6, NARROW);
    /** An offcut that a later stage cuts. */
    static final Look LATER = new Look(CARRIED, 0.3, Mark.LINES, 45, 2.4, THIN);
    /** An offcut or remnant for the rack. */
    static final Look KEPT = new Look(CARRIED, 0.12, Mark.DOTS, 0, 1.8, MEDIUM);
    /** Planted ground within a bed. */
    static final Look PLANTED = new Look(LEAF, 0.42, Mark.DASHES, 60, 2.6, HATCH);
    /** A tree as far as its branches or roots reach. */
    static final Look TREE = new Look(LEAF, 0.25, Mark.DOTS, 45, 2, THIN);
    static final Look HOUSE_WALL = new Look(SLATE, 0.12, Mark.LINES, 45, 1.2, HATCH);
    static final Look KEEP_CLEAR = new Look(SNAG, 0.1, Mark.LINES, 135, 2.2, HATCH);
    static final Look OBSTACLE = new Look(SLATE, 0.3, Mark.CROSSED, 45, 1.2, HATCH);

    /** How an area is filled. */
    record Filling(Optional<String> fill, Optional<Hatch> hatch) {
        Shape.Area area(List<Point> ring, Stroke edge) {
            return areas(List.of(ring), Optional.of(edge));
        }

        Shape.Area area(Box box, Stroke edge) {
            return area(box.corners(), edge);
        }

        Shape.Area areas(List<List<Point>> rings, Optional<Stroke> edge) {
            return new Shape.Area(rings, fill, hatch, edge);
        }
    }

    String ink() {
        return mono ? BLACK : SLATE;
    }

    String snag() {
        return mono ? BLACK : SNAG;
    }

    String water() {
        return mono ? BLACK : WATER;
    }

    String paper() {
        return WHITE;
    }

    /** Behind text that stands on a hatch. */
    String plate() {
        return mono ? WHITE : CHALK;
    }

    /** From the left end of its base line. */
    Shape.Text text(double x, double y, String words, double size, boolean bold) {
        return new Shape.Text(new Point(x, y), words, size, Shape.Anchor.START, 0, bold, ink());
    }

    /** One below the other, read as one. */
    List<Shape.Text> lines(double x, double firstBase, double pitch, List<String> lines, double size, boolean bold, Tag tag) {
        return IntStream.range(0, lines.size()).mapToObj(i -> text(x, firstBase + i * pitch, lines.get(i), size, bold).as(tag)).toList();
    }

    /** To the right end of its base line. */
    Shape.Text end(double x, double y, String words, double size, boolean bold) {
        return new Shape.Text(new Point(x, y), words, size, Shape.Anchor.END, 0, bold, ink());
    }

    /** In bold about the middle of its base line. */
    static Shape.Text middle(Point at, String words, double size, String colour) {
        return new Shape.Text(at, words, size, Shape.Anchor.MIDDLE, 0, true, colour);
    }

    /** In bold about the middle of its capitals. */
    static Shape.Text sign(Point at, String words, double size, String colour) {
        return middle(at.plus(0, size * Shape.Text.CAPITALS / 2), words, size, colour);
    }

    /** A band across the top of a sheet, so that nobody works by it unawares. */
    Shape stale(String why, Box band, double size) {
        String words = TextMeasure.cut("STALE: " + why, size, true, band.width() - 6);
        return new Shape.Group("stale", "Stale", "stale", List.of(
                Shape.Area.filled(band.corners(), snag()),
                sign(band.centre(), words, size, paper())));
    }

    /** One colour without a hatch. */
    static Filling plain(String colour) {
        return new Filling(Optional.of(colour), Optional.empty());
    }

    Stroke pen(double widthMm) {
        return Stroke.of(ink(), widthMm);
    }

    Filling yard() {
        return new Filling(mono ? Optional.empty() : Optional.of(CHALK), Optional.empty());
    }

    Filling timber() {
        return plain(mono ? WHITE : TIMBER);
    }

    /** A piece of liner or membrane. */
    Filling sheet() {
        return plain(mono ? WHITE : tinted(LINER, 0.12));
    }

    String leaf() {
        return mono ? BLACK : LEAF;
    }

    Filling surface(SurfaceKind kind) {
        return switch (kind) {
            // joints stay behind what stands on them
            case SLAB -> of(new Look(mono ? BLACK : tinted(SLATE, 0.45), 0.2, Mark.CROSSED, 0, 6, HATCH));
            case CONCRETE -> of(new Look(SLATE, 0.16, Mark.DOTS, 30, 3.2, MEDIUM));
            case GRAVEL -> of(new Look(GRAVEL, 0.28, Mark.DOTS, 15, 1.5, MEDIUM));
            // flat, so that what stands on it is seen
            case GRASS -> mono ? of(new Look(MOSS, 0, Mark.DOTS, 45, 4, THIN)) : plain(tinted(MOSS, 0.24));
            case SOIL -> of(new Look(SOIL, 0.4, Mark.DASHES, 0, 2.6, HATCH));
            case DECK -> of(new Look(TIMBER, 0.3, Mark.LINES, 0, 2, HATCH));
        };
    }

    /** @param least 0 for full sun, 1 for part shade, 2 for shade */
    Filling light(int least) {
        return switch (least) {
            case 0 -> plain(mono ? WHITE : tinted(TIMBER, 0.12));
            case 1 -> of(new Look(WATER, 0.28, Mark.DOTS, 30, 2.4, THIN));
            default -> of(new Look(SLATE, 0.5, Mark.LINES, 45, 1.3, NARROW));
        };
    }

    /** @param nth which of the materials of this plan it is, counted from 0, for those without a hatch of their own */
    Filling path(String material, int nth) {
        String word = material.toLowerCase(Locale.ROOT);
        if (word.contains("gravel") || word.contains("shingle")) {
            return of(new Look(GRAVEL, 0.28, Mark.DOTS, 0, 2.6, BROAD));
        }
        if (word.contains("bark") || word.contains("chip") || word.contains("mulch")) {
            return of(new Look(MULCH, 0.4, Mark.DASHES, 150, 2.2, HATCH));
        }
        return of(new Look(MULCH, 0.15, Mark.LINES, 20 + 35 * (nth % 4), 2.6, HATCH));
    }

    Filling of(Look look) {
        Hatch hatch = new Hatch(look.mark, look.angle, look.spacing, Stroke.of(mono ? BLACK : look.colour, look.width));
        return new Filling(Optional.of(mono ? WHITE : tinted(look.colour, look.tint)), Optional.of(hatch));
    }

    private static final HexFormat BYTES = HexFormat.of().withUpperCase();

    /** {@code share} of the colour on white. */
    private static String tinted(String colour, double share) {
        StringBuilder out = new StringBuilder("#");
        for (int i = 1; i < 7; i += 2) {
            int part = Integer.parseInt(colour.substring(i, i + 2), 16);
            out.append(BYTES.toHexDigits((byte) Math.round(255 - (255 - part) * share)));
        }
        return out.toString();
    }
}
