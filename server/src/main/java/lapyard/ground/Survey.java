package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;

/** From tapes to corners of the yard. All lengths in millimetres along level tapes, see {@link #levelMm}. */
public final class Survey {
    /** An outline may miss its start, and a check tape its length, by this; common practice, no source. */
    public static final double TOLERANCE_MM = 20;

    /** Tapes that cross at a flatter angle fix a place badly; common practice, no source. */
    private static final double LEAST_ANGLE_DEG = 30;

    private Survey() {}

    /** What came of two tapes. */
    public sealed interface Fix {
        /**
         * @param at       in the frame of the baseline: first mark at (0, 0), second at (base, 0)
         * @param angleDeg between the tapes
         * @param findings a note where the tapes cross too flat
         */
        record Met(Point at, double angleDeg, List<Quantity> quantities, List<Finding> findings) implements Fix {
            public Met {
                quantities = List.copyOf(quantities);
                findings = List.copyOf(findings);
            }
        }

        /** @param stop says by how much */
        record CannotMeet(Finding stop) implements Fix {}
    }

    /**
     * An outline walked round, side by side.
     *
     * @param corners  as walked
     * @param adjusted with the closing error spread by the compass rule: each corner moves by the error times the share
     *                 of the way walked up to it
     */
    public record Walk(List<Point> corners, List<Point> adjusted, double closingErrorMm, List<Finding> findings) {
        public Walk {
            corners = List.copyOf(corners);
            adjusted = List.copyOf(adjusted);
            findings = List.copyOf(findings);
        }
    }

    /** A side and the turn at its end, degrees to the left (90), to the right (-90). */
    public record Side(double lengthMm, double turnDeg) {}

    /**
     * A corner by one tape from each end of a baseline: x = (d1^2 - d2^2 + b^2) / (2 b), y = sqrt(d1^2 - x^2).
     *
     * @param where    for findings, as in {@code corner 3}
     * @param baseMm   between the two marks, above 0
     * @param firstMm  from the first mark
     * @param secondMm from the second mark
     * @param left     whether the corner lies to the left as one looks from the first mark to the second
     * @throws IllegalArgumentException for a base of 0 or a tape below 0
     */
    public static Fix byTwoTapes(String where, double baseMm, double firstMm, double secondMm, boolean left) {
        if (!(baseMm > 0) || !(firstMm >= 0) || !(secondMm >= 0)) {
            throw new IllegalArgumentException(where + ": a base above 0 and tapes of 0 or more are needed, were "
                    + baseMm + ", " + firstMm + " and " + secondMm);
        }
        double missing = Math.max(baseMm - firstMm - secondMm, Math.abs(firstMm - secondMm) - baseMm);
        if (missing > Shapes.TOUCH_MM) return new Fix.CannotMeet(cannotMeet(where, baseMm, firstMm, secondMm, missing));
        double x = (firstMm * firstMm - secondMm * secondMm + baseMm * baseMm) / (2 * baseMm);
        double y = Math.sqrt(Math.max(0, firstMm * firstMm - x * x));
        double angle = angleDeg(baseMm, firstMm, secondMm);
        List<Finding> findings = new ArrayList<>();
        if (flat(angle)) {
            findings.add(Finding.of(FindingKind.TAPES_FLAT, Place.field(where))
                    .with("angle", new Fact.Angle(angle)).with("least", new Fact.Angle(LEAST_ANGLE_DEG)).with("most", new Fact.Angle(180 - LEAST_ANGLE_DEG))
                    .by(new Fact.Angle(angle)).way(WayKind.THIRD_TAPE));
        }
        Working.Input base = Working.Input.of("b", baseMm, "mm");
        Working.Input first = Working.Input.of("d1", firstMm, "mm");
        List<Quantity> quantities = List.of(
                Quantity.of(QuantityKind.SURVEY_X.of(where), x, "mm",
                        "(d1^2 - d2^2 + b^2) / (2 b)", Working.GEOMETRY,
                        base, first, Working.Input.of("d2", secondMm, "mm")),
                Quantity.of(QuantityKind.SURVEY_Y.of(where), left ? y : -y, "mm",
                        "sqrt(d1^2 - x^2), on the side seen", Working.GEOMETRY,
                        first, Working.Input.of("x", x, "mm")));
        return new Fix.Met(new Point(x, left ? y : -y), angle, quantities, findings);
    }

