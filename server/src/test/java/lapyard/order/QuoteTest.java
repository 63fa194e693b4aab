package lapyard.order;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.catalogue.PackGoods;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuoteTest {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    /** Worked by hand: 1000 / 0.85 = 1176.470..., not 1000 x 1.15 = 1150.00. */
    @ParameterizedTest(name = "{0} at {1} % of the price: {2}")
    @CsvSource({"1000.00,15,1176.47", "1000.00,0,1000.00", "850.00,15,1000.00", "100.00,50,200.00", "80.00,20,100.00"})
    void aMarginIsAShareOfTheSellingPrice(BigDecimal cost, BigDecimal margin, BigDecimal price) {
        assertEquals(price, Quote.price(cost, margin, 2));
    }

    @ParameterizedTest
    @ValueSource(strings = {"100", "250", "-1"})
    void aMarginThatLeavesNothingForTheCostIsRefused(BigDecimal margin) {
        var refusal = assertThrows(IllegalArgumentException.class, () -> Quote.price(BigDecimal.TEN, margin, 2));
        assertTrue(refusal.getMessage().contains(margin.toPlainString()));
    }

    /** 24 h at 28.50 are 684.00; 684 / 0.8 = 855.00 and 349 / 0.8 = 436.25. */
    @Test
    void aQuoteIsTheSumOfItsLines() {
        Slip slip = Ordering.slip(GBP, List.of(OrderingTest.bought("soil", "349.00", "526.00")).stream().map(Wanted::only).toList(), List.of(), List.of(), false);
        Quote quote = Quote.of(slip, List.of(new Quote.Work("Building", 24, new BigDecimal("28.50"))), new BigDecimal("20"));
        assertEquals(List.of("soil", "Building, 24 h"), quote.lines().stream().map(Quote.Line::what).toList());
        assertEquals(new BigDecimal("1033.00"), quote.cost());
        assertEquals(new BigDecimal("1291.25"), quote.price());
    }

    private static Slip slip(double oil, String charge, boolean glue) {
        PackGoods tins = new PackGoods("oil", "oil", "l", 0, 1, List.of(SupplierChoiceTest.sold("a", "tin", 1, "16.00", 1, 1)), OptionalDouble.empty());
        PackGoods tube = new PackGoods("glue", "glue", "l", 0, 1, List.of(SupplierChoiceTest.sold("a", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        Wanted first = Ordering.packWays(tins, List.of(new SlipLine.Use("bed A", oil)), BigDecimal.ZERO, GBP);
        Wanted second = Ordering.packWays(tube, List.of(new SlipLine.Use("bed A", 1)), BigDecimal.ZERO, GBP);
        return Ordering.slip(GBP, glue ? List.of(first, second) : List.of(first), List.of(), List.of(OrderingTest.supplier("a", charge, "40.00")), false);
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
        Slip other = Ordering.slip(CurrencyUnit.of("EUR"), List.of(), List.of(), List.of(), false);
        assertThrows(IllegalArgumentException.class, () -> Variation.between(slip(1, "0", false), other, false));
    }
}
