package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.Replan;
import lapyard.cutting.Sawn;
import lapyard.job.TallyFault;
import lapyard.json.Wire.To;
import lapyard.plan.CannotAnswer;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;
import lapyard.working.Effort;

/** The wire form of what has been sawn so far, and of the plan for the rest. Lengths in millimetres. */
final class ReplanJson {
    private static final int MOST_BOARDS = 100_000;

    private ReplanJson() {}

    /**
     * @throws CannotAnswer for what cannot be read or cannot be true, with the board and the amount
     */
    static ObjectNode solve(CuttingProblem problem, JsonNode node, Effort effort) {
        Replan replan = Replan.of(problem, sawn(node), effort);
        if (replan instanceof Replan.Refused refused) {
            throw new CannotAnswer(refused.stops().stream().map(TallyFault::of).toList());
        }
        Replan.Planned planned = (Replan.Planned) replan;
        ObjectNode json = write(planned);
        if (new AskReader("", node).flag("report", false)) CuttingReport.add(json, planned.rest(), planned.result());
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

    private record Rest(int cut, int wanted, @To(CuttingJson.EXACT) double needed, @To(CuttingJson.EXACT) double there, int fit,
            List<Lacking> lacking, Map<String, Integer> buy) {}

    private record Lacking(String id, @To(CuttingJson.EXACT) double length, int count) {}

    private static ObjectNode write(Replan.Planned planned) {
        ObjectNode node = CuttingJson.write(planned.result());
        node.set("rest", Wire.of(new Rest(
                planned.cut(), planned.wanted(), planned.neededMm(), planned.thereMm(), planned.fit(),
                planned.lacking().stream().map(piece -> new Lacking(piece.id(), piece.lengthMm(), piece.count())).toList(),
                planned.buy())));
        return node;
    }
}
