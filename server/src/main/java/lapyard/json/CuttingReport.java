package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Staging;

/** What can be told about a plan beside it: how it is sawn, what is left, what staging costs, what would nearly save. */
final class CuttingReport {
    private CuttingReport() {}

    static void add(ObjectNode json, CuttingProblem problem, CuttingResult result) {
        List<SawBoard> boards = SawBoard.of(problem, result.plan());
        ArrayNode sawn = json.putArray("sawBoards");
        boards.forEach(board -> sawn.add(SawWorkJson.board(board)));
        json.set("batches", SawWorkJson.batches(Batches.of(boards, problem.kerfMm(), Batches.Rates.USUAL)));
        json.set("ledger", SawWorkJson.ledger(Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm())));
        Staging staging = Staging.of(problem, result, CuttingSolver.QUICK);
        ObjectNode ways = json.putObject("staging");
        way(ways.putObject("pooledOnce"), staging.pooledOnce());
        way(ways.putObject("staged"), new Staging.Way(result.boards(), result.paid()));
        way(ways.putObject("stageByStage"), staging.stageByStage());
        ArrayNode misses = json.putArray("nearMisses");
        for (NearMisses.NearMiss miss : NearMisses.of(problem, result, Set.of(), NearMisses.GLANCE, NearMisses.MOST_LENGTHS)) {
            ObjectNode one = misses.addObject();
            one.set("length", CuttingJson.millimetres(miss.lengthMm()));
            one.put("count", miss.count());
            one.put("shorter", miss.shorterMm());
            one.put("sure", miss.sure());
            one.set("saved", CuttingJson.money(miss.saved()));
            one.put("boardsSaved", miss.boardsSaved());
            ArrayNode pieces = one.putArray("pieces");
            miss.ids().forEach(pieces::add);
        }
    }

    private static void way(ObjectNode json, Staging.Way way) {
        json.put("boards", way.boards());
        json.set("cost", CuttingJson.money(way.paid()));
    }
}
