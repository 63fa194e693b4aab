package lapyard.sheets;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Looks for a run of all pieces on a roll by straight cuts: one {@link CutBeam} after another, wider and wider, each asked for the least
 * number of sold steps that is not ruled out and then for some between that and the fewest found. Tastes are drawn near the usual one.
 */
final class CutBeamSearch {
    /** Of more pieces the bands are dense enough, and a beam is slow. */
    static final int MOST_PIECES = 80;

    /** Weights that closed most liner jobs of made-up yards, and how far the logarithm of a weight may lie from them. */
    private static final CutBeam.Taste USUAL = new CutBeam.Taste(0.02, 0.012);
    private static final double FAR = 1.2;
    private static final int NARROWEST = 16;
    /** A beam doubles in each round at first, and then once in a while. */
    private static final int DOUBLED = 5;
    private static final int ROUNDS_A_DOUBLING = 6;
    private static final int MOST_DOUBLED = 10;

    private CutBeamSearch() {}

    /**
     * @param least no run takes fewer sold steps
     * @param below the run must take fewer
     * @return the shortest run found; null where none was, which proves nothing
     */
    static Layout.Run shorter(RollJob job, RollJob.Roll roll, long least, long below, long seed, RollBudget work) {
        long most = roll.longest() == RollJob.NO_LIMIT ? below - 1 : Math.min(below - 1, job.steps(roll, roll.longest()));
        if (most < least) return null;
        SplittableRandom random = new SplittableRandom(seed);
        CutBeam beam = new CutBeam(job, roll.width(), job.unitsIn(roll, most), work);
        Layout.Run best = null;
        for (int round = 0; most >= least && !work.over(); round++) {
            CutBeam.Taste taste = round == 0 ? USUAL : new CutBeam.Taste(USUAL.start() * scale(random), USUAL.open() * scale(random));
            int width = NARROWEST << Math.min(MOST_DOUBLED, Math.min(round, DOUBLED) + Math.max(0, round - DOUBLED) / ROUNDS_A_DOUBLING);
            long asked = least;
            for (int n = 0; n < 2 && most >= least && !work.over(); n++) {
                List<Block.Laid> laid = beam.fit(roll.width(), job.unitsIn(roll, asked), width, taste, work);
                if (laid != null) {
                    best = new Layout.Run(roll, CutBeam.length(laid), laid);
                    most = job.steps(roll, best.used()) - 1;
                }
                if (most == least || asked > most) break;
                asked = most - (long) ((most - least) * 0.9 * random.nextDouble());
            }
        }
        return best;
    }

    private static double scale(SplittableRandom random) {
        return Math.exp(FAR * (2 * random.nextDouble() - 1));
    }
}
