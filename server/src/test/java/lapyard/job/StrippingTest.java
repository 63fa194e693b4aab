package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

/** Membrane of paths against the rolls there are; all sizes by hand. */
class StrippingTest {
    private static JobSheet sheet(String path, String rolls) throws Exception {
        String garden = "{\"ground\":{\"outline\":[[0,0],[20000,0],[20000,12000],[0,12000]]},\"beds\":[],\"paths\":[{\"id\":\"P\",\"membrane\":\"cloth\",\"layers\":[],"
                + path + "}],\"catalogue\":{\"rolls\":[" + rolls + "]}}";
        return Job.prepare(assertInstanceOf(Reading.Read.class, GardenReader.read(garden), garden).garden());
    }

    private static List<String> placed(JobSheet sheet) {
        return sheet.rolls().stream().flatMap(part -> part.result().rolls().stream()).flatMap(roll -> roll.placed().stream())
                .map(piece -> piece.id() + " " + Math.round(piece.widthMm()) + " x " + Math.round(piece.heightMm())).sorted().toList();
    }

    private static List<Finding> of(JobSheet sheet, String where) {
        return FindingList.singles(sheet.snags()).stream().filter(finding -> finding.where().startsWith(where)).toList();
    }

    /** 3000 wide on rolls of 2000: 2000 and 3000 - (2000 - 200) = 1200, 1000 wider than the roll. */
    @Test
    void stripTooWideLiesAsTwoWithALapAlongTheSide() throws Exception {
        JobSheet sheet = sheet("\"line\":[[2000,2000],[10000,2000]],\"width\":3000", "{\"id\":\"c2\",\"material\":\"cloth\",\"width\":2000,\"price\":1}");
        assertEquals(List.of("P-S1 2000 x 8000", "P-S2 1200 x 8000"), placed(sheet));
        Finding note = of(sheet, "path P, membrane S1").get(0);
        assertTrue(Told.text(note).endsWith("it lies in 2 parts that lap by 200 mm."), Told.text(note));
        assertEquals(1000, note.amount().orElseThrow().value(), 1e-9);
    }

    /** 8000 long from rolls of 5000: 5000 and 8000 - (5000 - 300) = 3300. */
    @Test
    void stripTooLongLiesAsTwoEndToEnd() throws Exception {
        JobSheet sheet = sheet("\"line\":[[2000,2000],[10000,2000]],\"width\":1000,\"membraneLap\":300",
                "{\"id\":\"c1\",\"material\":\"cloth\",\"width\":1000,\"price\":1,\"maxLength\":5000}");
        assertEquals(List.of("P-S1 1000 x 5000", "P-S2 1000 x 3300"), placed(sheet));
    }

    @Test
    void lapAsWideAsTheRollIsNamedAndTheRestIsStillLaid() throws Exception {
        JobSheet sheet = sheet("\"line\":[[2000,2000],[10000,2000],[10000,6000]],\"width\":1000,\"membraneLap\":900",
                "{\"id\":\"c\",\"material\":\"cloth\",\"width\":800,\"price\":1}");
        Finding snag = of(sheet, "path P, membrane S1").get(0);
        assertEquals(Finding.Weight.SNAG, snag.weight());
        assertTrue(Told.text(snag).endsWith("its lap of 900 mm is no less than the roll of 800 mm."), Told.text(snag));
        assertEquals(100, snag.amount().orElseThrow().value(), 1e-9);
    }

    /** 900 x 2000 turned fits a roll 2000 wide and takes 0.9 m; not turned it takes 2 m, for width must lie across. */
    @Test
    void onARollWithAGrainNothingIsTurned() throws Exception {
        String path = "\"line\":[[2000,2000],[4000,2000]],\"width\":900";
        String roll = "{\"id\":\"c2\",\"material\":\"cloth\",\"width\":2000,\"price\":1,\"step\":100%s}";
        assertEquals(900, used(sheet(path, roll.formatted(""))), 1e-6);
        JobSheet oneWay = sheet(path, roll.formatted(",\"oneWay\":true"));
        assertEquals(2000, used(oneWay), 1e-6);
        assertTrue(oneWay.rolls().get(0).result().rolls().get(0).placed().stream().noneMatch(piece -> piece.turned()));
    }

    private static double used(JobSheet sheet) {
        return sheet.rolls().get(0).result().rolls().stream().mapToDouble(roll -> roll.usedMm()).sum();
    }
}
