package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Two beds of 1800 x 900 in one course, a weekend each: two pieces of about 1700 and two of about 900 (1800 and 700 by the corner
 * rule), so 5000 a bed with its cuts. One board of 6000 holds a bed; two beds of 10 000 take two boards, carried on or not.
 */
class StagingCostTest {
    private static String garden(String catalogue) {
        return "{\"beds\":[{\"id\":\"A\",\"weekend\":1,\"width\":1800,\"depth\":900,\"courses\":1},"
                + "{\"id\":\"B\",\"weekend\":2,\"width\":1800,\"depth\":900,\"courses\":1,\"at\":[4200,0]}],\"catalogue\":{" + catalogue + "}}";
    }

    private static final String BOARDS =
            "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":%s,\"price\":30.00,\"supplier\":\"mill\"}]}]";

    private static List<StagingCost.Way> ways(String supplier, int length) {
        return StagingCost.of(Gardens.sheet(garden("\"suppliers\":[{\"id\":\"mill\"," + supplier + "}]," + BOARDS.formatted(length)))).ways();
    }

    @Test
    void eachDropIsChargedAgain() {
        List<StagingCost.Way> ways = ways("\"delivery\":35.00", 6000);
        assertEquals(4, ways.size());
        assertEquals(List.of(2, 2, 2, 2), ways.stream().map(StagingCost.Way::boards).toList());
        int drops = ways.get(2).drops();
        assertTrue(drops >= 2, ways.toString());
        int once = ways.get(0).drops();
        assertEquals(new BigDecimal("35.00"), ways.get(0).delivery());
        assertEquals(new BigDecimal("70.00"), ways.get(2).delivery(), "the mill brings boards twice");
        assertEquals(Optional.of(new BigDecimal("95.00")), ways.get(0).sum(), "2 boards at 30.00 and one delivery");
        assertEquals(Optional.of(new BigDecimal("35.00")), ways.get(2).more());
        assertTrue(once < drops);
    }

    /** 60.00 of goods come free where more than 50.00 does, 30.00 each time do not. */
    @Test
    void aDropTooSmallToComeFreeIsCharged() {
        List<StagingCost.Way> ways = ways("\"delivery\":35.00,\"freeOver\":50.00", 6000);
        assertEquals(new BigDecimal("0.00"), ways.get(0).delivery());
        assertEquals(new BigDecimal("70.00"), ways.get(2).delivery());
    }

    @Test
    void withoutAPriceThereIsNoSum() {
        String unpriced = garden("\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":6000}]}]");
        assertTrue(StagingCost.of(Gardens.sheet(unpriced)).ways().stream().allMatch(way -> way.sum().isEmpty() && way.more().isEmpty()));
    }

    /** Of boards of 10200 the one holds both beds, 4 x 1800 or 1700 and 4 x 700 with cuts, only if the rest is carried on. */
    @Test
    void nothingCarriedOnTakesMoreBoards() {
        List<StagingCost.Way> ways = ways("\"delivery\":0", 10200);
        assertEquals(1, ways.get(1).boards());
        assertEquals(2, ways.get(3).boards());
        assertEquals(Optional.of(new BigDecimal("30.00")), ways.get(3).more());
    }
}
