package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.GardenPath;
import lapyard.working.Quantity;
import org.junit.jupiter.api.Test;

class PathWorkTest {
    private static double value(PathWork work, String key) {
        return work.quantities().stream()
                .filter(q -> q.key().toString().equals(key))
                .mapToDouble(Quantity::value)
                .sum();
    }

    private static double sum(List<PathWork> work, String key) {
        return work.stream().mapToDouble(one -> value(one, key)).sum();
    }

    private static final List<GardenPath> CROSS =
            List.of(Beds.path("P", 900, 0, 0, 0, 8000), Beds.path("Q", 900, -2500, 4000, 2500, 4000));

    @Test
    void aCrossIsCountedOnce() {
        List<PathWork> work = PathWork.of(CROSS, List.of(), List.of());
        assertEquals(10.89, sum(work, "path.area"), 1e-9);
        assertEquals(0.5445, sum(work, "path.volume"), 1e-9);
        assertEquals(0.5445, sum(work, "path.bark"), 1e-9);
        assertEquals(7.2, value(work.get(0), "path.area"), 1e-9, "the first path keeps what both share");
        assertEquals(3.69, value(work.get(1), "path.area"), 1e-9);
        assertEquals(2, work.get(1).cover().size());
        assertEquals(10.89, sum(work, "membrane"), 1e-9);
    }

    @Test
    void aCrossIsEdgedRoundItsOutlineLessFourEnds() {
        List<PathWork> work = PathWork.of(CROSS, List.of(), List.of());
        assertEquals(22.4, sum(work, "edging.length"), 1e-9, "outline 26.0 less 4 x 0.9");
        assertEquals(2 * (8 - 0.9), value(work.get(0), "edging.length"), 1e-9);
        assertEquals(2 * (5 - 0.9), value(work.get(1), "edging.length"), 1e-9);
        assertEquals(4 * 5 + 4 * 4, sum(work, "edging.pegs"), 1e-9, "runs of 3550 and 2050");
    }

    @Test
    void theFirstPathInTheDocumentKeepsSharedGround() {
        List<PathWork> turned = PathWork.of(List.of(CROSS.get(1), CROSS.get(0)), List.of(), List.of());
        assertEquals(4.5, value(turned.get(0), "path.area"), 1e-9);
        assertEquals(6.39, value(turned.get(1), "path.area"), 1e-9);
        assertEquals(22.4, sum(turned, "edging.length"), 1e-9);
    }

    /**
     * Pappus and Guldin: a band of even width has the length of its middle line times its width; a mitre adds what it
     * takes.
     */
    @Test
    void bendsAreMitredSoThatAreaIsWidthTimesLength() {
        for (double[] line : new double[][] {
            {0, 0, 5000, 0, 5000, 4000},
            {0, 0, 5000, 0, 9000, 4000},
            {0, 0, 4000, 0, 3000, 5000},
            {0, 0, 3000, 100, 6000, 0, 9000, 3000}
        }) {
            GardenPath path = Beds.path("P", 1200, line);
            double length = 0;
            for (int i = 0; i + 1 < path.line().size(); i++) {
                length += path.line().get(i).distanceMm(path.line().get(i + 1));
            }
            PathWork work = PathWork.of(List.of(path), List.of(), List.of()).get(0);
            assertEquals(length * 1200 / 1e6, value(work, "path.area"), 1e-6);
            assertEquals(length, lapyard.construction.Beds.input(lapyard.construction.Beds.quantity(work.quantities(), "path.area").working(), "line"), 1e-6);
            PathWork.Strip strip = new PathWork.Strip(1300, 2000, 1, 0);
            assertEquals(value(work, "path.area"), value(work.with(List.of(strip, strip)), "path.area"));
            assertEquals(4, value(work.with(List.of(strip, strip)), "membrane.strip"), 1e-9, "its own strips give way to two of 2 m");
            assertEquals(
                    2 * length / 1000,
                    value(work, "edging.length"),
                    1e-6,
                    "outer and inner side make up for each other");
        }
    }

    @Test
    void aClosedPathHasNoEndsAndItsHoleIsCutOpen() {
        PathWork work = PathWork.of(List.of(Beds.path("P", 1000, 0, 0, 5000, 0, 5000, 4000, 0, 4000, 0, 0)), List.of(), List.of())
                .get(0);
        assertEquals(18, value(work, "path.area"), 1e-9, "6 x 5 less 4 x 3");
        assertEquals(36, value(work, "edging.length"), 1e-9, "22 round the outside and 14 inside");
        assertEquals(18e6, work.cover().stream().mapToDouble(Outline::areaMm2).sum(), 1e-3);
        assertTrue(work.cover().size() >= 2);
    }

    @Test
    void whatLiesUnderABedIsNotPathAndItsSideIsNotEdged() {
        List<PathWork> work = PathWork.of(
                List.of(Beds.path("P", 1000, 0, 0, 0, 6000)), List.of(Beds.box("M", 200, 1000, 2000, 1500)), List.of());
        assertEquals(6 - 0.3 * 1.5, sum(work, "path.area"), 1e-9);
        assertEquals(6 + 6 - 1.5 + 2 * 0, sum(work, "edging.length"), 1e-9, "all three sides of the bite are bed");
    }

