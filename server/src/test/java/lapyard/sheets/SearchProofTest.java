package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import lapyard.working.Effort;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The search against answers found another way: brute force, rectangles cut up at random, laws it must keep. */
class SearchProofTest {
    private static final Effort SHORT = new Effort(3_000, Duration.ofMinutes(1));
    private static final Effort LONGER = new Effort(40_000, Duration.ofMinutes(1));

    private static RollProblem onOneRoll(String name, long width, List<long[]> sizes, boolean turn, boolean straight) {
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (long[] size : sizes) pieces.add(new RollProblem.Piece("p" + pieces.size(), size[0], size[1], 1));
        return new RollProblem(name, List.of(RollSolverTest.roll("r", width, "1000", 1)), pieces, turn, straight);
    }

    private static RollResult checked(RollProblem problem, Effort effort) {
        return LayoutJudge.check(problem, RollSolver.solve(problem, effort));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void straightCutsOfFewPiecesMeetBruteForce(boolean turn) {
        Random random = new Random(31);
        for (int round = 0; round < 60; round++) {
            int n = 1 + random.nextInt(5);
            int width = 4 + random.nextInt(5);
            List<long[]> sizes = new ArrayList<>();
            for (int i = 0; i < n; i++) sizes.add(new long[] {1 + random.nextInt(width), 1 + random.nextInt(5)});
            RollResult result = checked(onOneRoll("brute " + round, width, sizes, turn, true), SHORT);
            long least = BruteForce.straight(sizes, width, turn);
            assertEquals(least, result.cost().longValueExact(), "seed 31, round " + round);
            assertTrue(result.proven());
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void freeLayoutsOfFewPiecesMeetBruteForceAndTheBoundIsNeverAboveIt(boolean turn) {
        Random random = new Random(32);
        for (int round = 0; round < 60; round++) {
            int n = 1 + random.nextInt(5);
            int width = 3 + random.nextInt(4);
            List<long[]> sizes = new ArrayList<>();
            for (int i = 0; i < n; i++) sizes.add(new long[] {1 + random.nextInt(width), 1 + random.nextInt(4)});
            RollResult result = checked(onOneRoll("free " + round, width, sizes, turn, false), SHORT);
            long least = BruteForce.free(sizes, width, turn);
            String which = "seed 32, round " + round;
            assertTrue(result.lowerBound().longValueExact() <= least, which);
            assertEquals(least, result.cost().longValueExact(), which);
        }
    }

    /** Five pieces round a hole filled by the fifth: no straight cut parts them, so straight cuts need more. */
    @Test
    void thePinwheelNeedsCornersTurned() {
        List<long[]> pinwheel =
                List.of(new long[] {2, 1}, new long[] {1, 2}, new long[] {2, 1}, new long[] {1, 2}, new long[] {1, 1});
        RollResult free = checked(onOneRoll("pinwheel", 3, pinwheel, false, false), LONGER);
        assertEquals(new BigDecimal("3.00"), free.cost());
        assertTrue(free.proven());
        RollResult straight = checked(onOneRoll("pinwheel", 3, pinwheel, false, true), LONGER);
        assertEquals(new BigDecimal("4.00"), straight.cost());
        assertTrue(straight.proven());
    }

    @ParameterizedTest(name = "{0} pieces of a rectangle cut at random, seed {1}")
    @CsvSource({"8, 1", "12, 2", "16, 3", "20, 4", "20, 5", "20, 6"})
    void aRectangleCutUpByStraightCutsIsRefilledWithinTwoPercent(int n, long seed) {
        List<long[]> sizes = cutUp(n, 3000, 4000, new Random(seed));
        for (boolean straight : new boolean[] {true, false}) {
            RollResult result = checked(onOneRoll("planted", 3000, sizes, true, straight), LONGER);
            double used = result.rolls().get(0).usedMm();
            assertTrue(used <= 4000 * 1.02, "seed " + seed + ", straight " + straight + ": " + used);
            assertEquals(4000, result.lowerBound().doubleValue(), "the area bound is the height");
        }
    }

    /** Cuts the largest part across at a random place, on a grid of 10, until there are enough. */
    private static List<long[]> cutUp(int n, long width, long height, Random random) {
        List<long[]> parts = new ArrayList<>(List.of(new long[] {width, height}));
        while (parts.size() < n) {
            parts.sort((a, b) -> Long.compare(b[0] * b[1], a[0] * a[1]));
            long[] part = parts.remove(random.nextInt(Math.min(3, parts.size())));
            int axis = random.nextInt(4) == 0 ? random.nextInt(2) : part[0] >= part[1] ? 0 : 1;
            long at = 10 * Math.round((0.2 + 0.6 * random.nextDouble()) * part[axis] / 10);
            long[] first = part.clone();
            long[] second = part.clone();
            first[axis] = at;
            second[axis] = part[axis] - at;
            parts.add(first);
            parts.add(second);
        }
        for (long[] part : parts) {
            if (random.nextBoolean() && part[1] <= width) {
                long swap = part[0];
                part[0] = part[1];
                part[1] = swap;
            }
        }
        return parts;
    }

    @ParameterizedTest(name = "{0} pieces, seed {1}, straight {2}")
    @CsvSource({"14, 1, true", "14, 2, false", "35, 3, true", "35, 4, false", "90, 5, true", "90, 6, false"})
    void neverDearerThanShelvesOrBottomLeftOnAnyRoll(int n, long seed, boolean straight) {
        RollProblem problem = TradeJobs.job(n, seed, straight);
        for (Effort effort : List.of(RollSolver.QUICK, SHORT)) {
            RollResult result = checked(problem, effort);
            for (RollProblem.Stock roll : problem.rolls()) {
                for (boolean high : new boolean[] {false, true}) {
                    List<long[]> sizes = PlainPackers.lying(problem, roll, high);
                    if (sizes == null) continue;
                    long width = (long) roll.widthMm();
                    assertNotDearer(result, roll, PlainPackers.shelves(sizes, width));
                    if (!straight) assertNotDearer(result, roll, PlainPackers.bottomLeft(sizes, width));
                }
            }
        }
    }

    /** Every band fits, much lies in bands that waste next to nothing, and all pieces are there once, those left over too. */
    @ParameterizedTest(name = "{0} pieces, seed {1}, turned {2}")
    @CsvSource({"36, 1, true", "80, 2, true", "80, 3, false", "200, 4, true"})
    void manyPiecesOfWhichSomeMatchAreLaidInDenseBands(int n, long seed, boolean turn) {
        RollProblem trade = TradeJobs.job(n, seed, true);
        RollProblem problem = new RollProblem(trade.name(), trade.rolls(), trade.pieces(), turn, true);
        RollJob job = RollJob.of(problem);
        RollJob.Roll roll = job.rolls.get(5);
        int[] counts = new int[job.types.length];
        for (int t = 0; t < counts.length; t++) counts[t] = job.types[t].count();
        RollBudget work = new RollBudget(LONGER, Progress.UNHEARD);
        List<Block> left = new ArrayList<>();
        List<Block> bands = new DenseBands(job, roll.width(), counts, 1, seed, work).bands(left);
        assertFalse(bands.isEmpty());
        List<Block.Laid> laid = new ArrayList<>();
        long dense = 0;
        for (Block band : bands) {
            assertTrue(band.width <= roll.width() && band.area >= 0.65 * roll.width() * band.height, band.area + " of " + band.height);
            if (band.area >= 0.97 * roll.width() * band.height) dense += band.area;
            band.lay(0, 0, laid);
        }
        assertTrue(dense >= 0.3 * job.area(), dense + " of " + job.area());
        left.forEach(block -> block.lay(0, 0, laid));
        for (Block.Laid one : laid) {
            counts[one.type()]--;
            RollJob.Type type = job.types[one.type()];
            boolean asGiven = one.width() == type.width() && one.height() == type.height();
            assertTrue(asGiven || turn && one.width() == type.height() && one.height() == type.width());
        }
        for (int count : counts) assertEquals(0, count, "each piece once");
        checked(problem, RollSolver.QUICK);
    }

    private static void assertNotDearer(RollResult result, RollProblem.Stock roll, long used) {
        BigDecimal plain = roll.price().multiply(BigDecimal.valueOf((used + 999) / 1000));
        assertTrue(result.cost().compareTo(plain) <= 0, () -> result.cost() + " on " + roll.id() + ", plain " + plain);
    }

    @Test
    void allowingMoreNeverCostsMoreForSetsSmallEnoughToBeProved() {
        for (int seed = 0; seed < 15; seed++) {
            RollProblem turned = TradeJobs.job(6, seed, true);
            RollProblem grain = new RollProblem("grain", turned.rolls(), turned.pieces(), false, true);
            RollProblem free = new RollProblem("free", turned.rolls(), turned.pieces(), true, false);
            RollProblem fewer = new RollProblem("fewer", turned.rolls().subList(2, 6), turned.pieces(), true, true);
            RollProblem less =
                    new RollProblem("less", turned.rolls(), turned.pieces().subList(1, 6), true, true);
            RollResult all = checked(turned, SHORT);
            assertTrue(all.proven());
            assertTrue(checked(free, SHORT).cost().compareTo(all.cost()) <= 0, "free, seed " + seed);
            assertTrue(checked(less, SHORT).cost().compareTo(all.cost()) <= 0, "a piece less, seed " + seed);
            assertTrue(checked(fewer, SHORT).cost().compareTo(all.cost()) >= 0, "fewer rolls, seed " + seed);
            RollResult withGrain = checked(grain, SHORT);
            if (withGrain.unplaced().isEmpty())
                assertTrue(withGrain.cost().compareTo(all.cost()) >= 0, "grain, seed " + seed);
        }
    }

    @Test
    void scaledLengthsGiveTheSameLayoutAndCountOrLinesDoNotMatter() {
        RollProblem problem = TradeJobs.job(9, 3, true);
        List<RollProblem.Stock> rolls = problem.rolls().stream()
                .map(r -> RollSolverTest.roll(
                        r.id(),
                        r.widthMm() / 10,
                        r.price().multiply(BigDecimal.TEN).toString(),
                        r.stepMm() / 10))
                .toList();
        List<RollProblem.Piece> pieces = problem.pieces().stream()
                .map(p -> new RollProblem.Piece(p.id(), p.widthMm() / 10, p.heightMm() / 10, 1))
                .toList();
        assertEquals(
                checked(problem, SHORT).cost(),
                checked(new RollProblem("tenth", rolls, pieces, true, true), SHORT)
                        .cost());
        RollProblem.Piece twice = new RollProblem.Piece("a", 1500, 700, 4);
        List<RollProblem.Piece> lines = new ArrayList<>();
        for (int i = 0; i < 4; i++) lines.add(new RollProblem.Piece("a" + i, 1500, 700, 1));
        assertEquals(
                checked(new RollProblem("one line", problem.rolls(), List.of(twice), true, true), SHORT)
                        .cost(),
                checked(new RollProblem("four lines", problem.rolls(), lines, true, true), SHORT)
                        .cost());
    }

    @Test
    void theJudgeSeesAPinwheelAndAnOverlap() {
        List<long[]> pinwheel = List.of(
                new long[] {0, 0, 2, 1},
                new long[] {2, 0, 3, 2},
                new long[] {1, 2, 3, 3},
                new long[] {0, 1, 1, 3},
                new long[] {1, 1, 2, 2});
        assertFalse(LayoutJudge.straightCutsDo(pinwheel));
        assertTrue(LayoutJudge.straightCutsDo(Arrays.asList(pinwheel.get(0), pinwheel.get(1), pinwheel.get(2))));
    }
}
