package lapyard.ground;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;
import lapyard.plan.Fact;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** The four ways in which a bed can be moved, as seen with one's back to the house. */
enum Direction {
    LEFT(-1, 0, WayKind.MOVE_LEFT),
    RIGHT(1, 0, WayKind.MOVE_RIGHT),
    AWAY(0, 1, WayKind.MOVE_AWAY),
    TOWARDS(0, -1, WayKind.MOVE_TOWARDS);

    private final double x;
    private final double y;
    private final WayKind way;

    Direction(double x, double y, WayKind way) {
        this.x = x;
        this.y = y;
        this.way = way;
    }

    Lot move(Lot lot, double mm) {
        return lot.moved(x * mm, y * mm);
    }

    WayOut way(double mm) {
        return WayOut.of(way, Fact.mm(mm));
    }

    /** The least move at which {@code free} holds; empty where none of the contacts frees it. */
    OptionalDouble leastMm(Geometry moving, Geometry fixed, DoublePredicate free) {
        return least(contacts(moving.getCoordinates(), fixed.getCoordinates(), x, y), free);
    }

    /** The first contact that is free, up to the next whole millimetre, or the next tenth where only that fits. */
    static OptionalDouble least(DoubleStream contacts, DoublePredicate free) {
        return contacts.filter(s -> s > Shapes.TOUCH_MM)
                .sorted()
                .flatMap(s -> DoubleStream.of(Math.ceil(s - 0.01), Math.ceil(s * 10 - 0.1) / 10))
                .filter(free)
                .findFirst();
    }

    /**
     * How far a shape can slide along (x, y) until a corner of one meets a side of the other. Between two neighbouring
     * contacts nothing changes, so the least move that frees it is one of them.
     *
     * @param moving corners in order; a side runs from each to the next
     */
    static DoubleStream contacts(Coordinate[] moving, Coordinate[] fixed, double x, double y) {
        return DoubleStream.concat(
                Arrays.stream(moving).flatMapToDouble(corner -> hits(corner, fixed, x, y)),
                Arrays.stream(fixed).flatMapToDouble(corner -> hits(corner, moving, -x, -y)));
    }

    /** Distances along (x, y) from a corner to the sides that its ray meets; a lone corner is a side without length. */
    private static DoubleStream hits(Coordinate corner, Coordinate[] sides, double x, double y) {
        DoubleStream.Builder distances = DoubleStream.builder();
        for (int i = 0; i + 1 < Math.max(2, sides.length); i++) {
            Coordinate p = sides[i];
            Coordinate q = sides[Math.min(i + 1, sides.length - 1)];
            // Distances of both ends to the left of the ray; the side is met where they differ in sign.
            double left = x * (p.y - corner.y) - y * (p.x - corner.x);
            double right = x * (q.y - corner.y) - y * (q.x - corner.x);
            double alongP = x * (p.x - corner.x) + y * (p.y - corner.y);
            double alongQ = x * (q.x - corner.x) + y * (q.y - corner.y);
            if (Math.abs(left) < 1e-6) distances.add(alongP);
            if (Math.abs(right) < 1e-6) distances.add(alongQ);
            if (left * right < 0) distances.add(alongP + (alongQ - alongP) * left / (left - right));
        }
        return distances.build();
    }
}
