package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rectangles cut up at random are laid again: the least length is known, as nothing was lost in cutting them up. */
class CutUpTest {
    private static final Effort SHORT = Effort.ofSteps(15_000);

    /** Wide and short ones among them, on which a band across the roll would hold too many pieces. */
    @ParameterizedTest(name = "{0} pieces of {1} x {2}, within {3} %")
    @CsvSource({"60, 2000, 4000, 5", "150, 3200, 1500, 4", "300, 2600, 4500, 3", "700, 3400, 1500, 3"})
    void whatWasCutUpIsLaidAgainWithLittleMore(int pieces, long width, long height, double percent) {
        for (long seed = 41; seed < 43; seed++) {
            RollProblem strip = CutUp.strip(pieces, width, height, 10, 0.2, CutUp.Manner.STRAIGHT, true, seed);
            assertEquals(pieces, strip.pieces().size());
            RollResult result = LayoutJudge.check(strip, RollSolver.solve(strip, SHORT));
            double over = 100 * (result.rolls().get(0).usedMm() / height - 1);
            assertTrue(over >= -1e-9 && over <= percent, strip.name() + ": " + over + " %");
            assertTrue(result.lowerBound().doubleValue() <= height, strip.name());
        }
    }

    /** Rectangles that straight cuts cannot part: pieces are also cut out by four cuts round one in the middle. */
    @ParameterizedTest(name = "{0} pieces of {1} x {2}, {3} steps, within {4} %")
    @CsvSource({"24, 1600, 2400, 200000, 1", "50, 2000, 4000, 60000, 1.5", "120, 3200, 1500, 60000, 2", "300, 2600, 4500, 60000, 1"})
    void whatStraightCutsCannotPartIsLaidAgainWithLittleMore(int pieces, long width, long height, long steps, double percent) {
        for (long seed = 41; seed < 43; seed++) {
            RollProblem strip = CutUp.strip(pieces, width, height, 10, 0.2, CutUp.Manner.PINWHEEL, false, seed);
            RollResult result = LayoutJudge.check(strip, RollSolver.solve(strip, Effort.ofSteps(steps)));
            double over = 100 * (result.rolls().get(0).usedMm() / height - 1);
            assertTrue(over >= -1e-9 && over <= percent, strip.name() + ": " + over + " %");
        }
    }

    /** Five pieces are over a third as long as the strip and longer than it is wide: what is laid about them must leave them room. */
    @Test
    void longThinPiecesAreNotLeftOver() {
        RollProblem strip = CutUp.strip(100, 1200, 4500, 5, 0.2, CutUp.Manner.PINWHEEL, false, 301_105);
        assertEquals(5, strip.pieces().stream().filter(piece -> Math.max(piece.widthMm(), piece.heightMm()) > 1500).count());
        RollResult result = LayoutJudge.check(strip, RollSolver.solve(strip, Effort.ofSteps(60_000)));
        assertTrue(result.rolls().get(0).usedMm() <= 1.04 * 4500, "" + result.rolls().get(0).usedMm());
    }

    /** On millimetres hardly two sides are alike: beams end with a piece or two left, which have room a little further on. */
    @Test
    void aPieceOrTwoThatAreLeftMakeTheStretchALittleLonger() {
        RollProblem strip = CutUp.strip(150, 2400, 4500, 1, 0.2, CutUp.Manner.PINWHEEL, false, 2003151);
        RollResult result = LayoutJudge.check(strip, RollSolver.solve(strip, Effort.ofSteps(100_000)));
        assertTrue(result.rolls().get(0).usedMm() <= 1.017 * 4500, "" + result.rolls().get(0).usedMm());
    }

    @Test
    void slicesShareTheBandsOutEvenly() {
        Random random = new Random(5);
        for (int slices = 2; slices <= 5; slices++) {
            List<Block> bands = new ArrayList<>();
            long sum = 0;
            for (int i = 0; i < 6 * slices; i++) {
                bands.add(Block.piece(i, 100, 200 + random.nextInt(400)));
                sum += bands.get(i).height;
            }
            Block all = Slices.beside(bands, slices);
            assertEquals(bands.size(), all.pieces);
            assertEquals(100L * slices, all.width);
            assertTrue(all.height >= (sum + slices - 1) / slices && all.height <= 1.01 * sum / slices, slices + ": " + all.height + " of " + sum);
            List<Block.Laid> laid = new ArrayList<>();
            all.lay(0, 0, laid);
            assertTrue(LayoutJudge.straightCutsDo(laid.stream()
                    .map(one -> new long[] {one.x(), one.y(), one.x() + one.width(), one.y() + one.height()}).toList()));
        }
    }
}
