package lapyard.order;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import lapyard.catalogue.Pack;

/**
 * The cheapest mix of packs of which some come in whole bundles or not under a least count. A bundle is a larger pack.
 * A least count is either taken or the pack is left out: every choice of those taken is one {@link PackMix} on what
 * the least counts leave, and the best of all choices is the answer.
 */
final class Lots {
    /** So many choices of packs with a least count are tried, 2 to this power. */
    private static final int MOST_LEASTS = 8;

    private final List<Pack> packs;
    private final List<Integer> leasts = new ArrayList<>();
    private final Map<Integer, PackMix> mixes = new HashMap<>();

    /** @param packs at least one, each with a price of 0 or more and a content above 0 */
    Lots(List<Pack> packs) {
        this.packs = packs;
        for (int i = 0; i < packs.size(); i++) if (packs.get(i).leastBundled() > packs.get(i).bundle()) leasts.add(i);
    }

    /** Counts of packs, not of bundles. */
    PackMix.Mix covering(BigDecimal need) {
        int tried = Math.min(leasts.size(), MOST_LEASTS);
        List<BigInteger> best = null;
        boolean proved = leasts.size() <= MOST_LEASTS;
        for (int taken = 0; taken < 1 << tried; taken++) {
            BigInteger[] counts = new BigInteger[packs.size()];
            Arrays.fill(counts, BigInteger.ZERO);
            BigDecimal rest = need;
            for (int k = 0; k < tried; k++) {
                if ((taken >> k & 1) == 1) {
                    Pack pack = packs.get(leasts.get(k));
                    counts[leasts.get(k)] = BigInteger.valueOf(pack.leastBundled());
                    rest = rest.subtract(PackMix.contentOf(pack).multiply(BigDecimal.valueOf(pack.leastBundled())));
                }
            }
            if (rest.signum() > 0) {
                List<Integer> offered = offered(taken);
                if (offered.isEmpty()) continue;
                PackMix.Mix mix = mixes.computeIfAbsent(taken, same -> new PackMix(bundles(offered))).covering(rest);
                proved &= mix.proved();
                for (int k = 0; k < offered.size(); k++) {
                    int i = offered.get(k);
                    counts[i] = counts[i].add(mix.counts().get(k).multiply(BigInteger.valueOf(packs.get(i).bundle())));
                }
            }
            List<BigInteger> found = List.of(counts);
            if (best == null || compare(found, best) < 0) best = found;
        }
        return new PackMix.Mix(best, proved);
    }

    BigDecimal cost(PackMix.Mix mix) {
        return sum(mix.counts(), true);
    }

    private List<Integer> offered(int taken) {
        List<Integer> offered = new ArrayList<>();
        for (int i = 0; i < packs.size(); i++) {
            int k = leasts.indexOf(i);
            if (k < 0 || k < MOST_LEASTS && (taken >> k & 1) == 1) offered.add(i);
        }
        return offered;
    }

    private List<Pack> bundles(List<Integer> offered) {
        List<Pack> bundles = new ArrayList<>();
        for (int i : offered) {
            Pack pack = packs.get(i);
            BigDecimal bundle = BigDecimal.valueOf(pack.bundle());
            bundles.add(new Pack(pack.name(), PackMix.contentOf(pack).multiply(bundle).doubleValue(), pack.price().map(bundle::multiply), "", 1, 1, OptionalDouble.empty()));
        }
        return bundles;
    }

    /** As {@link PackMix} orders mixes: cost, left over, packs, then what the catalogue names first. */
    private int compare(List<BigInteger> one, List<BigInteger> other) {
        int order = sum(one, true).compareTo(sum(other, true));
        order = order == 0 ? sum(one, false).compareTo(sum(other, false)) : order;
        order = order == 0 ? count(one).compareTo(count(other)) : order;
        for (int i = 0; i < packs.size() && order == 0; i++) order = other.get(i).compareTo(one.get(i));
        return order;
    }

    private BigDecimal sum(List<BigInteger> counts, boolean price) {
        BigDecimal sum = BigDecimal.ZERO;
        for (int i = 0; i < packs.size(); i++) {
            Pack pack = packs.get(i);
            BigDecimal each = price ? pack.price().orElseThrow() : PackMix.contentOf(pack);
            sum = sum.add(each.multiply(new BigDecimal(counts.get(i))));
        }
        return sum;
    }

    private static BigInteger count(List<BigInteger> counts) {
        return counts.stream().reduce(BigInteger.ZERO, BigInteger::add);
    }
}
