package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingResult;

/** The wire form of a cutting problem and of its plan. Lengths in millimetres. */
public final class CuttingJson {
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
        AskReader ask = AskReader.of("problem", node, "name", "kerf", "endTrim", "keepOffcut", "retrim", "stock", "pieces", "sawn", "report");
        List<CuttingProblem.Stock> stock = ask.each("stock", CuttingJson::stock);
        List<CuttingProblem.Demand> pieces = ask.each("pieces", CuttingJson::piece);
        return new CuttingProblem(
                ask.textIfAny("name"), ask.length("kerf", 0, true), ask.length("endTrim", 0, true), ask.length("keepOffcut", KEEP_OFFCUT_MM, true),
                ask.length("retrim", 0, true), stock, pieces);
    }

    /**
     * Cost and bound as exact decimals; {@code salvage} stands there only where boards on hand are worth something. Where pieces
     * are left over, {@code unplacedProven} tells whether no plan leaves fewer, and {@code moreBoards} which boards would hold
     * them, the cheapest first.
     */
    public static ObjectNode write(CuttingResult result) {
        return Wire.of(result);
    }

    private static CuttingProblem.Stock stock(AskReader stock) {
        stock.known("id", "length", "price", "available", "goodFace", "salvage", "sawnEnd");
        OptionalInt available = stock.wholeIfAny("available");
        return new CuttingProblem.Stock(
                stock.text("id"), stock.length("length"), stock.money("price", BigDecimal.ONE), available, stock.flag("goodFace", true) ? 1 : 0,
                stock.money("salvage", BigDecimal.ZERO), stock.flag("sawnEnd", false));
    }

    private static CuttingProblem.Demand piece(AskReader piece) {
        piece.known("id", "length", "count", "stage", "goodFace");
        return new CuttingProblem.Demand(
                piece.text("id"), piece.length("length"), piece.whole("count", 0, 1), piece.whole("stage", 0, 1), piece.flag("goodFace", false) ? 1 : 0);
    }
}
