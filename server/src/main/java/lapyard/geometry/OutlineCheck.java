package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;

/** Looks for what is wrong with an outline, as data. */
public final class OutlineCheck {
    /** Sides may stray this far from an axis and still count as along it, mm. */
    private static final double STRAY_MM = 0.05;

    private static final double NEAR = 1e-6;

    private OutlineCheck() {}

    /**
     * What an outline must keep to.
     *
     * @param rightAngled   every corner square and every side along an axis
     * @param leastSideMm   0 for any side above nothing
     * @param insetMm       thickness of the walls, for the inside width
     * @param leastInsideMm least clear width inside the walls; 0 not to look; right-angled outlines only
     */
    public record Rules(boolean rightAngled, double leastSideMm, double insetMm, double leastInsideMm) {
        /** Any outline that does not touch itself: a yard, a surface. */
        public static final Rules ANY = new Rules(false, 0, 0, 0);

        /** A bed of stacked timber: sides of 3t for two joints, 2t and at least 300 mm clear inside. */
        public static Rules bed(double thicknessMm) {
            return new Rules(true, 3 * thicknessMm, thicknessMm, Math.max(2 * thicknessMm, 300));
        }
    }

    public static List<OutlineFault> faults(Outline outline, Rules rules) {
        return faults(outline.corners(), rules);
    }

    /**
     * All faults of one stage: corners on one spot and crossings hide everything after them, wrong angles hide the
     * inside width.
     *
     * @param corners in order, either way round; any number
     */
    public static List<OutlineFault> faults(List<Point> corners, Rules rules) {
        if (corners.size() < 3) {
            Point at = corners.isEmpty() ? new Point(0, 0) : corners.get(0);
            return List.of(new OutlineFault(
                    OutlineFault.Kind.TOO_FEW_CORNERS, List.of(), List.of(), 3 - corners.size(), "corners", at));
        }
        Outline outline = new Outline(corners);
        List<OutlineFault> faults = new ArrayList<>();
        zeroSides(outline, faults);
        if (!faults.isEmpty()) {
            return faults;
        }
        meetings(outline, faults);
        if (!faults.isEmpty()) {
            return faults;
        }
        shortSides(outline, rules.leastSideMm(), faults);
        if (rules.rightAngled()) {
            boolean square = angles(outline, faults);
            if (square && rules.leastInsideMm() > 0 && faults.isEmpty()) {
                InsideWidth.narrowest(outline, rules.insetMm(), rules.leastInsideMm())
                        .ifPresent(faults::add);
            }
        }
        return faults;
    }

    private static void zeroSides(Outline outline, List<OutlineFault> faults) {
        for (int i = 0; i < outline.sides(); i++) {
            if (outline.sideMm(i) < NEAR) {
                faults.add(new OutlineFault(
                        OutlineFault.Kind.ZERO_SIDE,
                        List.of(i + 1, (i + 1) % outline.sides() + 1),
                        List.of(i),
                        0,
                        "mm",
                        outline.corner(i)));
            }
        }
    }

    private static void shortSides(Outline outline, double leastMm, List<OutlineFault> faults) {
        for (int i = 0; i < outline.sides(); i++) {
            double lacking = leastMm - outline.sideMm(i);
            if (lacking > NEAR) {
                faults.add(new OutlineFault(
                        OutlineFault.Kind.SHORT_SIDE, List.of(i + 1), List.of(i), lacking, "mm", outline.corner(i)));
            }
        }
    }

    /** Reports the worst corner, a whole tilt, or a wrong count of corners; true where all is square and upright. */
    private static boolean angles(Outline outline, List<OutlineFault> faults) {
        int worst = -1;
        double worstDeg = 0;
        double mostTilted = 0;
        int tiltedSide = -1;
        int outer = 0;
        Outline round = outline.signedAreaMm2() >= 0 ? outline : outline.counterClockwise();
        for (int i = 0; i < outline.sides(); i++) {
            double turn = turnDeg(outline, i);
            double off = Math.abs(Math.abs(turn) - 90);
            // A corner is judged by how far its sides stray, so that long and short sides are treated alike.
            double shorter = Math.min(outline.sideMm(i - 1), outline.sideMm(i));
            if (Math.sin(Math.toRadians(Math.min(off, 90))) * shorter > STRAY_MM && off > worstDeg + 1e-9) {
                worst = i;
                worstDeg = off;
            }
            double dx = Math.abs(outline.corner(i + 1).x() - outline.corner(i).x());
            double dy = Math.abs(outline.corner(i + 1).y() - outline.corner(i).y());
            double tilt = Math.toDegrees(Math.atan2(Math.min(dx, dy), Math.max(dx, dy)));
            if (Math.min(dx, dy) > STRAY_MM && tilt > mostTilted) {
                mostTilted = tilt;
                tiltedSide = i;
            }
            outer += round.insideCorner(i) ? -1 : 1;
        }
        if (worst >= 0) {
            faults.add(new OutlineFault(
                    OutlineFault.Kind.NOT_RIGHT_ANGLED,
                    List.of(worst + 1),
                    List.of(Math.floorMod(worst - 1, outline.sides()), worst),
                    worstDeg,
                    "degrees",
                    outline.corner(worst)));
            return false;
        }
        if (tiltedSide >= 0) {
            faults.add(new OutlineFault(
                    OutlineFault.Kind.TILTED,
                    List.of(tiltedSide + 1),
                    List.of(tiltedSide),
                    mostTilted,
                    "degrees",
                    outline.corner(tiltedSide)));
            return false;
        }
        if (outer != 4) {
            faults.add(new OutlineFault(
                    OutlineFault.Kind.TURNS, List.of(), List.of(), outer, "corners", outline.corner(0)));
            return false;
        }
        return true;
    }

