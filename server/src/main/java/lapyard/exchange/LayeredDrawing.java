package lapyard.exchange;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.geometry.Point;

/** Lines, points and texts on named layers, in millimetres: what a drawing program takes. */
public record LayeredDrawing(Map<String, Colour> layers, List<Line> lines, List<Spot> spots, List<Words> words) {
    /** Of the beds, in a plan of ours; by this layer it is known when it comes back. */
    public static final String INNER_FACES = "Beds inner face";

    public LayeredDrawing() {
        this(new LinkedHashMap<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    }

    /** A number of the AutoCAD colour index, which drawing programs share. */
    public enum Colour {
        RED(1),
        GREEN(3),
        BLUE(5),
        INK(7),
        GREY(8),
        BROWN(34);

        final int index;

        Colour(int index) {
            this.index = index;
        }
    }

    /**
     * @param closed   whether the last point is joined to the first
     * @param heightMm how far it stands up from the ground; 0 for what is flat
     */
    public record Line(String layer, List<Point> points, boolean closed, double heightMm) {}

    /** {@code zMm} is upwards. */
    public record Spot(String layer, Point at, double zMm) {}

    /** @param tallMm height of its capitals; {@code at} is its middle */
    public record Words(String layer, Point at, double tallMm, String text) {}

    /** @param name 1 to 60 letters, digits, spaces, dashes and underscores */
    public LayeredDrawing layer(String name, Colour colour) {
        if (!name.matches("[A-Za-z0-9 _-]{1,60}")) throw new IllegalArgumentException("a layer's name is letters, digits, spaces, dashes and underscores, was " + name);
        layers.put(name, colour);
        return this;
    }

    public void line(String layer, List<Point> points, boolean closed, double heightMm) {
        if (points.size() > 1) lines.add(new Line(known(layer), points, closed, heightMm));
    }

    public void spot(String layer, Point at, double zMm) {
        spots.add(new Spot(known(layer), at, zMm));
    }

    public void words(String layer, Point at, double tallMm, String text) {
        if (!text.isBlank()) words.add(new Words(known(layer), at, tallMm, text));
    }

    private String known(String layer) {
        if (!layers.containsKey(layer)) throw new IllegalArgumentException("there is no layer " + layer);
        return layer;
    }
}
