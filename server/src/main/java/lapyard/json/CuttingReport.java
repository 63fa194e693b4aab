package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses;
import lapyard.cutting.SawBoard;
import lapyard.cutting.StagedCutting;

/** What can be told about a plan beside it: how it is sawn, what is left, what staging costs, what would nearly save. */
final class CuttingReport {
    private CuttingReport() {}

    static void add(ObjectNode json, CuttingProblem problem, CuttingResult result) {
        List<SawBoard> boards = SawBoard.of(problem, result.plan());
        json.set("sawBoards", Wire.list(boards));
        json.set("batches", Wire.of(SawWorkJson.batches(Batches.of(boards, problem.kerfMm(), Batches.Rates.USUAL))));
        json.set("ledger", Wire.of(Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm())));
        StagedCutting staging = StagedCutting.of(problem, result, CuttingSolver.QUICK);
        json.set("staging", Wire.of(new Ways(
                staging.pooledOnce(), new StagedCutting.Way(result.boards(), result.paid()), staging.stageByStage())));
        json.set("nearMisses", Wire.list(NearMisses.of(problem, result, NearMisses.GLANCE, NearMisses.MOST_LENGTHS)));
    }

    private record Ways(StagedCutting.Way pooledOnce, StagedCutting.Way staged, StagedCutting.Way stageByStage) {}
}
