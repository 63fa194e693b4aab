package lapyard.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.WayKind;

/** A bed's outline in one of its three forms: width and depth, walls with turns, or corners. */
final class OutlineReader {

    private OutlineReader() {}

    /** Empty where a STOP was noted. */
    static Optional<Outline> read(Cursor bed) {
        boolean sized = bed.has("width") | bed.has("depth");
        boolean walled = bed.has("walls");
        boolean cornered = bed.has("outline");
        if ((sized ? 1 : 0) + (walled ? 1 : 0) + (cornered ? 1 : 0) != 1) {
            boolean none = !sized && !walled && !cornered;
            bed.add(bed.fault(none ? FindingKind.FIELD_MISSING : FindingKind.OUTLINE_TWICE, "outline").way(WayKind.ONE_OUTLINE));
            return Optional.empty();
        }
        int before = bed.notes.findings.size();
        Optional<Outline> outline = sized ? sized(bed) : walled ? walled(bed) : GardenReader.corners(bed, "outline", false).map(OutlineReader::normal);
        return bed.notes.findings.size() > before ? Optional.empty() : outline;
    }

    private static Optional<Outline> sized(Cursor bed) {
        double width = bed.neededLength("width");
        double depth = bed.neededLength("depth");
        return Optional.of(Outline.rectangle(width, depth));
    }

    /** Turns are left, right, or degrees to the left. What degrees leave open by up to a millimetre is closed. */
    private static Optional<Outline> walled(Cursor bed) {
        List<Point> corners = new ArrayList<>();
        double x = 0;
        double y = 0;
        double heading = 0;
        boolean square = true;
        List<Cursor> walls = bed.objects("walls", "wall");
        for (Cursor wall : walls) {
            corners.add(new Point(x, y));
            double length = wall.neededLength("length");
            x = along(x, length, heading, 0);
            y = along(y, length, heading, 270);
            double turn = wall.raw("turn").isNumber()
                    ? wall.number("turn", 90)
                    : wall.choice("turn", "left").equals("left") ? 90 : -90;
            square &= Math.abs(turn) == 90;
            heading = ((heading + turn) % 360 + 360) % 360;
            wall.refuseUnknown();
        }
        if (walls.size() < (square ? 4 : 3)) {
            bed.few("walls", walls.size(), square ? 4 : 3, "walls");
            return Optional.empty();
        }
        double open = Lengths.toTenth(Math.hypot(x, y));
        if (open > (square ? 0 : 1)) {
            double across = Lengths.toTenth(Math.abs(x));
            double along = Lengths.toTenth(Math.abs(y));
            Finding fault = bed.fault(FindingKind.WALLS_OPEN, "walls");
            if (across > 0) fault = fault.with("across", Fact.mm(across)).with("side", Fact.name(x < 0 ? "to the left of" : "to the right of"));
            if (across > 0 && along > 0) fault = fault.with("and", Fact.name("and"));
            if (along > 0) fault = fault.with("along", Fact.mm(along)).with("behind", Fact.name(y < 0 ? "in front of" : "behind"));
            bed.add(fault.by(Fact.mm(open)).way(square ? WayKind.SAME_SUMS : WayKind.END_AT_START).way(WayKind.CHECK_TURNS));
            return Optional.empty();
        }
        return Optional.of(normal(corners));
    }

    /** Walls along the axes stay on whole tenths. */
    private static double along(double from, double lengthMm, double headingDeg, int offDeg) {
        if (headingDeg % 90 == 0) {
            int[] cosines = {1, 0, -1, 0};
            return Lengths.toTenth(from + lengthMm * cosines[((int) headingDeg + offDeg) % 360 / 90]);
        }
        return from + lengthMm * Math.cos(Math.toRadians(headingDeg + offDeg));
    }

    /** Counter-clockwise from the front left corner, corners in the middle of a straight wall left out. */
    private static Outline normal(List<Point> corners) {
        Outline given = new Outline(corners);
        List<Point> kept = new ArrayList<>();
        for (int i = 0; i < given.sides(); i++) {
            Point before = given.leg(i - 1);
            Point after = given.leg(i);
            if (before.cross(after) != 0 || before.dot(after) < 0 || given.corner(i).equals(given.corner(i + 1))) kept.add(given.corner(i));
        }
        Outline clean = kept.size() >= 3 ? new Outline(kept) : given;
        return clean.counterClockwise().fromFrontLeft();
    }
}
