package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import lapyard.plan.Notches;
import lapyard.plan.Saw;
import lapyard.plan.Screws;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Screws and notches. */
class FixingsTest {
    /** Screws of 300 come out of timber of 100, so they are left out of the order; those of 100 are in it. */
    @Test
    void aBedWhoseScrewsBreakOutLeavesThemOut() {
        assertTrue(Beds.built(Beds.fixed(Beds.m(Lap.TURNING), true, new Screws(300, 2, 6), Notches.USUAL)).leftOut());
        assertFalse(Beds.built(Beds.m(Lap.TURNING)).leftOut());
    }

    /** Square laps, worked: entry 0.354 s set to 5; cover the smaller of t - entry and t - (0.707 s - entry). */
    @ParameterizedTest(name = "screw {0} in {1}: entry {2}, cover {3}")
    @CsvSource(textBlock = """
        # length, thickness, entry, cover
             100,       100,    35,  64.3
             100,        38,    35,   2.3
              70,        38,    25,  13.0
             120,        75,    40,  30.16
        """)
    void entryAndCoverFollowTheLengthOfTheScrew(double length, double thickness, double entry, double cover) {
        ScrewWay way = ScrewWay.of(Joint.LAP, 90, length, thickness);
        assertEquals(45, way.angleDeg(), 1e-9);
        assertEquals(entry, way.entryMm());
        assertEquals(cover, way.coverMm(), 0.02);
    }

    /**
     * Worked with pencil, screw 100 in 100 at 30 degrees through a sharp corner of 60: the timber that runs past reaches 100 / sin 60 = 115.5
     * beyond the inner corner; of that the screw takes 100 / (4 cos 30) + 50 cos 30 = 72.2. Where the timber ends flush nothing is beyond.
     */
    @Test
    void atASharpCornerTheTimberRunsFurtherPastTheTip() {
        assertEquals(115.5 - 72.2, ScrewWay.of(Joint.LAP, 120, 100, 100).endCoverMm(), 0.06);
        assertEquals(Double.POSITIVE_INFINITY, ScrewWay.of(Joint.LAP, -90, 100, 100).endCoverMm());
    }

    /**
     * Worked with pencil, screw 100 in 100, 30 degrees off the inner face, joint half the inside angle off it. Corner of 120: half
     * of the screw needs 50 x sin 30 / sin 60 = 28.9, set to 30; then 30 x sin 60 / sin 30 = 52.0 lie before the joint, the tip
     * 100 x sin 90 - 30 x sin 120 = 74.0 from the other inner face. Corner of 135: 50 x sin 37.5 / sin 67.5 = 32.9, set to 35; 53.1;
     * 100 x sin 105 - 35 x sin 135 = 71.8. Corner of 90: 50 x sin 15 / sin 45 = 18.3, set to 20; 54.6; 100 x sin 60 - 20 = 66.6.
     */
    @ParameterizedTest(name = "mitre of {0}")
    @CsvSource({"60, 30, 48.0, 26.0", "45, 35, 46.9, 28.2", "90, 20, 45.4, 33.4", "-60, 30, 48.0, 26.0"})
    void throughAMitreTheScrewIsShallower(double turn, double entry, double thread, double cover) {
        ScrewWay way = ScrewWay.of(Joint.MITRE, turn, 100, 100);
        assertEquals(30, way.angleDeg(), 1e-9);
        assertEquals(entry, way.entryMm());
        assertEquals(thread, way.threadMm(), 0.05);
        assertEquals(cover, way.coverMm(), 0.05);
        assertEquals(turn < 0, way.outerFace(), "the hollow side of an inside corner is outside");
    }

