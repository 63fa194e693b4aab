package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingKind;
import lapyard.working.Quantity;
import org.junit.jupiter.api.Test;

/** Slat boards on hand. Bed M takes 40 of 95 x 22 x 1200: 24 + 9 whole and 21 of 395 at three a board. */
class SlatsTest {
    private static final String M =
            "\"ground\":{\"levels\":[{\"at\":[0,0],\"drop\":412},{\"at\":[3000,0],\"drop\":412},{\"at\":[0,2400],\"drop\":442}]},"
                    + "\"beds\":[{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]]FOOD}]";

    private static JobSheet sheet(String boards, boolean food) {
        return Gardens.sheet("{\"slatBoards\":[" + boards + "]," + M.replace("FOOD", food ? ",\"food\":true" : "") + "}");
    }

    private static String kind(String id, int width, int thick, int length, int count, String treatment) {
        return "{\"id\":\"" + id + "\",\"width\":" + width + ",\"thickness\":" + thick + ",\"length\":" + length + ",\"count\":" + count
                + ",\"treatment\":\"" + treatment + "\"}";
    }

    private static double quantity(JobSheet sheet, String key) {
        return sheet.beds().get(0).quantities().stream()
                .filter(one -> one.key().toString().equals(key))
                .mapToDouble(Quantity::value)
                .findFirst()
                .orElseThrow();
    }

    private static boolean shortage(JobSheet sheet) {
        return sheet.snags().stream().anyMatch(one -> one.where().equals("bed M, slats"));
    }

    @Test
    void whatIsOnHandIsNotBought() {
        JobSheet sheet = sheet(kind("S1", 95, 22, 1200, 40, "heat"), true);
        assertEquals(40, quantity(sheet, "base.slats"));
        assertEquals(0, quantity(sheet, "base.slats.bought"));
        assertFalse(shortage(sheet));
        assertTrue(sheet.slip().lines().stream().noneMatch(line -> line.item().equals("slats")));
    }

    @Test
    void aShortageIsNamedWithItsCount() {
        JobSheet sheet = sheet(kind("S1", 95, 22, 1200, 28, "heat"), false);
        Finding snag = sheet.snags().stream().filter(one -> one.where().equals("bed M, slats")).findFirst().orElseThrow();
        assertEquals(Weight.SNAG, snag.weight());
        assertEquals(new Amount(12, "slats"), snag.amount().orElseThrow());
        assertEquals(12, sheet.slip().lines().stream().filter(line -> line.item().equals("slats")).findFirst().orElseThrow().need());
    }

    /** Enough of a lesser kind goes before too few of a better one; of two that are enough the one that takes fewer. */
    @Test
    void theKindThatIsEnoughIsTaken() {
        JobSheet sheet = sheet(kind("S1", 145, 22, 2400, 3, "heat") + "," + kind("S2", 95, 18, 1200, 60, "heat") + ","
                + kind("S3", 120, 20, 1200, 60, "heat"), false);
        assertEquals(120, sheet.beds().get(0).work().bed().inside().base().slats().slatWidthMm());
        assertEquals(43, sheet.beds().get(0).work().bed().inside().base().heightMm());
        assertFalse(shortage(sheet));
    }

    /** MB is never used; what nobody knows stays out of food beds. */
    @Test
    void poisonedAndUnknownSlatsStayOut() {
        JobSheet gassed = sheet(kind("S1", 95, 22, 1200, 60, "gas"), false);
        assertTrue(shortage(gassed));
        assertTrue(gassed.snags().stream().anyMatch(one -> one.where().equals("slat boards S1") && one.kind() == FindingKind.BOARD_BARRED));
        assertTrue(shortage(sheet(kind("S1", 95, 22, 1200, 60, "unknown"), true)));
        assertFalse(shortage(sheet(kind("S1", 95, 22, 1200, 60, "unknown"), false)));
    }
}
