package lapyard.sheets;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One material's roll job, all lengths in millimetres, exact to 0.001 mm.
 *
 * @param turn         whether a piece may be turned by 90 degrees
 * @param straightCuts whether every cut must run edge to edge (guillotine)
 */
public record RollProblem(String name, List<Stock> rolls, List<Piece> pieces, boolean turn, boolean straightCuts) {
    public RollProblem {
        rolls = List.copyOf(rolls);
        pieces = List.copyOf(pieces);
    }

    /**
     * A roll width.
     *
     * @param price       per metre of length
     * @param stepMm      a run is sold in whole steps of this
     * @param maxLengthMm the longest run in one piece, where there is one; what is bought of a run stays within it
     * @param available   how many runs there are; empty for as many as wanted
     */
    public record Stock(
            String id,
            double widthMm,
            BigDecimal price,
            double stepMm,
            OptionalDouble maxLengthMm,
            OptionalInt available) {
        public Stock(String id, double widthMm, BigDecimal price, double stepMm, OptionalDouble maxLengthMm) {
            this(id, widthMm, price, stepMm, maxLengthMm, OptionalInt.empty());
        }
    }

    /** {@code widthMm} lies across the roll and {@code heightMm} along it, unless the piece is turned. */
    public record Piece(String id, double widthMm, double heightMm, int count) {}
}
