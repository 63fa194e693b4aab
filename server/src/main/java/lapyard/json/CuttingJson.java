package lapyard.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonInclude.Include;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;
import lapyard.json.Wire.Exact;
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
     * @throws IllegalArgumentException for what cannot be read, naming the field, its value and what it may be
     */
    public static CuttingProblem read(JsonNode node) {
        known("the problem", node, PROBLEM);
        List<CuttingProblem.Stock> stock = new ArrayList<>();
        for (Entry entry : entries(node, "stock")) stock.add(stock(entry));
        List<CuttingProblem.Demand> pieces = new ArrayList<>();
        for (Entry entry : entries(node, "pieces")) pieces.add(piece(entry));
        return new CuttingProblem(
                node.has("name") ? text(node, "", "name") : "",
                length(node, "", "kerf", 0.0, true),
                length(node, "", "endTrim", 0.0, true),
                length(node, "", "keepOffcut", KEEP_OFFCUT_MM, true),
                length(node, "", "retrim", 0.0, true),
                stock,
                pieces);
    }

    private record Whole(String name, @Exact BigDecimal cost, @JsonInclude(Include.NON_NULL) @Exact BigDecimal salvage, int boards,
            @Exact BigDecimal lowerBound, boolean proven, double seconds, List<Board> plan, List<Unplaced> unplaced,
            @JsonInclude(Include.NON_NULL) Boolean unplacedProven, @JsonInclude(Include.NON_EMPTY) List<Way> moreBoards) {}

    private record Board(String stock, int count, List<String> pieces, @To(EXACT) List<Double> lengths, @To(EXACT) double left) {}

    private record Unplaced(String id, @To(EXACT) double length, String why) {}

    private record Way(@Exact BigDecimal cost, List<More> boards) {}

    private record More(@JsonInclude(Include.NON_EMPTY) String stock, int count, @To(EXACT) double atLeast, int goodFaces) {}

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

    record Entry(String at, JsonNode node) {}

    private static CuttingProblem.Stock stock(Entry entry) {
        JsonNode node = entry.node();
        known(entry.at(), node, STOCK);
        OptionalInt available = node.has("available")
                ? OptionalInt.of(whole(node, entry.at(), "available", 0))
                : OptionalInt.empty();
        return new CuttingProblem.Stock(
                text(node, entry.at(), "id"),
                length(node, entry.at(), "length", null, false),
                money(node, entry.at(), "price", BigDecimal.ONE),
                available,
                flag(node, entry.at(), "goodFace", true) ? 1 : 0,
                money(node, entry.at(), "salvage", BigDecimal.ZERO),
                flag(node, entry.at(), "sawnEnd", false));
    }

    private static BigDecimal money(JsonNode node, String at, String field, BigDecimal otherwise) {
        if (!node.has(field)) return otherwise;
        JsonNode given = node.get(field);
        boolean fits = given.isNumber() && Double.isFinite(given.doubleValue()) && given.decimalValue().signum() >= 0;
        require(fits, at + "." + field + " must be a number, 0 or more, was " + given);
        return given.decimalValue();
    }

    private static CuttingProblem.Demand piece(Entry entry) {
        JsonNode node = entry.node();
        known(entry.at(), node, PIECE);
        return new CuttingProblem.Demand(
                text(node, entry.at(), "id"),
                length(node, entry.at(), "length", null, false),
                node.has("count") ? whole(node, entry.at(), "count", 0) : 1,
                node.has("stage") ? whole(node, entry.at(), "stage", 0) : 1,
                flag(node, entry.at(), "goodFace", false) ? 1 : 0);
    }

    static void known(String at, JsonNode node, Set<String> fields) {
        require(node != null && node.isObject(), at + " must be an object, was " + shown(node));
        node.fieldNames().forEachRemaining(field -> require(
                fields.contains(field),
                at + " has an unknown field \"" + field + "\"; known are " + String.join(", ", new TreeSet<>(fields))));
    }

    static List<Entry> entries(JsonNode node, String field) {
        JsonNode array = node.get(field);
        require(array != null && array.isArray(), field + " must be a list, was " + shown(array));
        List<Entry> entries = new ArrayList<>();
        for (JsonNode entry : array) entries.add(new Entry(field + "[" + entries.size() + "]", entry));
        return entries;
    }

    static String text(JsonNode node, String at, String field) {
        JsonNode value = node.get(field);
        boolean fits = value != null && value.isTextual() && (at.isEmpty() || !value.textValue().isBlank());
        require(fits, path(at, field) + " must be a text, was " + shown(value));
        return value.textValue();
    }

    static double length(JsonNode node, String at, String field, Double otherwise, boolean mayBeZero) {
        JsonNode value = node.get(field);
        if (value == null && otherwise != null) return otherwise;
        boolean number = value != null && value.isNumber() && Double.isFinite(value.doubleValue());
        boolean fits = number && (mayBeZero ? value.doubleValue() >= 0 : value.doubleValue() > 0);
        require(
                fits,
                path(at, field) + " must be millimetres, " + (mayBeZero ? "0 or more" : "above 0") + ", was "
                        + shown(value));
        return value.doubleValue();
    }

    static int whole(JsonNode node, String at, String field, int least) {
        JsonNode value = node.get(field);
        boolean fits = value.isNumber()
                && Double.isFinite(value.doubleValue())
                && value.doubleValue() == Math.rint(value.doubleValue())
                && value.doubleValue() >= least
                && value.doubleValue() <= Integer.MAX_VALUE;
        require(
                fits,
                path(at, field) + " must be a whole number from " + least + " to " + Integer.MAX_VALUE + ", was "
                        + shown(value));
        return (int) value.doubleValue();
    }

    static boolean flag(JsonNode node, String at, String field, boolean otherwise) {
        JsonNode value = node.get(field);
        if (value == null) return otherwise;
        require(value.isBoolean(), path(at, field) + " must be true or false, was " + shown(value));
        return value.booleanValue();
    }

    static String path(String at, String field) {
        return at.isEmpty() ? field : at + "." + field;
    }

    static String shown(JsonNode value) {
        if (value == null) return "absent";
        String text = value.toString();
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }

    static void require(boolean holds, String otherwise) {
        if (!holds) throw new IllegalArgumentException(otherwise);
    }
}
