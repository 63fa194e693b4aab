package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;

/** The wire form of a roll problem and of its layouts. Lengths in millimetres. */
public final class RollsJson {
    private static final Set<String> PROBLEM = Set.of("name", "rolls", "pieces", "turn", "straightCuts");
    private static final Set<String> ROLL = Set.of("id", "width", "price", "step", "maxLength", "available");
    private static final Set<String> PIECE = Set.of("id", "width", "height", "count");
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private RollsJson() {}

    /**
     * Absent: name empty, price 1 a metre, step 1, no longest run, as many runs as wanted, count 1, turning allowed,
     * straight cuts.
     *
     * @throws IllegalArgumentException for what cannot be read, naming the field, its value and what it may be
     */
    public static RollProblem read(JsonNode node) {
        CuttingJson.known("the problem", node, PROBLEM);
        List<RollProblem.Stock> rolls = new ArrayList<>();
        for (CuttingJson.Entry entry : CuttingJson.entries(node, "rolls")) rolls.add(roll(entry));
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (CuttingJson.Entry entry : CuttingJson.entries(node, "pieces")) pieces.add(piece(entry));
        return new RollProblem(
                node.has("name") ? CuttingJson.text(node, "", "name") : "",
                rolls,
                pieces,
                CuttingJson.flag(node, "", "turn", true),
                CuttingJson.flag(node, "", "straightCuts", true));
    }

    private static RollProblem.Stock roll(CuttingJson.Entry entry) {
        JsonNode node = entry.node();
        CuttingJson.known(entry.at(), node, ROLL);
        BigDecimal price = BigDecimal.ONE;
        if (node.has("price")) {
            JsonNode given = node.get("price");
            boolean fits = given.isNumber()
                    && Double.isFinite(given.doubleValue())
                    && given.decimalValue().signum() >= 0;
            CuttingJson.require(
                    fits, entry.at() + ".price must be money a metre, 0 or more, was " + CuttingJson.shown(given));
            price = given.decimalValue();
        }
        return new RollProblem.Stock(
                CuttingJson.text(node, entry.at(), "id"),
                CuttingJson.length(node, entry.at(), "width", null, false),
                price,
                CuttingJson.length(node, entry.at(), "step", 1.0, false),
                node.has("maxLength")
                        ? OptionalDouble.of(CuttingJson.length(node, entry.at(), "maxLength", null, false))
                        : OptionalDouble.empty(),
                node.has("available")
                        ? OptionalInt.of(CuttingJson.whole(node, entry.at(), "available", 0))
                        : OptionalInt.empty());
    }

    private static RollProblem.Piece piece(CuttingJson.Entry entry) {
        JsonNode node = entry.node();
        CuttingJson.known(entry.at(), node, PIECE);
        return new RollProblem.Piece(
                CuttingJson.text(node, entry.at(), "id"),
                CuttingJson.length(node, entry.at(), "width", null, false),
                CuttingJson.length(node, entry.at(), "height", null, false),
                node.has("count") ? CuttingJson.whole(node, entry.at(), "count", 1) : 1);
    }

    /** Cost and bound as exact decimals. */
    public static ObjectNode write(RollResult result) {
        ObjectNode json = NODES.objectNode();
        json.put("name", result.name());
        json.set("cost", NODES.numberNode(result.cost()));
        json.set("lowerBound", NODES.numberNode(result.lowerBound()));
        json.put("proven", result.proven());
        json.set("seconds", JobSheetJson.number(result.seconds(), 6));
        ArrayNode rolls = json.putArray("rolls");
        for (RollResult.RollLayout layout : result.rolls()) {
            ObjectNode roll = rolls.addObject();
            roll.put("roll", layout.roll());
            roll.set("used", JobSheetJson.number(layout.usedMm(), 3));
            roll.set("bought", JobSheetJson.number(layout.boughtMm(), 3));
            ArrayNode placed = roll.putArray("placed");
            for (RollResult.Placed piece : layout.placed()) {
                ObjectNode one = placed.addObject();
                one.put("id", piece.id());
                one.set("x", JobSheetJson.number(piece.x(), 3));
                one.set("y", JobSheetJson.number(piece.y(), 3));
                one.set("width", JobSheetJson.number(piece.widthMm(), 3));
                one.set("height", JobSheetJson.number(piece.heightMm(), 3));
                one.put("turned", piece.turned());
            }
        }
        ArrayNode unplaced = json.putArray("unplaced");
        for (RollResult.Unplaced piece : result.unplaced()) {
            ObjectNode one = unplaced.addObject();
            one.put("id", piece.id());
            one.set("width", JobSheetJson.number(piece.widthMm(), 3));
            one.set("height", JobSheetJson.number(piece.heightMm(), 3));
            one.put("count", piece.count());
            one.put("why", piece.why());
        }
        return json;
    }
}
