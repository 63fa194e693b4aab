package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collection;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lapyard.exchange.Table;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.order.SlipCsv;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A garden in feet and inches has no metric amount on any sheet, in any finding, task, slip, request or table; example goods are told nominal. */
class FeetGardenTest {
    private static final PrintAsk ASK = PrintAsk.usual("revision 7", "2026-03-01");
    private static final Pattern METRIC = Pattern.compile("(?<![\\w.])[\\d.,]*\\d ?(mm|cm|m|m2|m²|m3|m³|kg|t|l|kN|kN/m2|kN/m²|kN/m|kg/m3|N/mm2|litres?|metres?|tonnes?)\\b"
            + "|\\bwithin \\d+(?=[,.;] )|\\b(square|cubic) metres?\\b|\\ba (m|m2|m²|kg|metre)\\b|\\bin (mm|millimetres)\\b"
            + "|\\b\\d{2,3}x\\d{2,3}\\b|\\b\\d{2,4} x \\d{2,4}\\b|crews \\d{2,3}(?![\\d'\"”″.]| \\d+/)");

    private static Collection<String> metric(String where, String text) {
        // PDF text sets "t o" for a kerned "to"
        String rest = text.replace(" t o ", " to ");
        Collection<String> found = new TreeSet<>();
        Matcher one = METRIC.matcher(rest);
        while (one.find()) found.add(where + ": " + rest.substring(Math.max(0, one.start() - 40), Math.min(rest.length(), one.end() + 20)));
        return found;
    }

    private static Collection<String> metric(JobSheet sheet) throws Exception {
        Collection<String> found = new TreeSet<>();
        int without = 0;
        for (String kind : Prints.names()) {
            try {
                found.addAll(metric(kind, SheetTruthTest.text(kind, sheet)));
            } catch (CannotPrint nothingGiven) {
                without++;
            }
        }
        assertTrue(without <= 5, without + " kinds have nothing to print");
        Wording words = Wording.of(sheet.garden().imperial());
        Stream<Finding> standing = sheet.beds().stream().flatMap(bed -> bed.standing().verdicts().stream().map(verdict -> verdict.finding()));
        for (Finding finding : Stream.of(sheet.snags().stream(), standing, Loads.of(sheet).findings().stream()).flatMap(all -> all).toList()) {
            found.addAll(metric("finding", words.place(finding.place()) + ": " + words.paragraph(finding) + " " + finding.alike().stream().map(words::text).toList()));
        }
        sheet.weekends().tasks().forEach(task -> found.addAll(metric("task", task.work().label() + task.work().loads() + task.work().cautions())));
        sheet.cautions().forEach(caution -> found.addAll(metric("caution", caution.text())));
        Loads.of(sheet).cautions().forEach(caution -> found.addAll(metric("caution", caution)));
        // the second column holds the codes by which documents and lists name the goods
        found.addAll(metric("slip.csv", SlipCsv.write(sheet.slip(), sheet.garden().imperial()).replaceAll("(?m)^([^,]*),[^,]*,", "$1,")));
        for (Table table : GardenTables.of(sheet)) found.addAll(metric("table", table.toString()));
        return found;
    }

    @Test
    void theTerraceInFeetHasNoMetricAmount() throws Exception {
        assertEquals(List.of(), List.copyOf(metric(Gardens.sample("terrace-feet"))));
    }

    /** A bed 4' deep beside a path 4' wide is what is built in feet: nothing is said of an inch that is lacking. Common practice, no source. */
    @Test
    void usualRoomIsInWholeFeet() throws Exception {
        String garden = "{\"units\":\"imperial\",\"ground\":{\"outline\":[[0,0],[9144,0],[9144,6096],[0,6096]]},\"paths\":[{\"line\":[[0,2438.4],[9144,2438.4]],\"width\":%s}],"
                + "\"beds\":[{\"id\":\"A\",\"width\":2438.4,\"depth\":1219.2,\"at\":[609.6,609.6]},{\"id\":\"B\",\"width\":2438.4,\"depth\":1219.2,\"at\":[4267.2,609.6]}]}";
        assertEquals(List.of(), room(Gardens.sheet(garden.formatted("1219.2"))));
        assertEquals(List.of("Path P1 is 3' wide; 4' is usual. Make it 4' wide."), room(Gardens.sheet(garden.formatted("914.4"))));
    }

    private static List<String> room(JobSheet sheet) {
        return sheet.snags().stream().filter(one -> List.of(FindingKind.PATH_NARROW, FindingKind.REACH_FAR, FindingKind.GAP_NARROW).contains(one.kind()))
                .map(Wording.of(true)::paragraph).toList();
    }

