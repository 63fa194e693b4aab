package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** The inner faces of walls drawn by their outer faces. */
public final class Inset {
    private Inset() {}

    /**
     * Moves every side inwards by one thickness. Corner {@code i} of the answer belongs to corner {@code i} of the
     * outline. For an outline that {@link OutlineCheck} passed, the inner area is outer area - t (P - t sum
     * tan(turn / 2)): right-angled, outer area - t (P - 4t).
     *
     * @param outline counter-clockwise
     * @param byMm    thickness, mm, 0 or more
     */
    public static Outline of(Outline outline, double byMm) {
        if (!(byMm >= 0)) throw new IllegalArgumentException("an inset needs 0 mm or more, was " + byMm);
        return of(outline, side -> byMm);
    }

    /**
     * Moves each side inwards by its own amount.
     *
     * @param byMm for side 0, 1 ..., 0 or more
     */
    public static Outline of(Outline outline, IntToDoubleFunction byMm) {
        List<Point> inner = new ArrayList<>(outline.sides());
        for (int i = 0; i < outline.sides(); i++) {
            Point before = outline.direction(i - 1);
            Point corner = outline.corner(i);
            double own = byMm.applyAsDouble(Math.floorMod(i - 1, outline.sides()));
            double along = innerCornerMm(outline.turnDeg(i), own, byMm.applyAsDouble(i));
            inner.add(corner.moved(before, along, own).steady());
        }
        return new Outline(inner);
    }

    /**
     * Where the inner faces of two walls meet, along the first wall from the corner of their outer faces; below 0 before
     * the corner.
     *
     * @param turnDeg     at the corner, above 0 to the left, where the inside lies
     * @param ownMm       thickness of the first wall
     * @param neighbourMm thickness of the other
     */
    public static double innerCornerMm(double turnDeg, double ownMm, double neighbourMm) {
        if (Math.abs(turnDeg) == 90) return -Math.signum(turnDeg) * neighbourMm;
        double turn = Math.toRadians(turnDeg);
        return -neighbourMm / Math.sin(turn) + ownMm / Math.tan(turn);
    }
}
