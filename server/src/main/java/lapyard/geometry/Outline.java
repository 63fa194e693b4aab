package lapyard.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * A closed outline without holes; side i runs from corner i to corner i + 1.
 *
 * @param corners in order round the outline, the last side closes it; three or more
 */
public record Outline(List<Point> corners) {
    public Outline {
        corners = List.copyOf(corners);
        if (corners.size() < 3) throw new IllegalArgumentException("an outline needs 3 corners, has " + corners.size());
    }

    public static Outline rectangle(double widthMm, double depthMm) {
        return new Outline(List.of(new Point(0, 0), new Point(widthMm, 0), new Point(widthMm, depthMm), new Point(0, depthMm)));
    }

    public int sides() {
        return corners.size();
    }

    /** Corner {@code i}, counted round and round. */
    public Point corner(int i) {
        int count = corners.size();
        return corners.get(i >= 0 && i < count ? i : Math.floorMod(i, count));
    }

    public double sideMm(int i) {
        return corner(i).distanceMm(corner(i + 1));
    }

    /** From corner {@code i} to the next. */
    public Point leg(int i) {
        return corner(i + 1).minus(corner(i));
    }

    /** A place along side {@code i} from its start corner, and so far to its left. */
    public Point at(int i, double alongMm, double leftMm) {
        return corner(i).moved(direction(i), alongMm, leftMm);
    }

    public double perimeterMm() {
        double sum = 0;
        for (int i = 0; i < sides(); i++) sum += sideMm(i);
        return sum;
    }

    /** Shoelace area, above 0 where the corners run counter-clockwise. */
    public double signedAreaMm2() {
        double twice = 0;
        for (int i = 0; i < sides(); i++) {
            Point a = corner(i);
            Point b = corner(i + 1);
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice / 2;
    }

    public double areaMm2() {
        return Math.abs(signedAreaMm2());
    }

    /** The same outline, its corners counter-clockwise. */
    public Outline counterClockwise() {
        if (signedAreaMm2() >= 0) return this;
        List<Point> reversed = new ArrayList<>(corners);
        Collections.reverse(reversed);
        return new Outline(reversed);
    }

    /** The same outline, beginning at the corner with the least y, then the least x. */
    public Outline fromFrontLeft() {
        int first = 0;
        for (int i = 1; i < sides(); i++) {
            Point a = corner(i);
            Point b = corner(first);
            if (a.y() < b.y() || a.y() == b.y() && a.x() < b.x()) first = i;
        }
        List<Point> turned = new ArrayList<>();
        for (int i = 0; i < sides(); i++) turned.add(corner(first + i));
        return new Outline(turned);
    }

    /** Whether corner {@code i} points into the outline; the corners must run counter-clockwise. */
    public boolean insideCorner(int i) {
        return leg(i - 1).cross(leg(i)) < 0;
    }

    public int insideCorners() {
        int count = 0;
        for (int i = 0; i < sides(); i++) if (insideCorner(i)) count++;
        return count;
    }

    /** Sides may stray this far from an axis and still count as along it, mm. */
    static final double STRAY_MM = 0.05;

    /**
     * The direction of side {@code i} in an outline whose sides run along the axes: one of (1,0) (0,1) (-1,0) (0,-1).
     */
    public Point uprightDirection(int i) {
        Point leg = leg(i);
        return Math.abs(leg.x()) > Math.abs(leg.y()) ? new Point(Math.signum(leg.x()), 0) : new Point(0, Math.signum(leg.y()));
    }

    /** The direction of side {@code i}, length 1; exact where the side runs along an axis but for a hair. */
    public Point direction(int i) {
        Point leg = leg(i);
        if (Math.min(Math.abs(leg.x()), Math.abs(leg.y())) <= STRAY_MM) return uprightDirection(i);
        return corner(i).way(corner(i + 1));
    }

    /**
     * Turn at corner {@code i} from side i - 1 to side i, degrees, above 0 to the left: 180 less the interior angle.
     * Exactly 90 or -90 where the corner is square but for a hair.
     */
    public double turnDeg(int i) {
        Point before = direction(i - 1);
        Point after = direction(i);
        double across = before.cross(after);
        double along = before.dot(after);
        if (Math.abs(along) * Math.min(sideMm(i - 1), sideMm(i)) <= STRAY_MM) return Math.copySign(90, across);
        return Math.toDegrees(Math.atan2(across, along));
    }

    public boolean square(int i) {
        return Math.abs(turnDeg(i)) == 90;
    }

    /** Whether every corner is square and every side runs along an axis. */
    public boolean upright() {
        for (int i = 0; i < sides(); i++) {
            Point along = direction(i);
            if (along.x() != 0 && along.y() != 0 || !square(i)) return false;
        }
        return true;
    }

    /** The least upright rectangle round it, from its front left corner. */
    public Outline box() {
        double left = corners.stream().mapToDouble(Point::x).min().orElseThrow();
        double right = corners.stream().mapToDouble(Point::x).max().orElseThrow();
        double low = corners.stream().mapToDouble(Point::y).min().orElseThrow();
        double high = corners.stream().mapToDouble(Point::y).max().orElseThrow();
        return new Outline(List.of(new Point(left, low), new Point(right, low), new Point(right, high), new Point(left, high)));
    }

    public Outline placed(Placement placement) {
        return new Outline(corners.stream().map(placement::toYard).toList());
    }

    /** Corners that no side joins, two by two from 0, those furthest apart first. */
    public List<int[]> diagonals() {
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < sides(); i++) {
            for (int j = i + 2; j < sides() - (i == 0 ? 1 : 0); j++) pairs.add(new int[] {i, j});
        }
        pairs.sort(Comparator.comparingDouble(pair -> -Lengths.steady(corner(pair[0]).distanceMm(corner(pair[1])))));
        return pairs;
    }
}
