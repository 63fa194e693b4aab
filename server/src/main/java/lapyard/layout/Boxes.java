package lapyard.layout;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.ground.FreeGround;
import lapyard.plan.Bed;
import org.locationtech.jts.geom.Envelope;

/** Boxes round outlines, and where a box of the frame puts a bed. */
final class Boxes {
    private Boxes() {}

    /** The rectangles that cover a pinned bed in the frame, each larger by {@code by} on all sides. */
    static List<List<Point>> parts(Frame frame, Bed bed, double by) {
        return boxes(frame, bed).stream().map(box -> ring(new double[] {box[0] - by, box[1] - by, box[2] + by, box[3] + by})).toList();
    }

    /** As {@link #parts}: left, front, right, back. */
    static List<double[]> boxes(Frame frame, Bed bed) {
        return BoxedBed.parts(frame.in(bed.inYard())).stream().map(part -> new double[] {part.x(), part.y(), part.x() + part.w(), part.y() + part.d()}).toList();
    }

    static Placement placement(Frame frame, BoxSpot spot) {
        int quarters = spot.kind().quarters();
        Envelope own = Jts.box(spot.kind().bed().outline().corners().stream().map(corner -> corner.turned(90 * quarters)).toList());
        Point at = frame.out(new Point(spot.x() - own.getMinX(), spot.y() - own.getMinY()));
        return new Placement(new Point(Lengths.toTenth(at.x()), Lengths.toTenth(at.y())), (frame.deg() + 90 * quarters) % 360, false);
    }

    /** @param box left, front, right, back */
    static List<Point> ring(double[] box) {
        return List.of(new Point(box[0], box[1]), new Point(box[2], box[1]), new Point(box[2], box[3]), new Point(box[0], box[3]));
    }

    static List<Point> swapped(List<Point> ring) {
        return ring.stream().map(point -> new Point(point.y(), point.x())).toList();
    }

    /** The square of a path's width before the entrance, which stays free; empty where nobody knows the entrance. */
    static Optional<List<Point>> apron(FreeGround ground, double pathMm) {
        return inward(ground).map(in -> {
            Point at = ground.entrance().orElseThrow();
            double half = Math.max(pathMm, ground.leafMm()) / 2;
            return List.of(at.moved(in, 0, -half), at.moved(in, pathMm, -half), at.moved(in, pathMm, half), at.moved(in, 0, half));
        });
    }

    /** From the entrance into the yard, square to the side of the yard that it lies nearest to. */
    static Optional<Point> inward(FreeGround ground) {
        if (ground.entrance().isEmpty()) return Optional.empty();
        Point at = ground.entrance().get();
        Outline yard = ground.yard().counterClockwise();
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < yard.sides(); i++) {
            double mm = at.distanceMm(at.nearestOn(yard.corner(i), yard.corner(i + 1)));
            if (mm < least - 1e-6) {
                least = mm;
                nearest = i;
            }
        }
        Point along = yard.direction(nearest);
        return Optional.of(new Point(-along.y(), along.x()));
    }
}
