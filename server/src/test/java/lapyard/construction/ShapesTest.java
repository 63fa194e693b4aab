package lapyard.construction;

import static lapyard.construction.Beds.lengths;
import static lapyard.construction.Beds.outline;
import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.catalogue.Section;
import lapyard.geometry.FewestRectangles;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Bed;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import org.junit.jupiter.api.Test;

/** Outlines with several inside corners, and beds that are mirrored and turned. */
class ShapesTest {
    /** Stem 1200 wide and 900 deep under a bar of 3000 x 1000: inside corners at both ends of the stem. */
    private static final Outline T =
            outline(900, 0, 2100, 0, 2100, 900, 3000, 900, 3000, 1900, 0, 1900, 0, 900, 900, 900);

    /** Steps of 1000 wide and 900, 800, 700 deep. */
    private static final Outline STEPS =
            outline(0, 0, 3000, 0, 3000, 900, 2000, 900, 2000, 1700, 1000, 1700, 1000, 2400, 0, 2400);

    /**
     * Walls round: A 3600 - 100, B 2400 - 100, C 1200 - 100, D 1500 (outer to inside), E 1200 + 100 (inside to
     * inside), F 1500 + 100 - 100, G 1100, H 2300: 14600 = 15000 - 400. Inner 6.84 - 0.1 x 14.6 = 5.38 m2.
     */
    @Test
    void theUHasAnInsideWallOf1300() {
        BedWork work = Beds.built(Beds.bed("U", Beds.U, 2, Lap.TURNING));
        List<Double> ring = List.of(3500.0, 2300.0, 1100.0, 1500.0, 1300.0, 1500.0, 1100.0, 2300.0);
        assertEquals(ring, lengths(work, 1));
        assertEquals(ring, lengths(work, 2));
        assertEquals(14600, ring.stream().mapToDouble(Double::doubleValue).sum());
        assertEquals(5.38, value(work.quantities(), "inner.area"), 1e-9);
        assertEquals(6.84e6, Beds.U.areaMm2());
    }

    /**
     * Odd (A, C, E, G past both ends): 3600, 1200, 1200 + 200, 1200; B, H 2400 - 200; D, F 1500 - 100 + 0. Even: A
     * 3400, C, G 1000, E 1200 + 0; B, H 2400; D, F 1500 + 100. Both 14600.
     */
    @Test
    void theUInLongWallLapSwapsItsEnds() {
        BedWork work = Beds.built(Beds.bed("U", Beds.U, 2, Lap.LONG_WALL));
        assertEquals(List.of(3600.0, 2200.0, 1200.0, 1400.0, 1400.0, 1400.0, 1200.0, 2200.0), lengths(work, 1));
        assertEquals(List.of(3400.0, 2400.0, 1000.0, 1600.0, 1200.0, 1600.0, 1000.0, 2400.0), lengths(work, 2));
    }

    /**
     * P 9800. A 1200 - 100; B 900 (outer to inside); C 900 + 100 - 100 (inside to outer); D 1000 - 100; E 3000 - 100;
     * F 1000 - 100; G 900 (outer to inside); H 900 + 100 - 100. Sum 9400.
     */
    @Test
    void theTSumsToItsPerimeterLessFourThicknesses() {
        BedWork work = Beds.built(Beds.bed("T", T, 1, Lap.TURNING));
        assertEquals(List.of(1100.0, 900.0, 900.0, 900.0, 2900.0, 900.0, 900.0, 900.0), lengths(work, 1));
        // Two rectangles, joined by the chord at the inner foot of the bar, y = 1000.
        assertEquals(2, work.bottom().floor().size());
        assertEquals(new Rectangle(1000, 100, 1000, 900), work.bottom().floor().get(0));
        assertEquals(new Rectangle(100, 1000, 2800, 800), work.bottom().floor().get(1));
    }

    /** P 10800 with c 6 and r 2: 2 inside corners, and two of the six outer corners between them. */
    @Test
    void theStepsSumAndSplitIntoThree() {
        BedWork work = Beds.built(Beds.bed("S", STEPS, 1, Lap.TURNING));
        assertEquals(
                10400,
                lengths(work, 1).stream().mapToDouble(Double::doubleValue).sum());
        assertEquals(List.of(2900.0, 800.0, 1000.0, 800.0, 1000.0, 700.0, 900.0, 2300.0), lengths(work, 1));
        assertEquals(3, work.bottom().floor().size());
        assertEquals(5, FewestRectangles.splits(work.frame().inner()).size());
    }

