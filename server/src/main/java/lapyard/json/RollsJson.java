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
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    public static RollProblem read(JsonNode node) {
        AskReader.known("problem", node, PROBLEM);
        List<RollProblem.Stock> rolls = new ArrayList<>();
        for (AskReader.Entry entry : AskReader.entries(node, "rolls")) rolls.add(roll(entry));
        List<RollProblem.Piece> pieces = new ArrayList<>();
        for (AskReader.Entry entry : AskReader.entries(node, "pieces")) pieces.add(piece(entry));
        return new RollProblem(
                node.has("name") ? AskReader.text(node, "", "name") : "",
                rolls,
                pieces,
                AskReader.flag(node, "", "turn", true),
                AskReader.flag(node, "", "straightCuts", true));
    }

    private static RollProblem.Stock roll(AskReader.Entry entry) {
        JsonNode node = entry.node();
        AskReader.known(entry.at(), node, ROLL);
        return new RollProblem.Stock(
                AskReader.text(node, entry.at(), "id"),
                AskReader.length(node, entry.at(), "width", null, false),
                AskReader.money(node, entry.at(), "price", BigDecimal.ONE),
                AskReader.length(node, entry.at(), "step", 1.0, false),
                node.has("maxLength")
                        ? OptionalDouble.of(AskReader.length(node, entry.at(), "maxLength", null, false))
                        : OptionalDouble.empty(),
                node.has("available")
                        ? OptionalInt.of(AskReader.whole(node, entry.at(), "available", 0))
                        : OptionalInt.empty());
    }

    private static RollProblem.Piece piece(AskReader.Entry entry) {
        JsonNode node = entry.node();
        AskReader.known(entry.at(), node, PIECE);
        return new RollProblem.Piece(
                AskReader.text(node, entry.at(), "id"),
                AskReader.length(node, entry.at(), "width", null, false),
                AskReader.length(node, entry.at(), "height", null, false),
                node.has("count") ? AskReader.whole(node, entry.at(), "count", 1) : 1);
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
