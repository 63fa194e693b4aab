package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.cutting.CuttingSolver;
import lapyard.sheets.RollSolver;
import lapyard.stages.StagingSolver;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** One problem's text in, its result out, for the command line and HTTP alike. */
public final class SolveLine {
    private SolveLine() {}

    /**
     * A job, or what is left of one where {@code sawn} tells what has been done.
     *
     * @param seconds  at most so long
     * @param progress of the whole job alone, not of what is left of one
     * @throws IllegalArgumentException for a problem that can never make sense, naming the field and the amount
     */
    public static ObjectNode cutting(String text, double seconds, Progress progress) throws UnreadableDocument {
        JsonNode node = DocumentText.parse(text);
        CuttingProblem problem = CuttingJson.read(node);
        var effort = new Effort(Long.MAX_VALUE, limit(seconds));
        if (node.has("sawn")) return ReplanJson.solve(problem, node, effort);
        CuttingResult result = CuttingSolver.solve(problem, effort, progress);
        ObjectNode json = CuttingJson.write(result);
        if (new AskReader("", node).flag("report", false)) CuttingReport.add(json, problem, result);
        return json;
    }

    /** As {@link #cutting}. */
    public static ObjectNode rolls(String text, double seconds, Progress progress) throws UnreadableDocument {
        return RollsJson.write(RollSolver.solve(
                RollsJson.read(DocumentText.parse(text)), new Effort(Long.MAX_VALUE, limit(seconds)), progress));
    }

    /** As {@link #cutting}. */
    public static ObjectNode staging(String text, double seconds, Progress progress) throws UnreadableDocument {
        return StagingJson.write(StagingSolver.solve(
                StagingJson.read(DocumentText.parse(text)), new Effort(Long.MAX_VALUE, limit(seconds)), progress));
    }

    private static Duration limit(double seconds) {
        return Duration.ofNanos((long) (seconds * 1e9));
    }
}
