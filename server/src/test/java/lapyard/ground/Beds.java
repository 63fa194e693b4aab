package lapyard.ground;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.GardenState;
import lapyard.plan.Ground;
import lapyard.plan.Lap;
import lapyard.plan.QuoteTerms;
import lapyard.plan.Saw;
import lapyard.plan.SearchLength;
import lapyard.plan.StandingRules;
import lapyard.plan.Told;
import lapyard.plan.WayIn;

/** Gardens for the tests of this package. */
final class Beds {
    static final Section SECTION = new Section("100x200", 100, 200, 600, List.of(), Optional.empty(), false, 1, false);

    /** The worked L: 3000 x 2400 with 1200 x 900 cut out at the rear right. */
    static final Outline L = outline(0, 0, 3000, 0, 3000, 1500, 1800, 1500, 1800, 2400, 0, 2400);

    private Beds() {}

    static Outline outline(double... xy) {
        return new Outline(points(xy));
    }

    static List<Point> points(double... xy) {
        return java.util.stream.IntStream.range(0, xy.length / 2)
                .mapToObj(i -> new Point(xy[2 * i], xy[2 * i + 1]))
                .toList();
    }

    static Bed bed(String id, Outline outline, double x, double y, String... hidden) {
        return bed(id, outline, new Placement(new Point(x, y), 0, false), hidden);
    }

    static Bed bed(String id, Outline outline, Placement placement, String... hidden) {
        return new Bed(id, id, "", 1, new Bed.Siting(outline, placement, Set.of()),
                new Bed.Walls(3, SECTION, Lap.TURNING, Map.of(), Set.of(), Set.of(), true).withHidden(Set.of(hidden)), Bed.Making.USUAL, Bed.Inside.USUAL,
                Bed.Planting.USUAL);
    }

    static Bed box(String id, double x, double y, double widthMm, double depthMm) {
        return bed(id, Outline.rectangle(widthMm, depthMm), x, y);
    }

    static GardenPath path(String id, double widthMm, double... line) {
        return new GardenPath(id, id, points(line), widthMm, List.of(new GardenPath.Layer("path.bark", 50)), "edging", "membrane", GardenPath.USUAL_LAP_MM);
    }

    static Ground yard(Outline outline) {
        return new Ground(outline == null ? List.of() : List.of(outline), List.of(), List.of(), List.of(), 0);
    }

    static Garden garden(Ground ground, List<Bed> beds, List<GardenPath> paths) {
        return new Garden("yard", false, ground, beds, paths,
                new Garden.Goods(new Catalogue(List.of(), List.of(), List.of(), List.of(), true), List.of(), List.of(), Saw.USUAL, SearchLength.SHORT), Garden.People.USUAL,
                new Garden.Terms("GBP", WayIn.UNKNOWN, QuoteTerms.NONE, StandingRules.USUAL, GardenState.PENCILLED), java.util.Map.of(), List.of(), Garden.Asking.NOTHING);
    }

    static Garden garden(Ground ground, Bed... beds) {
        return garden(ground, List.of(beds), List.of());
    }

    static Optional<Finding> about(List<Finding> findings, String where, FindingKind kind) {
        return findings.stream().filter(f -> f.where().contains(where) && f.kind() == kind).findFirst();
    }

    static Optional<Finding> about(List<Finding> findings, String where, String words) {
        return findings.stream()
                .filter(f -> f.where().contains(where) && Told.text(f).contains(words))
                .findFirst();
    }
}
