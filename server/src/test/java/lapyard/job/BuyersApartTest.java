package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.order.Apart;
import lapyard.order.Savings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Beds bought for in one order, held against a garden for each of them. */
class BuyersApartTest {
    private static final String TWO_SELL = ",\"catalogue\":{\"suppliers\":[{\"id\":\"mill\",\"name\":\"Mill\",\"delivery\":30,\"freeOver\":250},"
            + "{\"id\":\"yard\",\"name\":\"Yard\",\"delivery\":18}],"
            + "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":["
            + "{\"length\":2400,\"price\":19.00,\"supplier\":\"mill\"},{\"length\":3000,\"price\":24.50,\"supplier\":\"mill\"},"
            + "{\"length\":2400,\"price\":20.40,\"supplier\":\"yard\"},{\"length\":1800,\"price\":15.10,\"supplier\":\"yard\"}]}],"
            + "\"packs\":[{\"item\":\"soil.topsoil\",\"unit\":\"m3\",\"packs\":[{\"name\":\"bulk bag\",\"content\":0.75,\"price\":55,\"supplier\":\"yard\"},"
            + "{\"name\":\"bag\",\"content\":0.05,\"price\":5,\"supplier\":\"mill\"}]}]}";

    /** Small beds of courses of one board, far apart: no seam, one rectangle of liner, nothing that one bed changes for another. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void bedByBedIsWhatAGardenOfEachBedCosts(long seed) {
        Random random = new Random(seed);
        List<String> beds = new ArrayList<>();
        for (int i = 0, n = 2 + random.nextInt(2); i < n; i++) {
            beds.add("{\"id\":\"" + (char) ('M' + i) + "\",\"width\":" + (900 + 100 * random.nextInt(9)) + ",\"depth\":" + (700 + 100 * random.nextInt(4))
                    + ",\"courses\":" + (1 + random.nextInt(2)) + ",\"at\":[" + 4000 * i + ",0]}");
        }
        JobSheet all = sheet(beds);
        BigDecimal each = beds.stream().map(bed -> sheet(List.of(bed)).slip().total()).reduce(BigDecimal.ZERO, BigDecimal::add);
        Apart apart = all.slip().apart().orElseThrow();
        assertEquals(each, apart.total(), "seed " + seed + ": " + apart);
        assertTrue(apart.lowerBound().compareTo(apart.total()) <= 0);
        assertEquals(apart.lowerBound().subtract(all.slip().total()), Savings.total(all.slip()), "no more than is proved");
    }

    private static JobSheet sheet(List<String> beds) {
        return Gardens.sheet("{\"beds\":[" + String.join(",", beds) + "]" + TWO_SELL + "}");
    }
}
