package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.construction.PieceEnd;
import lapyard.drawing.Page;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.GardenState;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.Lap;
import lapyard.plan.QuoteTerms;
import lapyard.plan.Saw;
import lapyard.plan.SearchLength;
import lapyard.plan.StandingRules;
import lapyard.plan.SurfaceKind;
import lapyard.plan.WayIn;

/** Gardens to draw, and beds as built by the turning lap, worked here by its rule alone. */
final class TestGardens {
    private TestGardens() {}

    static final Section SECTION = new Section("100x200", 100, 200, 600, List.of(), Optional.empty(), false, 1, false);
    static final Ground NO_GROUND = new Ground(List.of(), List.of(), List.of(), List.of(), 0);

    /** 12.0 m along the house and 9.5 m away from it. */
    static final Outline YARD = new Outline(List.of(
            new Point(0, 0), new Point(12000, 0), new Point(12000, 7000), new Point(7000, 9500), new Point(0, 9000)));

    static Outline corners(double... xy) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            corners.add(new Point(xy[i], xy[i + 1]));
        }
        return new Outline(corners);
    }

    static Bed bed(String id, String name, Outline outline, double x, double y, double turn, int courses) {
        return new Bed(id, name, "", 1, new Bed.Siting(outline, new Placement(new Point(x, y), turn, false), Set.of()),
                new Bed.Walls(courses, SECTION, Lap.TURNING, Map.of(), Set.of(), Set.of(), true), Bed.Making.USUAL, Bed.Inside.USUAL,
                new Bed.Planting(Fill.USUAL, true));
    }

    /** The plan on one sheet. */
    static Page draw(Garden garden, List<BedWork> works, List<PathCover> covers, List<Finding> findings, PlanOptions options) {
        return PlanDrawing.pages(garden, works, covers, findings, PlanDrawing.PegsAndSun.NOTHING, options).get(0);
    }

    static Garden garden(String name, boolean imperial, Ground ground, List<Bed> beds, List<GardenPath> paths) {
        return new Garden(name, imperial, ground, beds, paths,
                new Garden.Goods(new Catalogue(List.of(), List.of(), List.of(), List.of(), true), List.of(), List.of(), Saw.USUAL, SearchLength.SHORT), Garden.People.USUAL,
                new Garden.Terms("GBP", WayIn.UNKNOWN, QuoteTerms.NONE, StandingRules.USUAL, GardenState.PENCILLED), Map.of(), List.of(), Garden.Asking.NOTHING);
    }

    static GardenPath path(String id, String name, double width, double... xy) {
        return new GardenPath(id, name, corners2(xy), width, List.of(), "", "", GardenPath.USUAL_LAP_MM);
    }

    private static List<Point> corners2(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(new Point(xy[i], xy[i + 1]));
        }
        return points;
    }

    /** A straight path's cover. */
    static PathCover cover(String id, String name, String material, Outline... cover) {
        return new PathCover(id, name, List.of(cover), material);
    }

    /** Inner faces and courses; odd courses run past at each wall's start, even ones at its end. */
    static BedWork work(Bed bed) {
        double t = bed.section().thicknessMm();
        Outline o = bed.outline();
        List<Point> inner = new ArrayList<>();
        for (int i = 0; i < o.sides(); i++) {
            Point before = inward(o, i - 1);
            Point after = inward(o, i);
            Point c = o.corner(i);
            inner.add(new Point(c.x() + t * (before.x() + after.x()), c.y() + t * (before.y() + after.y())));
        }
        List<Course> courses = new ArrayList<>();
        for (int k = 1; k <= bed.courses(); k++) {
            List<Piece> pieces = new ArrayList<>();
            for (int i = 0; i < o.sides(); i++) {
                boolean odd = k % 2 == 1;
                double start = odd ? insideCorner(o, i) ? -t : 0 : insideCorner(o, i) ? 0 : t;
                double end = o.sideMm(i)
                        + (odd ? insideCorner(o, i + 1) ? 0 : -t : insideCorner(o, i + 1) ? t : 0);
                pieces.add(piece(bed, k, i, start, end, odd));
            }
            courses.add(new Course(k, pieces));
        }
        return new BedWork(
                bed,
                new BedWork.Frame(new Outline(inner), courses, List.of(), List.of(), List.of(), List.of()),
                new BedWork.Bottom(List.of(), List.of(), List.of(), List.of()),
                List.of(), List.of(), List.of(), false);
    }

    private static Piece piece(Bed bed, int course, int side, double from, double to, boolean odd) {
        Point a = bed.outline().corner(side);
        Point b = bed.outline().corner(side + 1);
        double length = a.distanceMm(b);
        double ux = (b.x() - a.x()) / length;
        double uy = (b.y() - a.y()) / length;
        Point in = inward(bed.outline(), side);
        double t = bed.section().thicknessMm();
        Point first = new Point(a.x() + ux * from, a.y() + uy * from);
        Point last = new Point(a.x() + ux * to, a.y() + uy * to);
        Outline lies = new Outline(List.of(
                first,
                last,
                new Point(last.x() + in.x() * t, last.y() + in.y() * t),
                new Point(first.x() + in.x() * t, first.y() + in.y() * t)));
        String wall = Bed.wallLetter(side);
        PieceEnd.Kind past = PieceEnd.Kind.RUNS_PAST;
        PieceEnd.Kind shy = PieceEnd.Kind.STOPS_SHORT;
        return new Piece(
                bed.id() + "-" + course + wall, course, wall, "", to - from, from, lies, true,
                new PieceEnd(odd ? past : shy, from, from, 0), new PieceEnd(odd ? shy : past, to, to, 0));
    }

    /** The direction into the bed from side i of a right-angled counter-clockwise outline. */
    private static Point inward(Outline o, int i) {
        Point a = o.corner(i);
        Point b = o.corner(i + 1);
        double length = a.distanceMm(b);
        return new Point(-(b.y() - a.y()) / length, (b.x() - a.x()) / length);
    }

    private static boolean insideCorner(Outline o, int i) {
        Point a = o.corner(i - 1);
        Point b = o.corner(i);
        Point c = o.corner(i + 1);
        return (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x()) < 0;
    }

    /** Bed M of the worked example: 3000 x 2400 with 1200 x 900 missing at the rear right. */
    static final Outline M = corners(0, 0, 3000, 0, 3000, 1500, 1800, 1500, 1800, 2400, 0, 2400);

    /** A chapel yard: five beds of different outlines, two crossing paths, levels, a gate, a cover and a tap. */
    static Garden chapelYard() {
        Ground ground = new Ground(
                List.of(YARD),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, corners(0, 0, 12000, 0, 12000, 1500, 0, 1500)),
                        new Ground.Surface(SurfaceKind.GRASS, corners(0, 1500, 4600, 1500, 4600, 9328, 0, 9000)),
                        new Ground.Surface(SurfaceKind.GRAVEL, corners(9500, 5200, 12000, 5200, 12000, 7000, 9500, 8250))),
                List.of(
                        new Ground.KeepClear(KeepClearKind.GATE, List.of(new Point(12000, 2300), new Point(12000, 3300)), 0, 1000, true, 0),
                        new Ground.KeepClear(KeepClearKind.COVER, List.of(new Point(700, 400), new Point(1300, 400), new Point(1300, 1000), new Point(700, 1000)), 300, 0, false, 0),
                        new Ground.KeepClear(KeepClearKind.TAP, List.of(new Point(11400, 250)), 400, 0, false, 0)),
                List.of(
                        new Ground.Level(new Point(0, 0), 412),
                        new Ground.Level(new Point(11900, 100), 409),
                        new Ground.Level(new Point(300, 8700), 486),
                        new Ground.Level(new Point(7000, 9300), 501)),
                -25);
        List<Bed> beds = List.of(
                bed("H", "Herbs", Outline.rectangle(2400, 1200), 500, 2000, 0, 2),
                bed("L", "Long bed", Outline.rectangle(4200, 1000), 1500, 4250, 90, 3),
                bed("U", "Sitting bed", corners(0, 0, 3600, 0, 3600, 2400, 2400, 2400, 2400, 900, 1200, 900, 1200, 2400, 0, 2400),
                        6300, 4700, 0, 3),
                bed("T", "Berries", corners(0, 0, 900, 0, 900, 700, 2000, 700, 2000, 1400, -1100, 1400, -1100, 700, 0, 700),
                        8600, 1650, 0, 2),
                bed("S", "", Outline.rectangle(900, 900), 3300, 7900, 20, 2));
        return garden("Chapel yard", false, ground, beds, List.of(
                path("P1", "Long walk", 1200, 5200, 1500, 5200, 9000), path("P2", "Cross walk", 900, 0, 3600, 12000, 3600)));
    }

    static List<PathCover> chapelPaths() {
        return List.of(
                cover("P1", "Long walk", "path.gravel", corners(4600, 1500, 5800, 1500, 5800, 9000, 4600, 9000)),
                cover("P2", "Cross walk", "path.bark", corners(0, 3300, 4600, 3300, 4600, 4050, 0, 4050),
                        corners(5800, 3150, 12000, 3150, 12000, 4050, 5800, 4050)));
    }

    /** Beds of three types in rows, as on a field of plots. */
    static Garden field(int count) {
        List<Bed> beds = new ArrayList<>();
        Outline[] types = {Outline.rectangle(2400, 1200), Outline.rectangle(1800, 900), M};
        int across = (int) Math.ceil(Math.sqrt(count * 1.2));
        for (int i = 0; i < count; i++) {
            beds.add(bed("B" + (i + 1), "Plot " + (i + 1), types[i % 3], 1000 + (i % across) * 4200, 1000 + i / across * 3900,
                    0, 3));
        }
        double width = 1000 + across * 4200;
        double depth = 1000 + Math.ceil((double) count / across) * 3900;
        Ground ground = new Ground(List.of(Outline.rectangle(width, depth)), List.of(), List.of(), List.of(), 10);
        return garden("Field of " + count, false, ground, beds, List.of());
    }
}
