package lapyard.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Finding.Amount;

/** A bed's outline in one of its three forms: width and depth, walls with turns, or corners. */
final class OutlineReader {
    static final double MOST_SIDE_MM = 100_000;
    static final int MOST_CORNERS = 100;

    private OutlineReader() {}

    /** Empty where a STOP was noted. */
    static Optional<Outline> read(Cursor bed) {
        boolean sized = bed.has("width") | bed.has("depth");
        boolean walled = bed.has("walls");
        boolean cornered = bed.has("outline");
        if ((sized ? 1 : 0) + (walled ? 1 : 0) + (cornered ? 1 : 0) != 1) {
            bed.stop("outline", (sized || walled || cornered) ? "is given in more than one way" : "is missing",
                    "give width and depth, or walls, or outline: one of the three");
            return Optional.empty();
        }
        int before = bed.notes.findings.size();
        Optional<Outline> outline = sized ? sized(bed) : walled ? walled(bed) : cornered(bed);
        return bed.notes.findings.size() > before ? Optional.empty() : outline;
    }

    private static Optional<Outline> sized(Cursor bed) {
        double width = bed.neededLength("width", 1, MOST_SIDE_MM);
        double depth = bed.neededLength("depth", 1, MOST_SIDE_MM);
        return Optional.of(Outline.rectangle(width, depth));
    }

    /** Turns are left, right, or degrees to the left. What degrees leave open by up to a millimetre is closed. */
    private static Optional<Outline> walled(Cursor bed) {
        List<Point> corners = new ArrayList<>();
        double x = 0;
        double y = 0;
        double heading = 0;
        boolean square = true;
        List<Cursor> walls = bed.objects("walls", "wall", MOST_CORNERS);
        for (Cursor wall : walls) {
            corners.add(new Point(x, y));
            double length = wall.neededLength("length", 1, MOST_SIDE_MM);
            x = along(x, length, heading, 0);
            y = along(y, length, heading, 270);
            double turn = wall.raw("turn").isNumber()
                    ? wall.number("turn", 90, -160, 160, 2, "degrees")
                    : wall.choice("turn", "left", "left", "right").equals("left") ? 90 : -90;
            square &= Math.abs(turn) == 90;
            heading = ((heading + turn) % 360 + 360) % 360;
            wall.refuseUnknown();
        }
        if (walls.size() < (square ? 4 : 3)) {
            bed.stop("walls", walls.size() + " walls do not close a bed" + (square ? " with square corners" : ""),
                    "give at least " + (square ? 4 : 3));
            return Optional.empty();
        }
        double open = tenths(Math.hypot(x, y));
        if (open > (square ? 0 : 1)) {
            bed.stopBy("walls",
                    "outline does not close by " + CatalogueReader.shownMm(open) + ": it ends "
                            + CatalogueReader.shownMm(tenths(Math.abs(x))) + (x < 0 ? " left and " : " right and ")
                            + CatalogueReader.shownMm(tenths(Math.abs(y))) + (y < 0 ? " in front of" : " behind") + " its start",
                    new Amount(open, "mm"),
                    square
                            ? "lengths that run right and left must add up to the same, and so must those that run away and back"
                            : "make the last walls end where the first begins",
                    "check the turns");
            return Optional.empty();
        }
        return Optional.of(normal(corners));
    }

    /** Walls along the axes stay on whole tenths. */
    private static double along(double from, double lengthMm, double headingDeg, int offDeg) {
        if (headingDeg % 90 == 0) {
            int[] cosines = {1, 0, -1, 0};
            return tenths(from + lengthMm * cosines[((int) headingDeg + offDeg) % 360 / 90]);
        }
        return from + lengthMm * Math.cos(Math.toRadians(headingDeg + offDeg));
    }

    private static Optional<Outline> cornered(Cursor bed) {
        List<Point> corners = bed.points("outline", MOST_CORNERS);
        if (corners.size() > 1 && corners.get(0).equals(corners.get(corners.size() - 1))) {
            corners.remove(corners.size() - 1);
        }
        if (corners.size() < 3) {
            bed.stop("outline", corners.size() + " corners do not make a bed", "give at least 3 corners, counter-clockwise");
            return Optional.empty();
        }
        return Optional.of(normal(corners));
    }

    /** Counter-clockwise from the front left corner, corners in the middle of a straight wall left out. */
    private static Outline normal(List<Point> corners) {
        Outline given = new Outline(corners);
        List<Point> kept = new ArrayList<>();
        for (int i = 0; i < given.sides(); i++) {
            Point before = given.corner(i - 1);
            Point here = given.corner(i);
            Point after = given.corner(i + 1);
            double cross = (here.x() - before.x()) * (after.y() - here.y()) - (here.y() - before.y()) * (after.x() - here.x());
            double along = (here.x() - before.x()) * (after.x() - here.x()) + (here.y() - before.y()) * (after.y() - here.y());
            if (cross != 0 || along < 0 || here.equals(after)) {
                kept.add(here);
            }
        }
        Outline clean = kept.size() >= 3 ? new Outline(kept) : given;
        return clean.counterClockwise().fromFrontLeft();
    }

    private static double tenths(double mm) {
        return Math.round(mm * 10) / 10.0;
    }
}
