package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;
import lapyard.working.BrokenRule;

/** The wire form of a staging problem and of its schedule. Times in units of one clock. */
public final class StagingJson {
    private static final Set<String> PROBLEM = Set.of("name", "resources", "tasks", "calendar");
    private static final Set<String> TASK = Set.of("id", "duration", "uses", "after", "unbroken");
    private static final Set<String> WAIT = Set.of("task", "lag");
    private static final Set<String> CALENDAR = Set.of("cycle");
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
        AskReader.known("problem", node, PROBLEM);
        List<Integer> resources = wholes(node, "", "resources", MOST_RESOURCES);
        List<StagingProblem.Task> tasks = new ArrayList<>();
        List<AskReader.Entry> entries = AskReader.entries(node, "tasks");
        AskReader.atMost("tasks", entries.size(), MOST_TASKS);
        for (AskReader.Entry entry : entries) tasks.add(task(entry, resources.size()));
        return new StagingProblem(node.has("name") ? AskReader.text(node, "", "name") : "", resources, tasks, calendar(node.get("calendar")), 1);
    }

    private static StagingProblem.Task task(AskReader.Entry entry, int resources) {
        JsonNode node = entry.node();
        String at = entry.at();
        AskReader.known(at, node, TASK);
        List<StagingProblem.Wait> after = new ArrayList<>();
        JsonNode waits = node.get("after");
        if (waits != null && !waits.isNull()) {
            for (JsonNode wait : AskReader.list(node, at, "after")) {
                String place = at + ".after[" + after.size() + "]";
                AskReader.known(place, wait, WAIT);
                after.add(new StagingProblem.Wait(id(wait, place, "task"), wait.has("lag") ? AskReader.whole(wait, place, "lag", 0) : 0));
            }
        }
        return new StagingProblem.Task(id(node, at, "id"), AskReader.whole(node, at, "duration", 0), node.has("uses") ? wholes(node, at, "uses", MOST_RESOURCES) : Collections.nCopies(resources, 0), after, AskReader.flag(node, at, "unbroken", false), "", 0, OptionalInt.empty());
    }

    /** A text, or a whole number that stands for its digits. */
    private static String id(JsonNode node, String at, String field) {
        JsonNode value = node.get(field);
        return value != null && value.isIntegralNumber() ? value.asText() : AskReader.text(node, at, field);
    }

    private static List<Integer> wholes(JsonNode node, String at, String field, int most) {
        JsonNode list = AskReader.list(node, at, field);
        String path = AskReader.path(at, field);
        AskReader.atMost(path, list.size(), most);
        List<Integer> numbers = new ArrayList<>();
        for (JsonNode value : list) numbers.add(AskReader.whole(value, path + "[" + numbers.size() + "]", 0));
        return numbers;
    }

    private static Optional<StagingProblem.Calendar> calendar(JsonNode node) {
        if (node == null || node.isNull()) return Optional.empty();
        AskReader.known("calendar", node, CALENDAR);
        List<Boolean> cycle = new ArrayList<>();
        for (int unit : wholes(node, "calendar", "cycle", LONGEST_CYCLE)) {
            BrokenRule.between("calendar", "cycle[" + cycle.size() + "]", unit, 0, 1, "");
            cycle.add(unit == 1);
        }
        return Optional.of(new StagingProblem.Calendar(cycle, List.of()));
    }

    private record Whole(String name, Map<String, Integer> starts, int makespan, int lowerBound, boolean proven, double seconds) {}

    public static ObjectNode write(StagingResult result) {
        return Wire.of(new Whole(
                result.name(), result.starts(), result.makespan(), result.lowerBound(), result.proven(), result.seconds()));
    }
}
