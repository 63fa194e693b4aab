package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Ground.KeepClear;

/**
 * How a gate's leaf swings, in the yard, millimetres.
 *
 * @param hinge  the post it hangs on
 * @param closed the end of the closed leaf
 * @param open   the end of the leaf when open by a right angle
 */
record GatePlace(Point hinge, Point closed, Point open) {
    private static final int STEPS = 12;

    /** A hinge this close to a side of the yard hangs in that side. */
    private static final double ON_SIDE_MM = 300;

    /**
     * The closed leaf points to the second point where one is given, else along the side of the yard that the hinge
     * hangs in, towards the side's further end. Empty where neither says how the leaf lies.
     */
    static Optional<GatePlace> of(KeepClear gate, List<Outline> yard) {
        Point hinge = gate.shape().get(0);
        int side = yard.isEmpty() ? -1 : sideAt(yard.get(0).counterClockwise(), hinge);
        if (side < 0) {
            if (gate.shape().size() < 2) {
                return Optional.empty();
            }
            Point to = gate.shape().get(1);
            return Optional.of(swung(hinge, to.x() - hinge.x(), to.y() - hinge.y(), gate.leafMm(), gate.swingsIn()));
        }
        Outline outline = yard.get(0).counterClockwise();
        Point a = outline.corner(side);
        Point b = outline.corner(side + 1);
        Point to = gate.shape().size() > 1 ? gate.shape().get(1) : hinge.distanceMm(a) > hinge.distanceMm(b) ? a : b;
        double along = (b.x() - a.x()) * (to.x() - hinge.x()) + (b.y() - a.y()) * (to.y() - hinge.y());
        // The yard lies to the left of a side walked counter-clockwise.
        return Optional.of(swung(
                hinge, to.x() - hinge.x(), to.y() - hinge.y(), gate.leafMm(), gate.swingsIn() == along > 0));
    }

    /** The side nearest to the hinge, or -1 where none is near. */
    private static int sideAt(Outline outline, Point hinge) {
        int best = -1;
        double least = ON_SIDE_MM;
        for (int i = 0; i < outline.sides(); i++) {
            List<Point> side = List.of(outline.corner(i), outline.corner(i + 1), outline.corner(i));
            double away = Rings.distanceToEdge(side, hinge);
            if (away < least) {
                least = away;
                best = i;
            }
        }
        return best;
    }

    private static GatePlace swung(Point hinge, double x, double y, double leaf, boolean left) {
        double length = Math.hypot(x, y);
        double ux = length == 0 ? 1 : x / length;
        double uy = length == 0 ? 0 : y / length;
        int sense = left ? 1 : -1;
        return new GatePlace(
                hinge,
                new Point(hinge.x() + ux * leaf, hinge.y() + uy * leaf),
                new Point(hinge.x() - sense * uy * leaf, hinge.y() + sense * ux * leaf));
    }

    /** From the closed end to the open end. */
    List<Point> arc() {
        List<Point> arc = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double angle = Math.PI / 2 * i / STEPS;
            arc.add(new Point(
                    hinge.x() + (closed.x() - hinge.x()) * Math.cos(angle) + (open.x() - hinge.x()) * Math.sin(angle),
                    hinge.y() + (closed.y() - hinge.y()) * Math.cos(angle) + (open.y() - hinge.y()) * Math.sin(angle)));
        }
        return arc;
    }

    /** The ground that the leaf sweeps over. */
    List<Point> swept() {
        List<Point> swept = new ArrayList<>(arc());
        swept.add(hinge);
        return swept;
    }
}
