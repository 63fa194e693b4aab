package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Layouts by straight cuts within a given length: looked at all, or sought by a beam. */
class StraightWithinTest {
    private static RollBudget work(long steps) {
        return new RollBudget(Effort.ofSteps(steps), Progress.UNHEARD);
    }

    private static RollProblem problem(Random random, int width, int types, int longest, int most, boolean turn) {
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (int i = 0; i < types; i++)
            pieces.add(new RollProblem.Piece("p" + i, 1 + random.nextInt(width), 1 + random.nextInt(longest), 1 + random.nextInt(most)));
        return new RollProblem("within", List.of(RollSolverTest.roll("r", width, "1000", 1)), pieces, turn, true);
    }

    /** By hand, pieces of 3 x 2 and 4 x 5 lying either way: beside another side of 2 there is the first alone, 3 long. */
    @Test
    void aSideIsFilledBySidesOfPiecesThatFitTheOther() {
        RollProblem two = new RollProblem("two", List.of(RollSolverTest.roll("r", 8, "1000", 1)),
                List.of(new RollProblem.Piece("a", 3, 2, 1), new RollProblem.Piece("b", 4, 5, 1)), true, true);
        SideSums sums = new SideSums(RollJob.of(two), 8, work(1_000));
        assertEquals(3, sums.across(8, 2));
        assertEquals(8, sums.across(8, 4), "5 + 3: the second turned is 4 high");
        assertEquals(8, sums.across(8, 5));
        assertEquals(7, sums.across(7, 5));
        assertEquals(5, sums.across(6, 4));
        assertEquals(0, sums.across(8, 1));
        assertEquals(5, sums.along(6, 4));
        SideSums asTheyLie = new SideSums(RollJob.of(new RollProblem("two", two.rolls(), two.pieces(), false, true)), 8, work(1_000));
        assertEquals(7, asTheyLie.across(8, 5), "4 + 3");
        assertEquals(3, asTheyLie.across(8, 4));
        assertEquals(7, asTheyLie.along(8, 4), "5 + 2");
        assertEquals(2, asTheyLie.along(8, 3));
    }

    /** Every cut of every selection, tried one by one, for sets of up to five pieces. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void nothingWithinALengthIsMissed(boolean turn) {
        Random random = new Random(61);
        for (int round = 0; round < 60; round++) {
            int width = 4 + random.nextInt(5);
            List<long[]> sizes = new ArrayList<>();
            List<RollProblem.Piece> pieces = new ArrayList<>();
            for (int i = 2 + random.nextInt(4); i > 0; i--) {
                long[] size = {1 + random.nextInt(width), 1 + random.nextInt(5)};
                sizes.add(size);
                pieces.add(new RollProblem.Piece("p" + i, size[0], size[1], 1));
            }
            RollProblem problem = new RollProblem("within", List.of(RollSolverTest.roll("r", width, "1000", 1)), pieces, turn, true);
            agrees(problem, BruteForce.straight(sizes, width, turn), "seed 61, round " + round);
        }
    }

    /** A table of everything, which brute force checks elsewhere, for up to ten pieces of which some are alike. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void nothingOfAlikePiecesIsMissed(boolean turn) {
        Random random = new Random(62);
        for (int round = 0; round < 60; round++) {
            int width = 20 + random.nextInt(30);
            RollProblem problem = problem(random, width, 3 + random.nextInt(2), 25, 3, turn);
            RollJob job = RollJob.of(problem);
            long across = job.rolls.get(0).width();
            CutTable all = CutTable.of(SmallRolls.items(job), turn, CutTable.Limits.size(across, RollJob.NO_LIMIT), work(1_000_000));
            agrees(problem, all.height(all.full(), across) * job.unitMicro / 1000, "seed 62, round " + round);
        }
    }

    /**
     * Strips of a made-up corner: 7500 would hold their area, but no straight cuts lay them within. A table over all of the 105 840
     * selections of the pieces said so too, with thirty million operations more.
     */
    @Test
    void aLengthThatTheAreaAllowsIsRuledOutQuickly() {
        int[][] strips = {{3550, 725, 2}, {2650, 725, 1}, {2350, 725, 1}, {2350, 525, 6}, {1850, 725, 1}, {1750, 925, 2}, {1550, 725, 1},
            {1150, 525, 6}, {950, 725, 4}, {925, 850, 2}};
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (int[] strip : strips) pieces.add(new RollProblem.Piece("p" + pieces.size(), strip[0], strip[1], strip[2]));
        RollProblem problem = new RollProblem("corner", List.of(RollSolverTest.roll("W4", 4000, "9.40", 500)), pieces, true, true);
        assertEquals(0, new BigDecimal("70.50").compareTo(RollSolver.atLeast(problem)), "7500 hold the area");
        RollResult quick = LayoutJudge.check(problem, RollSolver.solve(problem, RollSolver.QUICK));
        assertEquals(0, new BigDecimal("75.20").compareTo(quick.lowerBound()), "8000, no less");
        assertTrue(quick.proven(), quick.toString());
    }

