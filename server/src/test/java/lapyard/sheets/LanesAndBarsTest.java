package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import lapyard.working.Effort;
import lapyard.working.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;

/** Lanes along a roll, and the bound by bars across it. */
class LanesAndBarsTest {
    private static RollBudget work() {
        return new RollBudget(Effort.ofSteps(1_000_000), Progress.UNHEARD);
    }

    /** By hand: six strips 3 wide and 7 long on a roll 8 wide. Two lie beside each other, so 6 x 7 / 2 = 21; the area says 16. */
    @Test
    void barsSeeTheGapThatOneWidthLeaves() {
        RollProblem strips = new RollProblem("strips", List.of(RollSolverTest.roll("r", 8, "1000", 1)),
                List.of(new RollProblem.Piece("p", 3, 7, 6)), false, true);
        assertEquals(21, BarBound.coins(RollJob.of(strips), 0, 1_000, work()));
    }

    /** Every bar that fits, by enumeration, in ojAlgo's linear programme: the same least length, up to whole units. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void theBoundIsTheLinearProgrammeOverAllBars(long seed) {
        Random random = new Random(seed);
        boolean turn = seed % 2 == 0;
        List<RollProblem.Piece> pieces = new ArrayList<>();
        Set<List<Integer>> seen = new HashSet<>();
        while (pieces.size() < 4) {
            int width = 300 + random.nextInt(900);
            int height = 300 + random.nextInt(900);
            if (seen.add(List.of(width, height))) pieces.add(new RollProblem.Piece("p" + pieces.size(), width, height, 1 + random.nextInt(3)));
        }
        RollProblem problem = new RollProblem("bars " + seed, List.of(RollSolverTest.roll("r", 2000, "1000", 1)), pieces, turn, true);
        double least = overAllBars(problem);
        long known = RollBound.coins(RollJob.of(problem));
        long bound = BarBound.coins(RollJob.of(problem), 0, Long.MAX_VALUE, work());
        assertEquals(Math.ceil(least * (1 - 1e-9)), bound, "seed " + seed);
        RollResult cut = LayoutJudge.check(problem, RollSolver.solve(problem, RollSolver.QUICK));
        assertTrue(Math.max(known, bound) <= cut.cost().longValueExact(), "seed " + seed + ": " + bound + " of " + cut.cost());
    }

    private static double overAllBars(RollProblem problem) {
        List<Map<Integer, Double>> bars = new ArrayList<>();
        fill(problem, 0, 2000, new HashMap<>(), bars);
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        List<Expression> rows = new ArrayList<>();
        for (int i = 0; i < problem.pieces().size(); i++) rows.add(model.newExpression("p" + i).lower(problem.pieces().get(i).count()));
        for (Map<Integer, Double> bar : bars) {
            var level = model.newVariable("b" + model.countVariables()).lower(0).weight(1);
            bar.forEach((piece, parts) -> rows.get(piece).set(level, parts));
        }
        return model.minimise().getValue();
    }

    /** Every number of each piece, lying one way and the other. */
    private static void fill(RollProblem problem, int at, double left, Map<Integer, Double> bar, List<Map<Integer, Double>> into) {
        if (at == problem.pieces().size()) {
            into.add(Map.copyOf(bar));
            return;
        }
        RollProblem.Piece piece = problem.pieces().get(at);
        for (int given = 0; given <= piece.count(); given++) {
            for (int turned = 0; given + turned <= (problem.turn() ? piece.count() : given); turned++) {
                double rest = left - given * piece.widthMm() - turned * piece.heightMm();
                if (rest < 0) continue;
                double parts = given / piece.heightMm() + turned / piece.widthMm();
                if (parts > 0) bar.put(at, parts);
                fill(problem, at + 1, rest, bar, into);
                bar.remove(at);
            }
        }
    }

