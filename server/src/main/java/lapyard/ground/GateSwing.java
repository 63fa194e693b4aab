package lapyard.ground;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Ground.KeepClear;
import org.locationtech.jts.geom.Geometry;

/**
 * The ground that a gate sweeps over, in the yard, millimetres.
 *
 * @param swept  all of it
 * @param ring   the outer ring of it, as it is drawn
 * @param closed the end of the closed leaf, where it is known
 * @param open   the end of the leaf when open by a right angle, where it is known
 */
public record GateSwing(Geometry swept, List<Point> ring, Optional<Point> closed, Optional<Point> open) {
    /** A degree a step: a leaf of 900 then bulges no more than 0.04 past the drawn arc. */
    private static final int STEPS = 90;

    public static GateSwing of(KeepClear gate, List<Outline> yards) {
        return of(gate, yards.stream().findFirst().map(Shapes::area));
    }

    /**
     * A quarter of a disc from the closed leaf, which lies from the hinge towards the second point, into the yard or
     * out of it. With the hinge alone the leaf may lie either way, so all of the disc on its side of the edge is swept;
     * without a yard nothing tells its side, so both are.
     */
    static GateSwing of(KeepClear gate, Optional<Geometry> yard) {
        Point hinge = gate.shape().get(0);
        if (gate.shape().size() < 2 || gate.shape().get(1).equals(hinge)) {
            List<Point> disc = Jts.sector(hinge, gate.leafMm(), 0, 360, STEPS);
            Geometry swept = yard.map(ground -> gate.swingsIn() ? Jts.common(Jts.area(disc), ground) : Jts.less(Jts.area(disc), ground)).orElse(Jts.area(disc));
            return new GateSwing(swept, Jts.largestRing(swept).orElse(disc), Optional.empty(), Optional.empty());
        }
        Point way = hinge.way(gate.shape().get(1));
        double along = Math.toDegrees(Math.atan2(way.y(), way.x()));
        Optional<Point> closed = Optional.of(hinge.away(gate.leafMm(), along));
        List<Point> left = Jts.sector(hinge, gate.leafMm(), along, 90, STEPS);
        List<Point> right = Jts.sector(hinge, gate.leafMm(), along - 90, 90, STEPS);
        if (yard.isEmpty()) {
            List<Point> both = Jts.sector(hinge, gate.leafMm(), along - 90, 180, STEPS);
            return new GateSwing(Jts.area(both), both, closed, Optional.empty());
        }
        boolean leftIsIn = Jts.common(Jts.area(left), yard.get()).getArea() >= Jts.common(Jts.area(right), yard.get()).getArea();
        boolean toLeft = leftIsIn == gate.swingsIn();
        List<Point> ring = toLeft ? left : right;
        return new GateSwing(Jts.area(ring), ring, closed, Optional.of(hinge.away(gate.leafMm(), along + (toLeft ? 90 : -90))));
    }
}
