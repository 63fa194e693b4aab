package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;

/** The inner faces of walls drawn by their outer faces. */
public final class Inset {
    private Inset() {}

    /**
     * Moves every side inwards by one thickness. Corner {@code i} of the answer belongs to corner {@code i} of the
     * outline. For an outline that {@link OutlineCheck} passed, the inner area is outer area - t (P - 4t).
     *
     * @param outline counter-clockwise, all sides along the axes
     * @param byMm    thickness, mm, 0 or more
     */
    public static Outline of(Outline outline, double byMm) {
        if (!(byMm >= 0)) {
            throw new IllegalArgumentException("an inset needs 0 mm or more, was " + byMm);
        }
        List<Point> inner = new ArrayList<>(outline.sides());
        for (int i = 0; i < outline.sides(); i++) {
            Point before = outline.uprightDirection(i - 1);
            Point after = outline.uprightDirection(i);
            Point corner = outline.corner(i);
            inner.add(new Point(
                    Lengths.steady(corner.x() - byMm * (before.y() + after.y())),
                    Lengths.steady(corner.y() + byMm * (before.x() + after.x()))));
        }
        return new Outline(inner);
    }
}
