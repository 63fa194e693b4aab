package lapyard.geometry;

import java.util.ArrayList;
import java.util.List;

/** Looks for what is wrong with an outline, as data. */
public final class OutlineCheck {
    /** A corner this near to a right angle, or to straight on, is meant to be it: no saw is set to less. */
    private static final double LEAST_SET_DEG = 1;

    /** Below this the point of a corner is longer than any timber is thick. */
    private static final double SHARPEST_DEG = 20;

    private static final double NEAR = 1e-6;

    /** Corners are told to 0.1 mm, so a slanted side comes out at most 2 x 0.05 x sqrt 2 mm shorter than it was meant. */
    private static final double ROUNDED_MM = 0.15;

    private OutlineCheck() {}

    /**
     * What an outline must keep to.
     *
     * @param timbered      built of timbers {@code insetMm} thick: corners that can be sawn, an inner face on every side
     * @param leastSideMm   0 for any side above nothing
     * @param insetMm       thickness of the walls, for the inside width
     * @param leastInsideMm least clear width inside the walls; 0 not to look; timbered outlines only
     */
    public record Rules(boolean timbered, double leastSideMm, double insetMm, double leastInsideMm) {
        /** Any outline that does not touch itself: a yard, a surface. */
        public static final Rules ANY = new Rules(false, 0, 0, 0);

        /** A bed of stacked timber: sides of 3t for two joints, inner faces of t, 2t and at least 300 mm clear inside. */
        public static Rules bed(double thicknessMm) {
            return new Rules(true, 3 * thicknessMm, thicknessMm, Math.max(2 * thicknessMm, 300));
        }

        /** Least width of a rectangle, mm: for its corner joints and for its inside. */
        public double leastWidthMm() {
            return Math.max(leastSideMm, 2 * insetMm + leastInsideMm);
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
            return List.of(new OutlineFault(OutlineFault.Kind.CORNERS_FEW, List.of(), List.of(), 3 - corners.size(), "corners", at));
        }
        Outline outline = new Outline(corners);
        List<OutlineFault> faults = new ArrayList<>();
        zeroSides(outline, faults);
        if (!faults.isEmpty()) return faults;
        meetings(outline, faults);
        if (!faults.isEmpty()) return faults;
        if (!rules.timbered()) {
            shortSides(outline, rules.leastSideMm(), faults);
            return faults;
        }
        angles(outline, faults);
        if (faults.isEmpty()) {
            innerFaces(outline, rules, faults);
        } else {
            shortSides(outline, rules.leastSideMm(), faults);
        }
        if (rules.leastInsideMm() > 0 && faults.isEmpty()) {
            InsideWidth.narrowest(outline, rules.insetMm(), rules.leastInsideMm()).ifPresent(faults::add);
        }
        return faults;
    }

    private static void zeroSides(Outline outline, List<OutlineFault> faults) {
        for (int i = 0; i < outline.sides(); i++) {
            if (outline.sideMm(i) < NEAR) {
                faults.add(new OutlineFault(
                        OutlineFault.Kind.CORNERS_SAME,
                        List.of(i + 1, (i + 1) % outline.sides() + 1),
                        List.of(i),
                        0,
                        "mm",
                        outline.corner(i)));
            }
        }
    }

    private static void shortSides(Outline outline, double leastMm, List<OutlineFault> faults) {
        for (int i = 0; i < outline.sides(); i++) shortSide(outline, i, leastMm, faults);
    }

    private static void shortSide(Outline outline, int i, double leastMm, List<OutlineFault> faults) {
        double lacking = leastMm - outline.sideMm(i);
        Point along = outline.direction(i);
        if (lacking > (along.x() != 0 && along.y() != 0 ? ROUNDED_MM : NEAR)) faults.add(new OutlineFault(OutlineFault.Kind.SIDE_SHORT, List.of(i + 1), List.of(i), lacking, "mm", outline.corner(i)));
    }

    /** A side needs its least length, and an inner face of one thickness between its two corners. */
    private static void innerFaces(Outline outline, Rules rules, List<OutlineFault> faults) {
        double sense = Math.signum(outline.signedAreaMm2());
        for (int i = 0; i < outline.sides(); i++) {
            double halves = tanHalf(sense * outline.turnDeg(i)) + tanHalf(sense * outline.turnDeg(i + 1));
            shortSide(outline, i, Math.max(rules.leastSideMm(), rules.insetMm() * (1 + halves)), faults);
        }
    }

