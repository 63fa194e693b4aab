package lapyard.stages;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Reads the research instances in {@code scheduling/} of the reference folder: PSPLIB, and two with a weekend calendar. */
public final class ResearchSample {
    private ResearchSample() {}

    /** {@code optimum} is the proved end of the last task, in clock units. */
    public record Known(StagingProblem problem, int optimum) {}

    public static List<Known> read(Path folder) throws IOException {
        List<Known> all = new ArrayList<>();
        for (String file : List.of("sample.json", "weekend-lags-sample.json")) {
            for (JsonNode node : new ObjectMapper().readTree(Files.readString(folder.resolve(file)))) all.add(read(node));
        }
        return all;
    }

    private static Known read(JsonNode node) {
        Map<String, List<StagingProblem.Wait>> after = new TreeMap<>();
        Map<String, Integer> lags = new TreeMap<>();
        for (JsonNode lag : node.path("lags")) {
            lags.put(lag.get("from").asText() + ">" + lag.get("to").asText(), lag.get("elapsed_hours").asInt());
        }
        for (JsonNode task : node.get("tasks")) {
            for (JsonNode next : task.get("successors")) {
                int lag = lags.getOrDefault(task.get("id").asText() + ">" + next.asText(), 0);
                after.computeIfAbsent(next.asText(), id -> new ArrayList<>()).add(new StagingProblem.Wait(task.get("id").asText(), lag));
            }
        }
        List<StagingProblem.Task> tasks = new ArrayList<>();
        for (JsonNode task : node.get("tasks")) {
            tasks.add(new StagingProblem.Task(task.get("id").asText(), task.get("duration").asInt(), wholes(task.get("uses")), after.getOrDefault(task.get("id").asText(), List.of()), false, "", 0, OptionalInt.empty()));
        }
        Optional<StagingProblem.Calendar> calendar = Optional.empty();
        if (node.has("calendar")) {
            List<Boolean> cycle = new ArrayList<>();
            for (int hour = 0; hour < node.get("calendar").get("week_hours").asInt(); hour++) {
                boolean works = false;
                for (JsonNode window : node.get("calendar").get("work_windows")) {
                    works |= hour >= window.get(0).asInt() && hour < window.get(1).asInt();
                }
                cycle.add(works);
            }
            calendar = Optional.of(new StagingProblem.Calendar(cycle, List.of()));
        }
        int optimum = node.has("optimum") ? node.get("optimum").asInt() : node.get("optimum_elapsed_end").asInt();
        return new Known(new StagingProblem(node.get("name").asText(), wholes(node.get("resources")), tasks, calendar, 1), optimum);
    }

    private static List<Integer> wholes(JsonNode list) {
        List<Integer> numbers = new ArrayList<>();
        list.forEach(value -> numbers.add(value.asInt()));
        return numbers;
    }
}
