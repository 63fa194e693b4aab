package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;
import lapyard.working.BrokenRule;

/** The wire form of a staging problem and of its schedule. Times in units of one clock. */
public final class StagingJson {
    private static final int MOST_TASKS = 20_000;
    private static final int MOST_RESOURCES = 100;
    private static final int LONGEST_CYCLE = 100_000;

    private StagingJson() {}

    /**
     * Absent: name empty, uses none of any resource, after nothing, lag 0, a task may pause, every unit worked.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    public static StagingProblem read(JsonNode node) {
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

    public static ObjectNode write(StagingResult result) {
        return Wire.of(result);
    }
}