    /** Between two tapes from the ends of a base; 0 where a tape has no length. */
    static double angleDeg(double baseMm, double firstMm, double secondMm) {
        double cosine = (firstMm * firstMm + secondMm * secondMm - baseMm * baseMm) / (2 * firstMm * secondMm);
        return firstMm == 0 || secondMm == 0 ? 0 : Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cosine))));
    }

    /** Whether tapes that cross at this angle fix a place badly. */
    static boolean flat(double angleDeg) {
        return angleDeg < LEAST_ANGLE_DEG || angleDeg > 180 - LEAST_ANGLE_DEG;
    }

    private static Finding cannotMeet(String where, double baseMm, double firstMm, double secondMm, double missing) {
        boolean tooShort = firstMm + secondMm < baseMm;
        return Finding.of(FindingKind.TAPES_CANNOT_MEET, Place.field(where))
                .with("first", Fact.mm(firstMm)).with("second", Fact.mm(secondMm)).with("base", Fact.mm(baseMm))
                .with(tooShort ? "short" : "long", Fact.mm(missing)).by(Fact.mm(missing)).way(WayKind.TAPE_AGAIN).way(WayKind.CHECK_MARKS);
    }

    /** Sides walked round from (0, 0), the first along x. The last should end where the first began. */
    public static Walk walked(List<Side> sides) {
        List<Point> corners = new ArrayList<>();
        double x = 0;
        double y = 0;
        double heading = 0;
        for (Side side : sides) {
            corners.add(new Point(x, y));
            x += side.lengthMm() * cosDeg(heading);
            y += side.lengthMm() * cosDeg(heading - 90);
            heading += side.turnDeg();
        }
        double error = Math.hypot(x, y);
        double whole = sides.stream().mapToDouble(Side::lengthMm).sum();
        List<Point> adjusted = new ArrayList<>();
        double walked = 0;
        for (int i = 0; i < corners.size(); i++) {
            double share = walked / whole;
            adjusted.add(new Point(corners.get(i).x() - x * share, corners.get(i).y() - y * share));
            walked += sides.get(i).lengthMm();
        }
        List<Finding> findings = new ArrayList<>();
        if (error > TOLERANCE_MM) {
            findings.add(Finding.of(FindingKind.OUTLINE_OPEN, Place.of(What.YARD)).with("limit", Fact.mm(TOLERANCE_MM)).by(Fact.mm(error))
                    .way(WayKind.TAPE_SIDES, Fact.mm(Math.abs(x)), Fact.mm(Math.abs(y))).way(WayKind.TAKE_DIAGONAL));
        }
        return new Walk(corners, adjusted, error, findings);
    }

    /** Exact at quarter turns, so that square sides close to the last bit. */
    private static double cosDeg(double degrees) {
        double turn = ((degrees % 360) + 360) % 360;
        return turn == 0 ? 1 : turn == 90 || turn == 270 ? 0 : turn == 180 ? -1 : Math.cos(Math.toRadians(turn));
    }

    /** A tape between two corners against the drawing; empty where it agrees. */
    public static Optional<Finding> check(String where, Point from, Point to, double tapedMm) {
        double off = tapedMm - from.distanceMm(to);
        if (Math.abs(off) <= TOLERANCE_MM) return Optional.empty();
        return Optional.of(Finding.of(FindingKind.CHECK_TAPE_OFF, Place.field(where)).with("tape", Fact.name(where.replaceFirst("^survey, tape", "the tape")))
                .with("drawn", Fact.mm(from.distanceMm(to))).with(off > 0 ? "longer" : "shorter", Fact.mm(Math.abs(off)))
                .with("limit", Fact.mm(TOLERANCE_MM)).by(Fact.mm(Math.abs(off))).way(WayKind.TAPE_AGAIN));
    }

    /**
     * The level distance under a tape that lies along a slope: sqrt(s^2 - h^2).
     *
     * @throws IllegalArgumentException if the ends differ in level by more than the tape is long
     */
    public static double levelMm(double alongSlopeMm, double differenceMm) {
        if (!(Math.abs(differenceMm) <= alongSlopeMm)) {
            throw new IllegalArgumentException("a tape of " + alongSlopeMm + " mm cannot join levels " + differenceMm + " mm apart");
        }
        return Math.sqrt(alongSlopeMm * alongSlopeMm - differenceMm * differenceMm);
    }

    /**
     * How far to push one long side along itself to make a frame with equal opposite sides square:
     * (d1^2 - d2^2) / (4 L).
     *
     * @param sideMm the side that is pushed, above 0
     * @return mm towards shortening the first diagonal; 0 where both diagonals agree
     */
    public static double pushToSquareMm(double sideMm, double firstDiagonalMm, double secondDiagonalMm) {
        return (firstDiagonalMm * firstDiagonalMm - secondDiagonalMm * secondDiagonalMm) / (4 * sideMm);
    }
}
