package lapyard.catalogue;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.working.Whole;

/**
 * Roll goods of one width.
 *
 * @param material      {@code liner} or {@code membrane}
 * @param pricePerMetre of roll length
 * @param stepMm        the length is sold in whole steps of this
 * @param maxLengthMm   the longest run in one piece, where there is one
 * @param supplier      id of who sells it, empty for the one merchant
 * @param gramsPerM2    its weight, where known
 * @param mayTurn       whether a piece may lie across it; not where grain or print run one way
 */
public record Roll(
        String id,
        String material,
        double widthMm,
        Optional<BigDecimal> pricePerMetre,
        double stepMm,
        OptionalDouble maxLengthMm,
        String supplier,
        OptionalDouble gramsPerM2,
        boolean mayTurn) {
    /** The longest run that is sold, in whole steps; infinite where none is told. */
    public double longestMm() {
        return maxLengthMm.isPresent() ? Whole.down(maxLengthMm.getAsDouble() / stepMm) * stepMm : Double.POSITIVE_INFINITY;
    }

    /** Sold by nobody and for no price. */
    Roll unpriced() {
        return new Roll(id, material, widthMm, Optional.empty(), stepMm, maxLengthMm, "", gramsPerM2, mayTurn);
    }
}
