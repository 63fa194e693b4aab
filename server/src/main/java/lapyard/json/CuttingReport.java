package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses;
import lapyard.cutting.SawBoard;
import lapyard.cutting.StagedCutting;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.To;

/** What can be told about a plan beside it: how it is sawn, what is left, what staging costs, what would nearly save. */
final class CuttingReport {
    private CuttingReport() {}

    static void add(ObjectNode json, CuttingProblem problem, CuttingResult result) {
        List<SawBoard> boards = SawBoard.of(problem, result.plan());
        json.set("sawBoards", Wire.list(SawWorkJson.boards(boards)));
        json.set("batches", Wire.of(SawWorkJson.batches(Batches.of(boards, problem.kerfMm(), Batches.Rates.USUAL))));
        json.set("ledger", Wire.of(SawWorkJson.ledger(Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm()))));
        StagedCutting staging = StagedCutting.of(problem, result, CuttingSolver.QUICK);
        json.set("staging", Wire.of(new Ways(
                way(staging.pooledOnce()), new Way(result.boards(), result.paid()), way(staging.stageByStage()))));
        json.set("nearMisses", Wire.list(
                NearMisses.of(problem, result, NearMisses.GLANCE, NearMisses.MOST_LENGTHS).stream()
                        .map(miss -> new Miss(miss.lengthMm(), miss.count(), miss.shorterMm(), miss.sure(), miss.saved(),
                                miss.boardsSaved(), miss.ids()))
                        .toList()));
    }

    private record Ways(Way pooledOnce, Way staged, Way stageByStage) {}

    private record Way(int boards, @Exact BigDecimal cost) {}

    private record Miss(@To(CuttingJson.EXACT) double length, int count, int shorter, boolean sure, @Exact BigDecimal saved,
            int boardsSaved, List<String> pieces) {}

    private static Way way(StagedCutting.Way way) {
        return new Way(way.boards(), way.paid());
    }
}
