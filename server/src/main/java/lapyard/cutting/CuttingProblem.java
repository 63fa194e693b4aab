package lapyard.cutting;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.ToIntFunction;

/**
 * One section's cutting job. All lengths in millimetres, exact to 0.001 mm. Pieces fit a board where
 * sum of lengths + kerf x (pieces - 1) is at most board - 2 x end trim.
 *
 * @param keepOffcutMm remainders from this length on are worth racking
 * @param retrimMm     cut off the end of an offcut each time that a later stage takes it up again, kerf included
 */
public record CuttingProblem(
        String name,
        double kerfMm,
        double endTrimMm,
        double keepOffcutMm,
        double retrimMm,
        List<Stock> stock,
        List<Demand> pieces) {
    /** A board has two faces. */
    public static final int MOST_GOOD_FACES = 2;

    public CuttingProblem {
        stock = List.copyOf(stock);
        pieces = List.copyOf(pieces);
    }

    /** The same saw for other boards and pieces. */
    public CuttingProblem with(List<Stock> otherStock, List<Demand> otherPieces) {
        return new CuttingProblem(name, kerfMm, endTrimMm, keepOffcutMm, retrimMm, otherStock, otherPieces);
    }

    /** The stock when so many of each board on hand are used, by id. */
    List<Stock> stockLess(Map<String, Integer> used) {
        return stock.stream()
                .map(board -> board.available().isEmpty()
                        ? board
                        : board.with(board.available().getAsInt() - used.getOrDefault(board.id(), 0)))
                .toList();
    }

    /**
     * @param price     what it costs to have a board, in money; 1 where only boards are counted
     * @param available how many there are; empty for as many as wanted
     * @param goodFaces 0, 1 or 2: a seen piece is cut from a board with one, what shows both its faces from one with two
     * @param salvage   what a board on hand would be worth if it were kept whole, in money; it counts as cost where the
     *     board is opened, so no board is burned to save less than it is worth
     * @param sawnEnd   whether its first end is a fresh cut, so that only the far end is trimmed
     */
    public record Stock(
            String id,
            double lengthMm,
            BigDecimal price,
            OptionalInt available,
            int goodFaces,
            BigDecimal salvage,
            boolean sawnEnd) {
        /** A board that is worth nothing kept and is trimmed at both ends. */
        public Stock(String id, double lengthMm, BigDecimal price, OptionalInt available, int goodFaces) {
            this(id, lengthMm, price, available, goodFaces, BigDecimal.ZERO, false);
        }

        /** The same board, so many of them. */
        public Stock with(int there) {
            return new Stock(id, lengthMm, price, OptionalInt.of(there), goodFaces, salvage, sawnEnd);
        }

        /** The same board if it were so much longer, or shorter where that is below 0. */
        public Stock longer(double byMm) {
            return new Stock(id, lengthMm + byMm, price, available, goodFaces, salvage, sawnEnd);
        }

        /** Price and salvage value together. */
        public BigDecimal worth() {
            return price.add(salvage);
        }
    }

    /** Its pieces in other numbers; without those of which there are none. */
    List<Demand> counted(ToIntFunction<Demand> count) {
        return pieces.stream().filter(piece -> count.applyAsInt(piece) > 0).map(piece -> piece.with(count.applyAsInt(piece))).toList();
    }

    /**
     * @param stage    a board bought for stage k is cut for k or later stages; an offcut serves the stage that made it or later
     * @param goodFaces how many good faces its board must have, 0 to 2
     */
    public record Demand(String id, double lengthMm, int count, int stage, int goodFaces) {
        /** The same piece, so many of it. */
        Demand with(int wanted) {
            return new Demand(id, lengthMm, wanted, stage, goodFaces);
        }
    }
}
