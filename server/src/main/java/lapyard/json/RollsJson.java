package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import lapyard.sheets.RollResult;

/** The wire form of roll layouts. Lengths in millimetres. */
public final class RollsJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private RollsJson() {}

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
