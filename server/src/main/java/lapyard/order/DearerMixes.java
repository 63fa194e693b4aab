package lapyard.order;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.catalogue.Pack;

/**
 * Mixes that cover a need, cost no more than a limit and waste no pack: with any one bundle less they would fall short.
 * A dearer mix can be worth its price where it lifts an order over the limit of free delivery. Of mixes of one
 * price only the one that leaves least over is kept.
 */
final class DearerMixes {
    private static final int MOST_STEPS = 20_000;
    private static final int MOST_MIXES = 300;

    private final List<Pack> packs;
    private final BigDecimal need;
    private final BigDecimal limit;
    private final BigDecimal[] leastUnitPrice;
    private final int[] counts;
    private final Map<BigDecimal, int[]> found = new LinkedHashMap<>();
    private int steps;

    /** @param packs of one supplier, each with a price */
    private DearerMixes(List<Pack> packs, BigDecimal need, BigDecimal limit) {
        this.packs = packs;
        this.need = need;
        this.limit = limit;
        this.counts = new int[packs.size()];
        this.leastUnitPrice = new BigDecimal[packs.size() + 1];
        leastUnitPrice[packs.size()] = limit.add(BigDecimal.ONE);
        for (int i = packs.size() - 1; i >= 0; i--) {
            BigDecimal unit = packs.get(i).price().orElseThrow().divide(PackMix.contentOf(packs.get(i)), 12, RoundingMode.FLOOR);
            leastUnitPrice[i] = unit.min(leastUnitPrice[i + 1]);
        }
    }

    /** Counts of packs; at most 300 mixes, the first found. */
    static List<List<BigInteger>> of(List<Pack> packs, BigDecimal need, BigDecimal limit) {
        DearerMixes search = new DearerMixes(packs, need, limit);
        if (need.signum() > 0) search.from(0, need, BigDecimal.ZERO);
        return search.found.values().stream().map(mix -> Arrays.stream(mix).mapToObj(BigInteger::valueOf).toList()).toList();
    }

    private void from(int k, BigDecimal left, BigDecimal cost) {
        steps++;
        if (left.signum() <= 0) {
            keep(left.negate());
            return;
        }
        if (k == packs.size() || cost.add(left.multiply(leastUnitPrice[k])).compareTo(limit) > 0) return;
        Pack pack = packs.get(k);
        BigDecimal content = PackMix.contentOf(pack);
        BigDecimal price = pack.price().orElseThrow();
        from(k + 1, left, cost);
        for (int n = pack.leastBundled(); ; n += pack.bundle()) {
            BigDecimal dearer = cost.add(price.multiply(BigDecimal.valueOf(n)));
            if (dearer.compareTo(limit) > 0 || steps >= MOST_STEPS || found.size() >= MOST_MIXES) break;
            BigDecimal rest = left.subtract(content.multiply(BigDecimal.valueOf(n)));
            counts[k] = n;
            from(k + 1, rest, dearer);
            if (rest.signum() <= 0) break;
        }
        counts[k] = 0;
    }

    private void keep(BigDecimal over) {
        BigDecimal paid = BigDecimal.ZERO;
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] == 0) continue;
            Pack pack = packs.get(i);
            int less = counts[i] == pack.leastBundled() ? counts[i] : pack.bundle();
            if (over.compareTo(PackMix.contentOf(pack).multiply(BigDecimal.valueOf(less))) >= 0) return;
            paid = paid.add(pack.price().orElseThrow().multiply(BigDecimal.valueOf(counts[i])));
        }
        int[] before = found.get(paid.stripTrailingZeros());
        if (before == null || over.compareTo(held(before).subtract(need)) < 0) found.put(paid.stripTrailingZeros(), counts.clone());
    }

    private BigDecimal held(int[] mix) {
        BigDecimal held = BigDecimal.ZERO;
        for (int i = 0; i < mix.length; i++) held = held.add(PackMix.contentOf(packs.get(i)).multiply(BigDecimal.valueOf(mix[i])));
        return held;
    }
}
