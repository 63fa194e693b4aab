package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import lapyard.working.Progress;
import lapyard.working.SearchBudget;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/** The linear programme against a general-purpose library. */
class PartsTest {
    /** ojAlgo's linear solver as the outside reference, over random covering programmes. */
    @Test
    void theLinearProgrammeAgreesWithAnOutsideSolver() {
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            int demands = 2 + random.nextInt(12);
            int limits = random.nextInt(4);
            int rows = demands + limits;
            Master master = new Master(demands, limits, SearchBudget.whole(CuttingSolver.FULL, Progress.UNHEARD));
            ExpressionsBasedModel model = new ExpressionsBasedModel();
            Expression[] lines = new Expression[rows];
            int[] want = random.ints(demands, 0, 20).toArray();
            int[] there = random.ints(limits, 0, 5).toArray();
            for (int r = 0; r < rows; r++) {
                lines[r] = model.newExpression("row" + r);
                if (r < demands) lines[r].lower(want[r]);
                else lines[r].upper(there[r - demands]);
            }
            int[] start = new int[rows];
            for (int r = demands; r < rows; r++) start[r] = r;
            for (int c = 0; c < demands + 30; c++) {
                double cost = c < demands ? 1 : 0.3 + random.nextDouble();
                int[] at;
                double[] entries;
                if (c < demands) {
                    at = new int[] {c};
                    entries = new double[] {1};
                } else {
                    int limit = limits > 0 && random.nextBoolean() ? demands + random.nextInt(limits) : -1;
                    int[] picked = random.ints(0, demands).distinct().limit(2).sorted().toArray();
                    at = limit < 0 ? picked : new int[] {picked[0], picked[1], limit};
                    entries = new double[at.length];
                    for (int i = 0; i < at.length; i++) entries[i] = at[i] < demands ? 1 + random.nextInt(3) : 1;
                }
                int column = master.addColumn(cost, at, entries, at.length);
                if (c < demands) start[c] = column;
                Variable variable = model.newVariable("x" + c).lower(0).weight(cost);
                for (int i = 0; i < at.length; i++) lines[at[i]].set(variable, entries[i]);
            }
            master.startWith(start);
            master.rightHandSide(want, there);
            master.optimise();
            Optimisation.Result outside = model.minimise();
            assertEquals(outside.getValue(), master.value(), 1e-6, "seed " + seed);
        }
    }
}
