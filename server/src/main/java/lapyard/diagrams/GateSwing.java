package lapyard.diagrams;

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
 * @param swept  closed ring
 * @param closed the end of the closed leaf, where it is known
 * @param open   the end of the leaf when open by a right angle, where it is known
 */
record GateSwing(List<Point> swept, Optional<Point> closed, Optional<Point> open) {
    private static final int STEPS = 24;

    /**
     * A quarter of a disc from the closed leaf, which lies from the hinge towards the second point, into the yard or
     * out of it. With the hinge alone the leaf may lie either way, so all of the disc on its side of the edge is swept;
     * without a yard nothing tells its side, so both are.
     */
    static GateSwing of(KeepClear gate, List<Outline> yards) {
        Point hinge = gate.shape().get(0);
        Optional<Geometry> yard = yards.stream().findFirst().map(outline -> Jts.area(outline.corners()));
        if (gate.shape().size() < 2 || gate.shape().get(1).equals(hinge)) {
            List<Point> disc = Jts.sector(hinge, gate.leafMm(), 0, 360, STEPS);
            List<Point> swept = yard.map(ground -> gate.swingsIn()
                            ? Jts.area(disc).intersection(ground)
                            : Jts.area(disc).difference(ground))
                    .flatMap(Jts::largestRing)
                    .orElse(disc);
            return new GateSwing(swept, Optional.empty(), Optional.empty());
        }
        Point latch = gate.shape().get(1);
        double along = Math.toDegrees(Math.atan2(latch.y() - hinge.y(), latch.x() - hinge.x()));
        Optional<Point> closed = Optional.of(hinge.away(gate.leafMm(), along));
        List<Point> left = Jts.sector(hinge, gate.leafMm(), along, 90, STEPS);
        List<Point> right = Jts.sector(hinge, gate.leafMm(), along - 90, 90, STEPS);
        if (yard.isEmpty()) {
            return new GateSwing(Jts.sector(hinge, gate.leafMm(), along - 90, 180, STEPS), closed, Optional.empty());
        }
        boolean leftIsIn = Jts.area(left).intersection(yard.get()).getArea()
                >= Jts.area(right).intersection(yard.get()).getArea();
        boolean toLeft = leftIsIn == gate.swingsIn();
        return new GateSwing(
                toLeft ? left : right, closed, Optional.of(hinge.away(gate.leafMm(), along + (toLeft ? 90 : -90))));
    }
}