    /** Turn at corner {@code i}, degrees, above 0 to the left; 0 goes straight on, 180 turns back. */
    private static double turnDeg(Outline outline, int i) {
        Point a = outline.corner(i - 1);
        Point b = outline.corner(i);
        Point c = outline.corner(i + 1);
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        double vx = c.x() - b.x();
        double vy = c.y() - b.y();
        return Math.toDegrees(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
    }

    private static void meetings(Outline outline, List<OutlineFault> faults) {
        int n = outline.sides();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean neighbours = j == i + 1 || i == 0 && j == n - 1;
                if (neighbours) {
                    foldedBack(outline, i, j, faults);
                } else {
                    meeting(outline, i, j, faults);
                }
            }
        }
    }

    private static void foldedBack(Outline outline, int i, int j, List<OutlineFault> faults) {
        int corner = j == i + 1 ? j : i;
        if (Math.abs(Math.abs(turnDeg(outline, corner)) - 180) < 1e-7) {
            double along = Math.min(outline.sideMm(i), outline.sideMm(j));
            faults.add(fault(OutlineFault.Kind.TOUCHING, i, j, along, outline.corner(corner)));
        }
    }

    private static void meeting(Outline outline, int i, int j, List<OutlineFault> faults) {
        Point a = outline.corner(i);
        Point b = outline.corner(i + 1);
        Point c = outline.corner(j);
        Point d = outline.corner(j + 1);
        if (Math.max(a.x(), b.x()) < Math.min(c.x(), d.x()) - NEAR
                || Math.max(c.x(), d.x()) < Math.min(a.x(), b.x()) - NEAR
                || Math.max(a.y(), b.y()) < Math.min(c.y(), d.y()) - NEAR
                || Math.max(c.y(), d.y()) < Math.min(a.y(), b.y()) - NEAR) {
            return;
        }
        double ab = outline.sideMm(i);
        double cd = outline.sideMm(j);
        double cOff = offLine(a, b, ab, c);
        double dOff = offLine(a, b, ab, d);
        double aOff = offLine(c, d, cd, a);
        double bOff = offLine(c, d, cd, b);
        if (Math.abs(cOff) < NEAR && Math.abs(dOff) < NEAR) {
            double along = Math.min(Math.max(along(a, b, ab, c), along(a, b, ab, d)), ab)
                    - Math.max(Math.min(along(a, b, ab, c), along(a, b, ab, d)), 0);
            if (along >= -NEAR) {
                double from = Math.max(Math.min(along(a, b, ab, c), along(a, b, ab, d)), 0);
                faults.add(fault(OutlineFault.Kind.TOUCHING, i, j, Math.max(along, 0), on(a, b, from / ab)));
            }
            return;
        }
        if (side(cOff) * side(dOff) > 0 || side(aOff) * side(bOff) > 0) {
            return;
        }
        Point at = on(a, b, aOff / (aOff - bOff));
        if (side(cOff) * side(dOff) < 0 && side(aOff) * side(bOff) < 0) {
            double least = Math.min(
                    Math.min(at.distanceMm(a), at.distanceMm(b)), Math.min(at.distanceMm(c), at.distanceMm(d)));
            faults.add(fault(OutlineFault.Kind.CROSSING, i, j, least, at));
        } else {
            faults.add(fault(OutlineFault.Kind.TOUCHING, i, j, 0, at));
        }
    }

    private static OutlineFault fault(OutlineFault.Kind kind, int i, int j, double amountMm, Point at) {
        return new OutlineFault(kind, List.of(i + 1, j + 1), List.of(i, j), amountMm, "mm", at);
    }

    private static int side(double off) {
        return Math.abs(off) < NEAR ? 0 : off > 0 ? 1 : -1;
    }

    private static double offLine(Point a, Point b, double ab, Point p) {
        return ((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x())) / ab;
    }

    private static double along(Point a, Point b, double ab, Point p) {
        return ((b.x() - a.x()) * (p.x() - a.x()) + (b.y() - a.y()) * (p.y() - a.y())) / ab;
    }

    private static Point on(Point a, Point b, double share) {
        return new Point(a.x() + (b.x() - a.x()) * share, a.y() + (b.y() - a.y()) * share);
    }
}
