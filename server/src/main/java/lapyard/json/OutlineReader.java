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

    private static Optional<Outline> walled(Cursor bed) {
        List<Point> corners = new ArrayList<>();
        double x = 0;
        double y = 0;
        int heading = 0;
        List<Cursor> walls = bed.objects("walls", "wall", MOST_CORNERS);
        for (Cursor wall : walls) {
            corners.add(new Point(x, y));
            double length = wall.neededLength("length", 1, MOST_SIDE_MM);
            x = tenths(x + length * new int[] {1, 0, -1, 0}[heading]);
            y = tenths(y + length * new int[] {0, 1, 0, -1}[heading]);
            heading = (heading + (wall.choice("turn", "left", "left", "right").equals("left") ? 1 : 3)) % 4;
            wall.refuseUnknown();
        }
        if (walls.size() < 4) {
            bed.stop("walls", walls.size() + " walls do not close a bed with square corners", "give at least 4");
            return Optional.empty();
        }
        if (x != 0 || y != 0) {
            bed.stopBy("walls",
                    "outline does not close by " + CatalogueReader.shownMm(tenths(Math.hypot(x, y))) + ": it ends "
                            + CatalogueReader.shownMm(Math.abs(x)) + (x < 0 ? " left and " : " right and ")
                            + CatalogueReader.shownMm(Math.abs(y)) + (y < 0 ? " in front of" : " behind") + " its start",
                    new Amount(tenths(Math.hypot(x, y)), "mm"),
                    "lengths that run right and left must add up to the same, and so must those that run away and back",
                    "check the turns");
            return Optional.empty();
        }
        return Optional.of(normal(corners));
    }

    private static Optional<Outline> cornered(Cursor bed) {
        List<Point> corners = bed.points("outline", MOST_CORNERS);
        if (corners.size() > 1 && corners.get(0).equals(corners.get(corners.size() - 1))) {
            corners.remove(corners.size() - 1);
        }
        if (corners.size() < 4) {
            bed.stop("outline", corners.size() + " corners do not make a bed", "give at least 4 corners, counter-clockwise");
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
