package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import lapyard.order.SlipLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Boards that are sold in whole bundles, or from a least count on. */
class WholeBundlesTest {
    private static SlipLine timber(JobSheet sheet) {
        return sheet.slip().lines().stream().filter(line -> line.item().startsWith("timber ")).findFirst().orElseThrow();
    }

    /**
     * Two walls of 2300 and two of 1100, by hand. Of boards of 2400 at 10.00 it takes three: one for each 2300, one for both 1100
     * (2204 of 2380). Singly that is 30.00; in a bundle of five, or from five on, 50.00. Two of 4800 at 21.00 hold 2 x 2300 and 2 x 1100: 42.00.
     */
    @ParameterizedTest
    @CsvSource({"'',30.00", "'\"bundle\":5,',42.00", "'\"least\":5,',42.00", "'\"bundle\":3,',30.00", "'\"bundle\":4,',40.00"})
    void aLengthOfWhichBoardsWouldLieUnusedIsLeftOutWhereThatIsCheaper(String sold, BigDecimal cost) {
        JobSheet sheet = Job.prepare(Gardens.garden("""
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":1}],
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,
                   "stock":[{"length":2400,%s"price":10.00},{"length":4800,"price":21.00}]}]}}""".formatted(sold)));
        assertEquals(cost, timber(sheet).cost().orElseThrow());
        assertEquals(cost, timber(sheet).bedByBed().orElseThrow());
        assertEquals(0, new BigDecimal("30.00").compareTo(sheet.cutting().get(0).result().lowerBound()), "the bound of all lengths stays");
        assertEquals(!sold.contains("5"), sheet.cutting().get(0).result().proven());
        assertEquals(cost.equals(new BigDecimal("30.00")), sheet.cutting().get(0).proven(), "a board that lies unused is no part of a proof");
    }

    /** Two of 4800 at 21.00 hold all (see above), and are sold from five on: 105.00, as nobody knows what the others cost. */
    @Test
    void aLengthWithoutAPriceIsNotTakenForOneThatComesInBundles() {
        JobSheet sheet = Job.prepare(Gardens.garden("""
                {"beds":[{"id":"A","width":2400,"depth":1200,"courses":1}],
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,
                   "stock":[{"length":2400},{"length":4800,"bundle":5,"price":21.00}]}]}}"""));
        assertEquals(new BigDecimal("105.00"), timber(sheet).cost().orElseThrow());
        assertTrue(timber(sheet).packs().stream().allMatch(pack -> pack.price().isPresent()), timber(sheet).packs()::toString);
    }

    /** Without boards on hand all that beds buy by themselves can be bought together, so together costs no more. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void togetherCostsNoMoreThanBedByBed(long seed) {
        Random random = new Random(seed);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(5); i++) {
            beds.add("{\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[0,%d]}".formatted(1500 + 10 * random.nextInt(200), 900 + 10 * random.nextInt(60), 1 + random.nextInt(3), 3000 * i));
        }
        SlipLine line = timber(Job.prepare(Gardens.garden("""
                {"beds":%s,"catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,
                   "stock":[{"length":2400,"bundle":%d,"price":17.40},{"length":3000,"least":%d,"price":21.90},{"length":3600,"bundle":%d,"price":26.40},{"length":4800,"price":37.90}]}]}}"""
                .formatted(beds, 1 + random.nextInt(8), 1 + random.nextInt(12), 1 + random.nextInt(6)))));
        assertTrue(line.saved().orElseThrow().signum() >= 0, line.cost() + " together, " + line.bedByBed() + " bed by bed");
        assertFalse(line.packs().isEmpty());
    }

    /** Walls of 7000 joined for the boards that are cheapest singly take bundles for 240.00; six of 4800 hold all 25920 mm for 216.00. */
    @Test
    void wallsAreJoinedForTheBundlesThatAreBought() {
        JobSheet sheet = Job.prepare(Gardens.garden("""
                {"beds":[{"width":7100,"depth":1070,"courses":1},{"width":3700,"depth":1490,"courses":1,"at":[0,2600]}],
                 "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,"stock":[{"length":2400,"bundle":6,"price":17.40},
                   {"length":3000,"bundle":4,"price":21.90},{"length":3600,"least":3,"price":26.40},{"length":4800,"bundle":3,"price":36.00}]}]}}"""));
        assertEquals(new BigDecimal("216.00"), timber(sheet).cost().orElseThrow());
    }

    /** Boards of a section come from one merchant: what a dearer one sells in bundles only changes nothing. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void bundlesOfAMerchantWhomNobodyBuysFromDoNotCount(long seed) {
        Random random = new Random(seed);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
            beds.add("{\"width\":%d,\"depth\":%d,\"courses\":%d,\"at\":[0,%d]}".formatted(
                    3000 + 20 * random.nextInt(250), 900 + 10 * random.nextInt(70), 1 + random.nextInt(2), 2600 * i));
        }
        List<String> singly = new ArrayList<>();
        List<String> bundled = new ArrayList<>();
        for (int length = 1800; length <= 4800; length += 600) {
            double price = length / 100.0 + random.nextInt(60) / 10.0;
            singly.add("{\"length\":%d,\"price\":%.2f,\"supplier\":\"near\",\"bundle\":%d}".formatted(length, price, 1 + random.nextInt(4)));
            if (random.nextBoolean()) bundled.add("{\"length\":%d,\"price\":%.2f,\"supplier\":\"far\",\"bundle\":40}".formatted(length, 2 * price));
        }
        String document = """
                {"beds":[%s],"catalogue":{"suppliers":[{"id":"near","name":"Near"},{"id":"far","name":"Far"}],
                 "sections":[{"id":"100x200","thickness":100,"height":200,"density":600,"stock":[%s]}]}}""";
        String both = String.join(",", Stream.concat(singly.stream(), bundled.stream()).toList());
        BigDecimal near = timber(Job.prepare(Gardens.garden(document.formatted(String.join(",", beds), String.join(",", singly))))).cost().orElseThrow();
        assertEquals(near, timber(Job.prepare(Gardens.garden(document.formatted(String.join(",", beds), both)))).cost().orElseThrow());
    }

    /** Lighter joints that cost as much in single boards cost 75.80 more in bundles of three: they are not taken. */
    @Test
    void lighterJointsAreTakenOnlyWhereBundlesCostNoMore() {
        JobSheet sheet = Job.prepare(Gardens.garden("""
                {"beds":[{"width":3860,"depth":1490,"courses":2,"stage":2},{"width":5700,"depth":1250,"courses":1,"at":[0,2600]},
                   {"width":5820,"depth":1170,"courses":3,"stage":2,"at":[0,5200]},{"width":3140,"depth":910,"courses":2,"at":[0,7800]},
                   {"width":6310,"depth":1050,"courses":2,"stage":2,"at":[0,10400]}],
                 "catalogue":{"suppliers":[{"id":"a","delivery":20,"freeOver":300},{"id":"b","delivery":15}],
                   "sections":[{"id":"100x200","thickness":100,"height":200,"density":600,"stock":[{"length":2400,"price":17.4,"supplier":"a"},
                     {"length":3000,"least":7,"price":21.9,"supplier":"a"},{"length":3600,"bundle":3,"price":26.4,"supplier":"b"},{"length":4800,"price":37.9,"supplier":"b"}]}]}}"""));
        assertEquals(new BigDecimal("936.80"), timber(sheet).cost().orElseThrow());
    }
}