    /**
     * Every screw drawn as a line by the JTS Topology Suite: it lies in the two timbers of its corner alone, and outside the timber
     * that takes the head lies only the thread that is counted. Hexagon, octagon, a cut corner, sharp laps, an inside corner.
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "1200 0 600 1039.2 -600 1039.2 -1200 0 -600 -1039.2 600 -1039.2",
        "0 0 2100 0 2400 300 2400 1200 0 1200",
        "0 0 2400 0 1800 1400 0 1400",
        "0 0 3000 0 3000 1500 1800 1500 1800 2400 0 2400",
        "0 0 2600 0 2600 1000 1700 1500 1700 2400 0 2400"
    })
    void screwsStayInTheirTimbers(String corners) {
        double[] xy = java.util.Arrays.stream(corners.split(" ")).mapToDouble(Double::parseDouble).toArray();
        BedWork work = Beds.built(Beds.bed("K", Beds.outline(xy), 2, Lap.TURNING));
        assertFalse(work.frame().screws().isEmpty(), work.findings()::toString);
        Map<String, Piece> pieces = new HashMap<>();
        work.pieces().forEach(piece -> pieces.put(piece.mark(), piece));
        for (CornerScrew screw : work.frame().screws()) {
            Piece head = pieces.get(screw.head());
            Piece into = pieces.get(screw.into());
            Polygon takes = polygon(head);
            Polygon holds = polygon(into);
            boolean hit = false;
            for (int end : new int[] {0, 1}) {
                LineString line = line(head, screw, end == 0);
                double inBoth = line.intersection(takes.union(holds).buffer(0.2)).getLength();
                double beyond = line.intersection(holds).getLength();
                hit |= inBoth > 99.5 && Math.abs(beyond - screw.threadMm()) < 0.5;
            }
            assertTrue(hit, screw + " in " + head.lies() + " and " + into.lies());
        }
    }

    private static Polygon polygon(Piece piece) {
        Coordinate[] ring = new Coordinate[5];
        for (int i = 0; i < 5; i++) {
            Point corner = piece.lies().corner(i % 4);
            ring[i] = new Coordinate(corner.x(), corner.y());
        }
        return new GeometryFactory().createPolygon(ring);
    }

    /** 100 long, from the face that takes the head, entered as far from the end of that face as the screw says. */
    private static LineString line(Piece head, CornerScrew screw, boolean atStart) {
        // lies: start and end of the outer face, end and start of the inner face
        boolean outer = screw.face() == CornerScrew.Face.OUTER;
        Point from = head.lies().corner(atStart ? outer ? 0 : 3 : outer ? 1 : 2);
        Point to = head.lies().corner(atStart ? outer ? 1 : 2 : outer ? 0 : 3);
        double long_ = from.distanceMm(to);
        double ux = (to.x() - from.x()) / long_;
        double uy = (to.y() - from.y()) / long_;
        Point other = head.lies().corner(outer ? 3 : 0);
        double side = Math.signum(ux * (other.y() - from.y()) - uy * (other.x() - from.x()));
        double angle = Math.toRadians(screw.angleDeg());
        double dx = -ux * Math.cos(angle) - side * uy * Math.sin(angle);
        double dy = -uy * Math.cos(angle) + side * ux * Math.sin(angle);
        double x = from.x() + ux * screw.entryMm();
        double y = from.y() + uy * screw.entryMm();
        return new GeometryFactory().createLineString(new Coordinate[] {
            new Coordinate(x, y), new Coordinate(x + 100 * dx, y + 100 * dy)
        });
    }

    @Test
    void aScrewThatBreaksOutIsASnagAndIsLeftOut() {
        Section thin = new Section("38x200", 38, 200, 600, List.of(), Optional.empty(), false, 1, false);
        BedWork work = Beds.built(Beds.section(Beds.bed("K", Outline.rectangle(2400, 1200), 2, Lap.TURNING), thin));
        assertFalse(Beds.has(work.quantities(), "screws"));
        assertFalse(Beds.has(work.quantities(), "pilots"));
        Finding snag = Beds.of(Finding.Weight.SNAG, work.findings()).get(0);
        assertTrue(
                Told.text(snag).startsWith("A 100 mm screw leaves only 2.3 mm of the 38 mm timber"),
                Told.text(snag));
        assertEquals(7.7, snag.amount().orElseThrow().value());
        assertEquals(List.of("Use screws up to 70 mm"), Told.ways(snag));
        // All the rest stays in.
        assertEquals(2 * (7.2 - 4 * 0.038), Beds.value(work.quantities(), "timber.length"), 1e-9);
    }

