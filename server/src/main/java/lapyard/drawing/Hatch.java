package lapyard.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapyard.geometry.Point;

/**
 * Marks that fill an area and survive a print without colours. They are lines of the page, cut at the edges of the
 * area, and not a pattern that each viewer draws in its own way.
 *
 * @param angleDeg  of the rows, degrees counter-clockwise from level
 * @param spacingMm between rows on paper
 */
public record Hatch(Mark mark, double angleDeg, double spacingMm, Stroke stroke) {
    public Hatch {
        if (!(spacingMm >= 0.2)) throw new IllegalArgumentException("hatch rows are at least 0.2 mm apart, were " + spacingMm);
    }

    public enum Mark {
        LINES,
        CROSSED,
        DASHES,
        DOTS
    }

    /** More rows than this would be a grey blot; the rows are then drawn further apart. */
    private static final int MOST_ROWS = 2000;

    /** Dash and gap of {@link Mark#DASHES}, in row spacings. */
    private static final double DASH = 1.1;

    private static final double GAP = 0.9;

    /** Long enough that every renderer draws its round ends. */
    private static final double DOT_MM = 0.02;

    /**
     * The strokes of this hatch within rings, even-odd. Rows lie on one grid for the whole page, so that neighbouring
     * areas of one kind run into each other.
     *
     * @return pairs of points
     */
    List<List<Point>> within(List<List<Point>> rings) {
        List<List<Point>> strokes = new ArrayList<>();
        rows(rings, angleDeg, strokes);
        if (mark == Mark.CROSSED) rows(rings, angleDeg + 90, strokes);
        return strokes;
    }

    private void rows(List<List<Point>> rings, double degrees, List<List<Point>> strokes) {
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        int count = rings.stream().mapToInt(List::size).sum();
        // Along the rows is u, across them v; the page's y runs down, hence the signs.
        double[] u0 = new double[count];
        double[] v0 = new double[count];
        double[] u1 = new double[count];
        double[] v1 = new double[count];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        int e = 0;
        for (List<Point> ring : rings) {
            for (int i = 0; i < ring.size(); i++, e++) {
                Point a = ring.get(i);
                Point b = ring.get((i + 1) % ring.size());
                u0[e] = a.x() * cos - a.y() * sin;
                v0[e] = a.x() * sin + a.y() * cos;
                u1[e] = b.x() * cos - b.y() * sin;
                v1[e] = b.x() * sin + b.y() * cos;
                low = Math.min(low, v0[e]);
                high = Math.max(high, v0[e]);
            }
        }
        double step = Math.max(spacingMm, (high - low) / MOST_ROWS);
        double[] cuts = new double[count];
        for (long row = (long) Math.ceil(low / step - 0.5); (row + 0.5) * step < high; row++) {
            double v = (row + 0.5) * step;
            int n = 0;
            for (int i = 0; i < count; i++) {
                if (v0[i] <= v != v1[i] <= v) cuts[n++] = u0[i] + (v - v0[i]) / (v1[i] - v0[i]) * (u1[i] - u0[i]);
            }
            Arrays.sort(cuts, 0, n);
            for (int i = 0; i + 1 < n; i += 2) marks(cuts[i], cuts[i + 1], row, v, step, cos, sin, strokes);
        }
    }

    private void marks(double from, double to, long row, double v, double step, double cos, double sin, List<List<Point>> strokes) {
        if (mark == Mark.LINES || mark == Mark.CROSSED) {
            stroke(from, to, v, cos, sin, strokes);
            return;
        }
        double dash = mark == Mark.DOTS ? DOT_MM : DASH * step;
        double period = mark == Mark.DOTS ? step * 2 : (DASH + GAP) * step;
        double shift = Math.floorMod(row, 2) * period / 2;
        for (long k = (long) Math.floor((from - shift) / period); k * period + shift < to; k++) {
            double start = k * period + shift;
            if (mark == Mark.DOTS) {
                if (start >= from && start + dash <= to) stroke(start, start + dash, v, cos, sin, strokes);
            } else if (Math.min(to, start + dash) - Math.max(from, start) > dash / 4) {
                stroke(Math.max(from, start), Math.min(to, start + dash), v, cos, sin, strokes);
            }
        }
    }

    private static void stroke(double from, double to, double v, double cos, double sin, List<List<Point>> strokes) {
        strokes.add(List.of(new Point(from * cos + v * sin, v * cos - from * sin), new Point(to * cos + v * sin, v * cos - to * sin)));
    }
}
