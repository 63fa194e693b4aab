package lapyard.cutting;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The same job as a model for OR-Tools CP-SAT, a general-purpose solver: how many of each length lie on each board.
 * Lengths in whole millimetres, prices in whole cents.
 */
public final class Reference {
    /** @param bound cents that no plan undercuts, by the solver's own account */
    public record Answer(boolean found, long cents, boolean optimal, double bound) {}

    private Reference() {}

    /** @param boardsAtMost bought boards offered of each kind */
    public static Answer solve(CuttingProblem problem, int boardsAtMost, double seconds) {
        Loader.loadNativeLibraries();
        CpModel model = new CpModel();
        int n = problem.pieces().size();
        List<LinearExprBuilder> cut = new ArrayList<>();
        for (int i = 0; i < n; i++) cut.add(LinearExpr.newBuilder());
        LinearExprBuilder cost = LinearExpr.newBuilder();
        for (var stock : problem.stock()) {
            int offered = Math.min(stock.available().orElse(boardsAtMost), boardsAtMost);
            long room = whole(stock.lengthMm() - 2 * problem.endTrimMm() + problem.kerfMm());
            IntVar[] before = null;
            IntVar usedBefore = null;
            for (int b = 0; b < offered; b++) {
                IntVar used = model.newBoolVar("used");
                IntVar[] copies = new IntVar[n];
                LinearExprBuilder weight = LinearExpr.newBuilder();
                for (int i = 0; i < n; i++) {
                    var piece = problem.pieces().get(i);
                    long each = whole(piece.lengthMm() + problem.kerfMm());
                    long most = piece.goodFaces() > stock.goodFaces() ? 0 : Math.min(piece.count(), room / each);
                    copies[i] = model.newIntVar(0, Math.max(0, most), "copies");
                    weight.addTerm(copies[i], each);
                    cut.get(i).add(copies[i]);
                }
                model.addLessOrEqual(weight, LinearExpr.term(used, Math.max(0, room)));
                cost.addTerm(used, stock.price().movePointRight(2).setScale(0, RoundingMode.UNNECESSARY).longValue());
                if (usedBefore != null) {
                    model.addLessOrEqual(used, usedBefore);
                    model.addLessOrEqual(copies[0], before[0]);
                }
                usedBefore = used;
                before = copies;
            }
        }
        for (int i = 0; i < n; i++) model.addEquality(cut.get(i), problem.pieces().get(i).count());
        model.minimize(cost);
        CpSolver solver = new CpSolver();
        solver.getParameters().setMaxTimeInSeconds(seconds);
        solver.getParameters().setNumWorkers(1);
        solver.getParameters().setRandomSeed(1);
        CpSolverStatus status = solver.solve(model);
        boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        return new Answer(
                found,
                found ? Math.round(solver.objectiveValue()) : -1,
                status == CpSolverStatus.OPTIMAL,
                solver.bestObjectiveBound());
    }

    static BigDecimal money(long cents) {
        return BigDecimal.valueOf(cents, 2);
    }

    private static long whole(double mm) {
        return Math.round(mm);
    }
}