    /**
     * t 38, s 70 passes the cover; its tip would still come out of the end of the other timber, 0.7071 x 70 - 38 =
     * 11.5.
     */
    @Test
    void aPassingScrewThatComesOutOfTheEndIsANote() {
        Bed bed = Beds.fixed(
                Beds.section(
                        Beds.bed("K", Outline.rectangle(2400, 1200), 2, Lap.TURNING),
                        new Section("38x200", 38, 200, 600, List.of(), Optional.empty(), false, 1, false)),
                true,
                new Screws(70, 2, 6),
                Notches.USUAL);
        BedWork work = Beds.built(bed);
        assertEquals(16, Beds.value(work.quantities(), "screws"));
        assertTrue(Beds.of(Finding.Weight.SNAG, work.findings()).isEmpty());
        Finding note = work.findings().stream()
                .filter(one -> one.where().equals("bed K, corners"))
                .findFirst()
                .orElseThrow();
        assertTrue(Told.text(note).contains("a 70 mm screw comes 11.5 mm out of the end of the timber"), Told.text(note));
        // (38 - 10) / 0.7071 = 39.6.
        assertEquals("Use screws up to 35 mm", Told.ways(note).get(0));
    }

    @Test
    void onADiagonalFallBothWallsAreLow() {
        Bed bed = Beds.bed("K", Outline.rectangle(2400, 1200), 1, Lap.TURNING);
        assertEquals(
                List.of(0, 1),
                LowSide.of(bed, Optional.of(new Point(0.01, -0.01))).walls());
        assertEquals(
                List.of(1),
                LowSide.of(bed, Optional.of(new Point(0.01, -0.009))).walls());
        assertEquals(
                List.of(2, 3),
                LowSide.of(bed, Optional.of(new Point(-0.02, 0.02))).walls());
    }

    @Test
    void wallsNamedLowCountBeforeTheFall() {
        Bed bed = Beds.low(Beds.bed("K", Outline.rectangle(2400, 1200), 1, Lap.TURNING), "D");
        LowSide low = LowSide.of(bed, Beds.TO_REAR);
        assertEquals(List.of(3), low.walls());
        assertTrue(
                low.toward().orElseThrow().x() < 0 && low.toward().orElseThrow().y() == 0);
        BedWork work = Beds.built(bed);
        // Bearers run across the bed, towards D: 2200 - 30 long, ceil(1000/400) + 1 = 4.
        assertEquals(
                List.of(2170.0, 2170.0, 2170.0, 2170.0),
                work.bottom().strips().stream().map(Strip::lengthMm).toList());
    }

    @Test
    void levelGroundHasNoLowSide() {
        BedWork work = Beds.work(Beds.bed("K", Outline.rectangle(2400, 1200), 1, Lap.TURNING), Saw.USUAL, 4780, Map.of(), Optional.of(new Point(1e-17, 0)), 2400, 25);
        assertEquals(List.of(), work.frame().notches());
        assertTrue(work.findings().stream().anyMatch(one -> Told.text(one).contains(" no drain notches")));
    }

