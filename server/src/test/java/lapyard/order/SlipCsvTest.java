package lapyard.order;

import static lapyard.order.OrderingTest.bought;
import static lapyard.order.OrderingTest.pack;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.OptionalDouble;
import lapyard.catalogue.PackGoods;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SlipCsvTest {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    @Test
    void theSlipIsAHeaderItsLinesAndATotal() {
        PackGoods screws = new PackGoods("screws", "screws 100, angled", "screws", 0.1, 1, List.of(pack("box of 50", 50, "14.00"), pack("box of 100", 100, "24.00")), OptionalDouble.empty());
        Slip slip = Ordering.slip(GBP, List.of(
                        OrderingTest.line(screws, List.of(36.0, 24.0), GBP),
                        Ordering.unpriced("path.bark", "bark for \"the long path\"", 0.545, "m3"),
                        bought("soil", "349.00", "526.00")).stream().map(Wanted::only).toList(), List.of(), List.of(), false);
        assertEquals(
                """
            supplier,item,label,need,unit,packs,left over,cost,bed by bed,saved\r
            "",soil,soil,1,m,,,349.00,526.00,177.00\r
            "",screws,"screws 100, angled",66,screws,1 x box of 100,34,24.00,28.00,4.00\r
            "",path.bark,"bark for ""the long path""\",0.545,m3,,,,,\r
            "",total,at least,,GBP,,,373.00,554.00,181.00\r
            """,
                SlipCsv.write(slip, false));
    }

    @Test
    void aCompleteSlipDoesNotSayAtLeast() {
        assertTrue(SlipCsv.write(Ordering.slip(GBP, List.of(bought("soil", "349.00", "526.00")).stream().map(Wanted::only).toList(), List.of(), List.of(), false), false)
                .endsWith("total,,,GBP,,,349.00,526.00,177.00\r\n"));
    }

    /** The starts of OWASP, CSV Injection (page as of 2024, from memory): = + - @ tab CR LF and full-width forms. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uFF1D1+1"})
    void textNeverStartsAFormula(String text) throws IOException {
        Slip slip = Ordering.slip(GBP, List.of(Ordering.unpriced(text, text, 1, text)).stream().map(Wanted::only).toList(), List.of(), List.of(), false);
        CSVRecord row = CSVFormat.RFC4180
                .parse(new StringReader(SlipCsv.write(slip, false)))
                .getRecords()
                .get(1);
        for (int column : new int[] {1, 2, 4}) {
            assertEquals("'" + text, row.get(column));
        }
        assertEquals("1", row.get(3));
    }

    @Test
    void amountsBelowZeroStayNumbers() throws IOException {
        Slip slip = Ordering.slip(GBP, List.of(bought("timber", "36.00", "30.00")).stream().map(Wanted::only).toList(), List.of(), List.of(), false);
        assertEquals(
                "-6.00",
                CSVFormat.RFC4180
                        .parse(new StringReader(SlipCsv.write(slip, false)))
                        .getRecords()
                        .get(1)
                        .get(9));
    }

    /** Two suppliers, one with a charge: rows of one after the other, its delivery, and the total of all rows. */
    @Test
    void aSlipOfSeveralSuppliersAddsUpRowByRow() throws IOException {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(
                SupplierChoiceTest.sold("a", "=tin", 1, "16.005", 1, 1), SupplierChoiceTest.sold("a", "drum", 5, "60.00", 1, 1)), OptionalDouble.empty());
        PackGoods glue = new PackGoods("glue", "glue", "l", 0, 1, List.of(SupplierChoiceTest.sold("b", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        Slip slip = Ordering.slip(GBP, List.of(
                        Ordering.packWays(oil, List.of(new SlipLine.Use("bed A", 4), new SlipLine.Use("bed B", 2)), java.math.BigDecimal.TEN, GBP),
                        Ordering.packWays(glue, List.of(new SlipLine.Use("bed A", 1)), java.math.BigDecimal.TEN, GBP)), List.of(), List.of(OrderingTest.supplier("a", "12.50", "100"), OrderingTest.supplier("b", "0", null)), false);
        assertEquals(
                """
            supplier,item,label,need,unit,packs,left over,cost,bed by bed,saved\r
            a,oil,oil,6,l,1 x =tin + 1 x drum,0,76.01,92.01,16.00\r
            a,delivery,,,,,,12.50,,\r
            b,glue,glue,1,l,1 x tube,0,3.00,3.00,0.00\r
            "",total,,,GBP,,,91.51,95.01,16.00\r
            """,
                SlipCsv.write(slip, false));
        assertEquals(
                """
            item,label,pack,count,price,cost\r
            oil,oil,'=tin,1,16.005,16.01\r
            oil,oil,drum,1,60.00,60.00\r
            delivery,,,,,12.50\r
            total,,GBP,,,88.51\r
            """,
                SlipCsv.write(slip.orders().get(0), "GBP", false));
    }

    /** 76.01 by 4 and 2 litres is 50.673 and 25.336: 50.67 + 25.34; delivery 12.50 by 53.67 and 25.34 is 8.49 + 4.01. */
    @Test
    void sharesOfBedsAddUpToTheTotal() {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(
                SupplierChoiceTest.sold("a", "tin", 1, "16.005", 1, 1), SupplierChoiceTest.sold("a", "drum", 5, "60.00", 1, 1)), OptionalDouble.empty());
        PackGoods glue = new PackGoods("glue", "glue", "l", 0, 1, List.of(SupplierChoiceTest.sold("b", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        Slip slip = Ordering.slip(GBP, List.of(
                        Ordering.packWays(oil, List.of(new SlipLine.Use("bed A", 4), new SlipLine.Use("bed B", 2)), java.math.BigDecimal.TEN, GBP),
                        Ordering.packWays(glue, List.of(new SlipLine.Use("bed A", 1)), java.math.BigDecimal.TEN, GBP)), List.of(), List.of(OrderingTest.supplier("a", "12.50", "100"), OrderingTest.supplier("b", "0", null)), false);
        assertEquals(
                "[Share[owner=bed A, cost=62.16, lines={oil=50.67, glue=3.00, delivery=8.49}], "
                        + "Share[owner=bed B, cost=29.35, lines={oil=25.34, delivery=4.01}]]",
                Savings.shares(slip).toString());
        assertEquals(List.of("oil", "glue"), Savings.of(slip).stream().map(Savings.Saving::item).toList());
        assertTrue(Savings.of(slip).get(0).working().formula().startsWith("bed by bed 92.01 - pooled 76.01 = 16.00 GBP"));
    }
}
