package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.plan.Preparation;
import lapyard.plan.Told;
import lapyard.working.Quantity;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Pegs, tapes, narrow places and gradients anywhere in a yard, against plain reckonings (arithmetic). */
class TurnedYardTest {
    private static final List<Outline> SHAPES = List.of(
            Outline.rectangle(2400, 1200), Outline.rectangle(900, 3700), Beds.L, Beds.outline(0, 0, 2000, 0, 2600, 1500, 600, 1500));

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    private static Point place(Random random) {
        return new Point(random.nextInt(16_000) - 8000, random.nextInt(16_000) - 8000);
    }

    private static Bed bed(Random random, Outline outline) {
        return Beds.bed("M", outline, new Placement(place(random), random.nextInt(360) + 0.25, random.nextBoolean()));
    }

    private static Map<String, Double> inputs(Quantity quantity) {
        return quantity.working().inputs().stream().collect(Collectors.toMap(Working.Input::name, Working.Input::value));
    }

    private static SettingOut out(Optional<Baseline> line, Optional<Fall> fall, List<Outline> yard, Bed... beds) {
        return SettingOut.of(Beds.garden(new Ground(yard, List.of(), List.of(), List.of(), 0, Optional.empty(), line,
                Preparation.USUAL, List.of(), AccessStandard.USUAL, List.of(), Optional.empty()), beds), fall);
    }

    /** Whoever walks along the baseline and turns left stands at the corner; whoever follows the working comes to its number. */
    @ParameterizedTest
    @MethodSource("seeds")
    void pegsLeadBackToTheirCorners(long seed) {
        Random random = new Random(seed);
        Bed bed = bed(random, SHAPES.get((int) (seed % SHAPES.size())));
        Point start = place(random);
        double angle = Math.toRadians(random.nextInt(360) + 0.5);
        double u = Math.cos(angle);
        double v = Math.sin(angle);
        Pegs pegs = Pegs.of(bed, start, new Point(start.x() + 7000 * u, start.y() + 7000 * v), 600, Optional.empty());
        int sides = bed.outline().sides();
        for (Pegs.Peg peg : pegs.pegs()) {
            Point back = new Point(start.x() + peg.alongMm() * u - peg.offMm() * v, start.y() + peg.alongMm() * v + peg.offMm() * u);
            assertEquals(0, back.distanceMm(bed.inYard().corner(peg.number() - 1)), 1e-6);
        }
        assertEquals(2 * sides, pegs.linePegs().size());
        for (int i = 0; i < 2 * sides; i++) {
            Pegs.LinePeg line = pegs.linePegs().get(i);
            Point at = new Point(start.x() + line.alongMm() * u - line.offMm() * v, start.y() + line.alongMm() * v + line.offMm() * u);
            Point near = bed.inYard().corner(line.beyond() - 1);
            Point far = bed.inYard().corner(line.beyond() - 1 == i / 2 ? i / 2 + 1 : i / 2);
            assertEquals(Bed.wallLetter(i / 2), line.wall());
            assertEquals(600, at.distanceMm(near), 1e-6);
            assertEquals(600 + near.distanceMm(far), at.distanceMm(far), 1e-6, "in line with the wall");
        }
        for (Quantity quantity : pegs.quantities()) {
            Map<String, Double> in = inputs(quantity);
            String key = quantity.key().toString();
            double follows = key.endsWith(".along") ? in.get("dx") * in.get("u") + in.get("dy") * in.get("v")
                    : key.endsWith(".off") ? in.get("dy") * in.get("u") - in.get("dx") * in.get("v") : Math.hypot(in.get("dx"), in.get("dy"));
            assertEquals(follows, quantity.value(), 1e-6, key);
        }
        assertEquals(2 * sides + sides * (sides - 3) / 2, pegs.quantities().size(), "each peg twice, each diagonal once");
    }

