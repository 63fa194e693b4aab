package lapyard.sheets;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Liner jobs as walls give them, from a seed: strips of few widths and many lengths, most of them in pairs. */
public final class WallJobs {
    private static final int[] WIDTHS_MM = {525, 725, 765, 925};

    private WallJobs() {}

    /** Beds of four or six walls on a roll of 4 m sold by the half metre, and in one job of three also on one of 2 m by the metre. */
    public static RollProblem job(int beds, long seed) {
        Random random = new Random(seed);
        List<RollProblem.Piece> pieces = new ArrayList<>();
        int common = WIDTHS_MM[random.nextInt(4)];
        for (int bed = 0; bed < beds; bed++) {
            int width = random.nextInt(4) == 0 ? WIDTHS_MM[random.nextInt(4)] : common;
            int pairs = random.nextInt(4) == 0 ? 3 : 2;
            int grid = random.nextInt(3) == 0 ? 10 : 50;
            for (int pair = 0; pair < pairs; pair++)
                pieces.add(new RollProblem.Piece("b" + bed + "-" + pair, 800 + grid * random.nextInt(3200 / grid), width, 2));
        }
        List<RollProblem.Stock> rolls = new ArrayList<>(List.of(RollSolverTest.roll("W4", 4000, "9.00", 500)));
        if (random.nextInt(3) == 0) rolls.add(RollSolverTest.roll("W2", 2000, "4.70", 1000));
        return new RollProblem("walls of " + beds + " beds, seed " + seed, rolls, pieces, true, true);
    }

    /** Four lanes of 725 and two of 525 on a roll of 4 m, each cut up but for up to 150: {@code lengthMm} holds them, no half metre less does. */
    static RollProblem lanes(int lengthMm, long seed) {
        Random random = new Random(seed);
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (int lane = 0; lane < 6; lane++) {
            int left = lengthMm - 50 * random.nextInt(4);
            while (left > 0) {
                int piece = left < 2200 ? left : 800 + 50 * random.nextInt((Math.min(left - 800, 3600) - 800) / 50 + 1);
                pieces.add(new RollProblem.Piece("l" + lane + "-" + left, piece, lane < 4 ? 725 : 525, 1));
                left -= piece;
            }
        }
        Collections.shuffle(pieces, random);
        return new RollProblem("lanes, seed " + seed, List.of(RollSolverTest.roll("W4", 4000, "9.00", 500)), pieces, true, true);
    }
}
