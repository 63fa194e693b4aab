package lapyard.order;

import static lapyard.order.OrderingTest.supplier;
import static lapyard.order.SupplierChoiceTest.sold;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.LongStream;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Supplier;
import lapyard.order.Apart.Buyer;
import lapyard.order.SlipLine.PackCount;
import lapyard.order.SlipLine.Use;
import lapyard.working.Working;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the one order is held against: an order for each bed, with its own deliveries. */
class ApartTest {
    private static final CurrencyUnit GBP = CurrencyUnit.of("GBP");

    static LongStream seeds() {
        return LongStream.range(0, 150);
    }

    /** Every mix of every line of a bed with every other of its lines, charges as the supplier states them. */
    @ParameterizedTest
    @MethodSource("seeds")
    void noBedCouldBeBoughtForCheaperByItself(long seed) {
        Random random = new Random(seed);
        List<Supplier> suppliers = new ArrayList<>();
        for (int s = 0, n = 1 + random.nextInt(3); s < n; s++) {
            suppliers.add(supplier(
                    "s" + s, String.valueOf(random.nextInt(4) * 5), random.nextInt(4) == 0 ? null : String.valueOf(10 + random.nextInt(50))));
        }
        BigDecimal reach = suppliers.stream().filter(one -> one.freeOver().isPresent()).map(Supplier::charge).reduce(BigDecimal.ZERO, BigDecimal::add);
        List<PackGoods> goods = new ArrayList<>();
        List<List<Use>> uses = new ArrayList<>();
        for (int i = 0, n = 1 + random.nextInt(2); i < n; i++) {
            List<Pack> packs = new ArrayList<>();
            for (int p = 0, m = 1 + random.nextInt(3); p < m; p++) {
                packs.add(sold("s" + random.nextInt(suppliers.size()), "p" + p, 1 + random.nextInt(5), String.valueOf(1 + random.nextInt(15)),
                        1 + random.nextInt(2), 1 + random.nextInt(2)));
            }
            goods.add(new PackGoods("g" + i, "g" + i, "l", 0, 1, packs, OptionalDouble.empty()));
            uses.add(new ArrayList<>());
        }
        BigDecimal least = BigDecimal.ZERO;
        List<Buyer> buyers = new ArrayList<>();
        for (int bed = 0, n = 1 + random.nextInt(3); bed < n; bed++) {
            List<Wanted> own = new ArrayList<>();
            List<Double> needs = new ArrayList<>();
            for (int i = 0; i < goods.size(); i++) {
                Use use = new Use("bed " + bed, 1 + random.nextInt(8));
                uses.get(i).add(use);
                needs.add(use.amount());
                own.add(Ordering.packWays(goods.get(i), List.of(use), reach, GBP));
            }
            least = least.add(SupplierChoiceTest.best(goods, needs, suppliers, 0, new TreeMap<>()));
            buyers.add(new Buyer("bed " + bed, own, BigDecimal.ZERO, false));
        }
        List<Wanted> wanted = new ArrayList<>();
        for (int i = 0; i < goods.size(); i++) wanted.add(Ordering.packWays(goods.get(i), uses.get(i), reach, GBP));
        Slip slip = Ordering.slip(GBP, wanted, buyers, suppliers);
        Apart apart = slip.apart().orElseThrow();
        assertEquals(0, least.compareTo(apart.total()), "seed " + seed + ": " + apart + ", least " + least);
        assertEquals(apart.total(), apart.lowerBound(), "seed " + seed);
        agree(slip);
        assertEquals(apart.total().subtract(slip.total()), Savings.total(slip).orElseThrow(), "seed " + seed);
        assertTrue(Savings.total(slip).orElseThrow().signum() >= 0, "orders that are put together are an order");
    }