    /** No other split of the fewest rectangles takes fewer strips, or as few and less liner. */
    @Test
    void theChosenSplitIsTheBestOfAll() {
        for (Outline outline : List.of(Beds.M, Beds.U, T, STEPS)) {
            for (Optional<Point> fall : List.of(
                    Optional.of(new Point(0, 0.01)), Optional.of(new Point(0.01, 0)), Optional.<Point>empty())) {
                Bed bed = Beds.bed("X", outline, 3, Lap.TURNING);
                BedWork work = Beds.work(bed, Saw.USUAL, 4780, Map.of(), fall, 2400, 25);
                int strips = stripsOf(work.bottom().strips());
                double liner = value(work.quantities(), "liner.area");
                for (FewestRectangles.Split split : FewestRectangles.splits(work.frame().inner())) {
                    double other = LinerCut.areaMm2(bed, split.rectangles()) / 1e6;
                    LowSide low = LowSide.of(bed, fall);
                    List<Double> lengths = new ArrayList<>();
                    for (Rectangle floor : split.rectangles()) {
                        FloorBay bay = FloorBay.of(floor, work.frame().inner(), low.toward(), bed.inside().base(), 4);
                        for (int i = 0; i < bay.bearers(); i++) {
                            lengths.add(bay.bearerMm());
                        }
                    }
                    split.cuts().forEach(cut -> lengths.add(cut.lengthMm()));
                    if (lengths.stream().allMatch(length -> length <= 2380)) {
                        int found = boards(lengths);
                        assertTrue(
                                strips < found || strips == found && liner <= other + 1e-6,
                                () -> outline + " " + fall + ": " + strips + " strips, " + found + " for " + split);
                    }
                }
            }
        }
    }

    private static int stripsOf(List<Strip> strips) {
        return boards(strips.stream().map(Strip::lengthMm).toList());
    }

    private static int boards(List<Double> lengths) {
        FirstFit fit = new FirstFit();
        lengths.forEach(length -> fit.add(length, 1));
        return fit.boards(2380, 4);
    }

    /** However a bed is mirrored and turned, its low walls look downhill in the yard and its bearers run that way. */
    @Test
    void lowWallsFollowTheYardsFallThroughMirrorAndTurn() {
        Point downhill = new Point(0.002, 0.0125);
        for (int turn = 0; turn < 360; turn += 90) {
            for (boolean mirror : new boolean[] {false, true}) {
                Placement placement = new Placement(new Point(5000, 3000), turn, mirror);
                Bed bed = Beds.placed(Beds.bed("M", Beds.M, 3, Lap.TURNING), placement);
                BedWork work = Beds.work(bed, Saw.USUAL, 4780, Map.of(), Optional.of(placement.directionToOwn(downhill.x(), downhill.y())), 2400, 25);
                Set<String> low = work.frame().notches().stream().map(Notch::wall).collect(Collectors.toSet());
                for (int side = 0; side < 6; side++) {
                    Point from = placement.toYard(Beds.M.corner(side));
                    Point to = placement.toYard(Beds.M.corner(side + 1));
                    // Outwards is to the right of the way round, to the left where the bed is mirrored.
                    double sense = mirror ? -1 : 1;
                    double outY = -sense * (to.x() - from.x()) / from.distanceMm(to);
                    assertEquals(outY > 0.9, low.contains(Bed.wallLetter(side)), "wall " + side + " turned " + turn);
                }
            }
        }
    }

    @Test
    void decimalLengthsAreRoundedToATenthOfAMillimetre() {
        // 8 ft x 4 ft, timber 3.5 in: 2438.4 - 88.9 = 2349.5, 1219.2 - 88.9 = 1130.3.
        Bed bed = Beds.section(
                Beds.bed("F", Outline.rectangle(8 * 304.8, 4 * 304.8), 1, Lap.TURNING),
                new Section("4x4", 3.5 * 25.4, 3.5 * 25.4, 600, List.of(), Optional.empty(), false, 1, false));
        assertEquals(List.of(2349.5, 1130.3, 2349.5, 1130.3), lengths(Beds.built(bed), 1));
    }
}
