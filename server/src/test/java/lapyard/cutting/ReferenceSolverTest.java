package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** OR-Tools CP-SAT 9.15, an independent general-purpose solver, on small jobs of a garden's shape. */
class ReferenceSolverTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void costIsNeverAboveAndTheBoundNeverBelowWhatTheReferenceProves(long seed) {
        int types = 3 + (int) (seed % 4);
        CuttingProblem problem =
                Shapes.trade(types, types + 4 + (int) (seed % 3), 1 + (int) (seed % 3), (int) (seed % 3), seed).problem();
        CuttingResult ours = Jobs.solved(problem, CuttingSolver.FULL);
        Reference.Answer reference = Reference.solve(problem, 8, 2);
        String told = "seed " + seed + ": ours " + ours.cost() + " bound " + ours.lowerBound() + ", reference " + reference;
        assertTrue(ours.unplaced().isEmpty() && ours.proven(), told);
        assertTrue(reference.found(), told);
        assertTrue(ours.cost().compareTo(Reference.money(reference.cents())) <= 0, told);
        if (reference.optimal()) {
            assertTrue(ours.lowerBound().compareTo(Reference.money(reference.cents())) <= 0, told);
            assertTrue(ours.cost().compareTo(Reference.money(reference.cents())) == 0, told);
        }
    }
}
