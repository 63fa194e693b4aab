package lapyard.diagrams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lapyard.construction.Beds;
import lapyard.construction.BedWork;
import lapyard.construction.SlatCut;
import lapyard.construction.Strip;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.geometry.RandomOutlines;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Saw;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;

class FloorCardsTest {
    private static BedWork bedM() {
        return work(TestGardens.bed("M", "Corner bed", TestGardens.M, 0, 0, 0, 3));
    }

    /** With the ground falling to the rear. */
    private static BedWork work(Bed bed) {
        return lapyard.construction.Beds.work(bed, Saw.USUAL, 4780, Map.of(), Optional.of(new Point(0, 1)), 2400, 25);
    }

    private static String text(List<Page> pages) throws Exception {
        List<String> texts = new ArrayList<>();
        for (Page page : pages) texts.addAll(Drawn.of(page).texts());
        return String.join("\n", texts);
    }

    /** Worked by hand: inner 2800 x 1300 and 1600 x 900; 9 slat rows of 1200 and 395 in the narrow one; strips 30 short at the wall. */
    @Test
    void theCardOfTheWorkedBedTellsItsFloorAndItsLiner() throws Exception {
        BedWork work = bedM();
        String text = text(FloorCards.pages(List.of(work), List.of(), BenchOptions.usual("Yard", false)));
        assertTrue(text.contains("M-R1: 2800 × 1300") && text.contains("M-R2: 1600 × 900"), text);
        assertTrue(text.contains("of 870") && text.contains("of 1270"), text);
        assertTrue(text.contains("1200 + 395"), text);
        assertTrue(text.contains("2460") && text.contains("3960") && text.contains("2760 × 1780"), text);
        assertTrue(text.contains("21 drain slits") && text.contains("144 staples"), text);
    }

    /** The floor's rectangle R1 of 2800 x 1300 measures what the scale in the corner says. */
    @Test
    void theFloorIsToScale() throws Exception {
        Page page = FloorCards.pages(List.of(bedM()), List.of(), BenchOptions.usual("Yard", false)).get(0);
        String scale = Drawn.of(page).texts().stream().filter(text -> text.matches("1:[0-9]+")).findFirst().orElseThrow();
        double n = Double.parseDouble(scale.substring(2));
        double widest = areas(page.shapes()).stream()
                .filter(area -> area.stroke().isPresent() && !area.stroke().get().dashMm().isEmpty())
                .mapToDouble(area -> Box.round(area.rings().get(0)).width())
                .max()
                .orElseThrow();
        assertEquals(2800 / n, widest, 1e-6);
    }

