package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A right-angled outline round one with slanted sides. */
public final class UprightCover {
    private UprightCover() {}

    /**
     * The outline itself where its sides run along the axes; else one that covers it, each slanted side stepped outwards,
     * or the box round it where such steps would meet one another.
     *
     * @param outline counter-clockwise, not touching itself
     */
    public static Outline of(Outline outline) {
        if (outline.upright()) return outline;
        List<Point> stepped = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            Point p = outline.corner(i);
            Point q = outline.corner(i + 1);
            stepped.add(p);
            Point along = outline.direction(i);
            if (along.x() != 0 && along.y() != 0) {
                // of the two corners of the step, the one to the right of the way round lies outside
                stepped.add(along.x() * along.y() > 0 ? new Point(q.x(), p.y()) : new Point(p.x(), q.y()));
            }
        }
        List<Point> corners = withoutStraight(levelled(stepped));
        if (corners.size() >= 4) {
            Outline cover = new Outline(corners);
            if (cover.signedAreaMm2() > 0 && OutlineCheck.faults(cover, OutlineCheck.Rules.ANY).isEmpty()) return cover.fromFrontLeft();
        }
        return outline.box();
    }

    /** Places that arithmetic left a hair apart become one, so that no sliver lies between them. */
    private static List<Point> levelled(List<Point> corners) {
        TreeMap<Double, Double> x = new TreeMap<>();
        TreeMap<Double, Double> y = new TreeMap<>();
        corners.forEach(corner -> {
            x.put(corner.x(), corner.x());
            y.put(corner.y(), corner.y());
        });
        for (TreeMap<Double, Double> levels : List.of(x, y)) {
            double last = Double.NEGATIVE_INFINITY;
            for (Map.Entry<Double, Double> level : levels.entrySet()) {
                last = level.getKey() - last > Outline.STRAY_MM ? level.getKey() : last;
                level.setValue(last);
            }
        }
        return corners.stream().map(corner -> new Point(x.get(corner.x()), y.get(corner.y()))).toList();
    }

    /** Without corners on a straight side or on a side that runs back along itself. */
    private static List<Point> withoutStraight(List<Point> given) {
        List<Point> kept = new ArrayList<>(given);
        boolean dropped = true;
        while (dropped && kept.size() > 3) {
            dropped = false;
            for (int i = 0; i < kept.size() && !dropped; i++) {
                Point before = kept.get(Math.floorMod(i - 1, kept.size()));
                Point here = kept.get(i);
                Point after = kept.get((i + 1) % kept.size());
                boolean level = before.y() == here.y() && here.y() == after.y();
                boolean upright = before.x() == here.x() && here.x() == after.x();
                if (level || upright) {
                    kept.remove(i);
                    dropped = true;
                }
            }
        }
        return kept;
    }
}
