package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.order.Apart;
import lapyard.order.SlipLine;
import lapyard.order.SlipLine.PackCount;
import lapyard.order.Wanted;
import lapyard.working.Working;

/** Gathers, good by good, what each bed and path would buy by itself. */
final class BuyersApart {
    /**
     * From one supplier.
     *
     * @param cost  of all of it, rounded to the currency
     * @param least proved: from this supplier it does not cost less
     */
    record Offer(String supplier, BigDecimal cost, BigDecimal least) {}

    private final Map<String, List<Wanted>> wanted = new LinkedHashMap<>();
    private final Map<String, BigDecimal> unproved = new LinkedHashMap<>();
    private final Set<String> shares = new LinkedHashSet<>();

    /** @param offers at least one, all of the same goods */
    void offers(String owner, String item, List<Offer> offers) {
        wanted(owner, new Wanted(offers.stream()
                .map(offer -> new SlipLine(item, item, 0, "", List.of(new PackCount(item, 1, Optional.of(offer.cost()), offer.supplier())), 0,
                        Optional.of(offer.cost()), Optional.empty(), Working.of("for this one alone", Working.COMMON_PRACTICE)))
                .toList()));
        unproved(owner, offers.stream().map(offer -> offer.cost().subtract(offer.least())).max(BigDecimal::compareTo).orElseThrow());
    }

    void wanted(String owner, Wanted one) {
        wanted.computeIfAbsent(owner, o -> new ArrayList<>()).add(one);
    }

    /** What its lines could cost less at most, where that was not ruled out. */
    void unproved(String owner, BigDecimal amount) {
        unproved.merge(owner, amount.max(BigDecimal.ZERO), BigDecimal::add);
    }

    /** Nothing is proved of its deliveries, as boards on hand could be shared out otherwise. */
    void shares(String owner) {
        shares.add(owner);
    }

    List<Apart.Buyer> buyers() {
        List<Apart.Buyer> buyers = new ArrayList<>();
        wanted.forEach((owner, lines) -> buyers.add(
                new Apart.Buyer(owner, lines, unproved.getOrDefault(owner, BigDecimal.ZERO), shares.contains(owner))));
        return buyers;
    }
}
