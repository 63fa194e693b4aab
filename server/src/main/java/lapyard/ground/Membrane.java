package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Jts;
import lapyard.plan.GardenPath;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Membrane under paths in straight strips, leg by leg in the order of the document. At a bend the first leg runs through
 * the corner and the next begins beside it; a crossing is covered by the path that stands first. A strip whose end or
 * side meets membrane that lies there laps over it.
 */
final class Membrane {
    /** What is laid is taken off with so much round it: in a yard at an angle, rounding would leave slivers along it. */
    private static final double ROUNDING_MM = 5e-4;

    /** How far beyond a strip is looked for what it meets. */
    private static final double LOOK_MM = 1;

    /** Of a strip's end or side that must meet other membrane for a lap. */
    private static final double END_SHARE = 0.1;

    private static final double SIDE_SHARE = 0.5;

    /** Sine of the angle from which two legs do not run on in each other. */
    private static final double CROSSES = 0.1;

    private final List<GardenPath> paths;
    private final List<Geometry> covers;
    private final List<List<Leg>> legs;

    /** @param band its part of the path, to the points of its bends */
    private record Leg(PathLeg frame, Polygon band) {}

    private Membrane(List<GardenPath> paths, List<Geometry> covers) {
        this.paths = paths;
        this.covers = covers;
        this.legs = paths.stream().map(Membrane::legs).toList();
    }

    /** @return the strips of each path, none where it has no membrane */
    static List<List<PathWork.Strip>> of(List<GardenPath> paths, List<Geometry> covers) {
        Membrane membrane = new Membrane(paths, covers);
        List<List<PathWork.Strip>> all = new ArrayList<>();
        for (int path = 0; path < paths.size(); path++) all.add(paths.get(path).membrane().isEmpty() ? List.of() : membrane.strips(path));
        return all;
    }

    private List<PathWork.Strip> strips(int path) {
        List<Geometry> earlier = new ArrayList<>();
        for (int i = 0; i < path; i++) if (!paths.get(i).membrane().isEmpty()) earlier.add(covers.get(i));
        double lap = paths.get(path).lapMm();
        List<Geometry> laid = new ArrayList<>();
        List<PathWork.Strip> strips = new ArrayList<>();
        for (Leg leg : legs.get(path)) {
            Geometry free = Jts.common(leg.band(), covers.get(path));
            if (!laid.isEmpty()) free = Jts.less(free, Shapes.offset(Shapes.union(laid), ROUNDING_MM));
            List<Geometry> own = new ArrayList<>();
            for (Polygon part : Jts.polygons(free)) {
                PathLeg frame = leg.frame();
                double[] along = Shapes.extent(part, frame::along);
                double[] across = Shapes.extent(part, frame::across);
                double length = along[1] - along[0];
                double width = across[1] - across[0];
                if (length <= Shapes.TOUCH_MM || width <= Shapes.TOUCH_MM) continue;
                List<Geometry> met = new ArrayList<>(earlier);
                met.addAll(laid);
                List<Geometry> atEnds = new ArrayList<>(met);
                atEnds.addAll(crossing(path, leg));
                int ends = meets(frame.box(along[0] - LOOK_MM, along[0], across[0], across[1]), atEnds,
                        width * END_SHARE)
                        + meets(frame.box(along[1], along[1] + LOOK_MM, across[0], across[1]), atEnds,
                                width * END_SHARE);
                int sides = meets(frame.box(along[0], along[1], across[0] - LOOK_MM, across[0]), met,
                        length * SIDE_SHARE)
                        + meets(frame.box(along[0], along[1], across[1], across[1] + LOOK_MM), met,
                                length * SIDE_SHARE);
                strips.add(new PathWork.Strip(upToTenth(width + sides * lap), upToTenth(length + ends * lap), ends, sides));
                own.add(frame.box(along[0], along[1], across[0], across[1]));
            }
            laid.addAll(own);
        }
        return strips;
    }

    /** Paths that come later and turn off this leg: their sides, which its end may lap over. */
    private List<Geometry> crossing(int path, Leg leg) {
        List<Geometry> crossing = new ArrayList<>();
        for (int later = path + 1; later < paths.size(); later++) {
            if (paths.get(later).membrane().isEmpty()) continue;
            for (Leg other : legs.get(later)) {
                boolean crosses = Math.abs(leg.frame().x() * other.frame().y() - leg.frame().y() * other.frame().x()) > CROSSES;
                if (crosses && other.band().getEnvelopeInternal().distance(leg.band().getEnvelopeInternal()) <= LOOK_MM) {
                    crossing.add(Jts.common(other.band(), covers.get(later)));
                }
            }
        }
        return crossing;
    }

    /** 1 where at least so much of the look is taken, else 0. */
    private static int meets(Polygon look, List<Geometry> taken, double leastMm) {
        double met = 0;
        for (Geometry one : taken) {
            if (one.getEnvelopeInternal().intersects(look.getEnvelopeInternal())) met += Jts.common(look, one).getArea() / LOOK_MM;
        }
        return met >= leastMm ? 1 : 0;
    }

    private static List<Leg> legs(GardenPath path) {
        List<Leg> legs = new ArrayList<>();
        List<PathLeg> line = PathLeg.of(path);
        for (int i = 0; i < line.size(); i++) {
            PathLeg own = line.get(i);
            double before = i == 0 ? 0 : mitreMm(line.get(i - 1), own);
            double after = i + 1 == line.size() ? 0 : mitreMm(own, line.get(i + 1));
            legs.add(new Leg(own, own.box(-before, own.length() + after, -own.half(), own.half())));
        }
        return legs;
    }

    /** No blade follows less than a tenth; what joining shapes adds below a thousandth is no length. */
    private static double upToTenth(double mm) {
        return Math.ceil((mm - 1e-3) * 10) / 10;
    }

    /** How far the outer side of a bend runs past the middle of the line: width / 2 x tan(turn / 2). */
    private static double mitreMm(PathLeg one, PathLeg next) {
        double turn = Math.abs(Math.atan2(next.y(), next.x()) - Math.atan2(one.y(), one.x()));
        turn = turn > Math.PI ? 2 * Math.PI - turn : turn;
        return one.half() * Math.min(10, Math.tan(turn / 2));
    }
}