    private static double tanHalf(double turnDeg) {
        return Math.abs(turnDeg) == 90 ? Math.signum(turnDeg) : Math.tan(Math.toRadians(turnDeg / 2));
    }

    /** Corners nearly square, nearly straight or too sharp for a timber; a right-angled outline turned as a whole. */
    private static void angles(Outline outline, List<OutlineFault> faults) {
        int worst = -1;
        double worstDeg = 0;
        boolean allSquare = true;
        double mostTilted = 0;
        int tiltedSide = -1;
        for (int i = 0; i < outline.sides(); i++) {
            double turn = Math.abs(outline.turnDeg(i));
            double off = Math.abs(turn - 90);
            allSquare &= off == 0;
            if (off > 0 && off < LEAST_SET_DEG && off > worstDeg + 1e-9) {
                worst = i;
                worstDeg = off;
            }
            if (turn < LEAST_SET_DEG) faults.add(corner(OutlineFault.Kind.CORNER_FLAT, outline, i, turn));
            if (180 - turn < SHARPEST_DEG) faults.add(corner(OutlineFault.Kind.CORNER_SHARP, outline, i, SHARPEST_DEG - (180 - turn)));
            Point along = outline.direction(i);
            double tilt = Math.toDegrees(Math.atan2(
                    Math.min(Math.abs(along.x()), Math.abs(along.y())),
                    Math.max(Math.abs(along.x()), Math.abs(along.y()))));
            if (tilt > mostTilted) {
                mostTilted = tilt;
                tiltedSide = i;
            }
        }
        if (worst >= 0) faults.add(corner(OutlineFault.Kind.CORNER_NOT_SQUARE, outline, worst, worstDeg));
        if (allSquare && tiltedSide >= 0) {
            faults.add(new OutlineFault(
                    OutlineFault.Kind.OUTLINE_TILTED,
                    List.of(tiltedSide + 1),
                    List.of(tiltedSide),
                    mostTilted,
                    "degrees",
                    outline.corner(tiltedSide)));
        }
    }

    private static OutlineFault corner(OutlineFault.Kind kind, Outline outline, int i, double degrees) {
        return new OutlineFault(
                kind,
                List.of(i + 1),
                List.of(Math.floorMod(i - 1, outline.sides()), i),
                degrees,
                "degrees",
                outline.corner(i));
    }

    /** Turn at corner {@code i}, degrees, above 0 to the left; 0 goes straight on, 180 turns back. */
    private static double turnDeg(Outline outline, int i) {
        Point before = outline.leg(i - 1);
        Point after = outline.leg(i);
        return Math.toDegrees(Math.atan2(before.cross(after), before.dot(after)));
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
            faults.add(fault(OutlineFault.Kind.SIDES_TOUCH, i, j, along, outline.corner(corner)));
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
                faults.add(fault(OutlineFault.Kind.SIDES_TOUCH, i, j, Math.max(along, 0), a.towards(b, from / ab)));
            }
            return;
        }
        if (side(cOff) * side(dOff) > 0 || side(aOff) * side(bOff) > 0) return;
        Point at = a.towards(b, aOff / (aOff - bOff));
        if (side(cOff) * side(dOff) < 0 && side(aOff) * side(bOff) < 0) {
            double least = Math.min(Math.min(at.distanceMm(a), at.distanceMm(b)), Math.min(at.distanceMm(c), at.distanceMm(d)));
            faults.add(fault(OutlineFault.Kind.SIDES_CROSS, i, j, least, at));
        } else {
            faults.add(fault(OutlineFault.Kind.SIDES_TOUCH, i, j, 0, at));
        }
    }

    private static OutlineFault fault(OutlineFault.Kind kind, int i, int j, double amountMm, Point at) {
        return new OutlineFault(kind, List.of(i + 1, j + 1), List.of(i, j), amountMm, "mm", at);
    }

    private static int side(double off) {
        return Math.abs(off) < NEAR ? 0 : off > 0 ? 1 : -1;
    }

    private static double offLine(Point a, Point b, double ab, Point p) {
        return b.minus(a).cross(p.minus(a)) / ab;
    }

    private static double along(Point a, Point b, double ab, Point p) {
        return b.minus(a).dot(p.minus(a)) / ab;
    }
}
