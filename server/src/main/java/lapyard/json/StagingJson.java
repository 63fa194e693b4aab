package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;

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
     * @throws IllegalArgumentException for what cannot be read, naming the field, its value and what it may be
     */
    public static StagingProblem read(JsonNode node) {
        CuttingJson.known("the problem", node, PROBLEM);
        List<Integer> resources = wholes(node, "", "resources", MOST_RESOURCES);
        List<StagingProblem.Task> tasks = new ArrayList<>();
        List<CuttingJson.Entry> entries = CuttingJson.entries(node, "tasks");
        CuttingJson.require(entries.size() <= MOST_TASKS, "tasks has " + entries.size() + " entries, at most " + MOST_TASKS + " are taken");
        for (CuttingJson.Entry entry : entries) tasks.add(task(entry, resources.size()));
        return new StagingProblem(
                node.has("name") ? CuttingJson.text(node, "", "name") : "", resources, tasks, calendar(node.get("calendar")));
    }

    private static StagingProblem.Task task(CuttingJson.Entry entry, int resources) {
        JsonNode node = entry.node();
        String at = entry.at();
        CuttingJson.known(at, node, TASK);
        List<StagingProblem.Wait> after = new ArrayList<>();
        JsonNode waits = node.get("after");
        if (waits != null && !waits.isNull()) {
            CuttingJson.require(waits.isArray(), at + ".after must be a list, was " + CuttingJson.shown(waits));
            for (JsonNode wait : waits) {
                String place = at + ".after[" + after.size() + "]";
                CuttingJson.known(place, wait, WAIT);
                after.add(new StagingProblem.Wait(id(wait, place, "task"), wait.has("lag") ? CuttingJson.whole(wait, place, "lag", 0) : 0));
            }
        }
        CuttingJson.require(node.has("duration"), at + ".duration must be a whole number of working units, was absent");
        return new StagingProblem.Task(
                id(node, at, "id"),
                CuttingJson.whole(node, at, "duration", 0),
                node.has("uses") ? wholes(node, at, "uses", MOST_RESOURCES) : Collections.nCopies(resources, 0),
                after,
                CuttingJson.flag(node, at, "unbroken", false));
    }

    /** A text, or a whole number that stands for its digits. */
    private static String id(JsonNode node, String at, String field) {
        JsonNode value = node.get(field);
        return value != null && value.isIntegralNumber() ? value.asText() : CuttingJson.text(node, at, field);
    }

    private static List<Integer> wholes(JsonNode node, String at, String field, int most) {
        JsonNode list = node.get(field);
        String path = CuttingJson.path(at, field);
        CuttingJson.require(list != null && list.isArray(), path + " must be a list of whole numbers, was " + CuttingJson.shown(list));
        CuttingJson.require(list.size() <= most, path + " has " + list.size() + " entries, at most " + most + " are taken");
        List<Integer> numbers = new ArrayList<>();
        for (JsonNode value : list) {
            CuttingJson.require(value.canConvertToExactIntegral() && value.isNumber() && value.canConvertToInt() && value.intValue() >= 0,
                    path + "[" + numbers.size() + "] must be a whole number, 0 or more, was " + CuttingJson.shown(value));
            numbers.add(value.intValue());
        }
        return numbers;
    }

    private static Optional<StagingProblem.Calendar> calendar(JsonNode node) {
        if (node == null || node.isNull()) return Optional.empty();
        CuttingJson.known("calendar", node, CALENDAR);
        List<Boolean> cycle = new ArrayList<>();
        for (int unit : wholes(node, "calendar", "cycle", LONGEST_CYCLE)) {
            CuttingJson.require(unit <= 1, "calendar.cycle[" + cycle.size() + "] must be 1 for a working unit or 0, was " + unit);
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
