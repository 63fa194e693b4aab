package lapyard.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.exchange.SiteDrawing.LengthUnit;
import lapyard.exchange.SiteDrawing.Spot;
import lapyard.geometry.Point;
import lapyard.working.BrokenRule;

/**
 * Lines, polylines and points of a DXF text file. Blocks, texts, curves and dimensions are passed over and counted; arcs
 * within a polyline become short sides.
 *
 * @see "Autodesk, DXF Reference (2012): ENTITIES; LWPOLYLINE group 42 (bulge, tangent of a quarter of the arc); header $INSUNITS"
 */
public final class DxfReader {
    private static final Map<Integer, LengthUnit> UNITS = Map.of(1, LengthUnit.IN, 2, LengthUnit.FT, 4, LengthUnit.MM, 5, LengthUnit.CM, 6, LengthUnit.M);
    /** An arc's sides turn by so much at most: of a radius of 2 m they leave it by less than 1 mm. */
    private static final double ARC_STEP = Math.toRadians(3);

    private static final String WAY = "open it in the program that made it and save it again as ASCII DXF";

    private final String[] lines;
    private final SiteDrawing.Builder drawing = new SiteDrawing.Builder("dxf");
    private int at;
    private int code;
    private String value = "";

    private DxfReader(String text) {
        this.lines = text.split("\r\n|\n|\r", -1);
    }

    public static SiteDrawing read(String text) {
        DxfReader reader = new DxfReader(text);
        reader.all();
        return reader.drawing.done();
    }

    /** Group codes are told by their line; a file that breaks off is bad. */
    private boolean next() {
        if (at + 1 >= lines.length) {
            drawing.bad(lines.length, "the file breaks off before its end", WAY);
            return false;
        }
        String number = lines[at].strip();
        if (!number.matches("-?[0-9]{1,4}")) {
            drawing.bad(at + 1L, "a group code is due here and \"" + shown(number) + "\" stands here", WAY);
            return false;
        }
        code = Integer.parseInt(number);
        value = lines[at + 1].strip();
        at += 2;
        return true;
    }

    private static String shown(String text) {
        return BrokenRule.cut(text.replaceAll("\\p{Cntrl}", " "));
    }

    private void all() {
        boolean entities = false;
        while (next()) {
            if (code == 0 && value.equals("EOF")) {
                if (!entities) drawing.bad(at, "the file has no section of what is drawn", WAY);
                return;
            }
            if (code == 9 && value.equals("$INSUNITS")) {
                if (!next()) return;
                if (value.matches("[0-9]{1,2}")) drawing.unit = Optional.ofNullable(UNITS.get(Integer.parseInt(value)));
            } else if (code == 2 && value.equals("ENTITIES")) {
                entities = true;
                if (!entities()) return;
            }
        }
    }

    /** @return false where reading ends */
    private boolean entities() {
        if (!next()) return false;
        while (true) {
            if (code != 0) {
                drawing.bad(at - 1L, "what is drawn should begin here and group " + code + " stands here", WAY);
                return false;
            }
            if (value.equals("ENDSEC")) return true;
            Entity entity = new Entity(value, at);
            do {
                if (!next()) return false;
                if (code != 0) entity.take();
            } while (code != 0);
            if (entity.type.equals("POLYLINE") && !vertices(entity)) return false;
            entity.end();
            if (drawing.isFull()) return false;
        }
    }

    /** An older polyline: its corners follow it, up to SEQEND, whose own groups are read over. */
    private boolean vertices(Entity polyline) {
        while (value.equals("VERTEX")) {
            Entity vertex = new Entity("VERTEX", at);
            do {
                if (!next()) return false;
                if (code != 0) vertex.take();
            } while (code != 0);
            boolean frame = (vertex.flags & 16) != 0; // a corner of the frame that a spline was drawn by
            if (!frame && !vertex.xs.isEmpty()) polyline.corner(vertex.xs.get(0), vertex.ys.isEmpty() ? 0 : vertex.ys.get(0), vertex.bulges.isEmpty() ? 0 : vertex.bulges.get(0));
            if (polyline.xs.size() > SiteDrawing.MOST_POINTS) break;
        }
        if (!value.equals("SEQEND")) return true;
        do {
            if (!next()) return false;
        } while (code != 0);
        return true;
    }

    private final class Entity {
        final String type;
        private final long line;
        private String layer = "0";
        private int flags;
        private final List<Double> xs = new ArrayList<>();
        private final List<Double> ys = new ArrayList<>();
        private final List<Double> bulges = new ArrayList<>();
        private OptionalDouble z = OptionalDouble.empty();
        private double x2;
        private double y2;
        private boolean corners;
        private boolean onPaper;
        /** Drawn as seen from below: x runs to the left. */
        private boolean mirrored;

