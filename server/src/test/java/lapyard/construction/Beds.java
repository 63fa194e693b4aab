package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.Finish;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Notches;
import lapyard.plan.Saw;
import lapyard.plan.Screws;
import lapyard.plan.Seal;
import lapyard.plan.Ties;
import lapyard.working.Quantity;
import lapyard.working.Working;

/** Beds to test with, and short ways to ask about them. */
public final class Beds {
    public static final Section SLEEPER = new Section("100x200", 100, 200, 600, List.of(), Optional.empty(), false, 1, false);

    /** Boards of 4800 less an end trim of 10 at each end. */
    public static final double LONGEST = 4780;

    /** A bed as built, its walls joined in these ways. */
    public static BedWork work(
            Bed bed, Saw saw, double longestMm, Map<Integer, SeamSplit> joined, Optional<Point> downhill, double bearerStockMm, double liftLimitKg) {
        return new UnjoinedBed(new UnjoinedBed.Asked(bed, saw, longestMm, downhill, bearerStockMm, liftLimitKg)).joined(joined);
    }

    /** 1:80 to the rear. */
    public static final Optional<Point> TO_REAR = Optional.of(new Point(0, 1.0 / 80));

    /** The worked beds: screws of 100, finish that goes 12 m2 a litre, corner screws alone. */
    public static final Bed.Making WORKED =
            new Bed.Making(new Screws(100, 2, 6), Notches.USUAL, Ties.NONE, new Finish(true, 2, 12, 1), Seal.NONE);

    public static final Bed.Inside SLATTED = new Bed.Inside(Base.USUAL.slatted(true), Liner.USUAL);

    private Beds() {}

    /** Outer 3000 x 2400 with 1200 x 900 missing at the rear right, three courses, E and F hidden. */
    public static final Outline M = outline(0, 0, 3000, 0, 3000, 1500, 1800, 1500, 1800, 2400, 0, 2400);

    public static final Outline N = Outline.rectangle(1800, 900);

    /** 3600 x 2400 with a recess of 1200 x 1500 in the middle of the rear. */
    public static final Outline U =
            outline(0, 0, 3600, 0, 3600, 2400, 2400, 2400, 2400, 900, 1200, 900, 1200, 2400, 0, 2400);

    public static Outline outline(double... xy) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            corners.add(new Point(xy[i], xy[i + 1]));
        }
        return new Outline(corners);
    }

    public static Bed bed(String id, Outline outline, int courses, Lap lap) {
        return new Bed(id, id, "", 1, new Bed.Siting(outline, Placement.NONE, Set.of()), new Bed.Walls(courses, SLEEPER, lap, Map.of(), Set.of(), Set.of(), true),
                WORKED, SLATTED, Bed.Planting.USUAL);
    }

    public static Bed m(Lap lap) {
        return hidden(bed("M", M, 3, lap), "E", "F");
    }

    public static Bed hidden(Bed bed, String... walls) {
        return bed.withWalls(bed.walls().withHidden(Set.of(walls)));
    }

    public static Bed low(Bed bed, String... walls) {
        return walled(bed, bed.section(), bed.walls().joints(), Set.of(walls), bed.walls().seams());
    }

    public static Bed section(Bed bed, Section section) {
        return walled(bed, section, bed.walls().joints(), bed.walls().low(), bed.walls().seams());
    }

    private static Bed walled(Bed bed, Section section, Map<Integer, Joint> joints, Set<String> low, boolean seams) {
        Bed.Walls walls = bed.walls();
        return bed.withWalls(new Bed.Walls(walls.courses(), section, walls.lap(), joints, walls.hidden(), low, seams));
    }

    public static Bed fixed(Bed bed, boolean seams, Screws screws, Notches notches) {
        Bed.Making making = bed.making();
        return walled(bed, bed.section(), bed.walls().joints(), bed.walls().low(), seams)
                .withMaking(new Bed.Making(screws, notches, making.ties(), making.finish(), making.seal()));
    }

    public static Bed filled(Bed bed, Base base, Liner liner, Fill fill, Finish finish) {
        Bed.Making making = bed.making();
        return new Bed(bed.id(), bed.name(), bed.type(), bed.stage(), bed.siting(), bed.walls(),
                new Bed.Making(making.screws(), making.notches(), making.ties(), finish, making.seal()), new Bed.Inside(base, liner),
                new Bed.Planting(fill, bed.planting().food()));
    }

    public static Bed tied(Bed bed, Ties ties) {
        Bed.Making making = bed.making();
        return bed.withMaking(new Bed.Making(making.screws(), making.notches(), ties, making.finish(), making.seal()));
    }

    public static Bed placed(Bed bed, Placement placement) {
        return bed.placedAs(bed.id(), bed.name(), placement, bed.stage());
    }

    public static BedWork built(Bed bed) {
        return Beds.work(bed, Saw.USUAL, LONGEST, Map.of(), TO_REAR, 2400, 25);
    }

    public static double value(List<Quantity> quantities, String key) {
        return quantity(quantities, key).value();
    }

    public static Quantity quantity(List<Quantity> quantities, String key) {
        return quantities.stream()
                .filter(quantity -> quantity.key().toString().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + key + " in " + quantities));
    }

    public static boolean has(List<Quantity> quantities, String key) {
        return quantities.stream().anyMatch(quantity -> quantity.key().toString().equals(key));
    }

    public static double input(Working working, String name) {
        return working.inputs().stream()
                .filter(input -> input.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + name + " in " + working))
                .value();
    }

    /** Lengths of one course from wall A round. */
    public static List<Double> lengths(BedWork work, int course) {
        return work.frame().courses().get(course - 1).pieces().stream()
                .map(Piece::lengthMm)
                .toList();
    }

    public static List<Finding> of(Finding.Weight weight, List<Finding> findings) {
        return findings.stream().filter(finding -> finding.weight() == weight).toList();
    }

    public static Bed joined(Bed bed, Map<Integer, Joint> joints) {
        return walled(bed, bed.section(), joints, bed.walls().low(), bed.walls().seams());
    }
}
