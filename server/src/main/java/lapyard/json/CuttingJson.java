package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
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
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** The wire form of a cutting problem and of its plan. Lengths in millimetres. */
public final class CuttingJson {
    private static final double KEEP_OFFCUT_MM = 300;

    /** Decimals beyond which a length in a plan is noise. */
    static final int EXACT = 12;

    private static final int MOST_BOARDS = 100_000;

    private CuttingJson() {}

    /**
     * Absent: name empty, kerf, end trim and retrim 0, least offcut 300, price 1 a board, as many boards as wanted, a good
     * face on every board, salvage value 0, both ends to trim, count 1, stage 1, any face for a piece.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    public static CuttingProblem read(JsonNode node) {
        AskReader ask = AskReader.of("problem", node, "name", "kerf", "endTrim", "keepOffcut", "retrim", "stock", "pieces", "sawn", "report");
        List<CuttingProblem.Stock> stock = ask.each("stock", CuttingJson::stock);
        List<CuttingProblem.Demand> pieces = ask.each("pieces", CuttingJson::piece);
        return new CuttingProblem(
                ask.textIfAny("name"), ask.length("kerf", 0, true), ask.length("endTrim", 0, true), ask.length("keepOffcut", KEEP_OFFCUT_MM, true),
                ask.length("retrim", 0, true), stock, pieces);
    }

    static ObjectNode solve(JsonNode node, Effort effort, Progress progress) {
        CuttingProblem problem = read(node);
        if (node.has("sawn")) return replanned(problem, node, effort);
        CuttingResult result = CuttingSolver.solve(problem, effort, progress);
        ObjectNode json = Wire.of(result);
        reported(json, node, problem, result);
        return json;
    }

    /** Where a report is asked for: how the plan is sawn, what is left, what staging costs, what would nearly save. */
    static void reported(ObjectNode json, JsonNode node, CuttingProblem problem, CuttingResult result) {
        if (!new AskReader("", node).flag("report", false)) return;
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

    private static CuttingProblem.Stock stock(AskReader stock) {
        stock.known("id", "length", "price", "available", "goodFace", "salvage", "sawnEnd");
        OptionalInt available = stock.wholeIfAny("available");
        return new CuttingProblem.Stock(
                stock.text("id"), stock.length("length"), stock.money("price", BigDecimal.ONE), available, stock.flag("goodFace", true) ? 1 : 0,
                stock.money("salvage", BigDecimal.ZERO), stock.flag("sawnEnd", false));
    }

    private static CuttingProblem.Demand piece(AskReader piece) {
        piece.known("id", "length", "count", "stage", "goodFace");
        return new CuttingProblem.Demand(
                piece.text("id"), piece.length("length"), piece.whole("count", 0, 1), piece.whole("stage", 0, 1), piece.flag("goodFace", false) ? 1 : 0);
    }

    /**
     * @throws CannotAnswer for what cannot be read or cannot be true, with the board and the amount
     */
    private static ObjectNode replanned(CuttingProblem problem, JsonNode node, Effort effort) {
        Replan replan = Replan.of(problem, sawn(node), effort);
        if (replan instanceof Replan.Refused refused) {
            throw new CannotAnswer(refused.stops().stream().map(TallyFault::of).toList());
        }
        Replan.Planned planned = (Replan.Planned) replan;
        ObjectNode json = Wire.of(planned.result());
        json.set("rest", Wire.of(planned));
        reported(json, node, planned.rest(), planned.result());
        return json;
    }

    /** Absent: count 1, nothing cut, spoiled or lost; opened where something was cut or spoiled. */
    static List<Sawn> sawn(JsonNode problem) {
        List<Sawn> all = new ArrayList<>();
        for (AskReader entry : new AskReader("", problem).entries("sawn")) {
            entry.known("board", "stock", "count", "opened", "cut", "spoiled", "lost", "left");
            String board = entry.text("board");
            List<String> cut = ids(entry, "cut");
            List<String> spoiled = ids(entry, "spoiled");
            int count = entry.whole("count", 1, 1);
            BrokenRule.atMost(entry.at(), "sawn", all.size() + (long) count, MOST_BOARDS, "boards");
            for (int i = 1; i <= count; i++) {
                all.add(new Sawn(
                        count == 1 ? board : board + "." + i, entry.text("stock"), entry.flag("opened", !cut.isEmpty() || !spoiled.isEmpty()), cut, spoiled,
                        entry.length("lost", 0, true), entry.lengthIfAny("left", true)));
            }
        }
        return all;
    }

    private static List<String> ids(AskReader entry, String field) {
        List<String> ids = new ArrayList<>();
        if (!entry.has(field)) return ids;
        for (JsonNode id : entry.list(field)) {
            if (!id.isTextual()) throw AskReader.shape(entry.path(field), "a list of pieces' ids in quotes", id, WayKind.IN_QUOTES);
            ids.add(id.textValue());
        }
        return ids;
    }
}
