package lapyard.diagrams;

import java.util.List;
import java.util.function.Predicate;
import lapyard.geometry.Point;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.quadtree.Quadtree;

/** Rings on the paper, found again by where they lie. */
final class RingIndex {
    private record Held(List<Point> ring, Box box) {}

    private final Quadtree tree = new Quadtree();

    void put(List<Point> ring) {
        Box box = Box.round(ring);
        tree.insert(envelope(box), new Held(ring, box));
    }

    /** Whether the test holds for none of the rings whose boxes touch that of {@code ring}. */
    boolean none(List<Point> ring, Predicate<List<Point>> test) {
        Box box = Box.round(ring);
        for (Object one : tree.query(envelope(box))) {
            Held held = (Held) one;
            if (held.box.touches(box) && test.test(held.ring)) return false;
        }
        return true;
    }

    private static Envelope envelope(Box box) {
        return new Envelope(box.left(), box.right(), box.low(), box.high());
    }
}