    private static List<Shape.Area> areas(List<Shape> shapes) {
        List<Shape.Area> areas = new ArrayList<>();
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Group group) areas.addAll(areas(group.shapes()));
            if (shape instanceof Shape.Area area) areas.add(area);
        }
        return areas;
    }

    /**
     * Whatever the shape: as many bearers and slats as the cut lists have, each of the listed length, drawn inside the
     * inner faces of the walls and to scale.
     */
    @Test
    void everyBearerAndSlatLiesInsideTheWallsAndIsOnTheList() {
        Random random = new Random(19);
        for (int i = 0; i < 60; i++) {
            int shape = i;
            Bed bed = Beds.filled(
                    Beds.bed("Q", outline(random, i), 2, Lap.TURNING), Base.USUAL.slatted(true), Liner.NONE, Fill.USUAL, Finish.NONE);
            BedWork work = work(bed);
            List<Double> bearers = new ArrayList<>();
            List<Double> slats = new ArrayList<>();
            work.bottom().bays().forEach(bay -> bay.bearersLaid().forEach(laid -> bearers.add(laid.lengthMm())));
            work.bottom().bays().forEach(bay -> bay.slatsLaid().forEach(laid -> slats.add(laid.lengthMm())));
            assertTrue(slats.stream().allMatch(mm -> mm >= 20), () -> "shape " + shape + " has a sliver: " + slats);
            double beams = work.bottom().strips().stream().filter(strip -> strip.use().equals("beam")).mapToDouble(Strip::lengthMm).sum();
            double metres = bearers.stream().mapToDouble(mm -> mm).sum() + beams;
            assertEquals(Beds.value(work.quantities(), "base.bearers"), metres / 1000, 1e-3, () -> "shape " + shape);
            for (SlatCut cut : work.bottom().slats()) {
                assertEquals(cut.count(), slats.stream().filter(mm -> Math.abs(mm - cut.lengthMm()) < 0.051).count(), () -> "shape " + shape);
            }
            Page page = FloorCards.pages(List.of(work), List.of(), BenchOptions.usual("Yard", false)).get(0);
            List<Shape.Area> drawn = new ArrayList<>(areas(List.of(group(page.shapes(), "bearers"))));
            assertEquals(bearers.size(), drawn.size(), () -> "shape " + shape);
            List<Shape.Area> rows = areas(List.of(group(page.shapes(), "slats")));
            assertEquals(work.bottom().slats().stream().mapToInt(SlatCut::count).sum(), rows.size(), () -> "shape " + shape);
            drawn.addAll(rows);
            Geometry inside = Jts.area(((Shape.Area) ((Shape.Group) group(page.shapes(), "base")).shapes().get(0)).rings().get(1)).buffer(1e-6);
            for (Shape.Area one : drawn) {
                assertFalse(one.rings().isEmpty(), () -> "shape " + shape + " has a part that is nowhere");
                one.rings().forEach(ring -> assertTrue(inside.covers(Jts.area(ring)), () -> "shape " + shape + ": " + ring));
            }
        }
    }

    /** Right-angled, regular, and slanted outlines with sharp, blunt and inside corners. */
    private static Outline outline(Random random, int i) {
        double w = 1800 + random.nextInt(2500);
        double d = 1500 + random.nextInt(2000);
        double a = 300 + random.nextInt(600);
        return switch (i % 5) {
            case 0 -> RandomOutlines.of(random, 700, 1500);
            case 1 -> regular(3 + random.nextInt(8), 1200 + random.nextInt(600));
            case 2 -> TestGardens.corners(0, 0, w, 0, w - a, d, a / 2, d);
            case 3 -> TestGardens.corners(0, 0, w, 0, w, d, w / 2, d + a, 0, d);
            default -> TestGardens.corners(0, 0, w, 0, w + a, d + 900, w / 2, d - a / 2, 0, d + 900);
        };
    }

    private static Outline regular(int sides, double radius) {
        double[] xy = new double[2 * sides];
        for (int k = 0; k < sides; k++) {
            xy[2 * k] = Math.rint(radius * Math.cos(2 * Math.PI * k / sides - Math.PI / 2));
            xy[2 * k + 1] = Math.rint(radius * Math.sin(2 * Math.PI * k / sides - Math.PI / 2));
        }
        return TestGardens.corners(xy).fromFrontLeft();
    }

    private static Shape group(List<Shape> shapes, String layer) {
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Group group) {
                if (group.layer().equals(layer)) return group;
                Shape inner = group(group.shapes(), layer);
                if (inner != null) return inner;
            }
        }
        return null;
    }

    /** In the corner beside its list this horseshoe is at 1 in = 20 ft, where four of its letters lie over each other. */
    @Test
    void lettersOfWallsStandClearOfEachOther() {
        Outline horseshoe = TestGardens.corners(0, 0, 3657.6, 0, 3657.6, 1676.4, 2895.6, 1676.4, 2895.6, 914.4, 762, 914.4, 762, 1676.4, 0, 1676.4);
        Bed bed = Beds.filled(Beds.bed("N", horseshoe, 3, Lap.TURNING), Base.USUAL.slatted(false), Liner.USUAL, Fill.USUAL, Finish.NONE);
        Page page = FloorCards.pages(List.of(work(bed)), List.of(), BenchOptions.usual("Yard", true)).get(0);
        List<Shape.Circle> signs = ((Shape.Group) group(page.shapes(), "base")).shapes().stream()
                .filter(Shape.Circle.class::isInstance).map(Shape.Circle.class::cast).toList();
        assertEquals(8, signs.size());
        for (Shape.Circle one : signs) {
            for (Shape.Circle other : signs) {
                if (one == other) continue;
                double apart = one.centre().distanceMm(other.centre());
                assertTrue(apart >= one.radiusMm() + other.radiusMm(), () -> one.centre() + " and " + other.centre());
            }
        }
    }

    @Test
    void gardensWithoutFloorAndLinerSaySo() throws Exception {
        String text = text(FloorCards.pages(List.of(), List.of(), BenchOptions.usual("Yard", false)));
        assertTrue(text.contains("No bed here has a slatted floor or a liner."), text);
    }

    @Test
    void aMirroredBedsFloorIsMirrored() throws Exception {
        Bed bed = TestGardens.bed("M", "", TestGardens.M, 0, 0, 0, 3);
        var mirrored = new Placement(bed.placement().at(), 0, true);
        Page plain = FloorCards.pages(List.of(work(bed)), List.of(), BenchOptions.usual("Yard", false)).get(0);
        Page turned = FloorCards.pages(List.of(work(Beds.placed(bed, mirrored))), List.of(), BenchOptions.usual("Yard", false)).get(0);
        // of the left of two columns that stand 7 apart, each 3 within the frame
        double middle = 23 + (plain.widthMm() - 36 - 7) / 4;
        double left = narrow(plain) - middle;
        double right = narrow(turned) - middle;
        assertEquals(left, -right, 1e-6);
        assertTrue(Math.abs(left) > 1);
    }

    /** Middle of the narrower rectangle across the paper. */
    private static double narrow(Page page) {
        return areas(page.shapes()).stream()
                .filter(area -> area.stroke().isPresent() && !area.stroke().get().dashMm().isEmpty())
                .map(area -> Box.round(area.rings().get(0)))
                .min((a, b) -> Double.compare(a.width(), b.width()))
                .orElseThrow()
                .centre().x();
    }
}
