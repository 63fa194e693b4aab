package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import lapyard.job.MerchantOffers;

/** The wire form of merchants' offers side by side. */
public final class OffersJson {
    private OffersJson() {}

    private record Whole(String currency, BigDecimal total, boolean atLeast, boolean proven, List<Merchant> merchants, List<MerchantOffers.Line> lines) {}

    private record Merchant(String id, String name, int leadDays, String validUntil, BigDecimal goods, BigDecimal delivery, BigDecimal total, boolean whole,
            List<String> missing) {}

    public static ObjectNode of(MerchantOffers offers) {
        return Wire.of(new Whole(
                offers.best().currency().getCode(), offers.best().total(), offers.best().atLeast(), offers.proven(),
                offers.merchants().stream()
                        .map(one -> new Merchant(one.supplier().id(), one.supplier().name(), one.supplier().leadDays(), one.supplier().validUntil(), one.goods(),
                                one.charge(), one.total(), one.whole(), one.missing()))
                        .toList(),
                offers.lines()));
    }
}
