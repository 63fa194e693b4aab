package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
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
    private static final Set<String> SAWN = Set.of("board", "stock", "count", "opened", "cut", "spoiled", "lost", "left");
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
        if (AskReader.flag(node, "", "report", false)) CuttingReport.add(json, planned.rest(), planned.result());
        return json;
    }

    /** Absent: count 1, nothing cut, spoiled or lost; opened where something was cut or spoiled. */
    static List<Sawn> sawn(JsonNode problem) {
        List<Sawn> all = new ArrayList<>();
        for (AskReader.Entry entry : AskReader.entries(problem, "sawn")) {
            JsonNode node = entry.node();
            String at = entry.at();
            AskReader.known(at, node, SAWN);
            String board = AskReader.text(node, at, "board");
            List<String> cut = ids(node, at, "cut");
            List<String> spoiled = ids(node, at, "spoiled");
            int count = node.has("count") ? AskReader.whole(node, at, "count", 1) : 1;
            BrokenRule.atMost(at, "sawn", all.size() + (long) count, MOST_BOARDS, "boards");
            for (int i = 1; i <= count; i++) {
                all.add(new Sawn(
                        count == 1 ? board : board + "." + i,
                        AskReader.text(node, at, "stock"),
                        AskReader.flag(node, at, "opened", !cut.isEmpty() || !spoiled.isEmpty()),
                        cut,
                        spoiled,
                        AskReader.length(node, at, "lost", 0.0, true),
                        node.has("left")
                                ? OptionalDouble.of(AskReader.length(node, at, "left", null, true))
                                : OptionalDouble.empty()));
            }
        }
        return all;
    }

    private static List<String> ids(JsonNode node, String at, String field) {
        List<String> ids = new ArrayList<>();
        if (!node.has(field)) return ids;
        for (JsonNode id : AskReader.list(node, at, field)) {
            if (!id.isTextual()) throw AskReader.shape(at + "." + field, "a list of pieces' ids in quotes", id, WayKind.IN_QUOTES);
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
