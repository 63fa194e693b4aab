package lapyard.order;

import java.util.List;
import lapyard.catalogue.PackGoods;
import org.joda.money.CurrencyUnit;

/** Needs become lines, lines become one slip. */
public final class Ordering {
    private Ordering() {}

    /**
     * The cheapest mix of packs that covers the garden's need, and what each bed alone would cost.
     *
     * @param needs one a bed or path, in the goods' unit, without spare
     */
    public static SlipLine packs(PackGoods goods, List<Double> needs, CurrencyUnit currency) {
        throw new UnsupportedOperationException();
    }

    /** A need for which the catalogue has nothing: kept in place, without a price. */
    public static SlipLine unpriced(String item, String label, double need, String unit) {
        throw new UnsupportedOperationException();
    }

    /**
     * @param leftOut whether something that cannot be made was left out, which makes the total "at least"
     */
    public static Slip slip(CurrencyUnit currency, List<SlipLine> lines, boolean leftOut) {
        throw new UnsupportedOperationException();
    }
}
