package lapyard.order;

import static lapyard.order.OrderingTest.supplier;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Supplier;
import lapyard.order.SlipLine.Use;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SupplierChoiceTest {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    static Pack sold(String supplier, String name, double content, String price, int bundle, int least) {
        return new Pack(
                name, content, Optional.of(new BigDecimal(price)), supplier, bundle, least, OptionalDouble.empty());
    }

    private static Slip slip(List<PackGoods> goods, List<Double> needs, List<Supplier> suppliers) {
        return Ordering.slip(GBP, wanted(goods, needs, suppliers), List.of(), suppliers);
    }

    private static List<Wanted> wanted(List<PackGoods> goods, List<Double> needs, List<Supplier> suppliers) {
        BigDecimal reach = suppliers.stream()
                .filter(one -> one.freeOver().isPresent())
                .map(Supplier::charge)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        List<Wanted> wanted = new ArrayList<>();
        for (int i = 0; i < goods.size(); i++) {
            wanted.add(Ordering.packWays(goods.get(i), List.of(new Use("bed A", needs.get(i))), reach, GBP));
        }
        return wanted;
    }

    /** What a choice costs, charges as the suppliers state them. */
    private static BigDecimal cost(List<SlipLine> chosen, List<Supplier> suppliers) {
        Map<String, BigDecimal> spent = new TreeMap<>();
        chosen.forEach(line -> line.parts().forEach((supplier, part) -> spent.merge(supplier, part, BigDecimal::add)));
        BigDecimal total = chosen.stream().map(line -> line.cost().orElse(BigDecimal.ZERO)).reduce(BigDecimal.ZERO, BigDecimal::add);
        for (Supplier supplier : suppliers) total = total.add(supplier.chargeOn(spent.getOrDefault(supplier.id(), BigDecimal.ZERO)));
        return total;
    }

    /** Ten together cost 20.00 from A. Two and eight alone: two of B at 3.00 and one of A, 26.00; two of A would be 40.00. */
    @Test
    void whoBuysBedByBedBuysWhereThatIsCheapest() {
        PackGoods goods = new PackGoods("g", "g", "l", 0, 1, List.of(sold("A", "big", 10, "20.00", 1, 1), sold("B", "small", 1, "3.00", 1, 1)), OptionalDouble.empty());
        SlipLine line = Ordering.slip(GBP, List.of(Ordering.packWays(goods, List.of(new Use("bed M", 2), new Use("bed N", 8)), BigDecimal.ZERO, GBP)), List.of(), List.of(supplier("A", "0", null), supplier("B", "30", null))).lines().get(0);
        assertEquals(new BigDecimal("20.00"), line.cost().orElseThrow());
        assertEquals(new BigDecimal("26.00"), line.bedByBed().orElseThrow());
    }

    /**
     * Of every line each wasteless mix from one supplier and the cheapest from each set of suppliers, with every other
     * line's, charges as the supplier states them.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void noMixOfAnyLineWithAnyOtherIsCheaper(long seed) {
        Random random = new Random(seed);
        List<Supplier> suppliers = new ArrayList<>();
        for (int s = 0, n = 1 + random.nextInt(3); s < n; s++) {
            suppliers.add(supplier(
                    "s" + s, String.valueOf(random.nextInt(4) * 5), random.nextInt(4) == 0 ? null : String.valueOf(10 + random.nextInt(50))));
        }
        List<PackGoods> goods = new ArrayList<>();
        List<Double> needs = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(3); i < n; i++) {
            List<Pack> packs = new ArrayList<>();
            for (int p = 0, m = 1 + random.nextInt(4); p < m; p++) {
                packs.add(sold(
                        "s" + random.nextInt(suppliers.size()), "p" + p, 1 + random.nextInt(5), String.valueOf(1 + random.nextInt(15)),
                        1 + random.nextInt(2), 1 + random.nextInt(3)));
            }
            goods.add(new PackGoods("g" + i, "g" + i, "l", 0, 1, packs, OptionalDouble.empty()));
            needs.add((double) (1 + random.nextInt(12)));
        }
        Slip slip = slip(goods, needs, suppliers);
        assertTrue(slip.proven(), "seed " + seed);
        assertEquals(slip.total(), slip.lowerBound(), "seed " + seed);
        BigDecimal best = best(goods, needs, suppliers, 0, new TreeMap<>());
        assertEquals(best.setScale(2, RoundingMode.UNNECESSARY), slip.total(), "seed " + seed);
        List<Wanted> wanted = wanted(goods, needs, suppliers);
        for (int steps : List.of(0, 10, 60)) {
            SupplierChoice.Chosen cut = SupplierChoice.of(wanted, suppliers, 2, steps);
            BigDecimal found = cost(cut.lines(), suppliers);
            assertTrue(cut.lowerBound().compareTo(best) <= 0 && best.compareTo(found) <= 0, "seed " + seed + ", " + steps + " steps");
            assertEquals(cut.proven(), cut.lowerBound().compareTo(found) == 0, "seed " + seed + ", " + steps + " steps");
            if (steps == 0) assertTrue(found.compareTo(cheapestWithin(wanted, suppliers)) <= 0, "seed " + seed);
        }
        BigDecimal added = BigDecimal.ZERO;
        for (Slip.Order order : slip.orders()) {
            BigDecimal parts = order.lines().stream().map(part -> part.cost().orElseThrow()).reduce(BigDecimal.ZERO, BigDecimal::add);
            assertEquals(0, parts.compareTo(order.goods()), "seed " + seed);
            added = added.add(order.total());
        }
        assertEquals(0, added.compareTo(slip.total()), "seed " + seed);
    }

    /** Each line at its cheapest of what some set of suppliers brings, over all sets. */
    private static BigDecimal cheapestWithin(List<Wanted> wanted, List<Supplier> suppliers) {
        BigDecimal best = null;
        for (int set = 0; set < 1 << suppliers.size(); set++) {
            List<SlipLine> picked = new ArrayList<>();
            for (Wanted line : wanted) {
                int used = set;
                line.ways().stream()
                        .filter(way -> IntStream.range(0, suppliers.size()).allMatch(s -> (used >> s & 1) == 1 || suppliers.get(s).charge().signum() == 0 || !way.parts().containsKey(suppliers.get(s).id())))
                        .min(Comparator.comparing(way -> way.cost().orElseThrow()))
                        .ifPresent(picked::add);
            }
            if (picked.size() < wanted.size()) continue;
            BigDecimal cost = cost(picked, suppliers);
            best = best == null || cost.compareTo(best) < 0 ? cost : best;
        }
        return best;
    }

    static BigDecimal best(
            List<PackGoods> goods, List<Double> needs, List<Supplier> suppliers, int line, Map<String, BigDecimal> spent) {
        if (line == goods.size()) {
            BigDecimal total = BigDecimal.ZERO;
            for (Supplier supplier : suppliers) {
                BigDecimal own = spent.getOrDefault(supplier.id(), BigDecimal.ZERO);
                total = total.add(own).add(supplier.chargeOn(own));
            }
            return total;
        }
        BigDecimal best = null;
        for (int[] mix : offered(goods.get(line).packs(), needs.get(line).intValue())) {
            Map<String, BigDecimal> more = new TreeMap<>(spent);
            for (int p = 0; p < mix.length; p++) {
                Pack pack = goods.get(line).packs().get(p);
                if (mix[p] > 0) {
                    more.merge(pack.supplier(), pack.price().orElseThrow().multiply(BigDecimal.valueOf(mix[p])), BigDecimal::add);
                }
            }
            BigDecimal found = best(goods, needs, suppliers, line + 1, more);
            best = best == null || found.compareTo(best) < 0 ? found : best;
        }
        return best;
    }

    private static List<int[]> offered(List<Pack> packs, int need) {
        List<int[]> all = mixes(packs, need);
        List<int[]> offered = new ArrayList<>(all.stream().filter(mix -> sellers(packs, mix).size() == 1).toList());
        List<String> sellers = packs.stream().map(Pack::supplier).distinct().toList();
        for (int set = 1; set < 1 << sellers.size(); set++) {
            int chosen = set;
            all.stream()
                    .filter(mix -> sellers(packs, mix).stream().allMatch(seller -> (chosen >> sellers.indexOf(seller) & 1) == 1))
                    .min(Comparator.comparingDouble((int[] mix) -> sum(packs, mix, true))
                            .thenComparingDouble(mix -> sum(packs, mix, false))
                            .thenComparingInt(mix -> Arrays.stream(mix).sum())
                            .thenComparing(mix -> mix, (a, b) -> Arrays.compare(b, a)))
                    .ifPresent(offered::add);
        }
        return offered;
    }

    private static Set<String> sellers(List<Pack> packs, int[] mix) {
        Set<String> sellers = new TreeSet<>();
        for (int p = 0; p < mix.length; p++) {
            if (mix[p] > 0) {
                sellers.add(packs.get(p).supplier());
            }
        }
        return sellers;
    }

    private static double sum(List<Pack> packs, int[] mix, boolean price) {
        double sum = 0;
        for (int p = 0; p < mix.length; p++) {
            sum += mix[p] * (price ? packs.get(p).price().orElseThrow().doubleValue() : packs.get(p).content());
        }
        return sum;
    }

    /** All counts that cover the need and would not with any bundle, or any least count as a whole, taken out. */
    private static List<int[]> mixes(List<Pack> packs, int need) {
        List<int[]> all = new ArrayList<>();
        int[] counts = new int[packs.size()];
        while (true) {
            double held = 0;
            for (int p = 0; p < counts.length; p++) {
                held += counts[p] * packs.get(p).content();
            }
            boolean covers = held >= need;
            for (int p = 0; p < counts.length && covers; p++) {
                if (counts[p] > 0) {
                    int less = counts[p] == packs.get(p).leastBundled() ? counts[p] : packs.get(p).bundle();
                    covers = held - less * packs.get(p).content() < need;
                }
            }
            if (covers) {
                all.add(counts.clone());
            }
            int p = 0;
            while (p < counts.length) {
                counts[p] = counts[p] == 0 ? packs.get(p).leastBundled() : counts[p] + packs.get(p).bundle();
                if (counts[p] <= need + packs.get(p).leastBundled() + 2) {
                    break;
                }
                counts[p++] = 0;
            }
            if (p == counts.length) {
                return all;
            }
        }
    }

    /** Worked by hand: timber 352.20 and a charge of 35 are 387.20; with 70.00 of screws and oil 422.20, over 400 and free. */
    @Test
    void seventyOfGoodsOverTheLimitCostThirtyFive() {
        Supplier yard = supplier("yard", "35.00", "400.00");
        Supplier corner = supplier("corner", "0", null);
        PackGoods timber = new PackGoods("timber", "timber", "l", 0, 1, List.of(sold("yard", "load", 1, "352.20", 1, 1)), OptionalDouble.empty());
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(sold("yard", "tin", 1, "70.00", 1, 1), sold("corner", "can", 1, "60.00", 1, 1)), OptionalDouble.empty());
        Slip alone = slip(List.of(timber), List.of(1.0), List.of(yard, corner));
        assertEquals(new BigDecimal("387.20"), alone.total());
        assertEquals(Optional.of(new BigDecimal("47.81")), alone.orders().get(0).shortOfFree(), "goods of 400.00 still pay");
        Slip both = slip(List.of(timber, oil), List.of(1.0, 1.0), List.of(yard, corner));
        assertEquals(new BigDecimal("422.20"), both.total(), "60.00 at the corner would make 447.20");
        assertEquals(1, both.orders().size());
        assertEquals(Optional.empty(), both.orders().get(0).shortOfFree());
    }

    @Test
    void aSecondSupplierIsNotAskedForASavingSmallerThanItsCharge() {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(sold("a", "tin", 1, "16.00", 1, 1), sold("b", "can", 1, "14.00", 1, 1)), OptionalDouble.empty());
        PackGoods glue = new PackGoods("glue", "glue", "l", 0, 1, List.of(sold("a", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        List<Supplier> both = List.of(supplier("a", "10.00", null), supplier("b", "10.00", null));
        Slip slip = slip(List.of(oil, glue), List.of(4.0, 1.0), both);
        assertEquals(List.of("a"), slip.orders().stream().map(order -> order.supplier().id()).toList());
        assertEquals(new BigDecimal("77.00"), slip.total());
        Slip more = slip(List.of(oil, glue), List.of(6.0, 1.0), both);
        assertEquals(2, more.orders().size(), "12 saved on oil pays a charge of 10");
        assertEquals(new BigDecimal("107.00"), more.total());
    }

    /** 12 tins in bundles of 5 are 15; a least count of 20 at half the price is cheaper only where it is not far over. */
    @Test
    void bundlesAndLeastCountsAreBoughtWhole() {
        PackGoods bundled = new PackGoods("oil", "oil", "l", 0, 1, List.of(sold("", "tin", 1, "2.00", 5, 1)), OptionalDouble.empty());
        SlipLine line = OrderingTest.line(bundled, List.of(12.0), GBP);
        assertEquals(15, line.packs().get(0).count());
        assertEquals(new BigDecimal("30.00"), line.cost().orElseThrow());
        assertEquals(3, line.leftOver());
        PackGoods least = new PackGoods("soil", "soil", "m3", 0, 1, List.of(sold("", "loose", 1, "30.00", 1, 5), sold("", "bag", 0.75, "55.00", 1, 1)), OptionalDouble.empty());
        assertEquals("2 x bag", OrderingTest.bought(OrderingTest.line(least, List.of(1.5), GBP)), "110 against 150");
        assertEquals("5 x loose", OrderingTest.bought(OrderingTest.line(least, List.of(2.0), GBP)), "150 against 165");
        assertEquals("7 x loose", OrderingTest.bought(OrderingTest.line(least, List.of(6.5), GBP)));
    }

    /** 116.00 at 16 percent hold 16.00 of tax; a price of 17.40 listed without 20 percent is paid as 20.88. */
    @Test
    void taxIsAPartOfWhatIsPaid() {
        Supplier german = new Supplier("g", "g", 3, new BigDecimal("16.00"), Optional.empty(), new BigDecimal("16"), "", Optional.empty(), BigDecimal.ZERO, 0);
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(sold("g", "tin", 1, "100.00", 1, 1)), OptionalDouble.empty());
        Slip slip = slip(List.of(oil), List.of(1.0), List.of(german));
        assertEquals(new BigDecimal("16.00"), slip.orders().get(0).tax());
        assertEquals(new BigDecimal("116.00"), slip.total());
        assertEquals(0, new BigDecimal("20.88").compareTo(Supplier.withTax(new BigDecimal("17.40"), new BigDecimal("20"))));
    }

    /** Oil and glue for 5.00 each at two suppliers with a charge of 10.00 each, or for 10.00 each at a third: 30.00 both ways, and one order is less trouble. */
    @Test
    void atOneCostFewerSuppliersAreAsked() {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(sold("a", "tin", 1, "5.00", 1, 1), sold("c", "can", 1, "10.00", 1, 1)), OptionalDouble.empty());
        PackGoods glue = new PackGoods("glue", "glue", "l", 0, 1, List.of(sold("b", "tube", 1, "5.00", 1, 1), sold("c", "pot", 1, "10.00", 1, 1)), OptionalDouble.empty());
        Slip slip = slip(List.of(oil, glue), List.of(1.0, 1.0), List.of(supplier("a", "10.00", null), supplier("b", "10.00", null), supplier("c", "10.00", null)));
        assertEquals(List.of("c"), slip.orders().stream().map(order -> order.supplier().id()).toList());
    }

    /** Goods of 10.01 come free over a limit of 10.005, which no whole penny states; a way without a price is not the cheapest. */
    @Test
    void limitsAreExactAndPricesCountWhereThereAreSome() {
        List<Supplier> a = List.of(supplier("a", "5.00", "10.005"));
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(sold("a", "tin", 1, "10.01", 1, 1)), OptionalDouble.empty());
        Slip slip = slip(List.of(oil), List.of(1.0), a);
        assertEquals(new BigDecimal("10.01"), slip.total());
        assertEquals(0, slip.lowerBound().compareTo(slip.total()));
        PackGoods unpriced = new PackGoods("oil", "oil", "l", 0, 1, List.of(new Pack("tin", 1, Optional.empty(), "a", 1, 1, OptionalDouble.empty())), OptionalDouble.empty());
        List<SlipLine> both = List.of(wanted(List.of(unpriced), List.of(1.0), a).get(0).ways().get(0), wanted(List.of(oil), List.of(1.0), a).get(0).ways().get(0));
        assertEquals(List.of(both.get(1)), SupplierChoice.of(List.of(new Wanted(both)), a, 2, SupplierChoice.MOST_STEPS).lines());
    }

    @Test
    void aLineWithoutAPriceStaysWithItsSupplierAndMakesTheTotalAtLeast() {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(
                new Pack("tin", 1, Optional.empty(), "a", 1, 1, OptionalDouble.empty())), OptionalDouble.empty());
        PackGoods glue = new PackGoods("glue", "glue", "l", 0, 1, List.of(sold("a", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        Slip slip = slip(List.of(oil, glue), List.of(2.0, 1.0), List.of(supplier("a", "10.00", null)));
        assertTrue(slip.atLeast());
        assertEquals(1, slip.orders().size());
        assertEquals(2, slip.orders().get(0).lines().size());
        assertTrue(slip.orders().get(0).atLeast());
        assertEquals(new BigDecimal("13.00"), slip.total());
        assertFalse(slip(List.of(glue), List.of(1.0), List.of(supplier("a", "10.00", null))).atLeast());
    }

    /** Twenty lines, six suppliers, charges and limits all round: what a whole garden asks, proved in a thirtieth of the steps that a garden has. */
    @ParameterizedTest
    @CsvSource({"6, 100000", "7, 40000", "8, 48000"})
    void aGardenOfTwentyLinesAndSixSuppliersIsProved(long seed, int steps) {
        Random random = new Random(seed);
        List<Supplier> suppliers = new ArrayList<>();
        for (int s = 0; s < 6; s++) {
            suppliers.add(supplier("s" + s, 20 + random.nextInt(40) + ".00", s == 0 ? null : 150 + 50 * random.nextInt(8) + ".00"));
        }
        List<PackGoods> goods = new ArrayList<>();
        List<Double> needs = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            List<Pack> packs = new ArrayList<>();
            for (int s = 0; s < 6; s++) {
                if (random.nextInt(3) > 0 || s == i % 6) {
                    packs.add(sold("s" + s, "small", 1, 4 + random.nextInt(6) + "." + random.nextInt(10) + "0", 1, 1));
                    packs.add(sold("s" + s, "large", 5, 18 + random.nextInt(20) + ".50", 1, 1));
                }
            }
            goods.add(new PackGoods("g" + i, "g" + i, "l", 0, 1, packs, OptionalDouble.empty()));
            needs.add(1.0 + random.nextInt(20));
        }
        List<Wanted> wanted = wanted(goods, needs, suppliers);
        SupplierChoice.Chosen chosen = SupplierChoice.of(wanted, suppliers, 2, steps);
        assertTrue(chosen.proven(), cost(chosen.lines(), suppliers) + " against a bound of " + chosen.lowerBound());
    }
}
