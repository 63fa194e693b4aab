package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Lap;
import lapyard.plan.Notches;
import lapyard.plan.Saw;
import lapyard.plan.Screws;
import lapyard.plan.Seal;
import lapyard.plan.Ties;
import lapyard.working.QuantityKind;
import org.junit.jupiter.api.Test;

/**
 * The ways in which a long wall can be joined, against every way counted out: parts of 600 at least, joints 400 from corners and 600 apart
 * from course to course (common practice, no source), long parts of whole 100 mm, of a whole board, or that leave one.
 */
class LongWallTest {
    private static final Saw SAW = Saw.USUAL;

    /** A bed on slats in a fall, each way after another and once more: none leaves anything behind for the next. */
    @Test
    void aBedJoinedInOneWayAfterAnotherIsAsBuiltForThatWayAlone() {
        Optional<Point> downhill = Optional.of(new Point(0.002, 0.0125));
        Bed plain = Beds.bed("K", Outline.rectangle(6300, 1200), 3, Lap.TURNING);
        Bed bed = plain.withMaking(new Bed.Making(plain.making().screws(), plain.making().notches(), Ties.USUAL, plain.making().finish(), new Seal(true, Seal.NONE.item(), 2, 4)));
        UnjoinedBed unjoined = new UnjoinedBed(new UnjoinedBed.Asked(bed, SAW, 4780, downhill, 2400, 25));
        Set<BedWork> works = new HashSet<>();
        for (int round = 0; round < 2; round++) {
            for (LongWall wall : LongWall.of(bed, SAW, 4780, 4780, List.of(4780.0, 2980.0))) {
                for (SeamSplit way : wall.ways()) {
                    Map<Integer, SeamSplit> joined = Map.of(wall.side(), way);
                    BedWork work = unjoined.joined(joined);
                    assertEquals(Beds.work(bed, SAW, 4780, joined, downhill, 2400, 25), work, way.toString());
                    works.add(work);
                    Construction.Joined part = Construction.joined(bed, SAW, 4780, joined);
                    assertEquals(work.pieces(), part.pieces());
                    assertEquals(work.pieces(), Construction.pieces(bed, SAW, 4780, joined));
                    // what depends on the joints: ties of courses, cross ties, plates and their screws
                    assertEquals(work.quantities().stream().filter(one -> one.is(QuantityKind.COURSE_TIES) || one.is(QuantityKind.CROSS_TIES)
                            || one.is(QuantityKind.JOINT_PLATES) || one.is(QuantityKind.JOINT_SCREWS)).toList(), part.quantities().subList(1, part.quantities().size()));
                    // and the seal of 100 x 200 ends, two coats at 4 m2 a litre
                    assertEquals(2 * work.pieces().size() * 0.02 * 2 / 4, Beds.value(part.quantities(), "seal.litres"), 1e-9);
                    assertEquals(CrossTies.of(bed, work.frame().inner(), work.frame().seams()).hinges().size(), part.hinges());
                    assertEquals(Beds.value(work.quantities(), "base.slats"), Construction.slatBoards(bed, SAW, downhill, 2400));
                }
            }
        }
        assertTrue(works.size() > 4, works.size() + " works that differ");
    }

    private static List<LongWall> walls(double lengthMm, double longestMm, double boughtMm) {
        return LongWall.of(Beds.bed("K", Outline.rectangle(lengthMm, 1200), 3, Lap.TURNING), SAW, longestMm, boughtMm, List.of(longestMm, boughtMm));
    }

    private static SeamSplit usual(double lengthMm, double longestMm) {
        Bed bed = Beds.bed("K", Outline.rectangle(lengthMm, 1200), 3, Lap.TURNING);
        return SeamSplit.of(bed, 0, longestMm, SAW).orElseThrow();
    }

    /** Boards on hand give 4780, boards to buy 2980; a wall of 4000 takes pieces of 3900, one of 3080 pieces of 2980. */
    @Test
    void aWallThatOnlyBoardsOnHandReachMayBeJoined() {
        assertEquals(List.of(), walls(4000, 4780, 4780));
        assertEquals(List.of(), walls(3080, 4780, 2980));
        for (double length : List.of(4000.0, 4880.0)) {
            List<LongWall> walls = walls(length, 4780, 2980);
            assertEquals(List.of(0, 2), walls.stream().map(LongWall::side).toList());
            assertEquals(List.of(SeamSplit.NONE, usual(length, 2980)), walls.get(0).ways());
        }
        assertEquals(List.of(), walls(4000, 4780, 700), "no joints 600 apart, six parts at least");
    }

