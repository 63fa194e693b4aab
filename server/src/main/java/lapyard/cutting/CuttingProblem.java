package lapyard.cutting;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;

/**
 * One section's cutting job. All lengths in millimetres, exact to 0.001 mm. Pieces fit a board where
 * sum of lengths + kerf x (pieces - 1) is at most board - 2 x end trim.
 *
 * @param keepOffcutMm remainders from this length on are worth racking
 */
public record CuttingProblem(
        String name, double kerfMm, double endTrimMm, double keepOffcutMm, List<Stock> stock, List<Demand> pieces) {
    public CuttingProblem {
        stock = List.copyOf(stock);
        pieces = List.copyOf(pieces);
    }

    /**
     * @param price     a board, in money; 1 where only boards are counted
     * @param available how many there are; empty for as many as wanted
     * @param goodFace  whether a seen piece may be cut from it
     */
    public record Stock(String id, double lengthMm, BigDecimal price, OptionalInt available, boolean goodFace) {}

    /**
     * @param stage    a board bought for stage k is cut for k or later stages; an offcut serves the stage that made it or later
     * @param goodFace whether it must come from a board with a good face
     */
    public record Demand(String id, double lengthMm, int count, int stage, boolean goodFace) {}
}