    @Test
    void aBedAlongAPathTakesItsSideFromTheEdging() {
        List<PathWork> work = PathWork.of(
                List.of(Beds.path("P", 1000, 0, 0, 0, 6000)),
                List.of(
                        Beds.box("M", 500, 1000, 2000, 1500),
                        Beds.box("N", 500.4, 2000, 2000, 2000),
                        Beds.box("O", -2510, 0, 2000, 6000)), List.of());
        assertEquals(12 - 3, sum(work, "edging.length"), 1e-9, "M and N overlap along the path; O leaves 10");
    }

    /** By hand, laps of 200: the bend's second leg begins 500 past the bend's middle and laps back over the first. */
    @Test
    void membraneComesInStripsThatLap() {
        PathWork bent = PathWork.of(List.of(Beds.path("P", 1000, 0, 0, 5000, 0, 5000, 4000)), List.of(), List.of())
                .get(0);
        assertEquals(List.of("1000 x 5500", "1000 x 3700, 1 lap"), told(bent));
        List<PathWork> cross = PathWork.of(CROSS, List.of(), List.of());
        assertEquals(List.of("900 x 8000"), told(cross.get(0)));
        assertEquals(List.of("900 x 2250, 1 lap", "900 x 2250, 1 lap"), told(cross.get(1)));
        assertEquals(4.5, value(cross.get(1), "membrane.strip"), 1e-9);
        assertEquals(0.9 * 4.1, value(cross.get(1), "membrane"), 1e-9, "the area is without laps: nothing is covered twice");
    }

    /**
     * Four legs of 1000 round a yard of 5000 by 4000: each begins beside the one before. Ends are flat, so the last runs
     * from 3500 to 0 outside the first, which it laps over too: 3500 + 2 x 200.
     */
    @Test
    void ringOfMembraneCoversNoCornerTwice() {
        PathWork ring = PathWork.of(List.of(Beds.path("P", 1000, 0, 0, 5000, 0, 5000, 4000, 0, 4000, 0, 0)), List.of(), List.of()).get(0);
        assertEquals(List.of("1000 x 5500", "1000 x 4200, 1 lap", "1000 x 5200, 1 lap", "1000 x 3900, 2 laps"), told(ring));
    }

    @Test
    void pathThatEndsAtALaterOneLapsOverIt() {
        List<PathWork> tee = PathWork.of(List.of(Beds.path("P", 1000, 0, 0, 0, 3500), Beds.path("Q", 1000, -4000, 4000, 4000, 4000)), List.of(), List.of());
        assertEquals(List.of("1000 x 3700, 1 lap"), told(tee.get(0)));
        assertEquals(List.of("1000 x 8000"), told(tee.get(1)));
    }

    @Test
    void pathsSideBySideLapAlongTheirSides() {
        List<PathWork> pair = PathWork.of(List.of(Beds.path("P", 1000, 0, 0, 5000, 0), Beds.path("Q", 1000, 0, 1000, 5000, 1000)), List.of(), List.of());
        assertEquals(List.of("1000 x 5000"), told(pair.get(0)));
        assertEquals(List.of("1200 x 5000, 1 lap"), told(pair.get(1)));
    }

    /**
     * P comes up to the middle of Q's bend. Q's second leg, 2400 to 4000 high, shares with Q's ground what is above 3000 and one
     * side of P below; its strip begins beside the first, at 3600, and laps over it: 400 + 200.
     */
    @Test
    void membraneTurnsAtTheEndOfAnEarlierPath() {
        GardenPath bare = new GardenPath("P", "P", Beds.points(3000, 0, 3000, 3000), 1200, List.of(), "", "", GardenPath.USUAL_LAP_MM);
        List<PathWork> corner = PathWork.of(List.of(bare, Beds.path("Q", 1200, 0, 3000, 3000, 3000, 3000, 4000)), List.of(), List.of());
        assertEquals(List.of("1200 x 3600", "1200 x 600, 1 lap"), told(corner.get(1)));
    }

    private static List<String> told(PathWork work) {
        return work.strips().stream().map(strip -> Math.round(strip.widthMm()) + " x " + Math.round(strip.lengthMm())
                + (strip.ends() + strip.sides() == 0 ? "" : ", " + (strip.ends() + strip.sides()) + (strip.ends() + strip.sides() == 1 ? " lap" : " laps"))).toList();
    }

    @Test
    void aPathWithoutEdgingMembraneOrLayersSaysNothingOfThem() {
        GardenPath bare = new GardenPath("P", "P", Beds.points(0, 0, 0, 5000), 900, List.of(), "", "", GardenPath.USUAL_LAP_MM);
        PathWork work = PathWork.of(List.of(bare), List.of(), List.of()).get(0);
        assertEquals(
                List.of("path.area", "path.volume"),
                work.quantities().stream().map(one -> one.key().toString()).toList());
        assertEquals(0, value(work, "path.volume"));
        assertEquals(List.of(), work.strips());
    }

    @Test
    void aPathWithoutLengthCoversNothing() {
        PathWork work = PathWork.of(List.of(Beds.path("P", 900, 10, 10, 10, 10)), List.of(), List.of())
                .get(0);
        assertEquals(0, value(work, "path.area"));
        assertEquals(0, value(work, "edging.length"));
        assertEquals(List.of(), work.cover());
    }

    @Test
    void everyQuantityShowsItsWorking() {
        for (PathWork work : PathWork.of(CROSS, List.of(), List.of())) {
            for (Quantity quantity : work.quantities()) {
                assertTrue(
                        !quantity.working().inputs().isEmpty()
                                && !quantity.working().source().isEmpty(),
                        quantity.key().toString());
            }
        }
    }
}
