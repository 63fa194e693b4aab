package lapyard.order;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lapyard.catalogue.Pack;
import lapyard.working.CommonMeasure;

/**
 * The cheapest mix of packs for any need, exact in whole numbers: contents and prices are counted in their greatest common
 * measure.
 *
 * <p>Ties go to the least left over, then the fewest packs, then the mix with more of what the catalogue names first.
 * All four are sums over the packs of a mix, so the best mix for an amount is one pack more than the best mix for a
 * smaller amount, and a table over amounts finds it.
 *
 * <p>Large needs: let b be the pack of least price a unit, the largest of these where several are equal. Among any
 * content(b) other packs (content in measures) some have contents that add to a whole number k of b's, as two of the
 * running sums are equal modulo content(b). Buying k of b in their place is never dearer, leaves the same over, and is
 * no more packs where it costs the same. So the best mix has fewer than content(b) other packs, and all that these
 * cannot cover is bought as b. A second limit: what other packs cost over b's unit price cannot reach the
 * price of one b.
 *
 * @see "P. C. Gilmore and R. E. Gomory, The theory and computation of knapsack functions, Operations Research 14
 *     (1966), 1045-1074, periodicity; restated from memory and proved above"
 */
final class PackMix {
    /** Amounts times packs in the table; above it the search takes over. */
    private static final int MOST_CELLS = 1_000_000;

    /** Prices and contents below it keep every sum in the table within a long. */
    private static final int MOST_BITS = 40;

    private static final int MOST_STEPS = 1_000_000;

    private final List<Pack> packs;
    private final BigDecimal measure;
    private final BigInteger[] content;
    private final BigInteger[] price;
    private final int best;
    private final BigInteger othersReach;
    private Table table;
    private int stepsLeft = MOST_STEPS;

    /**
     * @param counts one a pack, in the order of the packs
     * @param proved false where the search gave up before it had proved that nothing is cheaper
     */
    record Mix(List<BigInteger> counts, boolean proved) {}

    /** @param packs at least one, each with a price of 0 or more and a content above 0 */
    PackMix(List<Pack> packs) {
        this.packs = packs;
        List<BigDecimal> prices = packs.stream().map(pack -> pack.price().orElseThrow()).toList();
        measure = CommonMeasure.of(packs.stream().map(PackMix::contentOf).toList());
        content = packs.stream().map(pack -> contentOf(pack).divideToIntegralValue(measure).toBigIntegerExact()).toArray(BigInteger[]::new);
        BigDecimal coin = CommonMeasure.of(prices);
        price = prices.stream().map(each -> each.divideToIntegralValue(coin).toBigIntegerExact()).toArray(BigInteger[]::new);
        best = cheapestByUnit();
        othersReach = othersReach();
    }

    static BigDecimal contentOf(Pack pack) {
        return BigDecimal.valueOf(pack.content());
    }

    /** The best mix whose content is at least {@code need}, which is 0 or more. */
    Mix covering(BigDecimal need) {
        BigInteger target = need.divide(measure, 0, RoundingMode.CEILING).toBigInteger();
        BigInteger[] counts = new BigInteger[content.length];
        Arrays.fill(counts, BigInteger.ZERO);
        BigInteger sure = target.subtract(othersReach).max(BigInteger.ZERO).divide(content[best]);
        BigInteger rest = target.subtract(sure.multiply(content[best]));
        boolean proved = true;
        if (tabled(rest)) {
            table(rest.intValue()).addTo(counts, rest.intValue());
        } else {
            proved = new Search(rest).addTo(counts);
        }
        counts[best] = counts[best].add(sure);
        return new Mix(List.of(counts), proved);
    }

    private int cheapestByUnit() {
        int found = 0;
        for (int i = 1; i < content.length; i++) {
            int cheaper = price[i].multiply(content[found]).compareTo(price[found].multiply(content[i]));
            if (cheaper < 0 || cheaper == 0 && content[i].compareTo(content[found]) > 0) found = i;
        }
        return found;
    }

    /** Price of a pack over what its content costs as {@code best}, times content(best); 0 or more. */
    private BigInteger over(int i) {
        return price[i].multiply(content[best]).subtract(price[best].multiply(content[i]));
    }

    /** How often a pack can stand in the best mix beside {@code best}, for which this is 0. */
    private BigInteger mostOf(int i) {
        BigInteger round = content[best].divide(content[best].gcd(content[i])).subtract(BigInteger.ONE);
        BigInteger over = over(i);
        // Covering with best alone is within one price(best) of the bound, so dearer mixes cannot win.
        return over.signum() == 0
                ? round
                : round.min(price[best].multiply(content[best]).divide(over));
    }

    /** The most that packs other than {@code best} can hold in the best mix. */
    private BigInteger othersReach() {
        BigInteger each = BigInteger.ZERO;
        BigInteger largest = BigInteger.ZERO;
        for (int i = 0; i < content.length; i++) {
            each = each.add(mostOf(i).multiply(content[i]));
            largest = largest.max(content[i]);
        }
        return each.min(content[best].subtract(BigInteger.ONE).multiply(largest));
    }

