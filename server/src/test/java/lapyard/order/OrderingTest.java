package lapyard.order;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Supplier;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderingTest {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    static Pack pack(String name, double content, String price) {
        return new Pack(name, content, price == null ? Optional.empty() : Optional.of(new BigDecimal(price)), "", 1, 1, OptionalDouble.empty());
    }

    static PackGoods goods(String item, String unit, double spare, Pack... packs) {
        return new PackGoods(item, item, unit, spare, 1, List.of(packs), OptionalDouble.empty());
    }

    /** The cheapest packs, whoever sells them; one need a bed. */
    static SlipLine line(PackGoods goods, List<Double> needs, CurrencyUnit currency) {
        return Ordering.packWays(goods, needs.stream().map(need -> new SlipLine.Use("bed", need)).toList(), BigDecimal.ZERO, currency).ways().get(0);
    }

    static String bought(SlipLine line) {
        return line.packs().stream()
                .map(pack -> pack.count() + " x " + pack.pack())
                .collect(Collectors.joining(" + "));
    }

    /** Worked by hand for an L-shaped bed and a small one, example prices; soil in loose cubic metres a layer. */
    @ParameterizedTest(name = "{0}: {1} in packs of {4} costs {6}, bed by bed {7}")
    @CsvSource(
            textBlock =
                    """
        # item, needs, unit, spare, packs, bought, cost, alone
        screws, 36;24, screws, 0.1, box of 50=50@14.00;box of 100=100@24.00, 1 x box of 100, 24.00, 28.00
        oil, 2.2533;1.0833, l, 0, 1 l=1@16.00;2.5 l=2.5@30.00;5 l=5@52.00, 1 x 1 l + 1 x 2.5 l, 46.00, 60.00
        soil.topsoil, 1.632;0.360, m3, 0, bag=0.75@55.00, 3 x bag, 165.00, 220.00
        soil.compost, 0.816;0.180, m3, 0, bag=0.75@62.00, 2 x bag, 124.00, 186.00
        soil.grit, 0.272;0.060, m3, 0, bag=0.75@60.00, 1 x bag, 60.00, 120.00
        mulch, 0.254;0.056, m3, 0, 60 l=0.06@7.00, 6 x 60 l, 42.00, 42.00
        staples, 144;74, staples,0, box of 1000=1000@5.00, 1 x box of 1000, 5.00, 10.00
        """)
    void workedLinesComeOutAsByHand(
            String item,
            String needs,
            String unit,
            double spare,
            String packs,
            String bought,
            BigDecimal cost,
            BigDecimal alone) {
        SlipLine line = line(goods(item, unit, spare, packs(packs)), numbers(needs), GBP);
        assertEquals(bought, bought(line));
        assertEquals(Optional.of(cost), line.cost());
        assertEquals(Optional.of(alone), line.bedByBed());
        assertEquals(Optional.of(alone.subtract(cost)), line.saved());
        assertFalse(line.working().inputs().isEmpty());
        assertTrue(
                line.working().formula().contains(cost.toPlainString()),
                line.working().formula());
    }

    /** 3.34 l of oil as in the table above: 1 + 2.5 l for 46.00, said with its prices; a need alone is bought for no less. */
    @Test
    void theCheapestMixIsSaidAndIsTheLeastCost() {
        PackGoods oil = goods("oil", "l", 0, pack("1 l", 1, "16.00"), pack("2.5 l", 2.5, "30.00"), pack("5 l", 5, "52.00"));
        SlipLine line = line(oil, List.of(2.2533, 1.0833), GBP);
        assertEquals("need = sum of needs x (1 + spare); cheapest mix of packs that covers it: 1 x 1 l at 16.00 + 1 x 2.5 l at 30.00 = 46.00 GBP;"
                + " rounded half up to 2 decimals", line.working().formula());
        assertEquals(Optional.of(new BigDecimal("46.00")), Ordering.leastCost(oil, 3.3366, GBP));
        assertEquals("", bought(line(oil, List.of(), GBP)));
        Pack unpriced = new Pack("20 l", 20, Optional.empty(), "", 1, 1, OptionalDouble.empty());
        assertTrue(line(goods("oil", "l", 0, pack("1 l", 1, "16.00"), unpriced), List.of(1.0), GBP).working().formula()
                .endsWith("; no price, so passed over: 20 l"));
        assertEquals(Optional.empty(), Ordering.leastCost(goods("oil", "l", 0, unpriced), 3, GBP));
    }

    /** 40 l without any price: 4 of 10 and 2 of 20 leave nothing over, so the fewer; 3 of 15 would leave 5. */
    @Test
    void withoutPricesTheFewestPacksThatLeaveLeastOverAreCounted() {
        PackGoods oil = goods("oil", "l", 0, new Pack("15 l", 15, Optional.empty(), "", 1, 1, OptionalDouble.empty()), new Pack("10 l", 10, Optional.empty(), "", 1, 1, OptionalDouble.empty()), new Pack("20 l", 20, Optional.empty(), "", 1, 1, OptionalDouble.empty()));
        SlipLine line = line(oil, List.of(25.0, 15.0), GBP);
        assertEquals("2 x 20 l", bought(line));
        assertEquals(List.of(Optional.empty(), Optional.empty()), List.of(line.cost(), line.bedByBed()));
        assertTrue(line.working().formula().contains("leaves least over: 2 x 20 l"), line.working().formula());
    }

    @Test
    void nineBagsBedByBedAreSixTogether() {
        double[][] layers = {{1.632, 0.360}, {0.816, 0.180}, {0.272, 0.060}};
        PackGoods bags = goods("soil", "m3", 0, pack("bag", 0.75, "1"));
        long pooled = 0;
        long alone = 0;
        for (double[] layer : layers) {
            SlipLine line = line(bags, List.of(layer[0], layer[1]), GBP);
            pooled += line.packs().get(0).count();
            alone += line.bedByBed().orElseThrow().longValueExact();
        }
        assertEquals(6, pooled);
        assertEquals(9, alone);
    }

    @Test
    void sixPointTwoSquareMetresOfMulchFiftyDeepAreSixBags() {
        SlipLine line = line(goods("mulch", "m3", 0, pack("60 l", 0.06, "7.00")), List.of(6.20 * 0.05), GBP);
        assertEquals("6 x 60 l", bought(line));
        assertEquals(0.05, line.leftOver(), 1e-9);
    }

    @Test
    void spareIsAddedToTheSumAndCountedThingsGoUpToWholeOnes() {
        PackGoods screws = goods("screws", "screws", 0.1, pack("single", 1, "1.00"));
        SlipLine line = line(screws, List.of(36.0, 24.0), GBP);
        assertEquals(66, line.need());
        assertEquals(new BigDecimal("66.00"), line.cost().orElseThrow());
        assertEquals(new BigDecimal("67.00"), line.bedByBed().orElseThrow(), "40 and 27, each up to a whole screw");
    }

    /** Together bed M is built with plates, by itself it would be joined so that it takes none: what it would pay alone has none. */
    @Test
    void whatABedByItselfWouldNotBuyCostsNothingApart() {
        List<SlipLine.Use> uses = List.of(new SlipLine.Use("bed M", 4));
        Wanted timber = Ordering.packWays(goods("timber", "boards", 0, pack("board", 1, "20.00")), uses, BigDecimal.ZERO, GBP);
        Wanted plates = Ordering.packWays(goods("plates", "plates", 0, pack("plate", 1, "3.00")), uses, BigDecimal.ZERO, GBP);
        Slip slip = Ordering.slip(GBP, List.of(timber, plates), List.of(new Apart.Buyer("bed M", List.of(timber), BigDecimal.ZERO, false)), List.of());
        SlipLine line = slip.lines().stream().filter(one -> one.item().equals("plates")).findFirst().orElseThrow();
        assertEquals(Optional.of(new BigDecimal("-12.00")), line.saved());
        assertEquals(slip.apart().orElseThrow().total().subtract(slip.total()),
                slip.lines().stream().map(one -> one.saved().orElseThrow()).reduce(BigDecimal.ZERO, BigDecimal::add));
    }

    @Test
    void noiseOfBinaryFractionsBuysNoPack() {
        SlipLine line = line(goods("oil", "l", 0, pack("tin", 0.3, "5")), List.of(0.1, 0.2), GBP);
        assertEquals("1 x tin", bought(line));
        assertEquals(
                "1 x tin",
                bought(line(goods("oil", "l", 0, pack("tin", 0.3, "5")), List.of(0.1 + 0.2), GBP)));
        assertEquals(
                "2 x tin", bought(line(goods("oil", "l", 0, pack("tin", 0.3, "5")), List.of(0.301), GBP)));
    }

    @Test
    void equalCostGoesToLeastLeftOverThenFewestPacksThenTheCatalogue() {
        assertEquals(
                "3 x two",
                bought(line(goods("x", "l", 0, pack("eight", 8, "6"), pack("two", 2, "2")), List.of(6.0), GBP)));
        assertEquals(
                "1 x six",
                bought(line(goods("x", "l", 0, pack("two", 2, "2"), pack("six", 6, "6")), List.of(6.0), GBP)));
        assertEquals(
                "1 x first",
                bought(line(goods("x", "l", 0, pack("first", 6, "6"), pack("second", 6, "6")), List.of(6.0), GBP)));
        assertEquals(
                "1 x three + 1 x five",
                bought(line(goods("x", "l", 0, pack("three", 3, "3"), pack("four", 4, "4"), pack("five", 5, "5")), List.of(8.0), GBP)));
    }

    @Test
    void withoutAnyPriceTheLineStillSaysHowMany() {
        SlipLine line = line(goods("oil", "l", 0, pack("5 l", 5, null), pack("1 l", 1, null)), List.of(2.25, 1.08), GBP);
        assertEquals("4 x 1 l", bought(line));
        assertEquals(Optional.empty(), line.cost());
        assertEquals(Optional.empty(), line.bedByBed());
        assertEquals(Optional.empty(), line.saved());
        assertEquals(0.67, line.leftOver(), 1e-9);
        assertTrue(line.working().formula().contains("no pack has a price"));
        assertTrue(Ordering.slip(GBP, List.of(line).stream().map(Wanted::only).toList(), List.of(), List.of()).atLeast());
    }

    @Test
    void packsWithoutPriceArePassedOverWhereOthersHaveOneAndTheWorkingSaysSo() {
        SlipLine line =
                line(goods("oil", "l", 0, pack("5 l", 5, null), pack("1 l", 1, "16.00")), List.of(3.34), GBP);
        assertEquals("4 x 1 l", bought(line));
        assertEquals(new BigDecimal("64.00"), line.cost().orElseThrow());
        assertTrue(
                line.working().formula().contains("no price, so passed over: 5 l"),
                line.working().formula());
    }

    @Test
    void aNeedOfNothingBuysNothing() {
        SlipLine line = line(goods("oil", "l", 0, pack("1 l", 1, "16.00")), List.of(0.0, 0.0), GBP);
        assertEquals(List.of(), line.packs());
        assertEquals(new BigDecimal("0.00"), line.cost().orElseThrow());
    }

    @Test
    void goodsWithoutPacksAreKeptUnpriced() {
        SlipLine line = line(goods("path.bark", "m3", 0), List.of(0.5), GBP);
        assertEquals(Optional.empty(), line.cost());
        assertEquals(0.5, line.need());
        assertEquals(line, Ordering.unpriced("path.bark", "path.bark", 0.5, "m3").usedBy(line.uses()));
    }

    /** ISO 4217:2015, minor units. */
    @ParameterizedTest(name = "12.3455 in {0} is {1}")
    @CsvSource({"GBP,12.35", "EUR,12.35", "USD,12.35", "JPY,12", "KRW,12", "KWD,12.346", "BHD,12.346"})
    void moneyIsRoundedHalfUpToTheDecimalsOfItsCurrency(String code, BigDecimal rounded) {
        CurrencyUnit currency = CurrencyUnit.of(code);
        SlipLine line = line(goods("x", "l", 0, pack("one", 1, "12.3455")), List.of(1.0), currency);
        assertEquals(Optional.of(rounded), line.cost());
        assertTrue(line.working().formula().contains("rounded half up to " + rounded.scale() + " decimals"));
    }

    @Test
    void theSlipOfTheTwoBedsSavesAsByHandLargestFirst() {
        List<SlipLine> lines = List.of(
                bought("timber 100x200", "352.20", "358.80"),
                bought("timber 50x75", "30.00", "36.00"),
                bought("screws", "24.00", "28.00"),
                bought("oil", "46.00", "60.00"),
                bought("liner", "49.50", "58.50"),
                bought("soil", "349.00", "526.00"),
                bought("mulch", "42.00", "42.00"),
                bought("staples", "5.00", "10.00"));
        Slip slip = Ordering.slip(GBP, lines.stream().map(Wanted::only).toList(), List.of(), List.of());
        assertEquals(new BigDecimal("897.70"), slip.total());
        assertFalse(slip.atLeast());
        assertEquals(
                List.of("soil", "oil", "liner", "timber 100x200", "timber 50x75", "staples", "screws", "mulch"),
                slip.lines().stream().map(SlipLine::item).toList());
        BigDecimal saved =
                slip.lines().stream().map(line -> line.saved().orElseThrow()).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(new BigDecimal("221.60"), saved);
        assertTrue(slip.withMoreToCome().atLeast(), "something was left out");
    }

    @Test
    void goodsThatLiftTheOrderOverTheFreeDropCostHalfTheirPrice() {
        Supplier yard = supplier("yard", "35.00", "400.00");
        BigDecimal timber = new BigDecimal("352.20");
        BigDecimal more = timber.add(new BigDecimal("70.00"));
        assertEquals(new BigDecimal("387.20"), timber.add(yard.chargeOn(timber)));
        assertEquals(new BigDecimal("422.20"), more.add(yard.chargeOn(more)));
        assertEquals(new BigDecimal("35.00"), yard.chargeOn(new BigDecimal("400.00")), "exactly at the limit still pays");
        assertEquals(new BigDecimal("35.00"), supplier("yard", "35.00", null).chargeOn(more));
        assertEquals(BigDecimal.ZERO, yard.chargeOn(BigDecimal.ZERO), "nothing is brought, nothing is charged");
    }

    static Supplier supplier(String id, String charge, String freeOver) {
        return new Supplier(id, id, 0, new BigDecimal(charge), Optional.ofNullable(freeOver).map(BigDecimal::new), BigDecimal.ZERO, "", Optional.empty(), BigDecimal.ZERO, 0);
    }

    static SlipLine bought(String item, String cost, String alone) {
        return new SlipLine(item, item, 1, "m", List.of(), 0, Optional.of(new BigDecimal(cost)), Optional.of(new BigDecimal(alone)), Ordering.unpriced(item, item, 1, "m").working(), List.of());
    }

    private static Pack[] packs(String text) {
        return Arrays.stream(text.split(";"))
                .map(one -> {
                    String[] part = one.split("[=@]");
                    return pack(part[0], Double.parseDouble(part[1]), part[2]);
                })
                .toArray(Pack[]::new);
    }

    private static List<Double> numbers(String text) {
        return Arrays.stream(text.split(";")).map(Double::valueOf).toList();
    }
}