    /** Angles between tapes from their directions; triangles by trying every part from 60 m down. */
    @ParameterizedTest
    @MethodSource("seeds")
    void tapesAndTrianglesAreThoseOfAPlainReckoning(long seed) {
        Random random = new Random(seed);
        Bed bed = bed(random, SHAPES.get((int) (seed % SHAPES.size())));
        Baseline line = new Baseline(place(random), new Point(9000 + random.nextInt(9000), 9000), 0);
        SettingOut out = out(Optional.of(line), Optional.empty(), List.of(), bed);
        SettingOut.BedPegs own = out.beds().get(0);
        double deepest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < bed.outline().sides(); i++) {
            Point corner = bed.inYard().corner(i);
            double between = Math.toDegrees(Math.abs(Math.atan2(corner.y() - line.from().y(), corner.x() - line.from().x())
                    - Math.atan2(corner.y() - line.to().y(), corner.x() - line.to().x())));
            between = Math.min(between, 360 - between);
            assertEquals(between < 30 || between > 150, own.tapes().get(i).flat(), "seed " + seed + ", peg " + (i + 1) + ": " + between);
            assertEquals(line.from().distanceMm(corner), own.tapes().get(i).firstMm(), 1e-9);
            assertEquals(line.to().distanceMm(corner), own.tapes().get(i).secondMm(), 1e-9);
            deepest = Math.max(deepest, own.pegs().pegs().get(i).offMm());
        }
        assertEquals(part(line.from().distanceMm(line.to()), deepest), out.square().map(t -> t.acrossMm() / 5).orElse(0.0), 1e-9);
        double best = 0;
        Outline shape = bed.outline();
        // of the last shape no corner is square; the fourth corner of the L points inwards
        for (int i = 0; i < shape.sides() && shape != SHAPES.get(3); i++) {
            if (shape != Beds.L || i != 3) best = Math.max(best, part(shape.sideMm(i), shape.sideMm(i - 1)));
        }
        assertEquals(best, own.square().map(t -> t.acrossMm() / 5).orElse(0.0), 1e-9);
        own.square().ifPresent(t -> {
            assertEquals(t.acrossMm(), Math.hypot(t.alongMm(), t.otherMm()), 1e-9);
            assertTrue(t.alongMm() <= shape.sideMm(t.peg() - 1) + 1e-6 && t.otherMm() <= shape.sideMm(t.peg() - 2 + shape.sides()) + 1e-6, t.toString());
        });
        assertEquals(shape.upright() && shape.sides() == 4, own.pushForTenMm().isPresent());
    }

    /** The largest part of 3, 4 and 5, whole centimetres, that fits two sides square to each other and a tape of 30 m. */
    private static double part(double one, double other) {
        for (int part = 6000; part > 0; part -= 10) {
            if (4 * part <= one + 1e-6 && 3 * part <= other + 1e-6 || 3 * part <= one + 1e-6 && 4 * part <= other + 1e-6) return part;
        }
        return 0;
    }

    /** The ground of 1:80 to the rear: of a bed from 1500 to 3900 the lowest peg is the rearmost, 412 + 3900 / 80. */
    @Test
    void theLowestPegIsTold() {
        Baseline house = new Baseline(new Point(0, 0), new Point(12_000, 0), 0);
        Bed bed = Beds.bed("M", Beds.L, 800, 1500);
        assertEquals(412 + 3900 / 80.0, out(Optional.of(house), Optional.of(new Fall(0, 1 / 80.0, 412, List.of())), List.of(), bed).beds().get(0).lowestDropMm().orElseThrow(), 1e-9);
        assertEquals(Optional.empty(), out(Optional.of(house), Optional.empty(), List.of(), bed).beds().get(0).lowestDropMm());
    }

    /** Without yard or marks nothing can be pegged, and that is said; where the front is one corner the longest side serves, beds to its left. */
    @Test
    void aYardThatStandsOnACornerIsPeggedFromItsLongestSide() {
        SettingOut none = out(Optional.empty(), Optional.empty(), List.of(), Beds.box("N", 0, 0, 2400, 1200));
        assertEquals(List.of(FindingKind.NO_BASELINE), none.findings().stream().map(Finding::kind).toList());
        assertEquals(List.of(), none.beds());
        Outline corner = Beds.outline(0, 0, 6000, 4000, 1000, 9000, -3000, 3000);
        Outline clockwise = Beds.outline(0, 0, -3000, 3000, 1000, 9000, 6000, 4000);
        for (Outline yard : List.of(corner, clockwise)) {
            Baseline line = out(Optional.empty(), Optional.empty(), List.of(yard), Beds.box("N", 0, 3000, 900, 900)).baseline().orElseThrow();
            // 7211 and 7211 are the two longest; each has the yard on its left
            double left = (line.to().x() - line.from().x()) * (4000 - line.from().y()) - (line.to().y() - line.from().y()) * (1000 - line.from().x());
            assertEquals(Math.hypot(6000, 4000), line.from().distanceMm(line.to()), 1e-9);
            assertTrue(left > 0, "the middle of the yard, (1000, 4000), lies left");
        }
        Baseline front = out(Optional.empty(), Optional.empty(), List.of(Beds.outline(0, 2000, 8000, 2000, 8000, 12_000, 0, 12_000)), Beds.box("N", 0, 3000, 900, 900)).baseline().orElseThrow();
        assertEquals(new Baseline(new Point(0, 2000), new Point(8000, 2000), 0), front);
    }

    /**
     * A path of two legs, 1200 wide: on the second a bed reaches 300 in from the left where it begins, then two on opposite sides leave
     * 500 each way and 300 between their corners; a third stands beside the path.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void theNarrowestPlaceIsTheSameHoweverThePathLies(long seed) {
        Random random = new Random(seed);
        Placement turned = new Placement(place(random), random.nextInt(360) + 0.25, random.nextBoolean());
        List<Point> line = new ArrayList<>();
        for (Point point : Beds.points(-6000, 1000, 0, 5000, 10_000, 5000)) line.add(turned.toYard(point));
        var path = new GardenPath("P", "P", line, 1200, List.of(), "", "", 200);
        double first = Math.hypot(6000, 4000);
        Outline bite = Beds.outline(3000, 5300, 3700, 5310, 3700, 7000, 3000, 7000);
        Outline beside = Beds.outline(8000, 5601, 9000, 5601, 9000, 7000, 8000, 7000);
        PathRoom one = room(path, turned, bite, beside);
        assertEquals(900, one.widthMm(), 0.1);
        assertEquals(700, one.narrowMm(), 0.1);
        assertEquals(first + 3000, one.alongMm(), 0.1);
        assertEquals(0, one.at().distanceMm(turned.toYard(new Point(3000, 4850))), 0.1);
        PathRoom aslant = room(path, turned, Beds.outline(2000, 4900, 4000, 4900, 4000, 7000, 2000, 7000), beside,
                Beds.outline(4300, 3000, 6000, 3000, 6000, 5100, 4300, 5100));
        assertEquals(300, aslant.widthMm(), 0.1, "from (4000, 4900..5100) to (4300, 4900..5100)");
        assertEquals(first + 4150, aslant.alongMm(), 0.1);
        assertEquals(4000 - 300, aslant.narrowMm(), 0.5, "2000 to 4000 and 4300 to 6000");
        PathRoom middle = room(path, turned, Beds.outline(5000, 4700, 6000, 4700, 6000, 5190, 5000, 5200));
        assertEquals(400, middle.widthMm(), 0.1, "300 on one side of it, 400 on the other");
        assertEquals(0, middle.at().distanceMm(turned.toYard(new Point(5000, 5400))), 0.1);
        assertEquals(0, room(path, turned, Beds.outline(5000, 4000, 6000, 4000, 6000, 6000, 5000, 6000)).widthMm(), 1e-6, "right across");
    }

    private static PathRoom room(GardenPath path, Placement turned, Outline... standing) {
        return PathRoom.of(path, Stream.of(standing)
                .map(one -> Shapes.area(new Outline(one.corners().stream().map(turned::toYard).toList()).counterClockwise())).toList());
    }

    /** What a level on each leg reads from its start to its end, and across it from one side to the other, against 1:20 and 1:48. */
    @ParameterizedTest
    @MethodSource("seeds")
    void gradientsAreWhatALevelReadsFromEndToEnd(long seed) {
        Random random = new Random(seed);
        Fall fall = new Fall((random.nextInt(200) - 100) / 1000.0, (random.nextInt(200) - 100) / 1000.0, 300, List.of());
        List<Point> line = new ArrayList<>(List.of(place(random)));
        double along = 0;
        double across = 0;
        int steepest = 0;
        for (int leg = 1; leg <= 3; leg++) {
            Point from = line.get(leg - 1);
            double angle = Math.toRadians(random.nextInt(90) + 90 * leg);
            Point to = new Point(from.x() + 3000 * Math.cos(angle), from.y() + 3000 * Math.sin(angle));
            Point left = new Point(from.x() - 3000 * Math.sin(angle), from.y() + 3000 * Math.cos(angle));
            double up = Math.abs(fall.dropMm(to) - fall.dropMm(from)) / 3000;
            steepest = up > along ? leg : steepest;
            along = Math.max(along, up);
            across = Math.max(across, Math.abs(fall.dropMm(left) - fall.dropMm(from)) / 3000);
            line.add(to);
        }
        List<AccessSheet.Row> rows = new ArrayList<>();
        var path = new GardenPath("P", "P", line, 1600, List.of(), "", "", 200);
        AccessSheet sheet = PathAccess.of(new Site(Beds.garden(Beds.yard(null))), List.of(path), Optional.of(fall), AccessStandard.ADA_2010);
        sheet.rows().stream().filter(row -> row.unit().equals("1:n")).forEach(rows::add);
        assertEquals(List.of(AccessSheet.AccessCheck.GRADIENT, AccessSheet.AccessCheck.CROSS_FALL), rows.stream().map(AccessSheet.Row::what).toList());
        double[] slope = {along, across};
        double[] limit = {20, 48};
        FindingKind[] kinds = {FindingKind.PATH_STEEP, FindingKind.PATH_CROSS_FALL};
        for (int i = 0; i < 2; i++) {
            assertEquals(1 / slope[i], rows.get(i).measured(), 1e-6 / slope[i] / slope[i]);
            double over = 1000 * slope[i] - 1000 / limit[i];
            assertEquals(Math.max(0, over), rows.get(i).missing(), 1e-3);
            Optional<Finding> found = Beds.about(sheet.findings(), "path P", kinds[i]);
            assertEquals(over > 1e-3, found.isPresent(), "seed " + seed);
            found.ifPresent(one -> assertEquals(over, one.amount().orElseThrow().value(), 0.051));
        }
        int leg = steepest;
        Beds.about(sheet.findings(), "path P", FindingKind.PATH_STEEP).ifPresent(steep ->
                assertTrue(Told.text(steep).contains("on leg " + leg + ";"), Told.text(steep)));
    }

    /** A corner counts as square up to 1 in 1000; half of that does, twice does not. */
    @Test
    void aCornerAsGoodAsSquareCarriesATriangle() {
        Baseline house = new Baseline(new Point(0, 0), new Point(12_000, 0), 0);
        for (double lean : new double[] {0.75, 3}) {
            Bed bed = Beds.bed("M", Beds.outline(0, 0, 2000, 0, 2000 + lean, 1500, lean, 1500), 0, 2000);
            assertEquals(lean < 1, out(Optional.of(house), Optional.empty(), List.of(), bed).beds().get(0).square().isPresent(), lean + " in 1500");
        }
    }
}
