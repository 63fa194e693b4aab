package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlantedTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void findsAPlanAsGoodAsTheOneThePiecesWereCutFrom(long seed) {
        Shapes.Case planted = Shapes.planted((int) (3 + 3 * seed), 4800, (int) (seed % 5), 10, seed);
        var result = Jobs.solved(planted.problem(), CuttingSolver.FULL);
        assertEquals(planted.optimum(), result.boards());
        assertEquals(0, new BigDecimal("7.35").multiply(BigDecimal.valueOf(planted.optimum())).compareTo(result.cost()));
        assertTrue(result.proven());
    }

    /** The shape of Falkenauer's triplets (J. Heuristics 2, 1996): every board is full, so n/3 is the least. */
    @ParameterizedTest
    @ValueSource(ints = {60, 120})
    void findsTheTripletsThatFillEveryBoard(int n) {
        Shapes.Case triplets = Shapes.triplets(n, 7);
        var result = Jobs.solved(triplets.problem(), CuttingSolver.FULL);
        assertEquals(triplets.optimum(), result.boards());
        assertTrue(result.proven());
    }

    /** Uniform (Falkenauer 1996) and narrow (Schwerin and Waescher, ITOR 4, 1997) shapes close to their bound. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void provesTheUniformAndTheNarrowShapes(long seed) {
        assertTrue(Jobs.solved(Shapes.uniform(250, seed).problem(), CuttingSolver.FULL).proven());
        assertTrue(Jobs.solved(Shapes.narrow(120, seed).problem(), CuttingSolver.FULL).proven());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void aFieldOfThreeThousandPiecesComesWithinATenthOfAPercentQuickly(long seed) {
        var result = Jobs.solved(Shapes.trade(60, 3000, 8, 30, seed).problem(), CuttingSolver.QUICK);
        double gap = result.cost().doubleValue() / result.lowerBound().doubleValue() - 1;
        assertTrue(gap <= 0.001, "gap " + gap);
    }
}
