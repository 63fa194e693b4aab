package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** Liner pieces, one a rectangle of floor: up the walls, and over or under the next piece. */
final class LinerCut {
    private static final double LEAST_LAP_MM = 150;

    /** Liner on the walls alone laps round each corner; common practice, no source. */
    static final double CORNER_LAP_MM = 150;

    private LinerCut() {}

    /** From the floor up the wall to its edge below the rim, with the part that is trimmed off after stapling. */
    static double riseMm(Bed bed) {
        return bed.heightMm()
                - bed.inside().base().heightMm()
                - bed.inside().liner().edges().belowRimMm()
                + bed.inside().liner().edges().trimMm();
    }

    /** How far a piece goes past each side of its floor. */
    record Past(double left, double right, double bottom, double top) {}

    static Past past(Bed bed, List<Rectangle> floor, Rectangle own) {
        return new Past(
                past(bed, shared(floor, own, own.x(), true), own.depthMm()),
                past(bed, shared(floor, own, own.right(), true), own.depthMm()),
                past(bed, shared(floor, own, own.y(), false), own.widthMm()),
                past(bed, shared(floor, own, own.top(), false), own.widthMm()));
    }

    /** A side that is all shared laps; one with any wall on it rises. */
    private static double past(Bed bed, double sharedMm, double sideMm) {
        return sharedMm >= sideMm - 1e-6 ? bed.inside().liner().edges().lapMm() : riseMm(bed);
    }

    /** Length of an upright or level side at a place that lies against other rectangles. */
    private static double shared(List<Rectangle> floor, Rectangle own, double at, boolean upright) {
        double sum = 0;
        for (Rectangle other : floor) {
            boolean touches = other != own
                    && (upright
                            ? near(other.x(), at) || near(other.right(), at)
                            : near(other.y(), at) || near(other.top(), at));
            if (touches) {
                double overlap = upright
                        ? Math.min(own.top(), other.top()) - Math.max(own.y(), other.y())
                        : Math.min(own.right(), other.right()) - Math.max(own.x(), other.x());
                sum += Math.max(0, overlap);
            }
        }
        return sum;
    }

    private static boolean near(double one, double other) {
        return Math.abs(one - other) < 1e-6;
    }

    static double areaMm2(Bed bed, List<Rectangle> floor) {
        double sum = 0;
        for (Rectangle own : floor) {
            Past past = past(bed, floor, own);
            sum += (own.widthMm() + past.left() + past.right()) * (own.depthMm() + past.bottom() + past.top());
        }
        return sum;
    }

    /**
     * @return one piece a rectangle, in the order of the rectangles, or one a wall where the floor stays open; none where the
     *     wall is too low to hold one
     */
    static List<LinerPiece> pieces(Bed bed, Outline inner, List<Rectangle> floor, LowSide low, List<Finding> findings) {
        double onWall = riseMm(bed) - bed.inside().liner().edges().trimMm();
        if (onWall <= 0) {
            findings.add(Finding.of(FindingKind.LINER_NO_ROOM, Place.bed(bed.id()).then(What.LINER)).by(Fact.mm(-onWall))
                    .way(WayKind.ADD_COURSES, Fact.count((long) Whole.down(-onWall / bed.section().heightMm()) + 1, "courses"))
                    .way(WayKind.LINER_NEARER_RIM));
            return List.of();
        }
        if (!bed.inside().liner().overFloor(bed.inside().base())) return onWalls(bed, inner);
        if (floor.size() > 1) shortLap(bed, findings);
        return pieces(bed, floor, "R", low);
    }

    static void shortLap(Bed bed, List<Finding> findings) {
        if (bed.inside().liner().edges().lapMm() < LEAST_LAP_MM - 1e-6) {
            findings.add(Finding.of(FindingKind.LINER_LAP, Place.bed(bed.id()).then(What.LINER))
                    .with("lap", Fact.mm(bed.inside().liner().edges().lapMm())).with("least", Fact.mm(LEAST_LAP_MM))
                    .by(Fact.mm(LEAST_LAP_MM - bed.inside().liner().edges().lapMm()))
                    .way(WayKind.LAP_BY, Fact.mm(300)));
        }
    }

