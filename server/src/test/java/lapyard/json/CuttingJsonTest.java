package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingSolver;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CuttingJsonTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String PROBLEM =
            """
            {"name":"x","kerf":4,"endTrim":10,"keepOffcut":300,
             "stock":[{"id":"L48","length":4800,"price":36.00},{"id":"R1","length":2750,"price":0,"available":1}],
             "pieces":[{"id":"M-A","length":2900,"count":3,"stage":1},{"id":"Z","length":6100,"count":1}]}""";

    private static CuttingProblem read(String json) throws JsonProcessingException {
        return CuttingJson.asked(MAPPER.readTree(json)).problem();
    }

    @Test
    void readsEveryFieldOfTheContract() throws JsonProcessingException {
        CuttingProblem problem = read(PROBLEM);
        assertEquals("x", problem.name());
        assertEquals(List.of(4.0, 10.0, 300.0), List.of(problem.kerfMm(), problem.endTrimMm(), problem.keepOffcutMm()));
        assertEquals(OptionalInt.empty(), problem.stock().get(0).available());
        assertEquals(OptionalInt.of(1), problem.stock().get(1).available());
        assertEquals(0, problem.stock().get(0).price().compareTo(new BigDecimal("36")));
        assertEquals(new CuttingProblem.Demand("M-A", 2900, 3, 1, 0), problem.pieces().get(0));
    }

    @Test
    void aBoardWithoutAPriceCountsOneAndAPieceWithoutACountIsOne() throws JsonProcessingException {
        CuttingProblem problem = read("{\"stock\":[{\"id\":\"a\",\"length\":9}],\"pieces\":[{\"id\":\"p\",\"length\":3}]}");
        assertEquals(BigDecimal.ONE, problem.stock().get(0).price());
        assertEquals(1, problem.pieces().get(0).count());
        assertEquals(1, problem.stock().get(0).goodFaces());
    }

    @Test
    void whatIsNotThereIsNotWritten() throws JsonProcessingException {
        var node = Wire.of(CuttingSolver.solve(read(PROBLEM.replace("6100", "610")), CuttingSolver.QUICK));
        assertEquals(0, node.get("unplaced").size());
        assertTrue(!node.has("unplacedProven") && !node.has("moreBoards"));
    }

    @Test
    void writesTheKeysOfTheContractAndNoOthers() throws JsonProcessingException {
        var node = Wire.of(CuttingSolver.solve(read(PROBLEM), CuttingSolver.QUICK));
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        assertEquals(
                List.of("name", "cost", "boards", "lowerBound", "proven", "seconds", "plan", "unplaced", "unplacedProven", "moreBoards"), keys);
        assertEquals("true", node.get("unplacedProven").toString());
        assertEquals("[{\"cost\":0,\"boards\":[{\"count\":1,\"atLeast\":6120,\"goodFaces\":0}]}]", node.get("moreBoards").toString());
        keys.clear();
        node.get("plan").get(0).fieldNames().forEachRemaining(keys::add);
        assertEquals(List.of("stock", "count", "pieces", "lengths", "left"), keys);
        assertEquals(
                "[{\"id\":\"Z\",\"length\":6100,\"why\":"
                        + "\"longer than every stock length: 6100 needed, 4780 usable\"}]",
                node.get("unplaced").toString());
        assertEquals("[{\"stock\":\"L48\",\"count\":3,\"pieces\":[\"M-A\"],\"lengths\":[2900],\"left\":1880}]",
                node.get("plan").toString());
    }

    /** 900 off a board of 4000 worth 10.15 kept, or a new 1000 at 12: 10.15 of cost, nothing to pay. */
    @Test
    void salvageStandsInTheAnswerWhereItIsPartOfTheCost() throws JsonProcessingException {
        var node = Wire.of(CuttingSolver.solve(
                read("""
                    {"retrim":5,"stock":[{"id":"n","length":1000,"price":12},
                     {"id":"R","length":4000,"price":0,"available":1,"salvage":10.15,"sawnEnd":true}],
                     "pieces":[{"id":"p","length":900}]}"""),
                CuttingSolver.QUICK));
        assertEquals("10.15", node.get("cost").toString());
        assertEquals("10.15", node.get("salvage").toString());
        assertEquals("R", node.get("plan").get(0).get("stock").textValue());
    }

    @Test
    void costKeepsTheDecimalsOfThePrices() throws JsonProcessingException {
        var exact = new ObjectMapper()
                .enable(com.fasterxml.jackson.databind.DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
        String json = "{\"stock\":[{\"id\":\"a\",\"length\":10,\"price\":0.1}],"
                + "\"pieces\":[{\"id\":\"p\",\"length\":10,\"count\":3}]}";
        var node = Wire.of(CuttingSolver.solve(CuttingJson.asked(exact.readTree(json)).problem(), CuttingSolver.QUICK));
        assertEquals("0.3", node.get("cost").toString());
        assertEquals("0.3", node.get("lowerBound").toString());
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"stok":[],"pieces":[]}                                                   | Unknown field "stok"
        []                                                                        | "problem" must be an object in curly brackets
        {"pieces":[]}                                                             | "stock" is missing. Give a list in square brackets
        {"stock":[]}                                                              | "pieces" is missing. Give a list in square brackets
        {"stock":[3],"pieces":[]}                                                 | board 1: "board 1" must be an object in curly brackets, not the number 3
        {"stock":[{"id":"a","length":9,"cost":1}],"pieces":[]}                    | Unknown field "cost"
        {"stock":[{"id":"a","length":0}],"pieces":[]}                             | board 1, length: "length" is 0 mm; at least 0.001 mm is needed
        {"stock":[{"id":"a","length":1e999}],"pieces":[]}                         | board 1, length: "length" is 1.0
        {"stock":[{"id":"a"}],"pieces":[]}                                        | board 1, length: "length" is missing. Give it in mm
        {"stock":[{"length":9}],"pieces":[]}                                      | board 1, id: "id" is missing. Give text in quotes
        {"stock":[{"id":"a","length":9,"price":-1}],"pieces":[]}                  | board 1, price: "price" is -1; at least 0 is needed
        {"stock":[{"id":"a","length":9,"available":1.5}],"pieces":[]}             | board 1, available: "available" is 1.5, which is finer than 1
        {"stock":[],"pieces":[{"id":"p","length":"long"}]}                        | piece 1, length: "length" must be a number of mm, not the text "long"
        {"stock":[],"pieces":[{"id":"p","length":3,"count":-1}]}                  | piece 1, count: "count" is -1; at least 0 is needed
        {"stock":[],"pieces":[{"id":"p","length":3,"count":1e12}]}                | piece 1, count: "count" is 1000000000000; at most 2147483647 is possible
        {"stock":[],"pieces":[{"id":"p","length":3,"stage":"x"}]}                 | piece 1, stage: "stage" must be a number, not the text "x"
        {"stock":[],"pieces":[{"id":"p","length":3,"goodFace":1}]}                | piece 1, goodFace: "goodFace" must be true or false, not the number 1
        {"kerf":-4,"stock":[],"pieces":[]}                                        | kerf: "kerf" is -4 mm; at least 0 mm is needed
        {"stock":[{"id":"a","length":9,"salvage":-1}],"pieces":[]}                | board 1, salvage: "salvage" is -1; at least 0 is needed
        {"stock":[{"id":"a","length":9,"sawnEnd":1}],"pieces":[]}                 | board 1, sawnEnd: "sawnEnd" must be true or false, not the number 1
        {"retrim":-1,"stock":[],"pieces":[]}                                      | retrim: "retrim" is -1 mm; at least 0 mm is needed
        {"name":7,"stock":[],"pieces":[]}                                         | "name" must be text in quotes, not the number 7
        """)
    void namesTheFieldTheValueAndWhatItMayBe(String json, String says) throws JsonProcessingException {
        var node = DocumentText.parse(json);
        String message =
                Told.refusal(assertThrows(IllegalArgumentException.class, () -> CuttingJson.asked(node)));
        assertTrue(message.contains(says), message);
    }
}
