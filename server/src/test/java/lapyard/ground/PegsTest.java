package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Ground;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PegsTest {
    private static final Pegs M = Pegs.of(Beds.bed("M", Beds.L, 800, 1500), new Point(0, 0), new Point(1, 0), 0, Optional.empty());

    @Test
    void theLIsTapedAlongAndOffTheHouseWall() {
        assertEquals(List.of(800.0, 2600.0, 3800.0), M.runningMm());
        assertEquals(List.of(1500.0, 3000.0, 3900.0), M.offsetsMm());
        assertEquals(6, M.pegs().size());
        assertEquals(2600, M.pegs().get(3).alongMm());
        assertEquals(3000, M.pegs().get(3).offMm());
        assertEquals(2600, lapyard.construction.Beds.value(M.quantities(), "peg.4.along"));
        assertEquals(3000, lapyard.construction.Beds.value(M.quantities(), "peg.4.off"));
    }

    /** Worked by hand for the L bed. */
    @ParameterizedTest(name = "P{0}-P{1} is {2}")
    @CsvSource({"1,3,3354.1", "2,6,3841.9", "1,4,2343.1", "1,5,3000.0"})
    void theDiagonalsAreThoseWorkedByHand(int from, int to, double length) {
        assertEquals(
                length,
                M.diagonals().stream()
                        .filter(d -> d.from() == from && d.to() == to)
                        .findFirst()
                        .orElseThrow()
                        .lengthMm(),
                0.05);
        assertEquals(
                length,
                M.quantities().stream()
                        .filter(q -> q.key().toString().equals("diagonal." + from + "-" + to))
                        .findFirst()
                        .orElseThrow()
                        .value(),
                0.05);
    }

    @Test
    void diagonalsStandLongestFirstAndNoWallIsAmongThem() {
        assertEquals(9, M.diagonals().size(), "6 x 3 / 2");
        assertEquals(3841.9, M.diagonals().get(0).lengthMm(), 0.05);
        Bed many = Beds.bed("R", Beds.outline(0, 0, 9, 0, 12, 3, 12, 6, 9, 9, 6, 12, 3, 12, 0, 9, -3, 6, -3, 3), 0, 0);
        assertEquals(7 + 7, Pegs.of(many, new Point(0, 0), new Point(1, 0), 0, Optional.empty()).diagonals().size(), "ten corners: from the first two only");
    }

    @Test
    void anyBaselineWillDo() {
        Bed turned = Beds.bed("M", Beds.L, new Placement(new Point(3000, 4000), 90, false));
        Pegs pegs = Pegs.of(turned, new Point(3000, 0), new Point(3000, 100), 0, Optional.empty());
        assertEquals(List.of(4000.0, 5800.0, 7000.0), pegs.runningMm());
        assertEquals(List.of(0.0, 1500.0, 2400.0), pegs.offsetsMm());
        assertThrows(
                IllegalArgumentException.class,
                () -> Pegs.of(turned, new Point(1, 1), new Point(1, 1), 0, Optional.empty()));
    }

    @Test
    void stringsArePeggedBeyondTheCornersInLineWithTheirWalls() {
        Pegs pegs = Pegs.of(
                Beds.bed("N", Outline.rectangle(1800, 900), 1000, 2000),
                new Point(0, 0),
                new Point(1, 0),
                500,
                Optional.empty());
        assertEquals(8, pegs.linePegs().size());
        assertEquals(new Pegs.LinePeg("A", 1, 500, 2000), pegs.linePegs().get(0));
        assertEquals(new Pegs.LinePeg("A", 2, 3300, 2000), pegs.linePegs().get(1));
        assertEquals(new Pegs.LinePeg("D", 1, 1000, 1500), pegs.linePegs().get(7));
        assertEquals(List.of(), M.linePegs());
    }

    @Test
    void pegsCarryTheirLevelsWhereTheGroundWasRead() {
        Fall fall = Fall.of(List.of(
                        new Ground.Level(new Point(0, 0), 412),
                        new Ground.Level(new Point(3000, 0), 412),
                        new Ground.Level(new Point(0, 2400), 442)))
                .orElseThrow();
        Pegs pegs = Pegs.of(Beds.bed("M", Beds.L, 800, 1500), new Point(0, 0), new Point(1, 0), 0, Optional.of(fall));
        assertEquals(412 + 3900 / 80.0, pegs.pegs().get(5).dropMm().orElseThrow(), 1e-9);
        assertTrue(M.pegs().get(5).dropMm().isEmpty());
    }

    /** Elementary geometry: each lies on the line of its wall, beyond its corner by what is asked for; marks are told once. */
    @Test
    void everyStringOfATurnedBedIsPeggedInLine() {
        Bed turned = Beds.bed("M", Beds.L, new Placement(new Point(3000, 4000), 33, false));
        Point from = new Point(500, 100);
        Point way = from.way(new Point(4500, 1100));
        Pegs pegs = Pegs.of(turned, from, new Point(4500, 1100), 400, Optional.empty());
        Outline outline = turned.inYard();
        assertEquals(12, pegs.linePegs().size());
        for (Pegs.LinePeg peg : pegs.linePegs()) {
            Point at = from.moved(way, peg.alongMm(), peg.offMm());
            int wall = peg.wall().charAt(0) - 'A';
            Point corner = outline.corner(peg.beyond() - 1);
            assertEquals(400, corner.distanceMm(at), 1e-6);
            assertEquals(0, outline.direction(wall).cross(at.minus(corner)), 1e-6, "in line");
            assertEquals(outline.sideMm(wall) + 400, at.distanceMm(outline.corner(peg.beyond() - 1 == wall ? wall + 1 : wall)), 1e-6, "beyond");
        }
        for (Pegs.Peg peg : pegs.pegs()) {
            assertEquals(0, outline.corner(peg.number() - 1).distanceMm(from.moved(way, peg.alongMm(), peg.offMm())), 1e-6);
            for (List<Double> marks : List.of(pegs.runningMm(), pegs.offsetsMm())) {
                double own = marks == pegs.runningMm() ? peg.alongMm() : peg.offMm();
                assertEquals(1, marks.stream().filter(mark -> Math.abs(mark - own) <= 0.5).count());
            }
        }
        for (Pegs.Diagonal one : pegs.diagonals()) {
            var inputs = pegs.quantities().stream().filter(q -> q.key().toString().equals("diagonal." + one.from() + "-" + one.to())).findFirst().orElseThrow().working().inputs();
            assertEquals(one.lengthMm(), Math.hypot(inputs.get(0).value(), inputs.get(1).value()), 1e-6, "as its working says");
        }
        for (int i = 1; i <= 6; i++) {
            var along = pegs.quantities().get(2 * i - 2).working().inputs().stream().mapToDouble(input -> input.value()).toArray();
            assertEquals(pegs.pegs().get(i - 1).alongMm(), along[0] * along[2] + along[1] * along[3], 1e-6);
            assertEquals(pegs.pegs().get(i - 1).offMm(), along[1] * along[2] - along[0] * along[3], 1e-6);
        }
    }
}