    /**
     * Rear wall of 6000: clear 5800, ceil(5400/900) + 1 = 7 at 300, 1200, 2100, 3000, 3900, 4800, 5700; the seam of
     * course 1 at 3500 is clear of all. With a seam at 3000 the notch there moves to 2800, and the gap of 1100 that
     * this leaves gets a notch of its own.
     */
    @Test
    void aNotchThatLandsOnASeamIsMovedWithANote() {
        Bed bed = Beds.low(Beds.bed("K", Outline.rectangle(6000, 1200), 1, Lap.TURNING), "C");
        LowSide low = LowSide.of(bed, Optional.empty());
        Notching.Cut clear = Notching.of(bed, low, List.of(new Seam(1, "C", 3500)));
        assertEquals(
                List.of(300.0, 1200.0, 2100.0, 3000.0, 3900.0, 4800.0, 5700.0),
                clear.notches().stream().map(Notch::atMm).toList());
        assertEquals(List.of(), clear.findings());
        Notching.Cut moved = Notching.of(bed, low, List.of(new Seam(1, "C", 3000)));
        assertEquals(
                List.of(300.0, 1200.0, 2100.0, 2800.0, 3350.0, 3900.0, 4800.0, 5700.0),
                moved.notches().stream().map(Notch::atMm).toList());
        assertEquals(Finding.Weight.NOTE, moved.findings().get(0).weight());
        assertTrue(
                Told.text(moved.findings().get(0)).contains("moves 200 mm along"),
                Told.text(moved.findings().get(0)));
        // A seam of a higher course is no matter.
        assertEquals(
                clear.notches(),
                Notching.of(bed, low, List.of(new Seam(2, "C", 3000))).notches());
    }

    /** D starts at the inside corner: its clear run begins there, 0 + 200; clear 900 - 100: ceil(400/900) + 1 = 2. */
    @Test
    void aWallFromAnInsideCornerIsClearFromThatCorner() {
        Bed bed = Beds.low(Beds.m(Lap.TURNING), "D");
        assertEquals(
                List.of(new Notch("D", 200), new Notch("D", 600)),
                Beds.built(bed).frame().notches());
    }

    @Test
    void aLowSideTooShortForAnyNotchIsASnag() {
        // Clear 500 - 200 = 300, less than 2 x 200.
        Bed bed = Beds.low(Beds.bed("K", Outline.rectangle(2400, 500), 1, Lap.TURNING), "B");
        Finding snag = Beds.of(Finding.Weight.SNAG, Beds.built(bed).findings()).get(0);
        assertEquals(FindingKind.NOTCHES_NONE_FIT, snag.kind());
    }

    @Test
    void aNotchDeeperThanAQuarterOfItsTimberIsASnagButIsCut() {
        Bed bed = Beds.fixed(
                Beds.bed("K", Outline.rectangle(2400, 1200), 1, Lap.TURNING),
                true,
                Screws.USUAL,
                new Notches(25, 60, 900, 200));
        BedWork work = Beds.built(bed);
        Finding snag = Beds.of(Finding.Weight.SNAG, work.findings()).get(0);
        assertTrue(Told.text(snag).startsWith("Drain notches of 60 mm"), Told.text(snag));
        assertEquals(10, snag.amount().orElseThrow().value());
        assertEquals(3, work.frame().notches().size());
    }

    /** Long-wall lap leaves B of 350 with 350 - 200 = 150, half of the least piece. */
    @Test
    void aPieceUnder300IsASnag() {
        BedWork work = Beds.built(Beds.bed("K", Outline.rectangle(2400, 350), 2, Lap.LONG_WALL));
        Finding snag = Beds.of(Finding.Weight.SNAG, work.findings()).get(0);
        assertEquals("bed K, wall B", snag.where());
        assertEquals(new Finding.Amount(150, "mm"), snag.amount().orElseThrow());
        // A of 350 runs past in course 1; its 150 are those of course 2
        assertTrue(Beds.built(Beds.bed("K", Outline.rectangle(350, 2400), 1, Lap.LONG_WALL)).findings().stream().noneMatch(one -> one.kind() == FindingKind.PIECE_SHORT));
    }

    /** 4500 - 100 = 4.4 m x 0.02 x 600 = 52.8 kg: 2 x 7 lifts over 25, none over 60. */
    @Test
    void theLimitIsTheGardensOwn() {
        BedWork work = Beds.built(Beds.bed("K", Outline.rectangle(4500, 900), 7, Lap.TURNING));
        assertEquals(14, Beds.value(work.quantities(), "lifts.two-people"));
        BedWork strong = Beds.work(work.bed(), Saw.USUAL, 4780, Map.of(), Optional.empty(), 2400, 60);
        assertEquals(0, Beds.value(strong.quantities(), "lifts.two-people"));
    }
}
