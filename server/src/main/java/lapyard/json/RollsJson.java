package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;

/** The wire form of a roll problem and of its layouts. Lengths in millimetres. */
public final class RollsJson {
    private RollsJson() {}

    /**
     * Absent: name empty, price 1 a metre, step 1, no longest run, as many runs as wanted, count 1, turning allowed,
     * straight cuts.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    public static RollProblem read(JsonNode node) {
        AskReader ask = AskReader.of("problem", node, "name", "rolls", "pieces", "turn", "straightCuts");
        List<RollProblem.Stock> rolls = ask.each("rolls", RollsJson::roll);
        List<RollProblem.Piece> pieces = ask.each("pieces", RollsJson::piece);
        return new RollProblem(ask.textIfAny("name"), rolls, pieces, ask.flag("turn", true), ask.flag("straightCuts", true));
    }

    private static RollProblem.Stock roll(AskReader roll) {
        roll.known("id", "width", "price", "step", "maxLength", "available");
        return new RollProblem.Stock(
                roll.text("id"), roll.length("width"), roll.money("price", BigDecimal.ONE), roll.length("step", 1, false),
                roll.lengthIfAny("maxLength", false), roll.wholeIfAny("available"));
    }

    private static RollProblem.Piece piece(AskReader piece) {
        piece.known("id", "width", "height", "count");
        return new RollProblem.Piece(piece.text("id"), piece.length("width"), piece.length("height"), piece.whole("count", 1, 1));
    }

    /** Cost and bound as exact decimals. */
    public static ObjectNode write(RollResult result) {
        return Wire.of(result);
    }
}
