package lapyard.order;

import static lapyard.order.OrderingTest.pack;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapyard.catalogue.Pack;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PackMixTest {
    static LongStream seeds() {
        return LongStream.range(0, 400);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void noMixOfAFewSmallPacksIsBetter(long seed) {
        Random random = new Random(seed);
        List<Pack> packs = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(4); i < n; i++) {
            packs.add(pack("p" + i, 1 + random.nextInt(9), String.valueOf(random.nextInt(12))));
        }
        int need = random.nextInt(40);
        List<Long> best = assertBest(seed, packs, need);
        packs.add(pack("crumb", 0.0000001, "1000"));
        assertEquals(best, counts(packs, need).subList(0, best.size()), () -> "seed " + seed + ": a measure too small for a table");
    }

    /** Contents in odd decimals have no handy common measure, so the search and not the table answers: needs are over 2^31 measures. */
    @ParameterizedTest
    @MethodSource("seeds")
    void noMixOfAFewOddPacksIsBetter(long seed) {
        Random random = new Random(seed);
        List<Pack> packs = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(3); i < n; i++) {
            double content = (1_000_000_001 + 1000L * random.nextInt(8_000_000) + random.nextInt(1000)) / 1e5;
            packs.add(pack("p" + i, content, String.valueOf(1 + random.nextInt(12))));
        }
        assertBest(seed, packs, random.nextInt(300_000));
    }

    /** A plain table over every amount, without the bound on large needs. */
    @ParameterizedTest
    @MethodSource("seeds")
    void largeNeedsCostWhatAPlainTableSays(long seed) {
        Random random = new Random(seed);
        List<Pack> packs = new ArrayList<>();
        for (int i = 0, n = 2 + random.nextInt(3); i < n; i++) {
            packs.add(pack("p" + i, 1 + random.nextInt(30), String.valueOf(1 + random.nextInt(60))));
        }
        int need = 2000 + random.nextInt(3000);
        long[][] least = new long[need + 1][3];
        for (int amount = 1; amount <= need; amount++) {
            for (int i = 0; i < packs.size(); i++) {
                long[] before = least[Math.max(0, amount - (int) packs.get(i).content())];
                long[] with = {
                    before[0] + 100 * packs.get(i).price().orElseThrow().longValue(),
                    before[1] + 10_000_000 * (long) packs.get(i).content(),
                    before[2] + 1
                };
                if (i == 0 || Arrays.compare(with, least[amount]) < 0) {
                    least[amount] = with;
                }
            }
        }
        assertEquals(Arrays.toString(least[need]), Arrays.toString(value(packs, counts(packs, need))), "seed " + seed);
    }

    /**
     * At one price a unit only what is left over counts, so the mix is exact wherever one exists. The largest amount
     * that 6, 9 and 20 cannot make is 43 (OEIS A065003, from memory); for two sizes without a common factor it is
     * ab - a - b (Sylvester 1882, from memory).
     */
    @ParameterizedTest(name = "packs of {0} leave something over of {1} and never of more")
    @CsvSource({"6 9 20, 43", "3 5, 7", "7 12, 65", "29 31, 839"})
    void theLastAmountThatCannotBeMadeExactlyIsTheFrobeniusNumber(String sizes, int frobenius) {
        List<Pack> packs = Stream.of(sizes.split(" "))
                .map(size -> pack(size, Double.parseDouble(size), size))
                .toList();
        PackMix mix = new PackMix(packs);
        assertTrue(leftOver(packs, mix, frobenius) > 0);
        for (int need = frobenius + 1; need < frobenius + 100; need++) {
            assertEquals(0, leftOver(packs, mix, need), "need " + need);
        }
    }

    /** At one price a unit every mix that leaves nothing over is best: far more than a search can look at. */
    @Test
    void manyPacksOfOneUnitPriceAreTabled() {
        List<Pack> packs = IntStream.range(30, 54).mapToObj(size -> pack("p" + size, size, String.valueOf(size))).toList();
        assertEquals(List.of(0L, 1L, 18L), counts(packs, 1000).stream().distinct().sorted().toList(), "18 of 53 and one of 46");
        assertEquals(18, counts(packs, 954 - 7).stream().mapToLong(n -> n).sum());
    }

    /** Four from 3 and 3, or from 3 and 1, cost 6 both ways; the second leaves nothing over, by the table and by the search. */
    @Test
    void atOneCostLessIsLeftOver() {
        List<Pack> packs = List.of(pack("three", 3, "3"), pack("one", 1, "3"));
        assertEquals(List.of(1L, 1L), counts(packs, 4));
        assertEquals(List.of(1L, 1L, 0L), counts(List.of(packs.get(0), packs.get(1), pack("crumb", 0.0000001, "1000")), 4));
    }

    /** As above in parts of a measure that no table holds: what is found covers the need and is not called the best. */
    @Test
    void aSearchThatGivesUpSaysSo() {
        List<Pack> packs = new ArrayList<>();
        for (int size = 30; size < 54; size++) packs.add(pack("p" + size, size + 0.00001 * (size % 7), String.valueOf(size)));
        PackMix mix = new PackMix(packs);
        for (int need : List.of(1000, 2000)) {
            PackMix.Mix found = mix.covering(BigDecimal.valueOf(need));
            assertFalse(found.proved());
            assertTrue(value(packs, found.counts().stream().map(BigInteger::longValueExact).toList())[1] >= need * 10_000_000L);
        }
    }

    /** Sums over 64 bits: a content near 2^64, and 99 prices of 9e17 hundred-thousandths. */
    @ParameterizedTest(name = "packs of {0} for {1} and of {2} for {3}: {4} of the second cover {5}")
    @CsvSource({"101, 5, 18446744073709552000, 5, 1, 400", "100, 900000000000000.00001, 1, 9000000000000.00001, 99, 99"})
    void hugeContentsAndPricesAreExact(double first, String price, double second, String secondPrice, long count, double need) {
        assertEquals(List.of(0L, count), counts(List.of(pack("a", first, price), pack("b", second, secondPrice)), need));
    }

    @Test
    void aThousandMillionIsAnsweredExactly() {
        List<Pack> packs = List.of(pack("50", 50, "14.00"), pack("100", 100, "24.00"), pack("7", 7, "1.99"));
        assertEquals(List.of(0L, 10_000_000L, 0L), counts(packs, 1_000_000_000.0));
        assertEquals(List.of(0L, 10_000_000L, 1L), counts(packs, 1_000_000_001.0));
        assertEquals(List.of(1L, 10_000_000L, 0L), counts(packs, 1_000_000_050.0));
    }

    @Test
    void packsWithoutCommonMeasureAreAnsweredForAThousandMillionToo() {
        List<Pack> packs = List.of(
                pack("2 cu ft", 0.0566337, "6.10"),
                pack("3 cu ft", 0.0849505, "8.95"),
                pack("bulk", 0.7645549, "79.00"),
                pack("1 cu ft", 0.0283168, "3.15"),
                pack("4 cu ft", 0.1132674, "11.90"),
                pack("half bulk", 0.3822774, "40.50"),
                pack("2 bushels", 0.0704781, "7.45"));
        PackMix.Mix mix = new PackMix(packs).covering(new BigDecimal("1e9"));
        assertTrue(mix.proved());
        long[] value = value(
                packs, mix.counts().stream().map(BigInteger::longValueExact).toList());
        assertTrue(value[1] >= 10_000_000_000_000_000L, "covers the need");
        BigDecimal byBulk = new BigDecimal("1e9").divide(new BigDecimal("0.7645549"), 0, RoundingMode.CEILING);
        assertTrue(value[0] <= byBulk.multiply(new BigDecimal("7900")).longValueExact(), "no dearer than bulk alone");
    }

    private static List<Long> assertBest(long seed, List<Pack> packs, double need) {
        List<Long> best = brute(packs, BigDecimal.valueOf(need), new ArrayList<>(), null);
        assertEquals(best, counts(packs, need), () -> "seed " + seed + ": " + need + " of " + packs);
        return best;
    }

    /** Every mix that stops covering the need when any pack is taken away, and so every mix worth having. */
    private static List<Long> brute(List<Pack> packs, BigDecimal left, List<Long> chosen, List<Long> best) {
        int i = chosen.size();
        if (i == packs.size()) {
            return left.signum() <= 0 && (best == null || better(packs, chosen, best)) ? List.copyOf(chosen) : best;
        }
        BigDecimal content = BigDecimal.valueOf(packs.get(i).content());
        for (long n = 0; ; n++) {
            BigDecimal rest = left.subtract(content.multiply(BigDecimal.valueOf(n)));
            chosen.add(n);
            best = brute(packs, rest, chosen, best);
            chosen.remove(i);
            if (rest.signum() <= 0) {
                return best;
            }
        }
    }

    private static boolean better(List<Pack> packs, List<Long> a, List<Long> b) {
        int order = Arrays.compare(value(packs, a), value(packs, b));
        return order < 0
                || order == 0
                        && Arrays.compare(
                                        a.stream().mapToLong(n -> n).toArray(),
                                        b.stream().mapToLong(n -> n).toArray())
                                > 0;
    }

    /** Cost in hundredths, content in ten-millionths, packs. */
    private static long[] value(List<Pack> packs, List<Long> counts) {
        BigDecimal cost = BigDecimal.ZERO;
        BigDecimal content = BigDecimal.ZERO;
        long number = 0;
        for (int i = 0; i < packs.size(); i++) {
            BigDecimal count = BigDecimal.valueOf(counts.get(i));
            cost = cost.add(packs.get(i).price().orElseThrow().multiply(count));
            content = content.add(BigDecimal.valueOf(packs.get(i).content()).multiply(count));
            number += counts.get(i);
        }
        return new long[] {
            cost.movePointRight(2).longValueExact(), content.movePointRight(7).longValueExact(), number
        };
    }

    private static List<Long> counts(List<Pack> packs, double need) {
        return counts(new PackMix(packs), need);
    }

    private static List<Long> counts(PackMix of, double need) {
        PackMix.Mix mix = of.covering(BigDecimal.valueOf(need));
        assertTrue(mix.proved());
        return mix.counts().stream().map(BigInteger::longValueExact).toList();
    }

    private static long leftOver(List<Pack> packs, PackMix mix, int need) {
        return value(packs, counts(mix, need))[1] / 10_000_000 - need;
    }
}
