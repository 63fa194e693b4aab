package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.cutting.Ledger;
import lapyard.diagrams.JobPage;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import lapyard.drawing.Shape;
import lapyard.geometry.Point;
import lapyard.job.Buying;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.order.Savings;
import lapyard.order.Variation;
import lapyard.weekends.Step;
import lapyard.weekends.Weekends;
import lapyard.words.Wording;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** What the text of the printed files says, held against the job sheet. */
class SheetTruthTest {
    private static final PrintAsk ASK = PrintAsk.usual("revision 7", "2026-03-01");

    /** The text of a kind of sheet as a reader of PDF finds it, white space made one. */
    static String text(String kind, JobSheet sheet) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Prints.write(kind, sheet, ASK, "pdf", 1, out);
        return textOf(out.toByteArray());
    }

    private static String textOf(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    /** A wall of 6000 in timber 100 thick and 1000 high is beyond every limit: whoever sells or builds it reads so. */
    @Test
    void aWarningStandsOnEverySheetOfTheWorkThatItConcerns() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"crew\":{\"start\":\"2026-05-02\"},\"quote\":{\"client\":\"M. Vale\",\"margin\":20},"
                + "\"beds\":[{\"id\":\"W\",\"width\":6000,\"depth\":2400,\"courses\":5,\"ties\":{\"crossTies\":false}},"
                + "{\"id\":\"Z\",\"at\":[0,4000],\"width\":1200,\"depth\":1200,\"courses\":1}]}");
        List<String> warned = sheet.warnings().get("W").stream().map(Wording.METRIC::text).toList();
        assertFalse(warned.isEmpty());
        assertFalse(sheet.warnings().containsKey("Z"), sheet.warnings()::toString);
        for (String kind : List.of("course-cards", "weekends", "bed-register", "quote")) {
            String text = text(kind, sheet);
            for (String words : warned) assertTrue(text.contains(words), kind + " lacks: " + words);
        }
    }

    /** Boards of timber and strips have numbers of their own: what is written on one thing is written on no other. */
    @Test
    void noTagOfAnOffcutStandsTwiceInAGarden() throws Exception {
        for (String name : List.of("chapel-corner", "village-hall")) {
            JobSheet sheet = Gardens.sample(name);
            String text = text("saw-day", sheet);
            text = text.substring(text.indexOf("A tag is the number"));
            List<String> tags = Pattern.compile("(#[A-Z]*[0-9]+-[0-9]+) \\S+ [0-9]+ (?:to the rack|stage)").matcher(text).results()
                    .map(found -> found.group(1)).toList();
            long told = Stream.concat(sheet.cutting().stream(), sheet.strips().stream())
                    .flatMap(cutting -> cutting.saw().ledger().offcuts().stream())
                    .filter(offcut -> offcut.fate() != Ledger.Fate.SCRAP)
                    .count();
            assertEquals(told, tags.size(), name + tags);
            assertEquals(told, tags.stream().distinct().count(), name + tags);
        }
    }

    /** Boards, strips and cuts along as the job sheet has them. */
    @Test
    void rippingIsToldWithWidthAndCounts() throws Exception {
        JobSheet sheet = Gardens.sample("village-hall");
        String text = text("saw-day", sheet);
        for (JobSheet.SectionCutting strips : sheet.strips()) {
            JobSheet.Ripping ripping = strips.saw().ripping().orElseThrow();
            assertTrue(text.contains("Rip first: " + ripping.boards() + " board"), text);
            assertTrue(text.contains(ripping.stripsPerBoard() + " from a board, " + ripping.rips() + " cut"), text);
        }
    }

    /** Usual lead days are 7 and weekends 7 days apart; {@code 32.0} is written in the sample, money has its cents on the slip. */
    @Test
    void daysToOrderByAndPricesReadAsOneSaysThem() throws Exception {
        String job = text("job", Gardens.sample("lock-keepers-yard"));
        for (String words : List.of("Weekend 1, order at least 7 days before work begins: ", "Weekend 2, order by the first day of work: ",
                "Weekend 3, order at most 7 days after work begins: ")) {
            assertTrue(job.contains(words), words + " is not in " + job);
        }
        String slip = text("slip", Gardens.sample("terrace-feet"));
        assertTrue(slip.contains(" 32.00 96.00") && !slip.contains(" 32.0 "), slip);
    }

    /** Pieces may be marked and notched a weekend before the ground is ready; course 1 stands on the ground. */
    @Test
    void nobodyLaysCourse1BeforeTheGroundIsReady() throws Exception {
        int marked = 0;
        for (String name : List.of("allotment-field", "chapel-corner", "ferry-lane", "lock-keepers-yard", "school-courtyard", "terrace-feet", "village-hall")) {
            for (JobPage.Row row : JobPrint.job(Gardens.sample(name)).rows()) {
                List<List<String>> weekends = row.cells().values().stream().map(cell -> List.of(cell.split(", "))).toList();
                int ground = first(weekends, "ground");
                assertTrue(ground == weekends.size() || ground <= first(weekends, "course 1"), name + ": " + row);
                marked += first(weekends, "mark") < weekends.size() ? 1 : 0;
            }
        }
        assertTrue(marked > 0, "no bed is marked before");
    }

    private static int first(List<List<String>> weekends, String step) {
        return (int) weekends.stream().takeWhile(steps -> !steps.contains(step)).count();
    }

    /** Names, tax, the sum and each bed's part of it: what a client signs. */
    @Test
    void theQuoteHasWhatAClientSigns() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"quote\":{\"client\":\"M. Vale\",\"builder\":\"Lowmoor Gardens, 4 Weir Lane\",\"margin\":20,\"tax\":20},"
                + "\"beds\":[{\"id\":\"W\",\"width\":2400,\"depth\":1200,\"courses\":3},"
                + "{\"id\":\"Z\",\"at\":[0,4000],\"width\":1200,\"depth\":1200,\"courses\":1}]}");
        String text = text("quote", sheet);
        BigDecimal price = sheet.quote().price();
        BigDecimal tax = price.multiply(new BigDecimal("0.20")).setScale(2, RoundingMode.HALF_UP);
        for (String words : List.of("M. Vale", "Lowmoor Gardens, 4 Weir Lane", "Date: 2026-03-01", "All, before tax", "Tax, 20 %", tax.toPlainString(),
                price.add(tax).toPlainString(), "Accepted:", "signature", "example prices", "Not in the price:")) {
            assertTrue(text.contains(words), words + " is not in " + text);
        }
        Map<String, BigDecimal> shares = sheet.quote().shares(Savings.shares(sheet.slip()));
        assertEquals(0, price.compareTo(shares.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add)), shares::toString);
        shares.forEach((owner, share) -> assertTrue(text.contains(owner + " " + share.toPlainString()), owner + " is not in " + text));
    }

    /** M is made lower, N is new, P is gone and Q stands elsewhere; no folder of anybody's machine is told to a client. */
    @Test
    void theVariationNamesTheBedsThatChanged() throws Exception {
        String bed = "{\"id\":\"%s\",\"at\":[%d,0],\"width\":1200,\"depth\":900,\"courses\":%d}";
        JobSheet before = Gardens.sheet("{\"beds\":[" + bed.formatted("M", 0, 2) + "," + bed.formatted("P", 3000, 2) + "," + bed.formatted("Q", 6000, 2) + "]}");
        JobSheet after = Gardens.sheet("{\"beds\":[" + bed.formatted("M", 0, 1) + "," + bed.formatted("N", 3000, 2) + "," + bed.formatted("Q", 6500, 2) + "]}");
        String text = textOf(PdfWriter.write(OrderPrint.variation(before, after, Variation.between(before.slip(), after.slip(), false), "first", "second", ASK)));
        for (String words : List.of("Changed: bed M.", "New: bed N.", "Gone: bed P.", "Moved: bed Q.", "from first to second")) {
            assertTrue(text.contains(words), words + " is not in " + text);
        }
    }

    /** Two plans side by side at one scale: each bed of both is drawn 2400 or 1800 long to it, and both prices with their difference are those of the quotes. */
    @Test
    void theTwoOptionsHaveBothPlansAndTheirPrices() throws Exception {
        String document = "{\"quote\":{\"client\":\"M. Vale\",\"margin\":20},\"ground\":{\"outline\":[[0,0],[9000,0],[9000,6000],[0,6000]]},\"beds\":["
                + "{\"id\":\"M\",\"at\":[1000,1000],\"width\":%d,\"depth\":1200,\"courses\":3}]}";
        JobSheet first = Gardens.sheet(document.formatted(2400));
        JobSheet second = Gardens.sheet(document.formatted(1800));
        Page page = OrderPrint.variation(first, second, Variation.between(first.slip(), second.slip(), false), "short list", "long list", ASK).get(0);
        String text = textOf(PdfWriter.write(List.of(page)));
        BigDecimal one = first.quote().price();
        BigDecimal other = second.quote().price();
        for (String words : List.of("First: short list", "Second: long list", one.toPlainString(), other.toPlainString() + " (" + other.subtract(one).toPlainString() + ")",
                "Chosen:", "signature")) {
            assertTrue(text.contains(words), words + " is not in " + text);
        }
        assertEquals(2400.0 / 1800, width(page, "first-bed-M") / width(page, "second-bed-M"), 1e-6);
    }

    /** The hall of 16 x 12.2 m would be at 1:200 on A4, where nothing in it is read; who asks for a paper gets it. */
    @Test
    void twoOptionsOfALargeGardenStandOnALargerSheet() throws Exception {
        JobSheet hall = Gardens.sample("village-hall");
        Variation none = Variation.between(hall.slip(), hall.slip(), false);
        Page usual = OrderPrint.variation(hall, hall, none, "one", "two", ASK).get(0);
        Page asked = OrderPrint.variation(hall, hall, none, "one", "two", ASK.onPaper(Optional.of("A4"))).get(0);
        assertEquals(420, usual.widthMm());
        assertTrue(textOf(PdfWriter.write(List.of(usual))).contains("both at 1:100"));
        assertEquals(297, asked.widthMm());
    }

    private static double width(Page page, String id) {
        Shape.Group bed = all(page.shapes()).filter(group -> group.id().equals(id)).findFirst().orElseThrow();
        List<Double> xs = bed.shapes().stream().filter(Shape.Area.class::isInstance).flatMap(area -> ((Shape.Area) area).rings().stream()).flatMap(List::stream).map(Point::x).toList();
        return xs.stream().mapToDouble(x -> x).max().orElseThrow() - xs.stream().mapToDouble(x -> x).min().orElseThrow();
    }

    private static Stream<Shape.Group> all(List<Shape> shapes) {
        return shapes.stream().filter(Shape.Group.class::isInstance).map(Shape.Group.class::cast).flatMap(group -> Stream.concat(Stream.of(group), all(group.shapes())));
    }

    /** What is bought in a weekend by the job sheet is what must be there on its page and on the job's. */
    @Test
    void goodsAndPeopleOfEachWeekendAreThoseOfTheJobSheet() throws Exception {
        JobSheet sheet = Gardens.sample("village-hall");
        String weekends = text("weekends", sheet);
        String job = text("job", sheet);
        Map<List<Object>, Integer> packs = new HashMap<>();
        for (Buying.Row row : Buying.of(sheet).rows()) {
            row.packs().forEach((pack, count) -> packs.merge(List.of(row.weekend(), row.label(), PackCode.words(pack, false)), count, Integer::sum));
            if (!row.packs().isEmpty()) assertTrue(job.contains(row.label()), row.label() + " in " + job);
        }
        packs.forEach((pack, count) -> assertTrue(weekends.contains(count + " × " + pack.get(2)) && weekends.contains(pack.get(1) + ": "), count + " " + pack + " in " + weekends));
        for (JobSheet.BedSheet bed : sheet.beds()) assertTrue(job.contains(bed.work().bed().id()), job);
        sheet.garden().people().crew().people().forEach(person -> assertTrue(job.contains(person.name()) && weekends.contains(person.name()), person.name()));
    }

    /** Kilograms beside each wall of a course card are those of the pieces: thickness x height x mean length x density. */
    @Test
    void massesOnCourseCardsAreThoseOfThePieces() throws Exception {
        JobSheet sheet = Gardens.sample("chapel-corner");
        String cards = text("course-cards", sheet);
        for (JobSheet.BedSheet bed : sheet.beds()) {
            bed.work().pieces().forEach(piece -> {
                var section = bed.work().bed().section();
                double kg = piece.meanMm() / 1000 * section.thicknessMm() / 1000 * section.heightMm() / 1000 * section.densityKgM3();
                assertTrue(cards.contains(String.format(Locale.ROOT, "%.1f", kg)), piece.mark() + " " + kg);
            });
        }
    }

    /** Whoever builds in feet and inches reads pounds and cubic yards too; packs keep the names that they are sold by. */
    @Test
    void sheetsOfAGardenInFeetHaveNoMetricUnit() throws Exception {
        JobSheet sheet = Gardens.sample("terrace-feet");
        for (String kind : List.of("bed-register", "course-cards", "saw-day", "setting-out", "base-and-liner")) {
            String text = text(kind, sheet);
            assertFalse(Pattern.compile("[0-9] ?(mm|kg|m2|m3|m²|m³|litres)\\b").matcher(text).find(), kind + ": " + text);
        }
        String loads = text("load-in", sheet);
        assertFalse(loads.contains(" kg"), loads);
        assertTrue(loads.contains(" lb") && text("bed-register", sheet).contains("cu yd"), loads);
    }

    /** What is cut off is not told: no word, figure or caution of the set ends in dots, on A4 and on Letter. */
    @Test
    void nothingIsCutOff() throws Exception {
        for (String name : List.of("village-hall", "terrace-feet", "chapel-corner", "ferry-lane")) {
            String text = text(Prints.SET, Gardens.sample(name));
            Matcher cut = Pattern.compile(".{0,60}…").matcher(text);
            assertFalse(cut.find(), () -> name + ": " + cut.group());
        }
    }

    /** A code of eight letters, names of people that fill a line: each mark, name and date is read whole, and every bed is named on the plan for pegs. */
    @Test
    void longCodesAndNamesAreReadWhole() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"crew\":{\"start\":\"2026-05-02\",\"people\":[{\"name\":\"Featherstonehaugh\",\"days\":[\"sat\",\"sun\"]},{\"name\":\"Cy\",\"days\":[\"sat\"]}]},"
                + "\"ground\":{\"outline\":[[0,0],[19000,0],[19000,14000],[0,14000]]},\"beds\":["
                + "{\"id\":\"KITCHEN1\",\"width\":4200,\"depth\":1200,\"courses\":3,\"at\":[1000,1200]},{\"id\":\"TERRACE2\",\"width\":2400,\"depth\":1200,\"courses\":5,\"at\":[9000,9000]}]}");
        String cards = text("course-cards", sheet).replace(" ", "");
        for (JobSheet.BedSheet bed : sheet.beds()) bed.work().pieces().forEach(piece -> assertTrue(cards.contains(piece.mark()), piece.mark() + " is not in " + cards));
        String job = text("job", sheet);
        assertFalse(job.contains("…"), job);
        String pegs = textOf(PdfWriter.write(List.of(Prints.pages("setting-out", sheet, ASK).get(0))));
        for (String code : List.of("KITCHEN1", "TERRACE2")) assertTrue(pegs.contains(code), code + " is not in " + pegs);
    }

    /** The length to cut is the largest of its row on a course card, in feet and inches too. */
    @Test
    void theLengthToCutIsTheLargestOfItsRow() throws Exception {
        for (Page page : Prints.pages("course-cards", Gardens.sample("terrace-feet"), ASK)) {
            List<Shape.Text> texts = all(page.shapes()).filter(group -> group.id().startsWith("course-")).flatMap(group -> group.shapes().stream())
                    .filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).toList();
            for (Shape.Text end : texts.stream().filter(text -> text.text().equals("butts")).toList()) {
                List<Shape.Text> row = texts.stream().filter(text -> Math.abs(text.at().y() - end.at().y()) < 0.01 && text.bold() && text.text().matches("[0-9].*['\"]")).toList();
                assertFalse(row.isEmpty());
                for (Shape.Text length : row) assertTrue(length.sizeMm() > end.sizeMm() && length.sizeMm() > 3.4, length.text() + ": " + length.sizeMm());
            }
        }
    }

    /** A crew with dates and days off: every day of work stands on its weekend's page with its date, who is there and the hours; the job's page has the same dates and people. */
    @Test
    void datesPeopleAndHoursOfEachDayAreThoseOfTheJobSheet() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"crew\":{\"start\":\"2026-05-02\",\"people\":[{\"name\":\"Ada\",\"days\":[\"sat\",\"sun\"]},"
                + "{\"name\":\"Bo\",\"days\":[\"sat\"]}]},\"beds\":[{\"id\":\"W\",\"width\":4800,\"depth\":1200,\"courses\":3},"
                + "{\"id\":\"Z\",\"at\":[0,4000],\"width\":1800,\"depth\":1200,\"courses\":2}]}");
        List<Weekends.Day> days = sheet.weekends().days().stream().filter(day -> !day.parts().isEmpty()).toList();
        assertTrue(days.stream().anyMatch(day -> day.people().equals(List.of("Ada"))), "a Sunday of work, on which only Ada comes");
        String weekends = text("weekends", sheet);
        String job = text("job", sheet);
        for (Weekends.Day day : days) {
            LocalDate date = day.date().orElseThrow();
            assertEquals(LocalDate.of(2026, 5, 2).plusDays(day.number()), date, "days are counted from the first");
            assertTrue(List.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY).contains(date.getDayOfWeek()) && day.dayOfWeek() == date.getDayOfWeek(), date::toString);
            String spoken = "\\b" + date.getDayOfMonth() + "(, [0-9]+)? " + date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
            assertTrue(Pattern.compile(spoken).matcher(job).find(), spoken + " is not in " + job);
            assertTrue(weekends.contains(date.getDayOfMonth() + " " + date.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH)), date + " is not in " + weekends);
            String there = String.join(", ", day.people());
            assertTrue(job.contains(date.getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + ": " + there) || job.contains(": " + there), there + " is not in " + job);
        }
        Matcher hours = Pattern.compile("((?:Ada|Bo)(?:, (?:Ada|Bo))?): ([0-9.]+) person-hours there, ([0-9.]+) planned, ([0-9.]+) left").matcher(weekends);
        double planned = 0;
        int found = 0;
        while (hours.find()) {
            planned += Double.parseDouble(hours.group(3));
            assertEquals(Double.parseDouble(hours.group(2)), Double.parseDouble(hours.group(3)) + Double.parseDouble(hours.group(4)), 0.051, hours::group);
            found++;
        }
        double parts = days.stream().filter(day -> day.parts().stream().noneMatch(part -> sheet.weekends().byId().get(part.task()).work().step() == Step.TOP_UP))
                .mapToDouble(Weekends.Day::hoursUsed).sum();
        assertTrue(found > 1, weekends);
        assertEquals(parts, planned, 0.1 * found, "hours of all days");
    }

    /** Strips of bearers have long marks: each stands whole in the bars, in one line or two. */
    @Test
    void noMarkOfASawnPieceIsCutOff() throws Exception {
        for (String name : List.of("terrace-feet", "three-entries")) {
            String text = text("saw-day", Gardens.sample(name));
            Matcher cut = Pattern.compile(".{0,40}[A-Za-z0-9]…").matcher(text);
            assertFalse(cut.find(), () -> name + ": " + cut.group());
        }
    }

    /** Each place of a bulk bag is told with its figures and drawn with its number at them: 1 m apart along the front is 1000 / n mm on paper. */
    @Test
    void bulkBagsAreDrawnWhereTheyArePutDown() throws Exception {
        JobSheet sheet = Gardens.sample("village-hall");
        List<Point> places = Loads.of(sheet).bagPlaces().orElseThrow();
        assertTrue(places.size() > 12, "more than a short list");
        String text = text("load-in", sheet);
        for (Point place : places) assertTrue(text.contains(Math.round(place.x()) + " / " + Math.round(place.y())), place + " is not in " + text);
        Page page = sketch(sheet);
        List<Shape.Text> numbers = page.shapes().stream().filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast)
                .filter(words -> words.anchor() == Shape.Anchor.MIDDLE && words.text().matches("[0-9]+")).toList();
        assertEquals(places.size(), numbers.size());
        List<Point> ring = yard(page);
        double left = ring.stream().mapToDouble(Point::x).min().orElseThrow();
        double n = 16_000 / (ring.stream().mapToDouble(Point::x).max().orElseThrow() - left);
        for (int i = 0; i < places.size(); i++) assertEquals(places.get(i).x(), (numbers.get(i).at().x() - left) * n, 0.5, "bag " + (i + 1));
    }

    private static Page sketch(JobSheet sheet) {
        return Prints.pages("load-in", sheet, ASK).stream().filter(one -> all(one.shapes()).anyMatch(group -> group.id().equals("ground"))).findFirst().orElseThrow();
    }

    private static List<Point> yard(Page page) {
        Shape.Group yard = all(page.shapes()).filter(group -> group.id().equals("ground")).findFirst().orElseThrow();
        return ((Shape.Area) yard.shapes().get(0)).rings().get(0);
    }

    /** A sketch is 55 to 100 mm high: the terrace's 24 feet take most of the least, whatever scales a rule in feet has. */
    @Test
    void theYardTakesTheRoomOfItsSketch() throws Exception {
        List<Point> ring = yard(sketch(Gardens.sample("terrace-feet")));
        double high = ring.stream().mapToDouble(Point::y).max().orElseThrow() - ring.stream().mapToDouble(Point::y).min().orElseThrow();
        assertTrue(high > 45, "" + high);
    }

    /** Bags stand a bag apart or more: their numbers on paper lie at least as far apart as a number is large, whatever room the sheet had left. */
    @Test
    void numbersOfBulkBagsStandApart() throws Exception {
        for (String name : List.of("village-hall", "lock-keepers-yard", "school-courtyard")) {
            List<Point> at = Prints.pages("load-in", Gardens.sample(name), ASK).stream().flatMap(page -> page.shapes().stream()).filter(Shape.Text.class::isInstance)
                    .map(Shape.Text.class::cast).filter(words -> words.anchor() == Shape.Anchor.MIDDLE && words.text().matches("[0-9]+")).map(Shape.Text::at).toList();
            assertTrue(at.size() > 2, name);
            for (int i = 0; i < at.size(); i++) for (int j = 0; j < i; j++) assertTrue(at.get(i).distanceMm(at.get(j)) > 3.7, name + ": " + (i + 1) + " and " + (j + 1));
        }
    }

    /** The piece's length, its mass and its board are the same on the course card, in Saw Day, on its label. */
    @Test
    void aPieceIsTheSameOnEachSheetThatTellsIt() throws Exception {
        JobSheet sheet = Gardens.sample("chapel-corner");
        String cards = text("course-cards", sheet);
        String labels = text("labels", sheet);
        String saw = text("saw-day", sheet);
        for (JobSheet.BedSheet bed : sheet.beds()) {
            bed.work().pieces().forEach(piece -> {
                String length = String.valueOf(Math.round(Math.floor(piece.lengthMm() + 0.5)));
                assertTrue(saw.contains(piece.mark()), piece.mark());
                Matcher label = Pattern.compile(Pattern.quote(piece.mark()) + " ([0-9]+) bed \\S+, course [0-9]+, wall \\S+ board (\\S+), ([0-9]+) kg").matcher(labels);
                assertTrue(label.find(), piece.mark() + " has no label");
                assertEquals(length, label.group(1), piece.mark());
                assertEquals(bed.work().massKg(piece), Double.parseDouble(label.group(3)), 0.5, piece.mark());
                assertTrue(cards.contains(piece.mark() + " " + label.group(2)) || !cards.contains(piece.mark()), piece.mark() + " is cut from board " + label.group(2));
            });
        }
    }

    /** On every day as many are named at a task as the plan has at it, and nobody is named at two at once. */
    @Test
    void daySheetsNameWhoDoesWhat() throws Exception {
        JobSheet sheet = Gardens.sample("chapel-corner");
        String text = text("weekends", sheet);
        assertFalse(text.contains("people 1"), text);
        for (var person : sheet.garden().people().crew().people()) assertTrue(text.contains(person.name()), person.name());
        assertTrue(text.contains("(Course card, bed ") && text.contains("(Saw Day)"), text);
    }

    /** An arrow for north stands only where the document says where north lies. */
    @Test
    void northIsDrawnOnlyWhereItIsKnown() throws Exception {
        String yard = "\"outline\":[[0,0],[6000,0],[6000,6000],[0,6000]]";
        String bed = "\"beds\":[{\"id\":\"W\",\"at\":[1000,1000],\"width\":2400,\"depth\":1200,\"courses\":2}]}";
        assertFalse(text("plan", Gardens.sheet("{\"ground\":{" + yard + "}," + bed)).matches(".*\\bN\\b.*"));
        assertTrue(text("plan", Gardens.sheet("{\"ground\":{" + yard + ",\"north\":0}," + bed)).matches(".*\\bN\\b.*"));
    }

    /** Yard 9000 x 8000, beds at 1117, 1337 and 4750, 1263: from wall and boundary 1117, 1337, 1263; between them 4750 - 1117 - 2400. */
    @Test
    void thePlanTellsWhereBedsStand() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"ground\":{\"outline\":[[0,0],[9000,0],[9000,8000],[0,8000]]},\"beds\":["
                + "{\"id\":\"W\",\"at\":[1117,1337],\"width\":2400,\"depth\":1200,\"courses\":3},"
                + "{\"id\":\"Z\",\"at\":[4750,1263],\"width\":1900,\"depth\":1400,\"courses\":1}]}");
        // the reader takes figures that are read from the right apart
        String figures = text("plan", sheet).replace(" ", "");
        for (int mm : List.of(1117, 1337, 1263, 4750 - 1117 - 2400)) assertTrue(figures.contains("" + mm), mm + " is not in " + figures);
        assertTrue(text("setting-out", sheet).contains("No baseline was chosen"), "setting-out is there without a baseline");
    }
}
