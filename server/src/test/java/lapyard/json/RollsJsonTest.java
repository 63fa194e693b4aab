package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lapyard.plan.Told;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RollsJsonTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String PROBLEM = """
        {"name":"x","rolls":[{"id":"W4","width":4000,"price":9.00,"step":500,"maxLength":25000,"available":2}],
         "pieces":[{"id":"M-R1","width":3960,"height":2460,"count":1},{"id":"Z","width":4100,"height":4200}],
         "turn":true,"straightCuts":true}\
        """;

    private static RollProblem read(String json) throws JsonProcessingException {
        return SolveLine.rolls(DocumentText.parse(json));
    }

    @Test
    void readsEveryFieldOfTheContract() throws JsonProcessingException {
        RollProblem problem = read(PROBLEM);
        assertEquals("x", problem.name());
        RollProblem.Stock roll = problem.rolls().get(0);
        assertEquals(List.of(4000.0, 500.0), List.of(roll.widthMm(), roll.stepMm()));
        assertEquals(0, roll.price().compareTo(new BigDecimal("9")));
        assertEquals(OptionalDouble.of(25000), roll.maxLengthMm());
        assertEquals(OptionalInt.of(2), roll.available());
        assertEquals(
                new RollProblem.Piece("M-R1", 3960, 2460, 1), problem.pieces().get(0));
        assertEquals(1, problem.pieces().get(1).count());
        assertTrue(problem.turn() && problem.straightCuts());
    }

    @Test
    void whatIsLeftOutHasItsDefault() throws JsonProcessingException {
        RollProblem problem = read("{\"rolls\":[{\"id\":\"a\",\"width\":9}],\"pieces\":[],\"turn\":false}");
        RollProblem.Stock roll = problem.rolls().get(0);
        assertEquals(BigDecimal.ONE, roll.price());
        assertEquals(1, roll.stepMm());
        assertTrue(roll.maxLengthMm().isEmpty() && roll.available().isEmpty());
        assertTrue(problem.straightCuts());
        assertFalse(problem.turn());
    }

    @Test
    void writesTheKeysOfTheContractAndNoOthers() throws JsonProcessingException {
        JsonNode node = Wire.of(RollSolver.solve(read(PROBLEM), RollSolver.QUICK));
        assertEquals(List.of("name", "cost", "lowerBound", "proven", "seconds", "rolls", "unplaced"), keys(node));
        JsonNode roll = node.get("rolls").get(0);
        assertEquals(List.of("roll", "used", "bought", "placed"), keys(roll));
        assertEquals(
                "{\"id\":\"M-R1\",\"x\":0,\"y\":0,\"width\":3960,\"height\":2460,\"turned\":false}",
                roll.get("placed").get(0).toString());
        assertEquals("22.50", node.get("cost").toString());
        assertEquals("2500", roll.get("bought").toString());
        assertEquals(
                List.of("id", "width", "height", "count", "why"),
                keys(node.get("unplaced").get(0)));
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @ParameterizedTest(name = "{0} -> {1}: \"{2}\"")
    @CsvSource(delimiter = '|', textBlock = """
        "turn":true        | "spin":true       | Unknown field "spin"
        "step":500         | "steps":500       | Unknown field "steps"
        "height":2460      | "length":2460     | Unknown field "length"
        "width":3960       | "width":-3960     | piece 1, width: "width" is -3960 mm; at least 0.001 mm is needed
        "width":3960       | "width":"3960"    | piece 1, width: "width" must be a number of mm, not the text "3960"
        "width":3960       | "width":1e999     | piece 1, width: "width" is 1.0
        "height":2460      | "height":0        | piece 1, height: "height" is 0 mm; at least 0.001 mm is needed
        "count":1          | "count":0         | piece 1, count: "count" is 0; at least 1 is needed
        "count":1          | "count":1.5       | piece 1, count: "count" is 1.5, which is finer than 1
        "price":9.00       | "price":-1        | roll 1, price: "price" is -1; at least 0 is needed
        "step":500         | "step":0          | roll 1, step: "step" is 0 mm; at least 0.001 mm is needed
        "id":"W4"          | "id":7            | roll 1, id: "id" must be text in quotes, not the number 7
        "turn":true        | "turn":"yes"      | "turn" must be true or false, not the text "yes"
        """)
    void refusesWhatItCannotReadByNameAndValue(String good, String bad, String says) {
        assertTrue(PROBLEM.contains(good));
        String message = Told.refusal(assertThrows(IllegalArgumentException.class, () -> read(PROBLEM.replace(good, bad))));
        assertTrue(message.contains(says), message);
    }
}
