package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
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
        return Asked.read("rolls", node, ask -> new RollProblem(
                ask.text("name"),
                Asked.each(ask, "rolls", "roll", roll -> new RollProblem.Stock(
                        Asked.text(roll, "id"), roll.neededLength("width"), roll.price("price").orElse(BigDecimal.ONE), roll.number("step"),
                        roll.numberIfAny("maxLength"), available(roll))),
                Asked.each(ask, "pieces", "piece", piece -> new RollProblem.Piece(
                        Asked.text(piece, "id"), piece.neededLength("width"), piece.neededLength("height"), piece.count("count"))),
                ask.flag("turn"), ask.flag("straightCuts")));
    }

    static OptionalInt available(Cursor stock) {
        return stock.has("available") ? OptionalInt.of(stock.count("available")) : OptionalInt.empty();
    }

    /**
     * A staging problem, times in units of one clock. Absent: name empty, uses none of any resource, after nothing, lag 0, a task may pause, every unit worked.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    static StagingProblem staging(JsonNode node) {
        BrokenRule.atMost("resources", "resources", node.path("resources").size(), MOST_RESOURCES, "entries");
        BrokenRule.atMost("tasks", "tasks", node.path("tasks").size(), MOST_TASKS, "entries");
        BrokenRule.atMost("cycle", "cycle", node.at("/calendar/cycle").size(), LONGEST_CYCLE, "entries");
        return Asked.read("staging", node, ask -> {
            List<Integer> resources = Asked.wholes(ask, "resources");
            List<StagingProblem.Task> tasks = Asked.each(ask, "tasks", "task", task -> task(task, resources.size()));
            return new StagingProblem(ask.text("name"), resources, tasks, ask.readIfAny("calendar", SolveLine::calendar), 1);
        });
    }

    private static StagingProblem.Task task(Cursor task, int resources) {
        if (!task.has("duration")) task.missing("duration", "a whole number of 0 or more");
        return new StagingProblem.Task(id(task, "id"), task.has("duration") ? task.count("duration") : 0,
                task.has("uses") ? Asked.wholes(task, "uses") : Collections.nCopies(resources, 0),
                task.each("after", "wait", wait -> new StagingProblem.Wait(id(wait, "task"), wait.count("lag"))), task.flag("unbroken"), "", 0, OptionalInt.empty());
    }

    /** A text, or a whole number that stands for its digits. */
    private static String id(Cursor entry, String field) {
        return entry.raw(field).isIntegralNumber() ? entry.raw(field).asText() : Asked.text(entry, field);
    }

    private static StagingProblem.Calendar calendar(Cursor calendar) {
        List<Boolean> cycle = new ArrayList<>();
        for (int unit : Asked.wholes(calendar, "cycle")) {
            BrokenRule.between("calendar", "cycle[" + cycle.size() + "]", unit, 0, 1, "");
            cycle.add(unit == 1);
        }
        return new StagingProblem.Calendar(cycle, List.of());
    }
}
