package lapyard.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/**
 * Published instances with known optima (ESICUP one-dimensional collection, CC0; optima from the BPPLIB bounds
 * table), read from the folder named by the system property {@code lapyard.reference}; each line holds a name, a
 * capacity, items as [length, demand] and best_known.ub.
 */
class ResearchInstancesTest {
    @Test
    void reachesAndProvesThePublishedOptima() throws IOException {
        String folder = System.getProperty("lapyard.reference", "");
        Path file = Path.of(folder, "cutting", "instances.jsonl");
        Assumptions.assumeTrue(
                !folder.isBlank() && Files.isReadable(file),
                "NOT RUN: the published cutting instances are absent; name their folder by -Dlapyard.reference=DIR");
        ObjectMapper mapper = new ObjectMapper();
        int read = 0;
        for (String line : Files.readAllLines(file)) {
            JsonNode node = mapper.readTree(line);
            List<Integer> lengths = new ArrayList<>();
            for (JsonNode item : node.get("items")) {
                for (int i = 0; i < item.get(1).asInt(); i++) lengths.add(item.get(0).asInt());
            }
            var problem = Shapes.single(
                    node.get("name").asText(),
                    node.get("capacity").asInt(),
                    lengths.stream().mapToInt(Integer::intValue).toArray());
            var result = Jobs.solved(problem, CuttingSolver.FULL);
            assertEquals(node.get("best_known").get("ub").asInt(), result.boards(), problem.name());
            assertTrue(result.proven(), problem.name());
            read++;
        }
        assertTrue(read > 0, "no instance in " + file);
    }
}
