package lapyard.sheets;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Looks for a shorter run of given pieces on a roll: one {@link SkylineBeam} after another, each asked for a run that is
 * shorter than the shortest by some part of what can be saved at most. Tastes are drawn at random, half of them near the
 * one that last gave a shorter run.
 *
 * @see "Wei, Oon, Zhu and Lim, A skyline heuristic for the 2D rectangular packing and strip packing problems, European
 *     Journal of Operational Research 215 (2011), for a search over lengths with growing effort"
 */
final class SkylineSearch {
    /** Weights that are best on most strips, found by trying on strips cut up at random. */
    private static final SkylineBeam.Taste USUAL = new SkylineBeam.Taste(0.008, 0.0075);
    /** How far the logarithm of a weight may lie from the usual one, and from the one that was best. */
    private static final double FAR = 1.2;
    private static final double NEAR = 0.4;

    private final RollJob job;
    private final RollJob.Roll roll;
    private final SkylineBeam beam;
    private final int pieces;
    private final SplittableRandom random;
    private SkylineBeam.Taste best = USUAL;
    private boolean begun;

    SkylineSearch(RollJob job, int[] counts, RollJob.Roll roll, long seed) {
        this.job = job;
        this.roll = roll;
        this.beam = new SkylineBeam(job, counts, roll.width());
        this.random = new SplittableRandom(seed);
        int sum = 0;
        for (int count : counts) sum += count;
        this.pieces = sum;
    }

    /**
     * @param least      no run is shorter, in units
     * @param below      the run must be shorter
     * @param operations about what the beam may take
     * @return a shorter run; null where none was found
     */
    Layout.Run shorter(long least, long below, long operations, RollBudget work) {
        long most = Math.min(below - 1, roll.longest());
        if (most < least) return null;
        long saved = begun ? (long) ((most - least) * 0.7 * random.nextDouble()) : 0;
        // a run fills its last step, where steps are longer than units
        long asked = Math.min(most, job.unitsIn(roll, job.steps(roll, most - saved)));
        SkylineBeam.Taste taste = taste();
        begun = true;
        int width = (int) Math.max(1, Math.min(1 << 16, operations / ((long) pieces * pieces)));
        List<Block.Laid> laid = beam.fit(asked, most, width, taste, work);
        if (laid == null) return null;
        best = taste;
        return new Layout.Run(roll, CutBeam.length(laid), laid);
    }

    private SkylineBeam.Taste taste() {
        if (!begun) return USUAL;
        boolean near = random.nextBoolean();
        SkylineBeam.Taste from = near ? best : USUAL;
        double far = near ? NEAR : FAR;
        return new SkylineBeam.Taste(from.start() * scale(far), from.corner() * scale(far));
    }

    private double scale(double far) {
        return Math.exp(far * (2 * random.nextDouble() - 1));
    }
}
