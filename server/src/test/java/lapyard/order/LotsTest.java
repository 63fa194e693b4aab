package lapyard.order;

import static lapyard.order.SupplierChoiceTest.sold;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import lapyard.catalogue.Pack;
import org.junit.jupiter.api.Test;

/** Packs in bundles and with least counts against trying every count. */
class LotsTest {
    private record Tried(int[] counts, int cost, int held, int packs) {}

    private static List<Pack> packs(Random random, int mostBundle) {
        List<Pack> packs = new ArrayList<>();
        for (int p = 0, n = 1 + random.nextInt(3); p < n; p++) {
            packs.add(sold("", "p" + p, 1 + random.nextInt(4), String.valueOf(1 + random.nextInt(6)), 1 + random.nextInt(mostBundle), 1 + random.nextInt(5)));
        }
        return packs;
    }

    /** Every mix of whole bundles, each pack left out or not under its least count, as far as one more pack of each could be of use. */
    private static List<Tried> all(List<Pack> packs, int need, int most) {
        List<Tried> all = new ArrayList<>();
        all.add(new Tried(new int[packs.size()], 0, 0, 0));
        for (int p = 0; p < packs.size(); p++) {
            Pack pack = packs.get(p);
            for (Tried before : List.copyOf(all)) {
                for (int n = 1; n <= most; n++) {
                    if (n % pack.bundle() != 0 || n < pack.least()) continue;
                    int[] counts = before.counts.clone();
                    counts[p] = n;
                    all.add(new Tried(counts, before.cost + n * pack.price().orElseThrow().intValue(), before.held + n * (int) pack.content(), before.packs + n));
                }
            }
        }
        all.removeIf(tried -> tried.held < need);
        return all;
    }

    /** Cheapest, then least left over; without bundles also fewest packs, then more of what is named first. */
    @Test
    void noMixOfBundlesAndLeastCountsIsBetter() {
        Random random = new Random(41);
        for (int round = 0; round < 150; round++) {
            List<Pack> packs = packs(random, 1 + round % 3);
            Lots lots = new Lots(packs);
            for (int need : new int[] {random.nextInt(12), random.nextInt(12)}) {
                Tried best = all(packs, need, need + 6).stream()
                        .min((a, b) -> Arrays.compare(new int[] {a.cost, a.held, a.packs}, new int[] {b.cost, b.held, b.packs}) != 0
                                ? Arrays.compare(new int[] {a.cost, a.held, a.packs}, new int[] {b.cost, b.held, b.packs})
                                : Arrays.compare(b.counts, a.counts))
                        .orElseThrow();
                PackMix.Mix mix = lots.covering(BigDecimal.valueOf(need));
                int held = 0;
                for (int p = 0; p < packs.size(); p++) held += mix.counts().get(p).intValue() * (int) packs.get(p).content();
                assertEquals(best.held, held, need + " of " + packs);
                if (round % 3 == 0) assertEquals(Arrays.toString(best.counts), mix.counts().toString(), need + " of " + packs);
                assertEquals(0, lots.cost(mix).compareTo(BigDecimal.valueOf(best.cost)), need + " of " + packs);
                assertTrue(mix.proved());
            }
        }
    }

    /** Six for 6.00 in every way: one pack of 6 before three of 2, and of two packs of 3 those named first. */
    @Test
    void atOneCostFewerPacksAndThenTheFirstNamedAreBought() {
        BigDecimal six = BigDecimal.valueOf(6);
        assertEquals("[0, 1]", new Lots(List.of(sold("", "two", 2, "2.00", 1, 3), sold("", "six", 6, "6.00", 1, 1))).covering(six).counts().toString());
        assertEquals("[2, 0]", new Lots(List.of(sold("", "least", 3, "3.00", 1, 2), sold("", "three", 3, "3.00", 1, 1))).covering(six).counts().toString());
    }

    /**
     * Eight packs with a least count of 2 are all tried. A ninth is not, so nothing is proved: content 1 to 9 for 10.00 less 0.01 a
     * unit. For a need of 18 two of the ninth would cost 19.82; of the eight, two of 8 and two of 1 cost 39.82 and leave nothing over.
     */
    @Test
    void eightLeastCountsAreTriedAndANinthIsSaidToBeOpen() {
        List<Pack> packs = new ArrayList<>();
        for (int i = 1; i <= 8; i++) packs.add(sold("", "p" + i, i, "9.9" + (9 - i), 1, 2));
        PackMix.Mix eight = new Lots(packs).covering(BigDecimal.valueOf(16));
        assertTrue(eight.proved());
        assertEquals(BigInteger.TWO, eight.counts().get(7));
        packs.add(sold("", "p9", 9, "9.90", 1, 2));
        assertFalse(new Lots(packs).covering(BigDecimal.valueOf(18)).proved());
    }

    /** Dearer mixes: of each price up to the limit the one that leaves least over, if no pack of it could be left out. */
    @Test
    void everyDearerMixThatWastesNothingIsOffered() {
        Random random = new Random(43);
        for (int round = 0; round < 150; round++) {
            List<Pack> packs = packs(random, 3);
            int need = 1 + random.nextInt(8);
            int limit = 4 + random.nextInt(14);
            Map<Integer, Integer> least = new TreeMap<>();
            for (Tried tried : all(packs, need, 18)) {
                boolean wasteless = tried.cost <= limit;
                for (int p = 0; p < packs.size(); p++) {
                    Pack pack = packs.get(p);
                    int fewer = tried.counts[p] - pack.bundle() < pack.least() ? tried.counts[p] : pack.bundle();
                    if (tried.counts[p] > 0 && tried.held - fewer * (int) pack.content() >= need) wasteless = false;
                }
                if (wasteless) least.merge(tried.cost, tried.held, Math::min);
            }
            Map<Integer, Integer> offered = new TreeMap<>();
            for (List<BigInteger> mix : DearerMixes.of(packs, BigDecimal.valueOf(need), BigDecimal.valueOf(limit))) {
                int cost = 0;
                int held = 0;
                for (int p = 0; p < packs.size(); p++) {
                    cost += mix.get(p).intValue() * packs.get(p).price().orElseThrow().intValue();
                    held += mix.get(p).intValue() * (int) packs.get(p).content();
                }
                offered.put(cost, held);
            }
            assertEquals(least, offered, need + " up to " + limit + " of " + packs);
        }
        assertEquals(List.of(), DearerMixes.of(packs(random, 3), BigDecimal.ZERO, BigDecimal.TEN));
    }

    /** 60 packs of 1 at 1000, 1001 or 1061 each are bought for b + 61 c more than 60000: a price of its own for each of 61 x 62 / 2 mixes. */
    @Test
    void ofVeryManyMixesThreeHundredAreTold() {
        List<Pack> packs = List.of("1000", "1001", "1061").stream().map(price -> sold("", price, 1, price, 1, 1)).toList();
        assertEquals(3, DearerMixes.of(packs, BigDecimal.ONE, BigDecimal.valueOf(1061)).size(), "each covers 1 alone");
        assertEquals(300, DearerMixes.of(packs, BigDecimal.valueOf(60), BigDecimal.valueOf(70_000)).size());
    }
}
