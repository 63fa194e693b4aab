package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.To;
import lapyard.sheets.RollProblem;
import lapyard.sheets.RollResult;

/** The wire form of a roll problem and of its layouts. Lengths in millimetres. */
public final class RollsJson {
    private static final Set<String> PROBLEM = Set.of("name", "rolls", "pieces", "turn", "straightCuts");
    private static final Set<String> ROLL = Set.of("id", "width", "price", "step", "maxLength", "available");
    private static final Set<String> PIECE = Set.of("id", "width", "height", "count");

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
            CuttingJson.require(fits, entry.at() + ".price must be money a metre, 0 or more, was " + CuttingJson.shown(given));
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

    private record Whole(String name, @Exact BigDecimal cost, @Exact BigDecimal lowerBound, boolean proven, double seconds,
            List<Roll> rolls, List<Unplaced> unplaced) {}

    private record Roll(String roll, @To(3) double used, @To(3) double bought, List<Placed> placed) {}

    private record Placed(String id, @To(3) double x, @To(3) double y, @To(3) double width, @To(3) double height, boolean turned) {}

    private record Unplaced(String id, @To(3) double width, @To(3) double height, int count, String why) {}

    /** Cost and bound as exact decimals. */
    public static ObjectNode write(RollResult result) {
        return Wire.of(new Whole(
                result.name(), result.cost(), result.lowerBound(), result.proven(), result.seconds(),
                result.rolls().stream()
                        .map(one -> new Roll(one.roll(), one.usedMm(), one.boughtMm(), one.placed().stream()
                                .map(piece -> new Placed(piece.id(), piece.x(), piece.y(), piece.widthMm(), piece.heightMm(), piece.turned()))
                                .toList()))
                        .toList(),
                result.unplaced().stream()
                        .map(piece -> new Unplaced(piece.id(), piece.widthMm(), piece.heightMm(), piece.count(), piece.why()))
                        .toList()));
    }
}