    private boolean tabled(BigInteger amount) {
        return amount.compareTo(BigInteger.valueOf(MOST_CELLS / content.length)) <= 0
                && Arrays.stream(content).allMatch(each -> each.bitLength() <= MOST_BITS)
                && Arrays.stream(price).allMatch(each -> each.bitLength() <= MOST_BITS);
    }

    private Table table(int amount) {
        if (table == null || table.choice.length <= amount) table = new Table(amount);
        return table;
    }

    /** For every amount up to the largest: the pack, first in the catalogue, that the best mix for it contains. */
    private final class Table {
        final int[] choice;
        private final long[] held = Arrays.stream(content).mapToLong(BigInteger::longValue).toArray();

        Table(int largest) {
            choice = new int[largest + 1];
            long[] prices = Arrays.stream(price).mapToLong(BigInteger::longValue).toArray();
            long[] leastCost = new long[largest + 1];
            long[] leastHeld = new long[largest + 1];
            int[] leastCount = new int[largest + 1];
            for (int amount = 1; amount <= largest; amount++) {
                for (int i = 0; i < held.length; i++) {
                    int before = (int) Math.max(0, amount - held[i]);
                    long cost = leastCost[before] + prices[i];
                    long holds = leastHeld[before] + held[i];
                    int count = leastCount[before] + 1;
                    int order = i == 0 ? -1 : Long.compare(cost, leastCost[amount]);
                    order = order == 0 ? Long.compare(holds, leastHeld[amount]) : order;
                    order = order == 0 ? Integer.compare(count, leastCount[amount]) : order;
                    if (order < 0) {
                        leastCost[amount] = cost;
                        leastHeld[amount] = holds;
                        leastCount[amount] = count;
                        choice[amount] = i;
                    }
                }
            }
        }

        void addTo(BigInteger[] counts, int amount) {
            for (int left = amount; left > 0; left = (int) Math.max(0, left - held[choice[left]])) {
                counts[choice[left]] = counts[choice[left]].add(BigInteger.ONE);
            }
        }
    }

    /** Contents without a handy common measure: mixes of other packs are tried while they cost little over {@code best}. */
    private final class Search {
        private final BigInteger rest;
        private final List<Integer> others = new ArrayList<>();
        private final BigInteger[] tried = new BigInteger[content.length];
        private BigInteger[] found;
        private BigInteger slack;

        Search(BigInteger rest) {
            this.rest = rest;
            for (int i = 0; i < content.length; i++) if (mostOf(i).signum() > 0) others.add(i);
            Arrays.fill(tried, BigInteger.ZERO);
        }

        boolean addTo(BigInteger[] counts) {
            tryFrom(0, rest, BigInteger.ZERO);
            for (int i = 0; i < counts.length; i++) counts[i] = counts[i].add(found[i]);
            return stepsLeft > 0;
        }

        /** @param over what the packs tried so far cost over {@code best}, times content(best) */
        private void tryFrom(int k, BigInteger left, BigInteger over) {
            stepsLeft--;
            if (k == others.size()) {
                tried[best] = toCover(left, content[best]);
                if (found == null || compare(tried, found) < 0) {
                    found = tried.clone();
                    slack = slack();
                }
                return;
            }
            int i = others.get(k);
            BigInteger most = mostOf(i).min(toCover(left, content[i]));
            BigInteger remains = left;
            BigInteger dearer = over;
            for (BigInteger n = BigInteger.ZERO; n.compareTo(most) <= 0; n = n.add(BigInteger.ONE)) {
                tried[i] = n;
                tryFrom(k + 1, remains, dearer);
                remains = remains.subtract(content[i]);
                dearer = dearer.add(over(i));
                if (stepsLeft <= 0 || dearer.compareTo(slack) > 0) break;
            }
        }

        /** What a mix may cost over the bound, times content(best), and still be no dearer than the one found. */
        private BigInteger slack() {
            return total(price, found).multiply(content[best]).subtract(rest.multiply(price[best]));
        }

        private int compare(BigInteger[] a, BigInteger[] b) {
            int order = total(price, a).compareTo(total(price, b));
            order = order == 0 ? total(content, a).compareTo(total(content, b)) : order;
            order = order == 0 ? sum(a).compareTo(sum(b)) : order;
            return order == 0 ? Arrays.compare(b, a) : order;
        }

        private BigInteger total(BigInteger[] each, BigInteger[] counts) {
            BigInteger sum = BigInteger.ZERO;
            for (int i = 0; i < each.length; i++) sum = sum.add(each[i].multiply(counts[i]));
            return sum;
        }

        private BigInteger sum(BigInteger[] counts) {
            return Arrays.stream(counts).reduce(BigInteger.ZERO, BigInteger::add);
        }

        /** How many packs of one content cover what is left; 0 where nothing is. */
        private BigInteger toCover(BigInteger left, BigInteger each) {
            return left.max(BigInteger.ZERO).add(each).subtract(BigInteger.ONE).divide(each);
        }
    }
}