    /**
     * Strips of a made-up yard that fill 98.8 % of 10 500. A table of another make, over all smaller rectangles on a grid of 5 and with the
     * pieces of 925 counted, left no layout either, and allowed 10 525, where a layout was found.
     */
    @Test
    void pricesRuleOutALengthThatHasTooManyLayoutsToLookAtAll() {
        int[][] strips = {{3390, 765, 1}, {3190, 765, 4}, {2590, 765, 2}, {1650, 765, 2}, {1510, 765, 1}, {1250, 765, 4}, {1190, 765, 8},
            {1090, 765, 2}, {1050, 765, 4}, {1990, 925, 2}, {990, 925, 2}};
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (int[] strip : strips) pieces.add(new RollProblem.Piece("p" + pieces.size(), strip[0], strip[1], strip[2]));
        RollProblem problem = new RollProblem("yard", List.of(RollSolverTest.roll("W4", 4000, "9.00", 500)), pieces, true, true);
        RollJob job = RollJob.of(problem);
        assertTrue(PricedParts.ruleOut(job, 800, 2100, work(300_000)));
        assertFalse(PricedParts.ruleOut(job, 800, 2105, work(300_000)));
        RollResult found = LayoutJudge.check(problem, RollSolver.solve(problem, Effort.ofSteps(300_000)));
        assertEquals(0, new BigDecimal("99.00").compareTo(found.lowerBound()), "11 000, no less");
        assertTrue(found.proven(), found.toString());
        assertFalse(RollSolver.solve(problem, RollSolver.QUICK).proven(), "a job sheet does not wait for it");
    }

    /** What straight cuts made of a strip lies within it, whatever the prices and however many types are counted. */
    @Test
    void whatWasCutUpIsNotRuledOut() {
        for (long seed = 1; seed <= 20; seed++) {
            RollJob strip = RollJob.of(CutUp.strip(8 + (int) seed % 12, 2000, 3000, 50, 0.2, CutUp.Manner.STRAIGHT, true, seed));
            long width = strip.rolls.get(0).width();
            assertFalse(PricedParts.ruleOut(strip, width, strip.area() / width, work(3_000)), "strip " + seed);
            RollJob lanes = RollJob.of(WallJobs.lanes(6000 + 500 * (int) (seed % 4), seed));
            long length = lanes.unitsIn(lanes.rolls.get(0), 12 + seed % 4);
            assertFalse(PricedParts.ruleOut(lanes, lanes.rolls.get(0).width(), length, work(3_000)), "lanes " + seed);
        }
    }

    private static void agrees(RollProblem problem, long leastMm, String told) {
        RollJob job = RollJob.of(problem);
        long least = leastMm * 1000 / job.unitMicro;
        long width = job.rolls.get(0).width();
        CutWithin all = CutWithin.of(job, Math.max(width, least + 3), work(1_000_000));
        for (long length = Math.max(1, least - 2); length <= least + 3; length++) {
            Block found = all.fit(width, length);
            assertTrue(all.finished(), told);
            assertEquals(length >= least, found != null, told + ", within " + length);
            // in the end all types are counted, so that prices say the same
            if (length <= least) assertEquals(length < least, PricedParts.ruleOut(job, width, length, work(length < least ? 1_000_000 : 3_000)), told + ", priced, within " + length);
            if (found == null) continue;
            assertTrue(found.width <= width && found.height <= length, told + ", within " + length);
            List<Block> singles = new ArrayList<>();
            found.singles(singles);
            int[] left = new int[job.types.length];
            for (Block single : singles) left[single.type]++;
            for (int t = 0; t < left.length; t++) assertEquals(job.types[t].count(), left[t], told + ", within " + length);
        }
    }

    /** What a beam lays lies within the length, every piece once, and straight cuts part it; a made-up roll in four is found full. */
    @Test
    void aBeamLaysWhatStraightCutsPart() {
        int found = 0;
        for (long seed = 1; seed <= 20; seed++) {
            RollProblem strip = CutUp.strip(14, 2000, 3000, 50, 0.2, CutUp.Manner.STRAIGHT, true, seed);
            RollJob job = RollJob.of(strip);
            RollJob.Roll roll = job.rolls.get(0);
            long least = job.area() / roll.width();
            Layout.Run run = CutBeamSearch.shorter(job, roll, job.steps(roll, least), job.steps(roll, 2 * least), seed, work(3_000));
            assertTrue(run != null && run.used() < 2 * least, "seed " + seed);
            int[] left = new int[job.types.length];
            for (int t = 0; t < left.length; t++) left[t] = job.types[t].count();
            List<long[]> boxes = new ArrayList<>();
            for (Block.Laid one : run.laid()) {
                left[one.type()]--;
                RollJob.Type type = job.types[one.type()];
                assertEquals(type.width() + type.height(), one.width() + one.height(), "seed " + seed);
                assertEquals(type.area(), one.width() * one.height(), "seed " + seed);
                assertTrue(one.x() >= 0 && one.y() >= 0 && one.x() + one.width() <= roll.width() && one.y() + one.height() <= run.used(), "seed " + seed);
                boxes.add(new long[] {one.x(), one.y(), one.x() + one.width(), one.y() + one.height()});
            }
            for (int one : left) assertEquals(0, one, "seed " + seed);
            // parts of one cut do not overlap, so parting all of them is the check for overlaps as well
            assertTrue(LayoutJudge.straightCutsDo(boxes), "seed " + seed);
            if (run.used() == least) found++;
        }
        assertTrue(found >= 5, found + " of 20 found full");
    }
}
