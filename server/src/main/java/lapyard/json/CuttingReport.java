package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses;
import lapyard.cutting.NearMisses.NearMiss;
import lapyard.cutting.SawBoard;
import lapyard.cutting.StagedCutting;

/** What can be told about a plan beside it: how it is sawn, what is left, what staging costs, what would nearly save. */
final class CuttingReport {
    private CuttingReport() {}

    static void add(ObjectNode json, CuttingProblem problem, CuttingResult result) {
        List<SawBoard> boards = SawBoard.of(problem, result.plan());
        StagedCutting staging = StagedCutting.of(problem, result, CuttingSolver.QUICK);
        json.setAll(Wire.of(new Report(
                boards, SawWorkJson.batches(Batches.of(boards, problem.kerfMm(), Batches.Rates.USUAL)),
                Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm()),
                new Ways(staging.pooledOnce(), new StagedCutting.Way(result.boards(), result.paid()), staging.stageByStage()),
                NearMisses.of(problem, result, NearMisses.GLANCE, NearMisses.MOST_LENGTHS))));
    }

    private record Report(List<SawBoard> sawBoards, SawWorkJson.BatchesShape batches, Ledger ledger, Ways staging, List<NearMiss> nearMisses) {}

    private record Ways(StagedCutting.Way pooledOnce, StagedCutting.Way staged, StagedCutting.Way stageByStage) {}
}
