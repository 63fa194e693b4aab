package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollSolver;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingSolver;
import lapyard.working.BrokenRule;
import lapyard.working.Effort;
import lapyard.working.Progress;

/** One problem's text in, its result out, for the command line and HTTP alike. */
public final class SolveLine {
    private static final int MOST_TASKS = 20_000;
    private static final int MOST_RESOURCES = 100;
    private static final int LONGEST_CYCLE = 100_000;

    private SolveLine() {}

    /**
     * @param kind     {@code cutting}, a job or, where {@code sawn} tells what has been done, what is left of one; {@code rolls}; {@code staging}
     * @param seconds  at most so long
     * @param progress of the whole job alone, not of what is left of one
     * @throws IllegalArgumentException for a problem that can never make sense, naming the field and the amount
     */
    public static ObjectNode solve(String kind, String text, double seconds, Progress progress) {
        JsonNode node = DocumentText.parse(text);
        Effort effort = new Effort(Long.MAX_VALUE, Duration.ofNanos((long) (seconds * 1e9)));
        return switch (kind) {
            case "cutting" -> CuttingJson.solve(node, effort, progress);
            case "rolls" -> Wire.of(RollSolver.solve(rolls(node), effort, progress));
            case "staging" -> Wire.of(StagingSolver.solve(staging(node), effort, progress));
            default -> throw new IllegalStateException("no problems of kind " + kind + " are solved here");
        };
    }

    /**
     * A roll problem, lengths in millimetres. Absent: name empty, price 1 a metre, step 1, no longest run, as many runs as wanted, count 1, turning allowed,
     * straight cuts.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    static RollProblem rolls(JsonNode node) {
        AskReader ask = AskReader.of("problem", node, "name", "rolls", "pieces", "turn", "straightCuts");
        List<RollProblem.Stock> rolls = ask.each("rolls", SolveLine::roll);
        List<RollProblem.Piece> pieces = ask.each("pieces", SolveLine::piece);
        return new RollProblem(ask.textIfAny("name"), rolls, pieces, ask.flag("turn", true), ask.flag("straightCuts", true));
    }

    private static RollProblem.Stock roll(AskReader roll) {
        roll.known("id", "width", "price", "step", "maxLength", "available");
        return new RollProblem.Stock(
                roll.text("id"), roll.length("width"), roll.money("price", BigDecimal.ONE), roll.length("step", 1, false),
                roll.lengthIfAny("maxLength", false), roll.wholeIfAny("available"));
    }

    private static RollProblem.Piece piece(AskReader piece) {
        piece.known("id", "width", "height", "count");
        return new RollProblem.Piece(piece.text("id"), piece.length("width"), piece.length("height"), piece.whole("count", 1, 1));
    }

    /**
     * A staging problem, times in units of one clock. Absent: name empty, uses none of any resource, after nothing, lag 0, a task may pause, every unit worked.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    static StagingProblem staging(JsonNode node) {
        AskReader ask = AskReader.of("problem", node, "name", "resources", "tasks", "calendar");
        List<Integer> resources = wholes(ask, "resources", MOST_RESOURCES);
        AskReader.atMost("tasks", ask.list("tasks").size(), MOST_TASKS);
        List<StagingProblem.Task> tasks = ask.each("tasks", task -> task(task, resources.size()));
        return new StagingProblem(ask.textIfAny("name"), resources, tasks, calendar(node.get("calendar")), 1);
    }

    private static StagingProblem.Task task(AskReader task, int resources) {
        task.known("id", "duration", "uses", "after", "unbroken");
        List<StagingProblem.Wait> after = task.node().hasNonNull("after") ? task.each("after", wait -> {
            wait.known("task", "lag");
            return new StagingProblem.Wait(id(wait, "task"), wait.whole("lag", 0, 0));
        }) : List.of();
        return new StagingProblem.Task(id(task, "id"), task.whole("duration", 0), task.has("uses") ? wholes(task, "uses", MOST_RESOURCES) : Collections.nCopies(resources, 0), after, task.flag("unbroken", false), "", 0, OptionalInt.empty());
    }

    /** A text, or a whole number that stands for its digits. */
    private static String id(AskReader entry, String field) {
        JsonNode value = entry.node().path(field);
        return value.isIntegralNumber() ? value.asText() : entry.text(field);
    }

    private static List<Integer> wholes(AskReader entry, String field, int most) {
        JsonNode list = entry.list(field);
        AskReader.atMost(entry.path(field), list.size(), most);
        List<Integer> numbers = new ArrayList<>();
        for (JsonNode value : list) numbers.add(AskReader.whole(value, entry.path(field) + "[" + numbers.size() + "]", 0));
        return numbers;
    }

    private static Optional<StagingProblem.Calendar> calendar(JsonNode node) {
        if (node == null || node.isNull()) return Optional.empty();
        List<Boolean> cycle = new ArrayList<>();
        for (int unit : wholes(new AskReader("calendar", node).known("cycle"), "cycle", LONGEST_CYCLE)) {
            BrokenRule.between("calendar", "cycle[" + cycle.size() + "]", unit, 0, 1, "");
            cycle.add(unit == 1);
        }
        return Optional.of(new StagingProblem.Calendar(cycle, List.of()));
    }
}
