package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.To;

/** The wire form of a cutting problem and of its plan. Lengths in millimetres. */
public final class CuttingJson {
    private static final Set<String> PROBLEM = Set.of("name", "kerf", "endTrim", "keepOffcut", "retrim", "stock", "pieces", "sawn", "report");
    private static final Set<String> STOCK = Set.of("id", "length", "price", "available", "goodFace", "salvage", "sawnEnd");
    private static final Set<String> PIECE = Set.of("id", "length", "count", "stage", "goodFace");
    private static final double KEEP_OFFCUT_MM = 300;

    /** Decimals beyond which a length in a plan is noise. */
    static final int EXACT = 12;

    private CuttingJson() {}

    /**
     * Absent: name empty, kerf, end trim and retrim 0, least offcut 300, price 1 a board, as many boards as wanted, a good
     * face on every board, salvage value 0, both ends to trim, count 1, stage 1, any face for a piece.
     *
     * @throws lapyard.plan.CannotAnswer for what cannot be read, with the field, its value and what it may be
     */
    public static CuttingProblem read(JsonNode node) {
        AskReader.known("problem", node, PROBLEM);
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        for (AskReader.Entry entry : AskReader.entries(node, "stock")) stock.add(stock(entry));
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (AskReader.Entry entry : AskReader.entries(node, "pieces")) pieces.add(piece(entry));
        return new CuttingProblem(
                node.has("name") ? AskReader.text(node, "", "name") : "",
                AskReader.length(node, "", "kerf", 0.0, true),
                AskReader.length(node, "", "endTrim", 0.0, true),
                AskReader.length(node, "", "keepOffcut", KEEP_OFFCUT_MM, true),
                AskReader.length(node, "", "retrim", 0.0, true),
                stock,
                pieces);
    }

    private record Whole(String name, @Exact BigDecimal cost, @IfGiven @Exact BigDecimal salvage, int boards,
            @Exact BigDecimal lowerBound, boolean proven, double seconds, List<Board> plan, List<Unplaced> unplaced,
            @IfGiven Boolean unplacedProven, @IfGiven List<Way> moreBoards) {}

    private record Board(String stock, int count, List<String> pieces, @To(EXACT) List<Double> lengths, @To(EXACT) double left) {}

    private record Unplaced(String id, @To(EXACT) double length, String why) {}

    private record Way(@Exact BigDecimal cost, List<More> boards) {}

    private record More(@IfGiven String stock, int count, @To(EXACT) double atLeast, int goodFaces) {}

    /**
     * Cost and bound as exact decimals; {@code salvage} stands there only where boards on hand are worth something. Where pieces
     * are left over, {@code unplacedProven} tells whether no plan leaves fewer, and {@code moreBoards} which boards would hold
     * them, the cheapest first.
     */
    public static ObjectNode write(CuttingResult result) {
        return Wire.of(shape(result));
    }

    static Object shape(CuttingResult result) {
        return new Whole(
                result.name(), result.cost(), result.salvage().signum() > 0 ? result.salvage() : null, result.boards(), result.lowerBound(), result.proven(),
                result.seconds(),
                result.plan().stream()
                        .map(line -> new Board(line.stock(), line.count(), line.pieces(), line.lengthsMm(), line.leftMm()))
                        .toList(),
                result.unplaced().stream().map(piece -> new Unplaced(piece.id(), piece.lengthMm(), piece.why())).toList(),
                result.unplaced().isEmpty() ? null : result.unplacedProven(),
                result.shortage().ways().stream()
                        .map(way -> new Way(way.cost(), way.boards().stream()
                                .map(more -> new More(more.stock(), more.count(), more.leastMm(), more.goodFaces()))
                                .toList()))
                        .toList());
    }

    private static CuttingProblem.Stock stock(AskReader.Entry entry) {
        JsonNode node = entry.node();
        AskReader.known(entry.at(), node, STOCK);
        OptionalInt available = node.has("available")
                ? OptionalInt.of(AskReader.whole(node, entry.at(), "available", 0))
                : OptionalInt.empty();
        return new CuttingProblem.Stock(
                AskReader.text(node, entry.at(), "id"),
                AskReader.length(node, entry.at(), "length", null, false),
                AskReader.money(node, entry.at(), "price", BigDecimal.ONE),
                available,
                AskReader.flag(node, entry.at(), "goodFace", true) ? 1 : 0,
                AskReader.money(node, entry.at(), "salvage", BigDecimal.ZERO),
                AskReader.flag(node, entry.at(), "sawnEnd", false));
    }

    private static CuttingProblem.Demand piece(AskReader.Entry entry) {
        JsonNode node = entry.node();
        AskReader.known(entry.at(), node, PIECE);
        return new CuttingProblem.Demand(
                AskReader.text(node, entry.at(), "id"),
                AskReader.length(node, entry.at(), "length", null, false),
                node.has("count") ? AskReader.whole(node, entry.at(), "count", 0) : 1,
                node.has("stage") ? AskReader.whole(node, entry.at(), "stage", 0) : 1,
                AskReader.flag(node, entry.at(), "goodFace", false) ? 1 : 0);
    }
}