    /** By hand: of a wall of 6000 odd courses reach from 0 to 5900 and even ones from 100 to 6000. */
    @Test
    void theLongestPartMayBeFirstOrLastAndOfAnyCourse() {
        LongWall wall = new LongWall(0, List.of());
        Bed three = Beds.bed("K", Outline.rectangle(6000, 1200), 3, Lap.TURNING);
        assertEquals(3400, wall.longestPartMm(three, new SeamSplit(List.of(2500.0), List.of(3300.0), 800)));
        assertEquals(3600, wall.longestPartMm(three, new SeamSplit(List.of(3600.0), List.of(2800.0), 800)));
        SeamSplit evenLonger = new SeamSplit(List.of(3000.0), List.of(2500.0), 500);
        assertEquals(3500, wall.longestPartMm(three, evenLonger));
        assertEquals(3000, wall.longestPartMm(Beds.bed("K", Outline.rectangle(6000, 1200), 1, Lap.TURNING), evenLonger));
    }

    /** By hand, as above: behind a joint at 5700 200 are left of a piece of 300 at least. */
    @Test
    void theShortestPartMayBeTheLast() {
        Bed bed = Beds.bed("K", Outline.rectangle(6000, 1200), 3, Lap.TURNING);
        List<Finding> found = Courses.of(bed, SAW, 4780, Map.of(0, new SeamSplit(List.of(1700.0, 5700.0), List.of(3300.0), 800))).findings();
        Finding piece = found.stream().filter(one -> one.kind() == FindingKind.PIECE_SHORT).findFirst().orElseThrow();
        assertEquals(List.of(Fact.mm(200), Fact.mm(300), Fact.mm(100)), List.of(piece.facts().get("shortest"), piece.facts().get("least"), piece.by().orElseThrow()));
    }

    /** By hand: even courses from 100 to 6000, joined at 5800, leave 200; a bed of one course has no even one. */
    @Test
    void theShortestPartMayBeOfAnEvenCourse() {
        for (int courses : new int[] {1, 2, 3}) {
            Bed bed = Beds.bed("K", Outline.rectangle(6000, 1200), courses, Lap.TURNING);
            List<Finding> found = Courses.of(bed, SAW, 4780, Map.of(0, new SeamSplit(List.of(3000.0), List.of(5800.0), 2800))).findings();
            assertEquals(courses == 1 ? List.of() : List.of(Fact.mm(200)),
                    found.stream().filter(one -> one.kind() == FindingKind.PIECE_SHORT).map(one -> one.facts().get("shortest")).toList(), courses + " courses");
        }
    }

    @Test
    void aWallThatMustBeJoinedIsJoinedForBoardsToBuyBesides() {
        List<SeamSplit> alone = walls(4500, 2980, 2980).get(0).ways();
        int more = 0;
        for (double bought = 1780; bought < 2980; bought += 100) {
            List<SeamSplit> ways = walls(4500, 2980, bought).get(0).ways();
            assertEquals(ways.size(), new HashSet<>(ways).size(), "each once");
            assertTrue(ways.contains(usual(4500, bought)) || usual(4500, bought).staggerMm() < 600, "for " + bought);
            more += ways.size() > alone.size() ? 1 : 0;
        }
        assertTrue(more > 0, "some are ways of their own");
    }

