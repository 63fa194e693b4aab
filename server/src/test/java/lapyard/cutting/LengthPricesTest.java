package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import lapyard.cutting.CuttingProblem.Demand;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Prices found for one job bound other jobs with the same saw and boards. */
class LengthPricesTest {
    private static final Effort EFFORT = Effort.ofSteps(100_000);
    private static final int JOBS = 150;
    private static final int OTHERS = 5;

    /** The reference is every way to share out the pieces of the other job. */
    @Test
    void noWayOfSharingOutOtherPiecesCostsLess() {
        int compared = 0;
        int met = 0;
        for (long seed = 1; seed <= JOBS; seed++) {
            CuttingProblem job = BruteForceTest.random(seed);
            Optional<LengthPrices> prices = LengthPrices.of(job, EFFORT);
            if (prices.isEmpty()) continue;
            for (int n = 0; n < OTHERS; n++) {
                CuttingProblem other = job.with(job.stock(), BruteForceTest.random(n == 0 ? seed : 10_000 + seed * OTHERS + n).pieces());
                BruteForce.Least least = BruteForce.of(other);
                if (least == null) continue;
                BigDecimal bound = prices.get().atLeast(n % 2 == 0 ? other.pieces() : apart(other.pieces()));
                assertTrue(bound.compareTo(least.money()) <= 0, other.name() + " " + n + ": " + bound + " against " + least);
                compared++;
                if (bound.signum() > 0 && bound.compareTo(least.money()) == 0) met++;
            }
        }
        assertTrue(compared > 200, "enough are compared: " + compared);
        assertTrue(6 * met > compared, "the bound is often what they cost: " + met + " of " + compared);
    }

    /** Each piece by itself, for a stage of its own. */
    private static List<Demand> apart(List<Demand> pieces) {
        List<Demand> apart = new ArrayList<>();
        for (Demand piece : pieces) {
            for (int stage = 1; stage <= piece.count(); stage++) {
                apart.add(new Demand(piece.id() + "/" + stage, piece.lengthMm(), 1, stage, piece.goodFaces()));
            }
        }
        return apart;
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(101, 112);
    }

    /** The reference is the bound that the other job's own search proves: little of it may be lost with two parts of long walls changed, and next to nothing without. */
    @ParameterizedTest
    @MethodSource("seeds")
    void aJobWithTwoOtherLengthsIsBoundedNearlyAsWellAsByItsOwnSearch(long seed) {
        Random random = new Random(seed);
        double[] rest = new double[24];
        for (int i = 0; i < rest.length; i += 2) {
            rest[i] = 700 + 75 * i + random.nextInt(75);
            rest[i + 1] = 2 + random.nextInt(6);
        }
        int first = 2500 + 10 * random.nextInt(40);
        LengthPrices prices = LengthPrices.of(walls(first, rest), EFFORT).orElseThrow();
        for (int other = first; other <= first + 500; other += 100) {
            CuttingProblem job = walls(other, rest);
            CuttingResult searched = CuttingSolver.cheapest(job, CuttingSolver.QUICK);
            BigDecimal bound = prices.atLeast(job.pieces());
            assertTrue(bound.compareTo(searched.cost()) <= 0, "bound " + bound + " against " + searched.cost());
            assertTrue(bound.doubleValue() >= (other == first ? 0.995 : 0.95) * searched.lowerBound().doubleValue(), "bound " + bound + " against " + searched.lowerBound());
        }
    }

    /** By hand: four of 742.5 and three cuts of 4 are 2982, 2 more than a board of 3000 trimmed by 10 holds; so three lie on each, and 500 beside three of them. */
    @Test
    void halfAMillimetreIsToldWhereItDecides() {
        CuttingProblem job = Jobs.job("halves", 4, 10, List.of(Jobs.board(3000, "13.60")), Jobs.pieces(742.5, 12, 500, 1));
        assertEquals(0, new BigDecimal("54.40").compareTo(LengthPrices.of(job, EFFORT).orElseThrow().atLeast(job.pieces())));
    }

    /** Six walls of 5000 in two parts, the first of this length, beside other pieces. */
    private static CuttingProblem walls(int first, double[] rest) {
        List<Demand> pieces = new ArrayList<>(List.of(Jobs.piece("first", first, 6), Jobs.piece("second", 5000 - first, 6)));
        pieces.addAll(Jobs.pieces(rest));
        return Jobs.job("walls", 4, 10, List.of(Jobs.board(1800, "8.40"), Jobs.board(2400, "10.90"), Jobs.board(3000, "13.60"), Jobs.board(4800, "22.70")), pieces);
    }
}