    /** 40 mm is 1 9/16", and screws are sold by quarters of an inch (ASME B18.6.1, from memory): the slip and the course card name one length. */
    @Test
    void screwsForStrapsAreNamedAsTheyAreSoldOnSlipAndCard() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"units\":\"imperial\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":2,\"ties\":{\"courseTie\":\"straps\",\"fixingLength\":40}}]}");
        assertTrue(sheet.slip().lines().stream().anyMatch(line -> line.label().equals("Screws for brackets and straps 1 1/2\"")), sheet.slip().lines()::toString);
        String card = SheetTruthTest.text("course-cards", sheet).replaceAll("\\s+", " ");
        assertTrue(card.matches("(?s).*straps inside with 4 screws of 1 1/2[\"”″].*"), card);
    }

    /** 60 by 120 mm is 2 by 5 nominal: 60 / 25 = 2.4 and 120 / 25 = 4.8, in whole inches. */
    @Test
    void bearersOfAnUnknownSectionAreCalledAlikeOnPlanAndSlip() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"units\":\"imperial\",\"ground\":{\"outline\":[[0,0],[9000,0],[9000,7000],[0,7000]]},\"beds\":[{\"id\":\"A\",\"width\":4400,"
                + "\"depth\":1200,\"courses\":2,\"at\":[1000,1000],\"base\":{\"kind\":\"slatted\",\"bearerSection\":\"60x120\"}},{\"id\":\"B\",\"width\":1500,\"depth\":1200,\"at\":[1000,4000]}]}");
        String plan = SheetTruthTest.text("plan", sheet);
        assertTrue(plan.contains("bearers 2x5: The section 2x5 for bearers"), plan);
        // 23 mm is 14.5 sixteenths
        assertTrue(sheet.slip().lines().stream().anyMatch(line -> line.label().matches("Bearer strips (7/8|15/16)\" thick")), sheet.slip().lines()::toString);
    }

    /** Poured strips, deep fill, ties, posts, a rack, old boards and a long wall: whatever the program can say. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void generatedGardensInFeetHaveNoMetricAmount(long seed) throws Exception {
        Random random = new Random(seed);
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 3; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"id\":\"").append((char) ('K' + i)).append("\",\"width\":").append(1500 + 10 * random.nextInt(500))
                    .append(",\"depth\":").append(900 + 10 * random.nextInt(120)).append(",\"courses\":").append(2 + random.nextInt(4))
                    .append(",\"food\":").append(random.nextBoolean()).append(",\"stage\":").append(1 + random.nextInt(2))
                    .append(",\"at\":[").append(random.nextInt(5_000)).append(',').append(random.nextInt(6_000)).append("]}");
        }
        String soft = List.of("strip", "level", "pads").get(random.nextInt(3));
        String document = "{\"units\":\"imperial\",\"currency\":\"USD\",\"quote\":{\"margin\":20},\"crew\":{\"start\":\"2026-05-02\"},"
                + "\"ground\":{\"outline\":[[0,0],[12000,0],[12000,9000],[0,9000]],\"access\":{\"standard\":\"ada-2010\"},\"preparation\":{\"soft\":\"" + soft + "\"},"
                + "\"surfaces\":[{\"kind\":\"grass\",\"outline\":[[0,0],[7000,0],[7000,9000],[0,9000]]}],"
                + "\"keepClear\":[{\"kind\":\"cover\",\"at\":[9000,7000],\"clearance\":300}],"
                + "\"levels\":[{\"at\":[0,0],\"drop\":400},{\"at\":[9000,0],\"drop\":" + (400 + random.nextInt(500))
                + "},{\"at\":[0,7000],\"drop\":" + (400 + random.nextInt(500)) + "}]},"
                + "\"loadIn\":{\"passage\":{\"width\":1000,\"turn\":1000},\"vehicle\":{\"payload\":500,\"bedLength\":2000,\"volume\":1}},"
                + "\"rack\":[{\"length\":2750,\"bad\":[[0,150]]},{\"length\":1500,\"thickness\":90}],"
                + "\"paths\":[{\"line\":[[0,8500],[9000,8500]],\"width\":900,\"layers\":[{\"material\":\"gravel\",\"depth\":50}]}],\"beds\":[" + beds + "]}";
        assertEquals(List.of(), List.copyOf(metric(Gardens.sheet(document))), () -> document);
    }
}