        Entity(String type, long line) {
            this.type = type;
            this.line = line;
        }

        void corner(double x, double y, double bulge) {
            if (!corners) { // its own point is a dummy
                xs.clear();
                ys.clear();
                bulges.clear();
                corners = true;
            }
            xs.add(x);
            ys.add(y);
            bulges.add(bulge);
        }

        void take() {
            switch (code) {
                case 8 -> layer = value;
                case 70 -> flags = (int) number();
                case 10 -> {
                    xs.add(number());
                    while (bulges.size() < xs.size()) bulges.add(0.0);
                }
                case 20 -> ys.add(number());
                case 30 -> z = OptionalDouble.of(number());
                case 67 -> onPaper = number() != 0;
                case 230 -> mirrored = number() < 0;
                case 11 -> x2 = number();
                case 21 -> y2 = number();
                case 42 -> {
                    if (!type.equals("LWPOLYLINE") && !type.equals("VERTEX")) return;
                    if (bulges.isEmpty()) bulges.add(number());
                    else bulges.set(bulges.size() - 1, number());
                }
                default -> { }
            }
        }

        private double number() {
            try {
                double number = Double.parseDouble(value);
                if (Double.isFinite(number) && Math.abs(number) < 1e12) return number;
            } catch (NumberFormatException none) {
                // told below
            }
            drawing.bad(at, "group " + code + " of a " + shown(type) + " needs a number and has \"" + shown(value) + "\"", WAY);
            return 0;
        }

        void end() {
            if (onPaper) {
                drawing.passOver("on paper");
                return;
            }
            if (mirrored && type.endsWith("POLYLINE")) xs.replaceAll(x -> -x);
            if (mirrored) bulges.replaceAll(bulge -> -bulge);
            switch (type) {
                case "LINE" -> {
                    if (has(1)) drawing.line(layer, List.of(new Point(xs.get(0), ys.get(0)), new Point(x2, y2)), false, line);
                }
                case "LWPOLYLINE", "POLYLINE" -> {
                    if (type.equals("POLYLINE") && (flags & (16 | 64)) != 0) drawing.passOver("mesh");
                    else if (has(2)) drawing.line(layer, corners(), (flags & 1) != 0, line);
                }
                case "POINT" -> {
                    if (has(1)) drawing.spot(layer, new Spot(new Point(xs.get(0), ys.get(0)), z, OptionalDouble.empty()), line);
                }
                case "SEQEND", "VERTEX" -> { }
                default -> drawing.passOver(type.matches("[A-Z0-9_]{1,30}") ? type : "unknown");
            }
        }

        private boolean has(int points) {
            boolean whole = xs.size() == ys.size() && xs.size() >= points;
            if (!whole) drawing.bad(line, "a " + type + " has " + xs.size() + " x and " + ys.size() + " y of its points", WAY);
            return whole;
        }

        private List<Point> corners() {
            List<Point> points = new ArrayList<>();
            boolean closed = (flags & 1) != 0;
            for (int i = 0; i < xs.size(); i++) {
                Point from = new Point(xs.get(i), ys.get(i));
                points.add(from);
                boolean last = i + 1 == xs.size();
                double bulge = i < bulges.size() ? bulges.get(i) : 0;
                if (bulge != 0 && (closed || !last)) arc(points, from, new Point(xs.get((i + 1) % xs.size()), ys.get((i + 1) % xs.size())), bulge);
            }
            return points;
        }
    }

    /** Points between the ends of an arc whose quarter has the tangent {@code bulge}, to the left where that is above 0. */
    private static void arc(List<Point> points, Point from, Point to, double bulge) {
        double sweep = 4 * Math.atan(bulge);
        int sides = Math.max(1, (int) Math.ceil(Math.abs(sweep) / ARC_STEP));
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double away = (1 - bulge * bulge) / (4 * bulge); // of the middle from the chord, in chords
        double middleX = (from.x() + to.x()) / 2 - dy * away;
        double middleY = (from.y() + to.y()) / 2 + dx * away;
        double begin = Math.atan2(from.y() - middleY, from.x() - middleX);
        double radius = Math.hypot(from.x() - middleX, from.y() - middleY);
        for (int i = 1; i < sides; i++) {
            double angle = begin + sweep * i / sides;
            points.add(new Point(middleX + radius * Math.cos(angle), middleY + radius * Math.sin(angle)));
        }
    }
}