    /** One a wall, from the rim down and turned in at its foot, lapping round the corner at its end. */
    private static List<LinerPiece> onWalls(Bed bed, Outline inner) {
        List<LinerPiece> pieces = new ArrayList<>();
        for (int side = 0; side < inner.sides(); side++) {
            String wall = Bed.wallLetter(side);
            pieces.add(new LinerPiece(
                    bed.id() + "-L" + wall,
                    wall,
                    new Rectangle(0, 0, inner.sideMm(side), bed.inside().liner().turnInMm()),
                    Lengths.toTenth(inner.sideMm(side) + CORNER_LAP_MM),
                    Lengths.toTenth(riseMm(bed) + bed.inside().liner().turnInMm()),
                    side + 1));
        }
        return pieces;
    }

    /** One a rectangle, called by the letter and its number. */
    static List<LinerPiece> pieces(Bed bed, List<Rectangle> floor, String letter, LowSide low) {
        List<LinerPiece> pieces = new ArrayList<>();
        for (int i = 0; i < floor.size(); i++) {
            Rectangle own = floor.get(i);
            Past past = past(bed, floor, own);
            pieces.add(new LinerPiece(bed.id() + "-" + letter + (i + 1), "", own, Lengths.toTenth(own.widthMm() + past.left() + past.right()), Lengths.toTenth(own.depthMm() + past.bottom() + past.top()), 0));
        }
        return inOrder(pieces, low);
    }

    /** Numbered as they are laid: the one furthest downhill first. */
    static List<LinerPiece> inOrder(List<LinerPiece> pieces, LowSide low) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) order.add(i);
        low.toward()
                .ifPresent(toward ->
                        order.sort(Comparator.comparingDouble((Integer i) -> -down(pieces.get(i).floor(), toward))));
        List<LinerPiece> numbered = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            LinerPiece one = pieces.get(i);
            numbered.add(new LinerPiece(one.id(), one.wall(), one.floor(), one.widthMm(), one.heightMm(), order.indexOf(i) + 1));
        }
        return numbered;
    }

    /** How far downhill the middle of a rectangle lies. */
    private static double down(Rectangle floor, Point toward) {
        double x = floor.x() + floor.widthMm() / 2;
        double y = floor.y() + floor.depthMm() / 2;
        return Lengths.steady((x * toward.x() + y * toward.y()) / Math.hypot(toward.x(), toward.y()));
    }

    static void quantities(Bed bed, Outline inner, List<LinerPiece> pieces, List<Quantity> quantities) {
        if (pieces.isEmpty()) return;
        double area = 0;
        for (LinerPiece piece : pieces) {
            double own = piece.widthMm() * piece.heightMm() / 1e6;
            area += own;
            quantities.add(!piece.wall().isEmpty() ? onWall(bed, piece, own) : Quantity.of(QuantityKind.LINER, own, "m2",
                    "width x height; each is the floor's + at every side the rise, or the lap where the whole side is shared; rise ="
                            + " wall height - base height - below rim + trim", Working.COMMON_PRACTICE,
                    Input.of("width", piece.widthMm(), "mm"), Input.of("height", piece.heightMm(), "mm"),
                    Input.of("floor width", piece.floor().widthMm(), "mm"), Input.of("floor depth", piece.floor().depthMm(), "mm"),
                    Input.of("rise", riseMm(bed), "mm"), Input.of("lap", bed.inside().liner().edges().lapMm(), "mm"),
                    Input.of("laid as number", piece.layingOrder(), "")));
        }
        quantities.add(Quantity.of(QuantityKind.LINER_AREA, area, "m2",
                "sum of the pieces", Working.GEOMETRY,
                Input.of("pieces", pieces.size(), "")));
        if (!pieces.get(0).wall().isEmpty()) return;
        double floor = inner.areaMm2() / 1e6;
        quantities.add(Quantity.of(QuantityKind.LINER_SLITS, Whole.up(bed.inside().liner().slitsPerM2() * floor), "slits",
                "slits a square metre x floor, rounded up", Working.COMMON_PRACTICE,
                Input.of("slits a square metre", bed.inside().liner().slitsPerM2(), "slits"), Input.of("floor", floor, "m2")));
    }

    private static Quantity onWall(Bed bed, LinerPiece piece, double areaM2) {
        return Quantity.of(QuantityKind.LINER, areaM2, "m2",
                "(inner face + lap round a corner) x (wall height - base height - below rim + trim + turned in)", Working.COMMON_PRACTICE,
                Input.of("width", piece.widthMm(), "mm"), Input.of("height", piece.heightMm(), "mm"),
                Input.of("inner face", piece.floor().widthMm(), "mm"), Input.of("lap round a corner", CORNER_LAP_MM, "mm"),
                Input.of("rise", riseMm(bed), "mm"), Input.of("turned in", bed.inside().liner().turnInMm(), "mm"));
    }
}
