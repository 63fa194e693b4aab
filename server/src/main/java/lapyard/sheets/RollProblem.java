package lapyard.sheets;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;

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

    /** A roll width; {@code price} per metre of length, sold in whole steps of {@code stepMm}. */
    public record Stock(String id, double widthMm, BigDecimal price, double stepMm, OptionalDouble maxLengthMm) {}

    public record Piece(String id, double widthMm, double heightMm, int count) {}
}
