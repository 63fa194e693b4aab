package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import lapyard.construction.Piece.RunsPast;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Lap;
import lapyard.plan.Notches;
import lapyard.plan.Saw;
import lapyard.plan.Screws;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class SeamsTest {
    private static final Saw SAW = Saw.USUAL;

    private static BedWork long6000(int courses, double longestMm) {
        return Beds.work(Beds.bed("K", Outline.rectangle(6000, 1200), courses, Lap.TURNING), SAW, longestMm, Map.of(), Optional.empty(), 2400, 25);
    }

    /**
     * Turning lap: wall A's piece is 5900, from 0 in odd courses, from 100 in even ones. 3000 + 2900 would stagger 0
     * or 200; 3500 + 2400 puts seams at 3500 and 100 + 2400 = 2500, 1000 apart.
     */
    @Test
    void aWallOf6000IsJoinedAt3500And2500() {
        BedWork work = long6000(3, 4780);
        assertEquals(
                List.of(
                        new Seam(1, "A", 3500),
                        new Seam(1, "C", 3500),
                        new Seam(2, "A", 2500),
                        new Seam(2, "C", 2500),
                        new Seam(3, "A", 3500),
                        new Seam(3, "C", 3500)),
                work.frame().seams());
        List<Piece> first = work.frame().courses().get(0).pieces();
        assertEquals(
                List.of("K-1Aa", "K-1Ab", "K-1B"),
                first.stream().map(Piece::mark).limit(3).toList());
        assertEquals(
                List.of(3500.0, 2400.0, 1100.0),
                first.stream().map(Piece::lengthMm).limit(3).toList());
        assertEquals(RunsPast.START, first.get(0).runsPast());
        assertEquals(RunsPast.NONE, first.get(1).runsPast());
        List<Piece> second = work.frame().courses().get(1).pieces();
        assertEquals(
                List.of(2400.0, 3500.0),
                second.stream().map(Piece::lengthMm).limit(2).toList());
        assertEquals(RunsPast.END, second.get(1).runsPast());
        // Joining takes nothing off the sum: 3 x (2 x 7200 - 400).
        assertEquals(3 * 14.0, Beds.value(work.quantities(), "timber.length"), 1e-9);
    }

    @Test
    void everySeamIsANoteAndTakesAPlateAndFourScrews() {
        BedWork work = long6000(3, 4780);
        assertEquals(6, Beds.value(work.quantities(), "seam.plates"));
        assertEquals(24, Beds.value(work.quantities(), "seam.screws"));
        // Corner screws are counted apart: 4 corners x 3 courses x 2.
        assertEquals(24, Beds.value(work.quantities(), "screws"));
        List<Finding> notes = work.findings().stream()
                .filter(one -> one.kind() == FindingKind.JOINT)
                .toList();
        assertEquals(6, notes.size());
        assertTrue(notes.stream().allMatch(one -> one.weight() == Finding.Weight.NOTE));
        assertEquals("bed K, wall A, course 1", notes.get(0).where());
        assertTrue(
                Told.text(notes.get(0)).contains("has a joint at 3500 mm in course 1"),
                Told.text(notes.get(0)));
    }

    /** Boards that give 3000: two parts reach 2 x 3000 - 5900 + 100 = 200 of stagger at most, so three are used. */
    @Test
    void moreSeamsAreMadeWhereOneCannotStagger() {
        BedWork work = long6000(2, 3000);
        List<Double> odd = seams(work, 1, "A");
        List<Double> even = seams(work, 2, "A");
        assertEquals(2, odd.size());
        assertEquals(2, even.size());
        assertTrue(odd.stream().allMatch(o -> even.stream().allMatch(e -> Math.abs(o - e) >= 600)));
        assertTrue(Beds.of(Finding.Weight.SNAG, work.findings()).isEmpty());
    }

    /**
     * A wall of 1500 with boards that give 800: the piece of 1400 is 800 + 600 or 700 + 700 at most, seams at 800 and
     * 700 (800 + 600 odd, 600 + 800 even), 600 and 900 the other way: 300 is the best.
     */
    @Test
    void whereNoSplitStaggersTheBestIsUsedAndSaid() {
        BedWork work = Beds.work(Beds.bed("K", Outline.rectangle(1500, 900), 2, Lap.TURNING), SAW, 800, Map.of(), Optional.empty(), 2400, 25);
        assertEquals(List.of(600.0), seams(work, 1, "A"));
        assertEquals(List.of(900.0), seams(work, 2, "A"));
        Finding snag = Beds.of(Finding.Weight.SNAG, work.findings()).get(0);
        assertEquals("bed K, wall A", snag.where());
        assertTrue(Told.text(snag).contains("are only 300 mm apart from course to course"), Told.text(snag));
        assertEquals(300, snag.amount().orElseThrow().value());
        assertTrue(
                Told.ways(snag).contains("Shorten wall A by 600 mm, which needs no joint"),
                Told.ways(snag).toString());
    }

    /** 5900 needed, 4780 to be had: 1120 too long, and the piece stays in the list for the cutting to refuse. */
    @Test
    void seamsForbiddenLeaveThePieceWholeWithASnag() {
        Bed bed = Beds.fixed(
                Beds.bed("K", Outline.rectangle(6000, 1200), 2, Lap.TURNING), false, Screws.USUAL, Notches.USUAL);
        BedWork work = Beds.work(bed, SAW, 4780, Map.of(), Optional.empty(), 2400, 25);
        List<Finding> snags = Beds.of(Finding.Weight.SNAG, work.findings());
        assertEquals(
                List.of("bed K, wall A", "bed K, wall C"),
                snags.stream().map(Finding::where).toList());
        assertTrue(
                Told.text(snags.get(0)).contains("needs 5900 mm; boards give 4780 mm"),
                Told.text(snags.get(0)));
        assertEquals(new Finding.Amount(1120, "mm"), snags.get(0).amount().orElseThrow());
        assertEquals(
                List.of("Allow a joint", "Shorten wall A by 1120 mm", "Add a board of 5920 mm or longer"),
                Told.ways(snags.get(0)));
        assertEquals(5900, work.pieces().get(0).lengthMm());
        assertTrue(work.frame().seams().isEmpty());
        assertTrue(!Beds.has(work.quantities(), "seam.plates"));
    }

    @Test
    void boardsUnderTheLeastPartCannotBeJoined() {
        BedWork work = Beds.work(Beds.bed("K", Outline.rectangle(1500, 900), 1, Lap.TURNING), SAW, 550, Map.of(), Optional.empty(), 2400, 25);
        assertTrue(work.frame().seams().isEmpty());
        assertTrue(
                Told.text(Beds.of(Finding.Weight.SNAG, work.findings()).get(0)).contains("no joint leaves parts of 600 mm"));
    }

    /** Long-wall lap, 4900 long, boards give 4780: odd 4900 must be joined, even 4700 need not, so nothing staggers. */
    @Test
    void onlyTheCoursesThatNeedASeamGetOne() {
        BedWork work = Beds.work(Beds.bed("K", Outline.rectangle(4900, 1200), 2, Lap.LONG_WALL), SAW, 4780, Map.of(), Optional.empty(), 2400, 25);
        assertEquals(List.of(2500.0), seams(work, 1, "A"));
        assertEquals(List.of(), seams(work, 2, "A"));
        assertEquals(List.of(2500.0, 2400.0), Beds.lengths(work, 1).subList(0, 2));
    }

    /**
     * By hand: no joint within 2600 of a corner leaves 2600 to 3400 of a wall of 6000. Odd courses end at 5900 and even ones begin at 100, so
     * parts of 3200 there put the joints at 2700 and 3300, the first 600 apart.
     */
    @Test
    void jointsKeepTheirDistanceFromBothCorners() {
        Saw far = new Saw(SAW.kerfMm(), SAW.endTrimMm(), SAW.keepOffcutMm(), SAW.leastPieceMm(), SAW.leastPartMm(), SAW.seamStaggerMm(), 2600, 35, 0);
        SeamSplit split = SeamSplit.of(Beds.bed("K", Outline.rectangle(6000, 1200), 2, Lap.TURNING), 0, 4780, far).orElseThrow();
        assertEquals(new SeamSplit(List.of(2700.0), List.of(3300.0), 600), split);
    }

    /** The best stagger of one seam, found by trying every tenth of a millimetre, is never better than ours. */
    @Test
    void splitsKeepEveryRuleAndNoSingleSeamWouldDoBetter() {
        Random random = new Random(2112);
        for (int i = 0; i < 1200; i++) {
            Outline outline = Outline.rectangle(1300 + random.nextInt(i % 3 == 0 ? 1500 : 9000), 2000);
            Lap lap = Lap.values()[i / 3 % Lap.values().length];
            double longest = 700 + random.nextInt(i % 3 == 0 ? 700 : 4200);
            WallRun odd = WallRun.of(Beds.bed("K", outline, 2, lap), 0, true);
            WallRun even = WallRun.of(Beds.bed("K", outline, 2, lap), 0, false);
            double wall = outline.sideMm(0);
            if (Math.min(odd.lengthMm(), even.lengthMm()) <= longest) {
                continue;
            }
            String name = "wall " + wall + ", boards " + longest + ", " + lap;
            Optional<SeamSplit> split = SeamSplit.of(Beds.bed("K", outline, 2, lap), 0, longest, SAW);
            split.ifPresent(found -> {
                assertKept(odd, found.oddMm(), wall, longest, name);
                assertKept(even, found.evenMm(), wall, longest, name);
                double real = Double.POSITIVE_INFINITY;
                for (double o : found.oddMm()) {
                    for (double e : found.evenMm()) {
                        real = Math.min(real, Math.abs(o - e));
                    }
                }
                assertEquals(real, found.staggerMm(), 1e-6, name);
            });
            double reached = split.map(SeamSplit::staggerMm).orElse(-1.0);
            if (reached < 600 && odd.lengthMm() > 2 * longest && odd.lengthMm() <= 3 * longest) {
                double best = bestOfTwoSeams(odd, even, wall, longest);
                assertTrue(reached >= best - 0.2, name + ": " + reached + " where two joints give " + best);
            }
            if (reached < 600 && odd.lengthMm() <= 2 * longest && even.lengthMm() <= 2 * longest) {
                double best = bestOfOneSeam(odd, even, wall, longest);
                assertTrue(reached >= best - 0.2, name + ": " + reached + " where " + best + " is to be had");
            }
        }
    }

    /** Every tenth of a millimetre in either course. */
    private static double bestOfOneSeam(WallRun odd, WallRun even, double wall, double longest) {
        double[] one = IntStream.range(0, (int) (10 * wall)).mapToDouble(at -> at / 10.0).filter(at -> kept(odd, List.of(at), wall, longest)).toArray();
        double[] other = IntStream.range(0, (int) (10 * wall)).mapToDouble(at -> at / 10.0).filter(at -> kept(even, List.of(at), wall, longest)).toArray();
        if (one.length == 0 || other.length == 0) return -1;
        return Math.max(one[one.length - 1] - other[0], other[other.length - 1] - one[0]);
    }

    /** Long parts, no shorter than a third, and middle parts of whole 100 mm, the long one first in odd courses or last. */
    private static double bestOfTwoSeams(WallRun odd, WallRun even, double wall, double longest) {
        double best = -1;
        double third = Math.max(odd.lengthMm(), even.lengthMm()) / 3;
        for (double part = 100 * Math.ceil(third / 100); part <= longest; part += 100) {
            for (double both = part + 600; both <= part + longest; both += 100) {
                double[][][] pairs = {
                    {{odd.fromMm() + part, odd.fromMm() + both}, {even.toMm() - both, even.toMm() - part}},
                    {{odd.toMm() - both, odd.toMm() - part}, {even.fromMm() + part, even.fromMm() + both}}};
                for (double[][] pair : pairs) {
                    List<Double> one = List.of(pair[0][0], pair[0][1]);
                    List<Double> other = List.of(pair[1][0], pair[1][1]);
                    if (!kept(odd, one, wall, longest) || !kept(even, other, wall, longest)) continue;
                    best = Math.max(best, one.stream().mapToDouble(a -> other.stream().mapToDouble(b -> Math.abs(a - b)).min().orElseThrow()).min().orElseThrow());
                }
            }
        }
        return best;
    }

    private static void assertKept(WallRun run, List<Double> seams, double wall, double longest, String name) {
        assertTrue(kept(run, seams, wall, longest), () -> name + ": " + seams);
    }

    private static boolean kept(WallRun run, List<Double> seams, double wall, double longest) {
        double from = run.fromMm();
        for (int i = 0; i <= seams.size(); i++) {
            double to = i < seams.size() ? seams.get(i) : run.toMm();
            if (to - from < 600 - 1e-6 || to - from > longest + 1e-6) {
                return false;
            }
            if (i < seams.size() && (to < 400 - 1e-6 || to > wall - 400 + 1e-6)) {
                return false;
            }
            from = to;
        }
        return true;
    }

    private static List<Double> seams(BedWork work, int course, String wall) {
        return work.frame().seams().stream()
                .filter(seam -> seam.course() == course && seam.wall().equals(wall))
                .map(Seam::atMm)
                .toList();
    }
}
