package lapyard.order;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * What one supplier charges to bring an order.
 *
 * @param charge   for each order, 0 or more
 * @param freeOver goods dearer than this come without charge; goods of exactly this still pay; empty where never free
 */
public record Delivery(BigDecimal charge, Optional<BigDecimal> freeOver) {
    public Delivery {
        if (charge.signum() < 0) {
            throw new IllegalArgumentException("a delivery charge must be 0 or more, was " + charge.toPlainString());
        }
    }

    /** The charge due on goods of this price. */
    public BigDecimal on(BigDecimal goods) {
        return freeOver.isPresent() && goods.compareTo(freeOver.get()) > 0 ? BigDecimal.ZERO : charge;
    }
}
