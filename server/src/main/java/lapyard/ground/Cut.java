package lapyard.ground;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import lapyard.geometry.Outline;
import lapyard.geometry.OutlineCheck;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** How much smaller a rectangular bed must be, its first corner staying where it is. */
final class Cut {
    private Cut() {}

    /** To cut the width or the depth, whichever loses less; empty where neither helps. */
    static Optional<WayOut> least(Lot lot, Geometry obstacle, Predicate<Lot> free) {
        Outline outline = lot.bed().inYard();
        if (outline.sides() != 4 || !square(outline)) return Optional.empty();
        double width = outline.sideMm(0);
        double depth = outline.sideMm(1);
        List<Point> corners = outline.corners();
        // Wall B moves towards corner 1 when the width is cut, wall C when the depth is.
        OptionalDouble offWidth = least(lot, obstacle, free, corners.get(1), corners.get(2), corners.get(0), width, true);
        OptionalDouble offDepth = least(lot, obstacle, free, corners.get(2), corners.get(3), corners.get(1), depth, false);
        if (offWidth.isEmpty() && offDepth.isEmpty()) return Optional.empty();
        return Optional.of(
                offDepth.isEmpty() || offWidth.isPresent() && offWidth.getAsDouble() < offDepth.getAsDouble()
                        ? WayOut.of(WayKind.CUT_WIDTH, Fact.mm(width - offWidth.getAsDouble()))
                        : WayOut.of(WayKind.CUT_DEPTH, Fact.mm(depth - offDepth.getAsDouble())));
    }

    private static OptionalDouble least(
            Lot lot,
            Geometry obstacle,
            Predicate<Lot> free,
            Point from,
            Point to,
            Point towards,
            double side,
            boolean width) {
        Coordinate[] wall = {Shapes.coordinate(from), Shapes.coordinate(to)};
        double x = (towards.x() - from.x()) / side;
        double y = (towards.y() - from.y()) / side;
        double most = side - OutlineCheck.Rules.bed(lot.bed().section().thicknessMm()).leastWidthMm();
        return Direction.least(
                Direction.contacts(wall, obstacle.getCoordinates(), x, y),
                off -> off <= most
                        && free.test(Lot.of(lot.index(), lot.bed(), cut(lot, width ? off : 0, width ? 0 : off))));
    }

    private static Outline cut(Lot lot, double offWidth, double offDepth) {
        List<Point> own = lot.bed().inYard().corners();
        Point one = own.get(0);
        double width = one.distanceMm(own.get(1));
        double depth = one.distanceMm(own.get(3));
        Point two = one.towards(own.get(1), 1 - offWidth / width);
        Point four = one.towards(own.get(3), 1 - offDepth / depth);
        return new Outline(List.of(one, two, two.plus(four.x() - one.x(), four.y() - one.y()), four));
    }

    /** Whether all four corners of a four-sided outline are right angles. */
    static boolean square(Outline outline) {
        for (int i = 0; i < 4; i++) {
            if (Math.abs(outline.leg(i).dot(outline.leg(i + 1))) > 1e-6 * outline.sideMm(i) * outline.sideMm(i + 1)) return false;
        }
        return true;
    }
}
