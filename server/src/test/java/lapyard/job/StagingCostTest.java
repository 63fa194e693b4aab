package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Two beds of 1800 x 900, a weekend each. The mill sells two things: boards of one length, and screws for 24 of them, as many as
 * a bed of three courses takes (common practice of two a joint and corner, as the worked beds have it), at 30.00.
 */
class StagingCostTest {
    private static List<StagingCost.Way> ways(int courses, String mill, String goods) {
        return StagingCost.of(Gardens.sheet("{" + Gardens.WORKED + ",\"beds\":[{\"id\":\"A\",\"weekend\":1,\"width\":1800,\"depth\":900,\"courses\":" + courses + "},"
                + "{\"id\":\"B\",\"weekend\":2,\"width\":1800,\"depth\":900,\"courses\":" + courses + ",\"at\":[4200,0]}],"
                + "\"catalogue\":{" + mill + goods + "}}"));
    }

    private static String mill(String charge) {
        return "\"suppliers\":[{\"id\":\"mill\"," + charge + "}],";
    }

    private static final String SCREWS =
            "\"packs\":[{\"item\":\"screws\",\"packs\":[{\"name\":\"box of 24\",\"content\":24,\"price\":30.00,\"supplier\":\"mill\"}]}]";

    private static String boards(int length) {
        return "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":" + length
                + ",\"price\":30.00,\"supplier\":\"mill\"}]}]";
    }

    @Test
    void eachDropIsChargedAgain() {
        List<StagingCost.Way> ways = ways(3, mill("\"delivery\":35.00"), SCREWS);
        assertEquals(4, ways.size());
        assertEquals(new BigDecimal("35.00"), ways.get(0).delivery());
        assertEquals(new BigDecimal("70.00"), ways.get(2).delivery(), "the mill comes before either weekend");
        assertTrue(ways.get(0).drops() < ways.get(2).drops(), ways.toString());
        assertEquals(Optional.of(new BigDecimal("35.00")), ways.get(2).more());
        assertEquals(ways.get(2).boardsCost().map(new BigDecimal("70.00")::add), ways.get(2).sum());
    }

    /** 60.00 of screws come free where more than 50.00 does, 30.00 each time do not. */
    @Test
    void aDropTooSmallToComeFreeIsCharged() {
        List<StagingCost.Way> ways = ways(3, mill("\"delivery\":35.00,\"freeOver\":50.00"), SCREWS);
        assertEquals(new BigDecimal("0.00"), ways.get(0).delivery());
        assertEquals(new BigDecimal("70.00"), ways.get(2).delivery());
    }

    /** The slip asks no charge for an order of which every price is 0, so neither does a drop. */
    @Test
    void whatIsGivenAwayComesWithoutAChargeInOneDropOrTwo() {
        List<StagingCost.Way> ways = ways(3, mill("\"delivery\":35.00"), SCREWS.replace("30.00", "0.00"));
        assertEquals(new BigDecimal("0.00"), ways.get(0).delivery());
        assertEquals(new BigDecimal("0.00"), ways.get(2).delivery());
        assertEquals(Optional.of(new BigDecimal("0.00")), ways.get(2).more());
    }

    /** The liner is needed when the coats are dry, weeks after the boards, and comes by itself; a mill of which no price is known charges nothing on the slip either. */
    @ParameterizedTest
    @CsvSource({"'mill', ',\"price\":2.00', 35.00, 70.00", "'mill', ',\"price\":0', 35.00, 35.00", "'mill', '', 35.00, 70.00", "'', ',\"price\":2.00', 35.00, 35.00", "'', '', 0.00, 0.00"})
    void aDropWithoutAPriceIsChargedForUnlessItIsGivenAway(String boardsOf, String price, BigDecimal once, BigDecimal staged) {
        List<StagingCost.Way> ways = StagingCost.of(Gardens.sheet("{\"beds\":[{\"width\":1800,\"depth\":900,\"courses\":3,\"finish\":{\"coats\":3}}],\"catalogue\":{\"examples\":false,"
                + mill("\"delivery\":35.00") + boards(4800).replace("mill", boardsOf)
                + ",\"rolls\":[{\"id\":\"L\",\"material\":\"liner\",\"width\":2000,\"step\":500,\"supplier\":\"mill\"" + price + "}]}}"));
        assertEquals(once, ways.get(0).delivery());
        assertEquals(staged, ways.get(2).delivery());
        assertEquals(Optional.of(staged.subtract(once)), ways.get(2).more());
    }

    @Test
    void withoutAPriceThereIsNoSum() {
        List<StagingCost.Way> ways = ways(1, "", "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":6000}]}]");
        assertTrue(ways.stream().allMatch(way -> way.sum().isEmpty() && way.more().isEmpty()));
    }

    /** A course is twice 1800 and twice 700: of 10200 one board holds both beds, if the rest is carried on. */
    @Test
    void nothingCarriedOnTakesMoreBoards() {
        List<StagingCost.Way> ways = ways(1, mill("\"delivery\":0"), boards(10200));
        assertEquals(1, ways.get(3).boards() - ways.get(1).boards());
        assertEquals(Optional.of(new BigDecimal("30.00")), ways.get(3).more());
    }
}
