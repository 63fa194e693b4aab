package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import lapyard.cutting.CuttingResult;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What old timber is worth, worked by hand. The bed takes four walls of 2300 and four of 1100. Boards of 3000 have 2980 to use, so each
 * holds one 2300 and nothing beside it (2300 + 4 + 1100 = 3404), or two 1100 (2204): six boards, 126.00. Two old boards of 2750 with 150 split and rot
 * from 1180 to 1260 have runs of 1030 and 1490 each. The 1490 has 1470 to use and holds one 1100, the 1030 none, so both together save
 * one board of 21.00.
 */
class SalvageTest {
    private static final String GARDEN = """
            {"beds":[{"id":"A","width":2400,"depth":1200,"courses":2}],"saw":{"salvage":%s},
             "rack":[{"id":"R","length":2750,"count":2,"bad":[[0,150],[1180,1260]],"goodFaces":2,"origin":"larch from a fence","treatment":"none"%s}],
             "catalogue":{"sections":[{"id":"100x200","thickness":100,"height":200,"density":600,"stock":[{"length":3000,"price":21.00}]}]}}""";

    @ParameterizedTest(name = "at {0} % or {1} told: {2} is paid, {3} is used up")
    @CsvSource(textBlock = """
            # percent, told, paid, used up: why
              35,      '',     105.00,  7.00
              60,      '',     105.00, 12.00
              99,      '',     105.00, 20.00
              35,      6.00,   105.00,  7.08
              35,      30.00,  126.00,  0.00
               0,      '',     105.00,  0.00
            """)
    // 0.007 a mm: 35 % of 10.43 is 3.65, 60 % 6.26, 99 % 10.33; down to whole 0.50, which 21.00 is a multiple of: 3.50, 6.00, 10.00, twice each
    // 6.00 told for 1030 and 1490 together: 1490 / 2520 of it is 3.54; of 30.00 it is 17.73, and two of those are dearer than the board saved
    void oldBoardsAreUsedWhereTheyAreWorthLessThanWhatTheySave(String percent, String told, BigDecimal paid, BigDecimal usedUp) {
        JobSheet sheet = Job.prepare(Gardens.garden(GARDEN.formatted(percent, told.isEmpty() ? "" : ",\"salvage\":" + told)));
        CuttingResult cut = sheet.cutting().get(0).result();
        assertEquals(0, paid.compareTo(cut.paid()), cut.toString());
        assertEquals(0, usedUp.compareTo(cut.salvage()), cut.toString());
        assertEquals(0, paid.add(usedUp).compareTo(cut.cost()), cut.toString());
        assertEquals(paid, sheet.slip().lines().stream().filter(line -> line.item().equals("timber 100x200")).findFirst().orElseThrow().cost().orElseThrow());
        boolean reused = paid.compareTo(new BigDecimal("126.00")) < 0;
        assertEquals(reused ? 2 : 0, cut.plan().stream().filter(line -> line.stock().startsWith("R")).mapToInt(line -> line.count()).sum(), cut.toString());
        cut.plan().stream().filter(line -> line.stock().startsWith("R")).forEach(line -> assertEquals(java.util.List.of(1100.0), line.lengthsMm()));
    }
}