    @Test
    void theWaysToJoinAWallAreThoseThatKeepTheRules() {
        Random random = new Random(41);
        int all = 0;
        int thinned = 0;
        int more = 0;
        int alone = 0;
        for (int i = 0; i < 500; i++) {
            double longest = 1500 + random.nextInt(33) * 100 - 20;
            int courses = 1 + i % 3;
            Bed bed = Beds.bed("K", Outline.rectangle(longest - 100 + random.nextInt((int) (1.3 * longest)), 1200 + (i % 5 == 0 ? random.nextInt((int) longest) : 0)), courses, i % 2 == 0 ? Lap.TURNING : Lap.LONG_WALL);
            List<Double> boards = List.of(longest, longest - 600, Math.rint(longest / 2) + 0.3);
            String name = bed.outline() + ", " + courses + " courses, boards " + longest + ", " + bed.walls().lap();
            List<LongWall> walls = LongWall.of(bed, SAW, longest, longest, boards);
            Set<Integer> sides = new HashSet<>();
            for (LongWall wall : walls) {
                sides.add(wall.side());
                WallRun odd = WallRun.of(bed, wall.side(), true);
                WallRun even = WallRun.of(bed, wall.side(), false);
                boolean joinOdd = odd.lengthMm() > longest;
                boolean joinEven = courses > 1 && even.lengthMm() > longest;
                for (SeamSplit way : wall.ways()) {
                    assertEquals(joinOdd, !way.oddMm().isEmpty(), name);
                    assertEquals(joinEven, !way.evenMm().isEmpty(), name);
                    assertTrue(!joinOdd || kept(odd, way.oddMm(), longest), name + ": " + way);
                    assertTrue(!joinEven || kept(even, way.evenMm(), longest), name + ": " + way);
                    assertEquals(stagger(way.oddMm(), way.evenMm()), way.staggerMm(), 1e-6, name);
                    if (wall.ways().size() > 1) assertTrue(way.staggerMm() >= 600 - 1e-6, name + ": " + way);
                }
                assertEquals(wall.ways().size(), new HashSet<>(wall.ways()).size(), name + ": one way twice");
                // what is laid where nothing is settled is the first way
                Courses.Laid laid = Courses.of(bed, SAW, longest, Map.of());
                String letter = Bed.wallLetter(wall.side());
                assertEquals(wall.ways().get(0).oddMm(), laid.seams().stream().filter(seam -> seam.course() == 1 && seam.wall().equals(letter)).map(Seam::atMm).toList(), name);
                Set<List<List<Double>>> counted = oneJoint(odd, even, joinOdd, joinEven, longest, boards);
                List<List<List<Double>>> told = wall.ways().stream().map(way -> List.of(tenths(way.oddMm()), tenths(way.evenMm()))).toList();
                if (Math.max(wall.ways().get(0).oddMm().size(), wall.ways().get(0).evenMm().size()) > 1) {
                    more++;
                    assertEquals(Set.of(), counted, name + ": one joint would do");
                } else if (counted.size() > 15) {
                    thinned++;
                    assertEquals(16, wall.ways().size(), name);
                    assertTrue(counted.containsAll(told.subList(1, told.size())), name);
                } else if (wall.ways().get(0).staggerMm() >= 600 - 1e-6) {
                    all++;
                    Set<List<List<Double>>> others = new HashSet<>(counted);
                    others.remove(told.get(0));
                    assertEquals(others, new HashSet<>(told.subList(1, told.size())), name);
                } else {
                    alone++;
                    assertEquals(1, wall.ways().size(), name);
                }
            }
            for (int side = 0; side < 4; side++) {
                double odd = WallRun.of(bed, side, true).lengthMm();
                double needed = courses > 1 ? Math.max(odd, WallRun.of(bed, side, false).lengthMm()) : odd;
                if (needed <= longest) assertFalse(sides.contains(side), name);
                // 400 from the corners and 600 a part leave room for a joint in every wall of 1400 and more
                else assertTrue(sides.contains(side), name);
            }
            assertEquals(List.of(), LongWall.of(Beds.fixed(bed, false, Screws.USUAL, Notches.USUAL), SAW, longest, longest, boards), "joints forbidden");
        }
        assertTrue(all > 50 && thinned > 50 && more > 10 && alone > 0, all + " " + thinned + " " + more + " " + alone);
    }

    /** Every way with one joint a course, the long part first in odd courses, else last: the one that is sound. */
    private static Set<List<List<Double>>> oneJoint(WallRun odd, WallRun even, boolean joinOdd, boolean joinEven, double longest, List<Double> boards) {
        double longer = Math.max(joinOdd ? odd.lengthMm() : 0, joinEven ? even.lengthMm() : 0);
        TreeSet<Double> parts = new TreeSet<>();
        for (int part = 100; part <= 10000; part += 100) parts.add((double) part);
        for (double board : boards) {
            parts.add(board);
            parts.add(Math.rint((odd.lengthMm() - board) * 10) / 10);
            parts.add(Math.rint((even.lengthMm() - board) * 10) / 10);
        }
        Set<List<List<Double>>> ways = new LinkedHashSet<>();
        for (double part : parts) {
            if (part < longer / 2 - 1e-6 || part > longest + 1e-6) continue;
            for (boolean first : new boolean[] {true, false}) {
                List<Double> one = joinOdd ? List.of(first ? odd.fromMm() + part : odd.toMm() - part) : List.of();
                List<Double> other = joinEven ? List.of(first ? even.toMm() - part : even.fromMm() + part) : List.of();
                if (joinOdd && !kept(odd, one, longest) || joinEven && !kept(even, other, longest)) continue;
                if (stagger(one, other) < 600 - 1e-6) continue;
                ways.add(List.of(tenths(one), tenths(other)));
                break;
            }
        }
        return ways;
    }

    private static List<Double> tenths(List<Double> mm) {
        return mm.stream().map(one -> Math.rint(one * 10) / 10).toList();
    }

    private static double stagger(List<Double> odd, List<Double> even) {
        double least = Double.POSITIVE_INFINITY;
        for (double one : odd) for (double other : even) least = Math.min(least, Math.abs(one - other));
        return least;
    }

    private static boolean kept(WallRun run, List<Double> joints, double longest) {
        List<Double> ends = new ArrayList<>(joints);
        ends.add(0, run.fromMm());
        ends.add(run.toMm());
        for (int i = 1; i < ends.size(); i++) {
            double part = ends.get(i) - ends.get(i - 1);
            if (part < 600 - 1e-6 || part > longest + 1e-6) return false;
        }
        return joints.stream().allMatch(joint -> joint >= 400 - 1e-6);
    }
}
