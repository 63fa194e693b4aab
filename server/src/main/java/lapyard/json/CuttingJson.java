package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.Ledger;
import lapyard.cutting.NearMisses;
import lapyard.cutting.NearMisses.NearMiss;
import lapyard.cutting.Replan;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Sawn;
import lapyard.cutting.StagedCutting;
import lapyard.job.TallyFault;
import lapyard.plan.CannotAnswer;
import lapyard.working.BrokenRule;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** The wire form of a cutting problem and of its plan. Lengths in millimetres. */
public final class CuttingJson {
    /** Decimals beyond which a length in a plan is noise. */
    static final int EXACT = 12;

    private static final int MOST_BOARDS = 100_000;

    private CuttingJson() {}

    /** @param sawn boards at which the saw has been; empty where the job is whole */
    record Ask(CuttingProblem problem, Optional<List<Sawn>> sawn, boolean report) {}

    /**
     * Absent: name empty, kerf, end trim and retrim 0, least offcut 300, price 1 a board, as many boards as wanted, a good
     * face on every board, salvage value 0, both ends to trim, count 1, stage 1, any face for a piece.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    static Ask asked(JsonNode node) {
        return Asked.read("cutting", node, ask -> {
            List<CuttingProblem.Stock> stock = Asked.each(ask, "stock", "board", CuttingJson::stock);
            List<CuttingProblem.Demand> pieces = Asked.each(ask, "pieces", "piece", CuttingJson::piece);
            CuttingProblem problem = new CuttingProblem(ask.text("name"), ask.number("kerf"), ask.number("endTrim"), ask.number("keepOffcut"), ask.number("retrim"), stock, pieces);
            List<Sawn> sawn = new ArrayList<>();
            ask.each("sawn", "sawn board", board -> sawn(board, sawn));
            return new Ask(problem, Optional.of(sawn).filter(all -> ask.has("sawn")), ask.flag("report"));
        });
    }

    static ObjectNode solve(JsonNode node, Effort effort, Progress progress) {
        Ask ask = asked(node);
        if (ask.sawn().isPresent()) return replanned(ask, effort);
        CuttingResult result = CuttingSolver.solve(ask.problem(), effort, progress);
        ObjectNode json = Wire.of(result);
        if (ask.report()) reported(json, ask.problem(), result);
        return json;
    }

    /** How the plan is sawn, what is left, what staging costs, what would nearly save. */
    private static void reported(ObjectNode json, CuttingProblem problem, CuttingResult result) {
        List<SawBoard> boards = SawBoard.of(problem, result.plan());
        StagedCutting staging = StagedCutting.of(problem, result, CuttingSolver.QUICK);
        json.setAll(Wire.of(new Report(
                boards, Batches.of(boards, problem.kerfMm(), Batches.Rates.USUAL),
                Ledger.of(boards, problem.kerfMm(), problem.keepOffcutMm()),
                new Ways(staging.pooledOnce(), new StagedCutting.Way(result.boards(), result.paid()), staging.stageByStage()),
                NearMisses.of(problem, result, NearMisses.GLANCE, NearMisses.MOST_LENGTHS))));
    }

    private record Report(List<SawBoard> sawBoards, Batches batches, Ledger ledger, Ways staging, List<NearMiss> nearMisses) {}

    private record Ways(StagedCutting.Way pooledOnce, StagedCutting.Way staged, StagedCutting.Way stageByStage) {}

    private static CuttingProblem.Stock stock(Cursor stock) {
        return new CuttingProblem.Stock(
                Asked.text(stock, "id"), stock.neededLength("length"), stock.price("price").orElse(BigDecimal.ONE), SolveLine.available(stock),
                stock.flag("goodFace") ? 1 : 0, stock.price("salvage").orElse(BigDecimal.ZERO), stock.flag("sawnEnd"));
    }

    private static CuttingProblem.Demand piece(Cursor piece) {
        return new CuttingProblem.Demand(
                Asked.text(piece, "id"), piece.neededLength("length"), piece.count("count"), piece.count("stage"), piece.flag("goodFace") ? 1 : 0);
    }

    /**
     * @throws CannotAnswer for what cannot be true, with the board and the amount
     */
    private static ObjectNode replanned(Ask ask, Effort effort) {
        Replan replan = Replan.of(ask.problem(), ask.sawn().orElseThrow(), effort);
        if (replan instanceof Replan.Refused refused) {
            throw new CannotAnswer(refused.stops().stream().map(TallyFault::of).toList());
        }
        Replan.Planned planned = (Replan.Planned) replan;
        ObjectNode json = Wire.of(planned.result());
        json.set("rest", Wire.of(planned));
        if (ask.report()) reported(json, planned.rest(), planned.result());
        return json;
    }

    /** Absent: count 1, nothing cut, spoiled or lost; opened where something was cut or spoiled. */
    private static boolean sawn(Cursor entry, List<Sawn> all) {
        String board = Asked.text(entry, "board");
        String stock = Asked.text(entry, "stock");
        List<String> cut = ids(entry, "cut");
        List<String> spoiled = ids(entry, "spoiled");
        boolean opened = entry.flag("opened", !cut.isEmpty() || !spoiled.isEmpty());
        double lost = entry.number("lost");
        OptionalDouble left = entry.numberIfAny("left");
        int count = entry.count("count");
        BrokenRule.atMost("sawn", "sawn", all.size() + (long) count, MOST_BOARDS, "boards");
        for (int i = 1; i <= count; i++) all.add(new Sawn(count == 1 ? board : board + "." + i, stock, opened, cut, spoiled, lost, left));
        return true;
    }

    private static List<String> ids(Cursor entry, String field) {
        return entry.words(field, id -> true, other -> entry.misshapen(field, "a list of pieces' ids in quotes", other, "[\"M-A\"]"));
    }
}