    @Test
    void barsAreNeverAboveTheLeastOfFreeLayouts() {
        Random random = new Random(34);
        for (int round = 0; round < 60; round++) {
            int width = 3 + random.nextInt(4);
            boolean turn = random.nextBoolean();
            List<long[]> sizes = new ArrayList<>();
            List<RollProblem.Piece> pieces = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(5); i++) {
                sizes.add(new long[] {1 + random.nextInt(width), 1 + random.nextInt(4)});
                pieces.add(new RollProblem.Piece("p" + i, sizes.get(i)[0], sizes.get(i)[1], 1));
            }
            RollJob job = RollJob.of(new RollProblem("free", List.of(RollSolverTest.roll("r", width, "1000", 1)), pieces, turn, false));
            long least = BruteForce.free(sizes, width, turn);
            BigDecimal bound = job.money(BarBound.coins(job, 0, Long.MAX_VALUE, work()));
            assertTrue(bound.compareTo(BigDecimal.valueOf(least)) <= 0, "seed 34, round " + round + ": " + bound + " of " + least);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9})
    void lanesThatWereCutUpAreLaidAgainByTheQuickSearch(int seed) {
        RollProblem problem = WallJobs.lanes(6000 + 500 * (seed % 5), seed);
        RollResult result = LayoutJudge.check(problem, RollSolver.solve(problem, RollSolver.QUICK));
        assertTrue(result.proven(), problem.name() + ": " + result.cost() + " of " + result.lowerBound());
    }

    /** By hand: 11 + 5 + 4 fill 20, where the longest that fits beside 11 leaves 1 of 11 + 8; 8 + 7 + 4 fill no lane. */
    @Test
    void aFullLaneHasWhatFitsBestBesideItsLongest() {
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (int length : new int[] {8, 4, 11, 5, 4, 7}) pieces.add(new RollProblem.Piece("p" + pieces.size(), length, 1, 1));
        RollJob job = RollJob.of(new RollProblem("full", List.of(RollSolverTest.roll("r", 20, "1000", 1)), pieces, false, true));
        List<Block> left = new ArrayList<>();
        List<Block> bands = new FullLanes(job, 20, work()).bands(left);
        assertEquals(List.of(20L), bands.stream().map(band -> band.width).toList());
        assertEquals(List.of(4L, 7L, 8L), left.stream().map(block -> block.width).sorted().toList());
    }

    /**
     * By hand: four lanes of 725 hold all but one piece of 950, in one of five ways that use up 42.9 beside the lengths of 1234.5 and
     * 1234.6; that piece and both of 950 x 525 lie across the end of the two lanes of 525, 35.05 m2 on 36.
     */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void lanesThatFitInFewWaysAreFound(int seed) {
        double[][] strips = {{2550, 725, 1}, {1150, 725, 5}, {1550, 725, 1}, {2150, 725, 1}, {2950, 725, 1}, {1950, 725, 2}, {950, 725, 2},
            {1350, 725, 3}, {1234.5, 725, 5}, {1234.6, 725, 1}, {2350, 725, 2}, {6950, 525, 2}, {950, 525, 2}};
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (double[] strip : strips) pieces.add(new RollProblem.Piece("p" + pieces.size(), strip[0], strip[1], (int) strip[2]));
        if (seed > 0) Collections.shuffle(pieces, new Random(seed));
        RollProblem problem = new RollProblem("few ways", List.of(RollSolverTest.roll("W4", 4000, "9.00", 500)), pieces, true, true);
        RollResult result = LayoutJudge.check(problem, RollSolver.solve(problem, RollSolver.QUICK));
        assertEquals(new BigDecimal("81.00"), result.cost());
        assertTrue(result.proven());
    }

    @Test
    void lanesLieWithinTheLengthAndKeepTheGrain() {
        RollProblem given = WallJobs.lanes(6000, 3);
        for (boolean turn : new boolean[] {true, false}) {
            // without turning the strips must lie along the roll already
            List<RollProblem.Piece> pieces = given.pieces().stream()
                    .map(p -> turn ? p : new RollProblem.Piece(p.id(), p.heightMm(), p.widthMm(), 1)).toList();
            RollJob job = RollJob.of(new RollProblem("grain", given.rolls(), pieces, turn, true));
            RollJob.Roll roll = job.rolls.get(0);
            Layout.Banded found = Lengthwise.within(job, roll, job.unitsIn(roll, 12), 1, CutSearch.Pace.QUICK, work());
            assertNotNull(found);
            Layout layout = found.layout(job);
            assertEquals(job.area(), layout.area);
            assertTrue(layout.runs.get(0).used() <= job.unitsIn(roll, 12));
            for (Block.Laid laid : layout.runs.get(0).laid()) {
                RollJob.Type type = job.types[laid.type()];
                boolean asGiven = laid.width() == type.width() && laid.height() == type.height();
                assertTrue(asGiven || turn && laid.width() == type.height() && laid.height() == type.width());
                assertTrue(laid.x() + laid.width() <= roll.width());
            }
        }
    }

    @Test
    void lanesAreTriedWherePiecesShareFewWidths() {
        assertTrue(Lengthwise.pays(RollJob.of(WallJobs.job(6, 1))));
        assertFalse(Lengthwise.pays(RollJob.of(TradeJobs.job(20, 1, true))));
    }
}
