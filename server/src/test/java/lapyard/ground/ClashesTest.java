package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Ground;
import lapyard.plan.Ground.KeepClear;
import lapyard.plan.KeepClearKind;
import lapyard.plan.SurfaceKind;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClashesTest {
    private static final Outline YARD = Outline.rectangle(12000, 9000);

    private static List<Finding> snags(Garden garden) {
        return Clashes.of(garden).stream()
                .filter(finding -> finding.weight() != Weight.NOTE)
                .toList();
    }

    private static Ground with(KeepClear... kept) {
        return new Ground(List.of(YARD), List.of(), List.of(kept), List.of(), 0);
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings.toString());
        Finding finding = findings.get(0);
        assertTrue(finding.amount().isPresent() && !Told.ways(finding).isEmpty(), finding.toString());
        for (String way : Told.ways(finding)) {
            assertTrue(Spoken.of(finding).toLowerCase().contains(way.toLowerCase()), Spoken.of(finding));
        }
        return finding;
    }

    @Test
    void aBedOverTheEdgeSaysByHowMuchWhereAndHowToMend() {
        Finding snag = only(snags(Beds.garden(Beds.yard(YARD), Beds.box("N", 3000, 7940, 2400, 1200))));
        assertEquals("Bed N is 140 mm over the yard's edge at corner 3. Move it 140 mm towards the house, or make it 1060 mm deep.", Spoken.of(snag));
        assertEquals("bed N", snag.where());
        assertEquals(140, snag.amount().orElseThrow().value());
        assertEquals(Weight.SNAG, snag.weight());
        Finding right = only(snags(Beds.garden(Beds.yard(YARD), Beds.box("N", 9740, 100, 2400, 1200))));
        assertEquals("Bed N is 140 mm over the yard's edge at corner 2. Move it 140 mm left, or make it 2260 mm wide.", Spoken.of(right));
    }

    @Test
    void aTurnedBedIsCutInItsOwnWidthAndDepth() {
        Bed turned = Beds.bed("N", Outline.rectangle(2400, 1200), new Placement(new Point(1060, 2000), 90, false));
        Finding snag = only(snags(Beds.garden(Beds.yard(YARD), turned)));
        assertEquals("Bed N is 140 mm over the yard's edge at corner 3. Move it 140 mm right, or make it 1060 mm deep.", Spoken.of(snag));
    }

    @Test
    void aMirroredBedIsFoundAtItsOwnCorner() {
        Bed mirrored = Beds.bed("N", Outline.rectangle(2400, 1200), new Placement(new Point(2260, 100), 0, true));
        assertEquals(
                "Bed N is 140 mm over the yard's edge at corner 2. Move it 140 mm right, or make it 2260 mm wide.",
                Spoken.of(only(snags(Beds.garden(Beds.yard(YARD), mirrored)))));
    }

    @Test
    void aBedThatTouchesTheEdgeIsInside() {
        assertEquals(
                List.of(),
                snags(Beds.garden(
                        Beds.yard(YARD), Beds.box("M", 0, 0, 2400, 1200), Beds.box("N", 9600, 7800.4, 2400, 1200))));
    }

    @Test
    void aCornerOfTheYardInsideAWallIsFoundThough() {
        Outline notched = Beds.outline(0, 0, 12000, 0, 12000, 9000, 7000, 9000, 6000, 3000, 5000, 9000, 0, 9000);
        Finding snag = only(snags(Beds.garden(Beds.yard(notched), Beds.box("M", 4900, 2000, 2200, 1200))));
        assertEquals("Bed M is 200 mm over the yard's edge along wall C. Move it 200 mm towards the house, or make it 1000 mm deep.", Spoken.of(snag));
    }

    @Test
    void aBedAcrossAnotherSaysTheAreaAndTheMoveThatFreesIt() {
        Finding snag = only(snags(Beds.garden(
                Beds.yard(YARD), Beds.box("M", 3000, 3000, 2400, 1200), Beds.box("N", 5280, 3000, 2400, 1200))));
        assertEquals("bed N", snag.where());
        assertEquals("Bed N overlaps bed M by 0.14 m². Move it 120 mm right.", Spoken.of(snag));
        assertEquals(0.144, snag.amount().orElseThrow().value());
        Finding before = only(snags(Beds.garden(
                Beds.yard(YARD), Beds.box("M", 5280, 3000, 2400, 1200), Beds.box("N", 3000, 3000, 2400, 1200))));
        assertEquals("Bed N overlaps bed M by 0.14 m². Move it 120 mm left, or make it 2280 mm wide.", Spoken.of(before));
    }

    @Test
    void aMoveThatMeetsSomethingElseIsPassedOver() {
        Finding snag = only(snags(Beds.garden(
                Beds.yard(YARD),
                Beds.box("M", 3000, 3000, 2400, 1200),
                Beds.box("O", 7750, 3000, 2400, 1200),
                Beds.bed("N", Beds.outline(0, 0, 2400, 0, 2400, 1200, 1200, 1200, 1200, 600, 0, 600), 5280, 3000))));
        assertTrue(Told.ways(snag).stream().noneMatch(way -> way.contains("right")), Spoken.of(snag));
        assertEquals("Move it 600 mm towards the house", Told.ways(snag).get(0));
        // a post in the way of the short move: N would have to go all the way round M
        KeepClear post = new KeepClear(KeepClearKind.COVER, Beds.points(7790, 3300), 100, 0, false, 0);
        Finding kept = only(snags(Beds.garden(with(post), Beds.box("M", 3000, 3000, 2400, 1200), Beds.box("N", 5280, 3000, 2400, 1200))));
        assertTrue(Told.ways(kept).stream().noneMatch(way -> way.contains("right")), Spoken.of(kept));
    }

    /** Turned by 30 degrees the bed reaches 10000 + 2400 cos 30 = 12078.5: 78.5 / cos 30 = 90.6 off its width take that back. A skewed bed has no width to cut. */
    @Test
    void aBedAtAnAngleIsCutInItsOwnWidth() {
        Bed turned = Beds.bed("N", Outline.rectangle(2400, 1200), new Placement(new Point(10000, 2000), 30, false));
        assertEquals("Bed N is 78.5 mm over the yard's edge at corner 2. Move it 79 mm left, or make it 2309 mm wide.",
                Spoken.of(only(snags(Beds.garden(Beds.yard(YARD), turned)))));
        Bed skewed = Beds.bed("S", Beds.outline(0, 0, 2400, 0, 2700, 1200, 300, 1200), 9740, 100);
        assertTrue(Told.ways(only(snags(Beds.garden(Beds.yard(YARD), skewed)))).stream().allMatch(way -> way.startsWith("Move")));
    }

    /** What lies near is told in the order of the document, however many beds there are. */
    @Test
    void nearBedsStandInTheOrderOfTheDocument() {
        Random random = new Random(1);
        Bed[] beds = new Bed[40];
        for (int i = 0; i < beds.length; i++) beds[i] = Beds.box("B" + i, random.nextInt(11000), random.nextInt(8000), 800, 800);
        Site site = new Site(Beds.garden(Beds.yard(YARD), beds));
        assertEquals(site.lots(), site.near(site.yard().orElseThrow(), 0));
    }

    @Test
    void bedsThatTouchDoNotClash() {
        assertEquals(
                List.of(),
                snags(Beds.garden(
                        Beds.yard(YARD),
                        Beds.box("M", 3000, 3000, 2400, 1200),
                        Beds.box("N", 5400, 3000, 2400, 1200),
                        Beds.box("O", 5400, 4199.7, 2400, 1200))));
    }

    @Test
    void aBedAcrossManyIsToldOnce() {
        Bed[] beds = new Bed[6];
        for (int i = 0; i < 5; i++) {
            beds[i] = Beds.box("B" + i, 1000 + 1000 * i, 1000, 900, 900);
        }
        beds[5] = Beds.box("W", 1000, 1500, 5000, 900);
        Finding snag = only(snags(Beds.garden(Beds.yard(YARD), beds)));
        assertEquals("Bed W overlaps beds B0-B4 by 1.8 m². Move it to a free place.", Spoken.of(snag));
        assertEquals(3, snags(Beds.garden(Beds.yard(YARD), beds[0], beds[1], beds[2], beds[5])).size(), "three are told one by one");
    }

    @Test
    void aCoverIsKeptClearByItsClearance() {
        KeepClear cover =
                new KeepClear(KeepClearKind.COVER, Beds.points(6000, 3000, 6600, 3000, 6600, 3600, 6000, 3600), 300, 0, false, 0);
        Finding snag = only(snags(Beds.garden(with(cover), Beds.box("M", 6780, 3000, 2400, 1200))));
        assertEquals("Bed M stands 180 mm from the cover; 300 mm around it must stay clear. Move it 120 mm right.", Spoken.of(snag));
        assertEquals(120, snag.amount().orElseThrow().value());
        assertEquals(List.of(), snags(Beds.garden(with(cover), Beds.box("M", 6900, 3000, 2400, 1200))));
        Finding over = only(snags(Beds.garden(with(cover), Beds.box("M", 6400, 3000, 2400, 1200))));
        assertEquals(
                "Bed M stands on the cover, 500 mm too near; 300 mm around it must stay clear. Move it 500 mm right, or move it 900 mm away from the house.",
                Spoken.of(over));
    }

    @Test
    void pointsAndLinesAreKeptClearToo() {
        KeepClear tap = new KeepClear(KeepClearKind.TAP, Beds.points(6000, 3000), 500, 0, false, 0);
        Finding corner = only(snags(Beds.garden(with(tap), Beds.box("M", 6240, 3320, 2400, 1200))));
        assertEquals(
                List.of(), snags(Beds.garden(with(tap), Beds.box("M", 6300, 3400, 2400, 1200))), "300 and 400 are 500");
        assertTrue(Spoken.of(corner).startsWith("Bed M stands 400 mm from the tap; 500 mm around it must stay clear."), Spoken.of(corner));
        KeepClear post = new KeepClear(KeepClearKind.OTHER, Beds.points(6000, 3000), 0, 0, false, 0);
        Finding over = only(snags(Beds.garden(with(post), Beds.box("M", 5900, 2800, 2400, 1200))));
        assertEquals("Move it 100 mm right", Told.ways(over).get(0), "the post stands 100 and 200 into the bed");
        Finding above = only(snags(Beds.garden(with(post), Beds.box("M", 5500, 1900, 2400, 1200))));
        assertEquals("Move it 100 mm towards the house", Told.ways(above).get(0));
    }

    @Test
    void aDrainLineWithoutClearanceMayBeTouchedButNotCrossed() {
        KeepClear drain = new KeepClear(KeepClearKind.DRAIN, Beds.points(0, 3000, 12000, 3000), 0, 0, false, 0);
        assertEquals(List.of(), snags(Beds.garden(with(drain), Beds.box("M", 3000, 3000, 2400, 1200))));
        Finding across = only(snags(Beds.garden(with(drain), Beds.box("M", 3000, 2000, 2400, 1200))));
        assertEquals(List.of("Move it 200 mm towards the house", "Make it 1000 mm deep"), Told.ways(across));
    }

    /** Hand: hinge at (4000, 0), leaf 900; the nearest corner of the bed stands at 680 straight away from the hinge. */
    @ParameterizedTest(name = "hinge with {0} points, swing in {1}: {2}")
    @CsvSource({"2,true,220", "1,true,220", "2,false,0", "1,false,0"})
    void aGateNeedsItsSwing(int points, boolean swingsIn, double into) {
        List<Point> hinge = points == 2 ? Beds.points(4000, 0, 4900, 0) : Beds.points(4000, 0);
        List<Finding> found = snags(Beds.garden(
                with(new KeepClear(KeepClearKind.GATE, hinge, 0, 900, swingsIn, 0)), Beds.box("M", 4000, 680, 2400, 1200)));
        if (into == 0) {
            assertEquals(List.of(), found);
        } else {
            Finding snag = only(found);
            assertEquals("Bed M stands 220 mm in the swing of the gate. Move it 220 mm away from the house.", Spoken.of(snag));
        }
    }

    @Test
    void theFarSideOfAHingeIsFreeWhereTheLeafIsKnown() {
        KeepClear known = new KeepClear(KeepClearKind.GATE, Beds.points(4000, 0, 4900, 0), 0, 900, true, 0);
        KeepClear hingeOnly = new KeepClear(KeepClearKind.GATE, Beds.points(4000, 0), 0, 900, true, 0);
        Bed bed = Beds.box("M", 2000, 100, 1900, 1200);
        assertEquals(List.of(), snags(Beds.garden(with(known), bed)));
        assertEquals(1, snags(Beds.garden(with(hingeOnly), bed)).size());
    }

    @Test
    void aBedAcrossTwoKindsOfGroundIsASnagWithItsShares() {
        Ground ground = new Ground(
                List.of(YARD),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, Beds.outline(0, 0, 6000, 0, 6000, 9000, 0, 9000)),
                        new Ground.Surface(SurfaceKind.GRASS, Beds.outline(6000, 0, 12000, 0, 12000, 9000, 6000, 9000))),
                List.of(),
                List.of(),
                0);
        Finding snag = only(snags(Beds.garden(ground, Beds.box("M", 4000, 3000, 2400, 1200))));
        assertEquals(
                "Bed M stands on slab and grass, which settle differently; 0.48 m² of it is on the smaller. "
                        + "Move it 400 mm left, make it 2000 mm wide, or give it one kind of ground.",
                Spoken.of(snag));
        assertEquals(0.48, snag.amount().orElseThrow().value());
        assertEquals(Set.of(SurfaceKind.SLAB, SurfaceKind.GRASS),
                BedGroundTest.sheet(Beds.garden(ground, Beds.box("M", 4000, 3000, 2400, 1200))).beds().get(0).kinds());
    }

    /** Worked by hand: 106.0 m2 of yard with 48.0 of slab and 50.0 of grass leaves 8.0. */
    @Test
    void groundWithoutASurfaceIsNoted() {
        Outline yard = Beds.outline(0, 0, 12000, 0, 12000, 7000, 7000, 9500, 0, 9000);
        Ground ground = new Ground(
                List.of(yard),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, Outline.rectangle(12000, 4000)),
                        new Ground.Surface(SurfaceKind.GRASS,
                                Beds.outline(
                                        0, 4000, 11000, 4000, 11000, 6000, 10000, 6000, 10000, 8000, 8000, 8000, 8000,
                                        9000, 0, 9000))),
                List.of(),
                List.of(),
                0);
        Finding note = only(Clashes.of(Beds.garden(ground)));
        assertEquals("8 m² of the yard has no surface. Draw the surface.", Spoken.of(note));
        assertEquals(Weight.NOTE, note.weight());
        assertEquals(8.0, note.amount().orElseThrow().value());
    }

    @Test
    void groundDrawnAsTwoKindsIsASnag() {
        Ground ground = new Ground(
                List.of(YARD),
                List.of(
                        new Ground.Surface(SurfaceKind.SLAB, Outline.rectangle(6000, 4000)),
                        new Ground.Surface(SurfaceKind.DECK, Beds.outline(5000, 0, 12000, 0, 12000, 4000, 5000, 4000))),
                List.of(),
                List.of(),
                0);
        List<Finding> found = snags(Beds.garden(ground, Beds.box("M", 7000, 1000, 2400, 1200)));
        assertEquals(
                "4 m² of ground is drawn both as slab and as deck. Draw one of them back to their common edge.",
                Spoken.of(Beds.about(found, "surfaces slab and deck", FindingKind.SURFACES_OVERLAP).orElseThrow()));
        assertEquals(1, found.size());
    }

    @Test
    void aPathThatLeavesTheYardStops() {
        Garden garden = Beds.garden(Beds.yard(YARD), List.of(), List.of(Beds.path("P", 1200, 3000, 0, 3000, 9140)));
        Finding stop = only(snags(garden));
        assertEquals(Weight.STOP, stop.weight());
        assertEquals("path P", stop.where());
        assertEquals(
                "Path P is 140 mm outside the yard at point 2 of its line. End it 140 mm sooner, or move point 2 of its line inwards.",
                Spoken.of(stop));
        Finding side =
                only(snags(Beds.garden(Beds.yard(YARD), List.of(), List.of(Beds.path("P", 1200, 500, 0, 500, 9000)))));
        assertTrue(Told.ways(side).contains("Make it 1000 mm wide"), Spoken.of(side));
        Finding start = only(snags(Beds.garden(Beds.yard(YARD), List.of(), List.of(Beds.path("P", 1200, 3000, -140, 3000, 9000)))));
        assertEquals("Begin it 140 mm later", Told.ways(start).get(0));
        Finding bend = only(snags(Beds.garden(Beds.yard(YARD), List.of(), List.of(Beds.path("P", 1200, 1000, 1000, 6000, 9500, 11000, 1000)))));
        assertEquals(List.of("Move point 2 of its line inwards"), Told.ways(bend), "no end is out, and no width brings a bend in that is out itself");
        assertEquals(
                List.of(),
                snags(Beds.garden(Beds.yard(YARD), List.of(), List.of(Beds.path("P", 1200, 600, 0, 600, 9000)))));
    }

    @Test
    void aPathWithoutLengthOrWidthIsASnag() {
        Garden garden = Beds.garden(
                Beds.yard(YARD), List.of(), List.of(Beds.path("P", 900, 10, 10), Beds.path("Q", 0, 0, 0, 0, 500)));
        assertEquals(2, snags(garden).size());
        assertEquals(
                "Path P has no ground to walk on. Give its line two different points and a width, or delete it.",
                Spoken.of(snags(garden).get(0)));
    }

    @Test
    void outlinesWithoutAreaStopAndNothingElseIsMeasured() {
        List<Finding> found = Clashes.of(Beds.garden(
                Beds.yard(YARD),
                Beds.bed("A", Beds.outline(0, 0, 1000, 0, 500, 0), 0, 0),
                Beds.bed("B", Beds.outline(0, 0, 0, 0, 0, 0), 0, 0)));
        assertEquals(
                List.of("bed A", "bed B"), found.stream().map(Finding::where).toList());
        assertTrue(found.stream().allMatch(finding -> finding.weight() == Weight.STOP));
    }

    @Test
    void aBedOnAPathIsNoted() {
        Garden garden = Beds.garden(
                Beds.yard(YARD),
                List.of(Beds.box("M", 3500, 1000, 2400, 1200)),
                List.of(Beds.path("P", 1200, 3000, 0, 3000, 9000)));
        Finding note = Beds.about(Clashes.of(garden), "bed M, path P", FindingKind.PATH_UNDER_BED).orElseThrow();
        assertEquals("Bed M takes 0.12 m² of path P. Move it 100 mm right.", Spoken.of(note));
        assertEquals(Weight.NOTE, note.weight());
        // 600 of path under the L from 1500 to 2100: 300 to the left frees its rear part alone, 1500 all of it
        Garden under = Beds.garden(Beds.yard(YARD), List.of(Beds.bed("M", Beds.L, 3000, 1000)), List.of(Beds.path("P", 600, 4800, 0, 4800, 9000)));
        Finding both = Beds.about(Clashes.of(under), "bed M, path P", FindingKind.PATH_UNDER_BED).orElseThrow();
        assertEquals("Move it 1500 mm left", Told.ways(both).get(0));
    }

    @Test
    void sidesThatCrossStop() {
        Finding stop = Clashes.of(Beds.garden(Beds.yard(Beds.outline(0, 0, 10000, 8000, 10000, 0, 0, 8000))))
                .get(0);
        assertEquals(Weight.STOP, stop.weight());
        assertTrue(Spoken.of(stop).startsWith("Sides of yard cross or touch at (5000, 4000) mm"), Spoken.of(stop));
        Outline crossed = Beds.outline(0, 0, 10000, 8000, 10000, 0, 0, 8000);
        List<GardenPath> outside = List.of(Beds.path("P", 1200, 3000, 0, 3000, 9140));
        assertEquals(List.of(FindingKind.OUTLINE_CROSSES), Clashes.stops(Beds.garden(Beds.yard(crossed), List.of(), outside)).stream().map(Finding::kind).toList());
        assertEquals(List.of(FindingKind.PATH_OUTSIDE), Clashes.stops(Beds.garden(Beds.yard(YARD), List.of(), outside)).stream().map(Finding::kind).toList());
        assertThrows(IllegalArgumentException.class, () -> BedGroundTest.sheet(Beds.garden(Beds.yard(crossed))));
    }

    @Test
    void levelsAndScribesAreFoundWithTheRest() {
        Ground steep = new Ground(
                List.of(YARD),
                List.of(),
                List.of(),
                List.of(
                        new Ground.Level(new Point(0, 0), 412),
                        new Ground.Level(new Point(3000, 0), 412),
                        new Ground.Level(new Point(0, 2400), 472)),
                0);
        assertTrue(
                Beds.about(Clashes.of(Beds.garden(steep, Beds.bed("M", Beds.L, 3000, 3000))), "bed M", "The fall takes 60 mm")
                        .isPresent());
        Ground few =
                new Ground(List.of(YARD), List.of(), List.of(), steep.levels().subList(0, 2), 0);
        assertEquals(Weight.STOP, Clashes.of(Beds.garden(few)).get(0).weight());
        List<Ground.Level> level = steep.levels().stream().map(one -> new Ground.Level(one.at(), 412)).toList();
        assertEquals(List.of(), BedGroundTest.sheet(Beds.garden(new Ground(List.of(YARD), List.of(), List.of(), level, 0))).quantities(), "level ground falls nowhere");
        assertEquals(List.of("fall.one-in"), BedGroundTest.sheet(Beds.garden(steep)).quantities().stream().map(one -> one.key().toString()).toList());
    }

    @Test
    void withoutAYardNothingIsOutside() {
        assertEquals(List.of(), snags(Beds.garden(Beds.yard(null), Beds.box("M", -5000, 0, 2400, 1200))));
    }

    /** Property: whatever move or cut is offered, the bed it is offered for is rid of that snag. */
    @ParameterizedTest
    @CsvSource({"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"})
    void everyOfferedMoveMends(long seed) {
        Random random = new Random(seed);
        Bed[] beds = new Bed[8];
        for (int i = 0; i < beds.length; i++) {
            double turn = random.nextBoolean() ? 90 * random.nextInt(4) : random.nextInt(360);
            Outline outline = random.nextInt(3) == 0
                    ? Beds.L
                    : Outline.rectangle(800 + random.nextInt(2000), 800 + random.nextInt(900));
            beds[i] = Beds.bed(
                    "B" + i,
                    outline,
                    new Placement(new Point(random.nextInt(12000), random.nextInt(9000)), turn, random.nextBoolean()));
        }
        KeepClear cover =
                new KeepClear(KeepClearKind.COVER, Beds.points(6000, 3000, 6600, 3000, 6600, 3600, 6000, 3600), 300, 0, false, 0);
        Garden garden = Beds.garden(with(cover), beds);
        int mended = 0;
        for (Finding snag : snags(garden)) {
            Pattern move = Pattern.compile("Move it ([0-9.]+) mm (left|right|away|towards).*");
            Matcher way = move.matcher(Told.ways(snag).get(0));
            if (!way.matches()) {
                continue;
            }
            double mm = Double.parseDouble(way.group(1));
            double dx = "left".equals(way.group(2)) ? -mm : "right".equals(way.group(2)) ? mm : 0;
            double dy = "away".equals(way.group(2)) ? mm : "towards".equals(way.group(2)) ? -mm : 0;
            Bed[] moved = beds.clone();
            int at = Integer.parseInt(snag.where().substring(5));
            Placement was = beds[at].placement();
            moved[at] = lapyard.construction.Beds.placed(beds[at],
                    new Placement(new Point(was.at().x() + dx, was.at().y() + dy), was.turnDeg(), was.mirror()));
            assertFalse(
                    snags(Beds.garden(with(cover), moved)).stream().anyMatch(one -> one.kind() == snag.kind() && one.where().equals(snag.where())
                            && Objects.equals(one.facts().get("others"), snag.facts().get("others"))
                            && Objects.equals(one.facts().get("what"), snag.facts().get("what"))),
                    () -> "seed " + seed + ": " + snag);
            mended++;
        }
        assertTrue(mended > 0, "seed " + seed);
    }
}
