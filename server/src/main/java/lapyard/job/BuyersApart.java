package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.order.Apart;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.order.SlipLine.PackCount;
import lapyard.order.Wanted;
import lapyard.working.Working;

/** Gathers, good by good, what each bed and path would buy by itself, for each way to build it. */
final class BuyersApart {
    /**
     * From one supplier.
     *
     * @param cost   of all of it, rounded to the currency
     * @param least  proved: from this supplier it does not cost less
     * @param bought boards or metres
     */
    record Offer(String supplier, BigDecimal cost, BigDecimal least, double bought) {}

    /** One way to build what is an owner's. */
    private static final class Way {
        private final List<Wanted> wanted = new ArrayList<>();
        private BigDecimal unproved = BigDecimal.ZERO;
        private long missing;
        private boolean shares;
    }

    private final Map<String, List<Way>> owners = new LinkedHashMap<>();

    /** Before anything is said of them: there are so many ways to build what is theirs. Else there is one. */
    void ways(String owner, int count) {
        List<Way> ways = new ArrayList<>();
        for (int i = 0; i < count; i++) ways.add(new Way());
        owners.put(owner, ways);
    }

    private Way way(String owner, int way) {
        return owners.computeIfAbsent(owner, o -> List.of(new Way())).get(way);
    }

    /** However it is built. */
    void offers(String owner, String item, List<Offer> offers) {
        way(owner, 0);
        for (int way = 0; way < owners.get(owner).size(); way++) offers(owner, way, item, offers);
    }

    /** @param offers at least one, all of the same goods */
    void offers(String owner, int way, String item, List<Offer> offers) {
        wanted(owner, way, new Wanted(offers.stream()
                .map(offer -> new SlipLine(item, item, offer.bought(), "", List.of(new PackCount(item, 1, Optional.of(offer.cost()), offer.supplier())), 0, Optional.of(offer.cost()), Optional.empty(), Working.of("for this one alone", Working.COMMON_PRACTICE), List.of()))
                .toList()));
        unproved(owner, way, offers.stream().map(offer -> offer.cost().subtract(offer.least())).max(BigDecimal::compareTo).orElseThrow());
    }

    void wanted(String owner, int way, Wanted one) {
        way(owner, way).wanted.add(one);
    }

    /** What its lines could cost less at most, where that was not ruled out. */
    void unproved(String owner, int way, BigDecimal amount) {
        way(owner, way).unproved = way(owner, way).unproved.add(amount.max(BigDecimal.ZERO));
    }

    /** Counts pieces that no board or roll can give, so that another way to build is preferred. */
    void missing(String owner, int way, int count) {
        way(owner, way).missing += count;
    }

    /** Nothing is proved of its deliveries, as boards on hand could be shared out otherwise. */
    void shares(String owner, int way) {
        way(owner, way).shares = true;
    }

    /**
     * The boards of a line in the orders of each bed alone. Of lines of one name the first has it all.
     *
     * @param unpriced boards where none has a price; empty where nobody asks
     */
    static Optional<JobSheet.Way> boards(Slip slip, String item, boolean first, Optional<Integer> unpriced) {
        Optional<BigDecimal> cost = slip.apart().map(apart -> apart.goods().get(item));
        Optional<Integer> boards = cost.isPresent()
                ? Optional.of(first ? (int) Math.round(slip.apart().orElseThrow().amounts().get(item)) : 0)
                : unpriced;
        return boards.map(count -> new JobSheet.Way(JobSheet.Pooling.BED_BY_BED, count, first ? cost : cost.map(all -> all.subtract(all))));
    }

    List<Apart.Buyer> buyers() {
        List<Apart.Buyer> buyers = new ArrayList<>();
        owners.forEach((owner, ways) -> {
            long fewest = ways.stream().mapToLong(way -> way.missing).min().orElseThrow();
            ways.stream().filter(way -> way.missing == fewest && !way.wanted.isEmpty())
                    .forEach(way -> buyers.add(new Apart.Buyer(owner, way.wanted, way.unproved, way.shares)));
        });
        return buyers;
    }
}
