package lapyard.order;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import lapyard.catalogue.PackGoods;
import lapyard.working.Working;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuoteTest {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    /** Worked by hand: 1000 / 0.85 = 1176.470..., not 1000 x 1.15 = 1150.00. */
    @ParameterizedTest(name = "{0} at {1} % of the price: {2}")
    @CsvSource({"1000.00,15,1176.47", "1000.00,0,1000.00", "850.00,15,1000.00", "100.00,50,200.00", "80.00,20,100.00"})
    void aMarginIsAShareOfTheSellingPrice(BigDecimal cost, BigDecimal margin, BigDecimal price) {
        assertEquals(price, Quote.price(cost, margin, 2));
    }

    /** 24 h at 28.50 are 684.00; 684 / 0.8 = 855.00 and 349 / 0.8 = 436.25. */
    @Test
    void aQuoteIsTheSumOfItsLines() {
        Slip slip = Ordering.slip(GBP, List.of(OrderingTest.bought("soil", "349.00", "526.00")).stream().map(Wanted::only).toList(), List.of(), List.of());
        Quote quote = Quote.of(slip, List.of(new Quote.PaidWork("Building", 24, new BigDecimal("28.50"))), new BigDecimal("20"));
        assertEquals(List.of("soil", "Building, 24 h"), quote.lines().stream().map(Quote.Line::what).toList());
        assertEquals(new BigDecimal("1033.00"), quote.cost());
        assertEquals(new BigDecimal("1291.25"), quote.price());
    }

    private static Slip slip(double oil, String charge, boolean glue) {
        PackGoods tins = new PackGoods("oil", "oil", "l", 0, 1, List.of(SupplierChoiceTest.sold("a", "tin", 1, "16.00", 1, 1)), OptionalDouble.empty());
        PackGoods tube = new PackGoods("glue", "glue", "l", 0, 1, List.of(SupplierChoiceTest.sold("a", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        Wanted first = Ordering.packWays(tins, List.of(new SlipLine.Use("bed A", oil)), BigDecimal.ZERO, GBP);
        Wanted second = Ordering.packWays(tube, List.of(new SlipLine.Use("bed A", 1)), BigDecimal.ZERO, GBP);
        return Ordering.slip(GBP, glue ? List.of(first, second) : List.of(first), List.of(), List.of(OrderingTest.supplier("a", charge, "40.00")));
    }

    @Test
    void aVariationNamesEveryLineThatDiffersAndAddsUp() {
        Variation variation = Variation.between(slip(2, "10.00", true), slip(3, "10.00", false), false);
        assertEquals(List.of("oil", "glue", "delivery"), variation.lines().stream().map(Variation.Line::item).toList());
        assertEquals("2 x tin from a", variation.lines().get(0).packsBefore());
        assertEquals("3 x tin from a", variation.lines().get(0).packsAfter());
        assertEquals(Optional.empty(), variation.lines().get(1).costAfter());
        assertEquals(new BigDecimal("45.00"), variation.before());
        assertEquals(new BigDecimal("48.00"), variation.after());
        BigDecimal sum = variation.lines().stream().map(Variation.Line::difference).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(variation.difference(), sum, "16 - 3 - 10 = 3");
        assertEquals(List.of(), Variation.between(slip(2, "10.00", true), slip(2, "10.00", true), false).lines());
    }

    @Test
    void twoCurrenciesHaveNoDifference() {
        Slip other = Ordering.slip(CurrencyUnit.of("EUR"), List.of(), List.of(), List.of());
        assertThrows(IllegalArgumentException.class, () -> Variation.between(slip(1, "0", false), other, false));
    }

    /**
     * Worked by hand: 100.00 at equal costs is 33.33 each and a penny for the first; at 1 to 2 to 4 it is 14.28|57, 28.57|14 and 57.14|29, and the
     * penny goes to the largest remainder; whose goods cost nothing gets none.
     */
    @ParameterizedTest(name = "{0} by {1} is {2}")
    @CsvSource({"100.00,1 1 1,33.34 33.33 33.33", "100.00,1 2 4,14.29 28.57 57.14", "10.00,1 2 0,3.33 6.67 0.00", "100.00,7,100.00", "10.00,0 5,0.00 10.00", "10.00,0 0,''", "10.00,'',''"})
    void theSharesOfAPriceGoByCostAndAddUpToIt(BigDecimal price, String costs, String shares) {
        Quote quote = new Quote(GBP, List.of(), BigDecimal.ZERO, BigDecimal.ZERO, price, false, Working.of("given", Working.COMMON_PRACTICE));
        List<Savings.Share> goods = new ArrayList<>();
        if (!costs.isEmpty()) for (String cost : costs.split(" ")) goods.add(new Savings.Share("bed " + goods.size(), new BigDecimal(cost), Map.of()));
        Map<String, BigDecimal> split = quote.shares(goods);
        assertEquals(shares, split.values().stream().map(BigDecimal::toPlainString).collect(Collectors.joining(" ")));
        assertEquals(shares.isEmpty() ? List.of() : goods.stream().map(Savings.Share::owner).toList(), List.copyOf(split.keySet()));
    }

    /** Whoever follows the working of a quote of one line with its own numbers comes to its price. */
    @Test
    void theWorkingOfAQuoteGivesItsPrice() {
        Quote quote = Quote.of(slip(2, "0", false), List.of(), new BigDecimal("20"));
        Map<String, Double> inputs = quote.working().inputs().stream().collect(Collectors.toMap(Working.Input::name, Working.Input::value));
        assertEquals(40.00, inputs.get("cost") / (1 - inputs.get("margin")), 1e-9, "32.00 / 0.8");
        assertEquals(new BigDecimal("40.00"), quote.price());
    }

    /** A difference of what is priced is no whole difference where a price is missing on either side. */
    @Test
    void aVariationSaysWhereAPriceIsMissing() {
        Slip whole = slip(2, "10.00", true);
        Slip open = whole.withMoreToCome();
        assertTrue(open.atLeast());
        assertEquals(whole, new Slip(open.currency(), open.goods(), open.total(), false, open.lines(), open.orders(), open.lowerBound(), open.proven(), open.apart()));
        assertEquals(List.of(false, true, true), List.of(
                Variation.between(whole, whole, false).atLeast(), Variation.between(open, whole, false).atLeast(), Variation.between(whole, open, false).atLeast()));
    }
}
