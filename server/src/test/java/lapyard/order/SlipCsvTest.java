package lapyard.order;

import static lapyard.order.OrderingTest.bought;
import static lapyard.order.OrderingTest.pack;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
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
                        bought("soil", "349.00", "526.00")).stream().map(Wanted::only).toList(), List.of(), List.of());
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
        assertTrue(SlipCsv.write(Ordering.slip(GBP, List.of(bought("soil", "349.00", "526.00")).stream().map(Wanted::only).toList(), List.of(), List.of()), false)
                .endsWith("total,,,GBP,,,349.00,526.00,177.00\r\n"));
    }

    /** The starts of OWASP, CSV Injection (page as of 2024, from memory): = + - @ tab CR LF and full-width forms. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uFF1D1+1"})
    void textNeverStartsAFormula(String text) throws IOException {
        Slip slip = Ordering.slip(GBP, List.of(Ordering.unpriced(text, text, 1, text)).stream().map(Wanted::only).toList(), List.of(), List.of());
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
        Slip slip = Ordering.slip(GBP, List.of(bought("timber", "36.00", "30.00")).stream().map(Wanted::only).toList(), List.of(), List.of());
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
                        Ordering.packWays(oil, List.of(new SlipLine.Use("bed A", 4), new SlipLine.Use("bed B", 2)), BigDecimal.TEN, GBP),
                        Ordering.packWays(glue, List.of(new SlipLine.Use("bed A", 1)), BigDecimal.TEN, GBP)), List.of(), List.of(OrderingTest.supplier("a", "12.50", "100"), OrderingTest.supplier("b", "0", null)));
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
                        Ordering.packWays(oil, List.of(new SlipLine.Use("bed A", 4), new SlipLine.Use("bed B", 2)), BigDecimal.TEN, GBP),
                        Ordering.packWays(glue, List.of(new SlipLine.Use("bed A", 1)), BigDecimal.TEN, GBP)), List.of(), List.of(OrderingTest.supplier("a", "12.50", "100"), OrderingTest.supplier("b", "0", null)));
        assertEquals(
                "[Share[owner=bed A, cost=62.16, lines={oil=50.67, glue=3.00, delivery=8.49}], "
                        + "Share[owner=bed B, cost=29.35, lines={oil=25.34, delivery=4.01}]]",
                Savings.shares(slip).toString());
        assertEquals(List.of("oil", "glue"), Savings.of(slip).stream().map(Savings.Saving::item).toList());
        assertTrue(Savings.of(slip).get(0).working().formula().startsWith("bed by bed 92.01 - pooled 76.01 = 16.00 GBP"));
    }

    /** Two of 16.005 are 32.01: the first is rounded up to 16.01, the last has what is left. */
    @Test
    void packsOfAnOrderAddUpToItsLineAndWhatIsNotSoldStaysInPlace() {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(
                SupplierChoiceTest.sold("", "tin", 3, "16.005", 1, 1), SupplierChoiceTest.sold("", "can", 2, "16.005", 1, 1)), OptionalDouble.empty());
        Slip slip = Ordering.slip(GBP, List.of(
                Wanted.only(OrderingTest.line(oil, List.of(5.0), GBP)), Wanted.only(Ordering.unpriced("path.bark", "=bark", 0.5, "m3"))), List.of(), List.of());
        assertEquals(
                """
            item,label,pack,count,price,cost\r
            oil,oil,tin,1,16.005,16.01\r
            oil,oil,can,1,16.005,16.00\r
            path.bark,'=bark,,,,\r
            total,at least,GBP,,,32.01\r
            """,
                SlipCsv.write(slip.orders().get(0), "GBP", false));
    }

    /** A slip that is proved and brought free has no row for either. */
    @Test
    void nothingIsSaidOfDeliveryOrProofWhereThereIsNothing() throws IOException {
        PackGoods oil = new PackGoods("oil", "oil", "l", 0, 1, List.of(SupplierChoiceTest.sold("a", "tin", 1, "16.00", 1, 1)), OptionalDouble.empty());
        Wanted two = Ordering.packWays(oil, List.of(new SlipLine.Use("bed A", 2)), BigDecimal.ZERO, GBP);
        Slip slip = Ordering.slip(GBP, List.of(two), List.of(new Apart.Buyer("bed A", List.of(two), BigDecimal.ZERO, false)),
                List.of(OrderingTest.supplier("a", "0", null)));
        assertEquals(Map.of(), slip.apart().orElseThrow().charges());
        assertEquals(List.of("item", "oil", "total"), CSVFormat.RFC4180.parse(new StringReader(SlipCsv.write(slip, false))).getRecords().stream()
                .map(row -> row.get(1)).toList());
    }

    /** 10.00 of goods whose user is not known, 0.00 of a gift and 3.00 for bed A; 2.00 to bring them go 10 to 3: 1.54 + 0.46. */
    @Test
    void whatIsNobodysIsTheWholeGardens() {
        PackGoods glue = new PackGoods("glue", "glue", "l", 0, 1, List.of(SupplierChoiceTest.sold("", "tube", 1, "3.00", 1, 1)), OptionalDouble.empty());
        PackGoods gift = new PackGoods("gift", "gift", "l", 0, 1, List.of(SupplierChoiceTest.sold("", "box", 1, "0.00", 1, 1)), OptionalDouble.empty());
        Slip goods = Ordering.slip(GBP, List.of(
                Wanted.only(bought("soil", "10.00", "10.00")),
                Ordering.packWays(gift, List.of(new SlipLine.Use("bed B", 1)), BigDecimal.ZERO, GBP),
                Ordering.packWays(glue, List.of(new SlipLine.Use("bed A", 1)), BigDecimal.ZERO, GBP)), List.of(), List.of());
        Slip brought = new Slip(GBP, goods.goods(), goods.goods().add(new BigDecimal("2.00")), false, goods.lines(), goods.orders(),
                goods.lowerBound(), goods.proven(), goods.apart());
        assertEquals(Map.of("the whole garden", "11.54 soil=10.00 delivery=1.54", "bed A", "3.46 glue=3.00 delivery=0.46"),
                Savings.shares(brought).stream().collect(Collectors.toMap(Savings.Share::owner, share -> share.cost() + share.lines().entrySet().stream()
                        .map(line -> " " + line.getKey() + "=" + line.getValue()).collect(Collectors.joining()))));
    }

    /** Packs of three suppliers at prices with thousandths: what each gets adds up to the line, none is off by more than half a penny a supplier. */
    @Test
    void partsOfALineAddUpToIt() {
        Random random = new Random(11);
        for (int run = 0; run < 300; run++) {
            List<SlipLine.PackCount> packs = new ArrayList<>();
            Map<String, BigDecimal> exact = new TreeMap<>();
            for (int i = 0, n = random.nextInt(6); i < n; i++) {
                var pack = new SlipLine.PackCount("p" + i, 1 + random.nextInt(9), Optional.of(BigDecimal.valueOf(random.nextInt(20_000), 3)), "s" + random.nextInt(3));
                packs.add(pack);
                exact.merge(pack.supplier(), pack.cost().orElseThrow(), BigDecimal::add);
            }
            BigDecimal cost = exact.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add).setScale(2, RoundingMode.HALF_UP);
            SlipLine line = new SlipLine("g", "g", 1, "l", packs, 0, Optional.of(cost), Optional.empty(),
                    Ordering.unpriced("g", "g", 1, "l").working(), List.of());
            var parts = line.parts();
            assertEquals(packs.isEmpty() ? Set.of("") : exact.keySet(), parts.keySet());
            assertEquals(0, cost.compareTo(parts.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add)), "run " + run);
            exact.forEach((supplier, amount) -> assertTrue(parts.get(supplier).subtract(amount).abs().doubleValue() <= 0.005 * (exact.size() + 1), supplier));
        }
    }
}