    /** Lines, delivery and what is not proved add up to the saving, in the list and in the columns of the file. */
    private static void agree(Slip slip) {
        BigDecimal lines = slip.lines().stream().flatMap(line -> line.saved().stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal more = Savings.of(slip).stream().filter(saving -> List.of(Savings.DELIVERY, Savings.UNPROVED).contains(saving.item()))
                .map(Savings.Saving::saved).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(0, Savings.total(slip).orElseThrow().compareTo(lines.add(more)));
        Map<String, BigDecimal> sums = new LinkedHashMap<>();
        try {
            List<CSVRecord> rows = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
                    .parse(new java.io.StringReader(SlipCsv.write(slip, false))).getRecords();
            for (String column : List.of("cost", "bed by bed", "saved")) {
                for (CSVRecord row : rows.subList(0, rows.size() - 1)) {
                    sums.merge(column, row.get(column).isEmpty() ? BigDecimal.ZERO : new BigDecimal(row.get(column)), BigDecimal::add);
                }
                assertEquals(0, sums.get(column).compareTo(new BigDecimal(rows.get(rows.size() - 1).get(column))), SlipCsv.write(slip, false));
            }
        } catch (java.io.IOException impossible) {
            throw new java.io.UncheckedIOException(impossible);
        }
        assertEquals(0, sums.get("saved").compareTo(Savings.total(slip).orElseThrow()));
    }

    private static Wanted line(String cost, String supplier) {
        BigDecimal price = new BigDecimal(cost);
        return Wanted.only(new SlipLine("timber", "Timber", 1, "m", List.of(new PackCount("board", 1, Optional.of(price), supplier)), 0, Optional.of(price), Optional.of(BigDecimal.ZERO), Working.of("given", Working.COMMON_PRACTICE), List.of()));
    }

    /**
     * A yard that brings for 35.00, free over 400: together 700.00, free. Alone 390.00 + 35.00 and 360.00 + 35.00, so 50.00 saved
     * on the line and 70.00 on deliveries.
     */
    @Test
    void aDeliveryThatFallsAwayIsSavedToo() {
        List<Buyer> buyers = List.of(
                new Buyer("bed M", List.of(line("390.00", "yard")), BigDecimal.ZERO, false),
                new Buyer("bed N", List.of(line("360.00", "yard")), BigDecimal.ZERO, false));
        Slip slip = Ordering.slip(GBP, List.of(line("700.00", "yard")), buyers, List.of(supplier("yard", "35", "400")));
        assertEquals(new BigDecimal("700.00"), slip.total());
        assertEquals(List.of("delivery 70.00", "timber 50.00"), Savings.of(slip).stream().map(one -> one.item() + " " + one.saved()).toList());
        assertEquals(new BigDecimal("120.00"), Savings.total(slip).orElseThrow());
        agree(slip);
    }

    /** Who is not shown that nobody buys cheaper is told the smaller saving: 390.00 could be 380.00, and its delivery is not proved. */
    @Test
    void whatIsNotProvedIsTakenOffTheSaving() {
        List<Buyer> buyers = List.of(
                new Buyer("bed M", List.of(line("390.00", "yard")), BigDecimal.TEN, true),
                new Buyer("bed N", List.of(line("360.00", "yard")), BigDecimal.ZERO, false));
        Slip slip = Ordering.slip(GBP, List.of(line("700.00", "yard")), buyers, List.of(supplier("yard", "35", "400")));
        Apart apart = slip.apart().orElseThrow();
        assertEquals(new BigDecimal("820.00"), apart.total());
        assertEquals(new BigDecimal("775.00"), apart.lowerBound(), "380 + 360 + 35");
        assertEquals(new BigDecimal("75.00"), Savings.total(slip).orElseThrow());
        agree(slip);
    }

    /** 390 + 360 + 2 x 35 was found bed by bed, and 200 less is not ruled out: 700.00 at once may cost more, so no saving is told. */
    @Test
    void whereNotProvedToCostNoMoreNothingIsSaidToBeSaved() throws java.io.IOException {
        List<Buyer> buyers = List.of(
                new Buyer("bed M", List.of(line("390.00", "yard")), BigDecimal.valueOf(200), false),
                new Buyer("bed N", List.of(line("360.00", "yard")), BigDecimal.ZERO, false));
        Slip slip = Ordering.slip(GBP, List.of(line("700.00", "yard")), buyers, List.of(supplier("yard", "35", "400")));
        assertEquals(Optional.empty(), Savings.total(slip));
        List<CSVRecord> rows = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
                .parse(new java.io.StringReader(SlipCsv.write(slip, false))).getRecords();
        assertEquals("", rows.get(rows.size() - 1).get("saved"));
    }
}
