package lapyard.sheets;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lapyard.working.Effort;
import org.junit.jupiter.api.Test;

/**
 * Published strip packing instances with known heights (Hopper 2000; Bengtsson, Computer Journal 25, 1982; Berkey and
 * Wang, JORS 38, 1987; Kroeger, EJOR 84, 1995). They are read from the folder named by the system property
 * {@code lapyard.reference}; without it the test says that it was left out.
 */
class ResearchSampleTest {
    @Test
    void noResearchLayoutIsBelowItsProvedHeightNorFarAboveTheKnownOne() throws IOException {
        String folder = System.getProperty("lapyard.reference", "");
        Path file = Path.of(folder, "sheets", "sample.jsonl");
        assumeTrue(
                !folder.isBlank() && Files.exists(file),
                "LEFT OUT: the research sample; give -Dlapyard.reference=FOLDER with sheets/sample.jsonl in it");
        double sum = 0;
        int known = 0;
        for (String line : Files.readAllLines(file)) {
            JsonNode node = new ObjectMapper().readTree(line);
            for (boolean turn : new boolean[] {true, false}) {
                for (boolean straight : new boolean[] {true, false}) {
                    RollProblem problem = problem(node, turn, straight);
                    RollResult result = LayoutJudge.check(
                            problem, RollSolver.solve(problem, new Effort(15_000, Duration.ofMinutes(1))));
                    double height = result.cost().doubleValue();
                    JsonNode kind = node.get("known").get(turn ? "rotation" : "fixed");
                    double least = node.get("lower_bound")
                            .get(turn ? "rotation" : "fixed")
                            .asDouble();
                    assertTrue(height >= least, () -> problem.name() + ": " + height + " is below " + least);
                    if (kind.get("status").asText().equals("optimal")) {
                        double optimum = kind.get("height").asDouble();
                        assertTrue(
                                result.lowerBound().doubleValue() <= optimum, problem.name() + ": bound above optimum");
                        assertTrue(height >= optimum, problem.name() + ": below the optimum");
                        if (!straight) {
                            sum += height / optimum - 1;
                            known++;
                        }
                    }
                }
            }
        }
        double mean = sum / known;
        assertTrue(mean < 0.03, () -> "mean gap of free layouts " + mean);
    }

    private static RollProblem problem(JsonNode node, boolean turn, boolean straight) {
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (JsonNode piece : node.get("pieces"))
            pieces.add(new RollProblem.Piece(
                    "p" + pieces.size(),
                    piece.get(0).asInt(),
                    piece.get(1).asInt(),
                    piece.get(2).asInt()));
        RollProblem.Stock roll =
                new RollProblem.Stock("r", node.get("width").asInt(), new BigDecimal(1000), 1, OptionalDouble.empty());
        return new RollProblem(
                node.get("name").asText() + (turn ? " turned" : " fixed"), List.of(roll), pieces, turn, straight);
    }
}
