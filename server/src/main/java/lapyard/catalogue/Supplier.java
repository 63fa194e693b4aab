package lapyard.catalogue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * Who sells, and what it costs to have it brought. All amounts are what is paid, tax included.
 *
 * @param id         short, as goods name it; empty for the one merchant of a garden that names no suppliers
 * @param leadDays   from order to the door
 * @param charge     for each order that is brought, 0 or more
 * @param freeOver   goods dearer than this come without charge; goods of exactly this still pay; empty where never free
 * @param taxPercent contained in every price; 0 where no tax is told
 * @param validUntil ISO 8601 date until which the prices hold, empty where not said
 * @param lorry      that brings it, empty where its limits are not known
 * @param depositPercent of the order, paid when it is placed, 0 to 100
 * @param payDays    from the delivery to the day on which the rest is due
 */
public record Supplier(
        String id,
        String name,
        int leadDays,
        BigDecimal charge,
        Optional<BigDecimal> freeOver,
        BigDecimal taxPercent,
        String validUntil,
        Optional<Vehicle> lorry,
        BigDecimal depositPercent,
        int payDays) {
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    /** The merchant of a garden that names no suppliers: brings everything without charge, at once. */
    public static final Supplier ONLY =
            new Supplier("", "Merchant", 0, BigDecimal.ZERO, Optional.empty(), BigDecimal.ZERO, "", Optional.empty(), BigDecimal.ZERO, 0);

    public Supplier {
        if (charge.signum() < 0) throw new IllegalArgumentException("a delivery charge must be 0 or more, was " + charge.toPlainString());
    }

    /** The charge due on goods of this price; nothing is due where nothing is bought. */
    public BigDecimal chargeOn(BigDecimal goods) {
        boolean free = goods.signum() == 0 || freeOver.isPresent() && goods.compareTo(freeOver.get()) > 0;
        return free ? BigDecimal.ZERO : charge;
    }

    /** The tax in an amount: amount x rate / (100 + rate), rounded half up to {@code decimals}. */
    public BigDecimal taxIn(BigDecimal paid, int decimals) {
        return paid.multiply(taxPercent).divide(HUNDRED.add(taxPercent), decimals, RoundingMode.HALF_UP);
    }

    /** What is paid for a price listed without tax; exact, with no more decimals than it needs or was listed with. */
    public static BigDecimal withTax(BigDecimal listed, BigDecimal taxPercent) {
        BigDecimal paid = listed.multiply(HUNDRED.add(taxPercent)).movePointLeft(2).stripTrailingZeros();
        return paid.setScale(Math.max(listed.scale(), Math.max(0, paid.scale())));
    }
}
