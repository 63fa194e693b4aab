package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.TextBox;
import lapyard.cutting.SawBoard;
import lapyard.job.AsBuilt;
import lapyard.job.BuildingCalendar;
import lapyard.job.CarePlan;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.CalendarComponent;
import org.junit.jupiter.api.Test;

/** What is handed over: care by date, as ical4j reads it, and what was built against what was planned. */
class HandOverTest {
    private static JobSheet sheet(String rest) throws Exception {
        return Gardens.sheet("{\"name\":\"Orchard wall\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200,\"courses\":2},{\"id\":\"B\",\"width\":1800,\"depth\":900,\"at\":[4000,0],"
                + "\"finish\":false,\"seal\":true}],\"crew\":{\"start\":\"2027-05-01\"}" + rest + "}");
    }

    private static List<String> texts(List<Page> pages) {
        List<String> texts = new ArrayList<>();
        pages.forEach(page -> texts(page.shapes(), texts));
        return texts;
    }

    private static void texts(List<Shape> shapes, List<String> texts) {
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Group group) texts(group.shapes(), texts);
            else if (shape instanceof Shape.Window window) texts(window.shapes(), texts);
            else if (shape instanceof Shape.Text text) texts.add(text.text());
        }
    }

    private static final String COATED = ",\"tally\":{\"done\":[{\"task\":\"A.coat-1\",\"on\":\"2027-05-08\"},{\"task\":\"A.coat-2\",\"on\":\"2027-05-16\"}]}";

    @Test
    void aWallCoatedInMayWithTwoYearsIsCoatedNextInMayInTwoYears() throws Exception {
        String ics = BuildingCalendar.care(sheet(COATED + ",\"handOver\":{\"finishYears\":2}"), "g", Instant.parse("2027-06-01T00:00:00Z"), 3);
        Calendar calendar = new CalendarBuilder().build(new StringReader(ics));
        calendar.validate();
        var coats = calendar.<CalendarComponent>getComponents("VEVENT").stream().filter(event -> event.getRequiredProperty("SUMMARY").getValue().contains("coat")).toList();
        assertEquals(1, coats.size());
        assertEquals("20290516", coats.get(0).getRequiredProperty("DTSTART").getValue());
        assertEquals("FREQ=YEARLY;INTERVAL=2", coats.get(0).getRequiredProperty("RRULE").getValue());
        assertTrue(coats.get(0).getRequiredProperty("SUMMARY").getValue().endsWith("bed A"), "bed B has no finish");
    }

    @Test
    void howLongAFinishLastsIsAskedAndNotGuessed() throws Exception {
        CarePlan care = CarePlan.of(sheet(COATED));
        assertEquals(1, care.unknown().size());
        assertTrue(care.tasks().stream().noneMatch(task -> task.what().contains("coat")));
        assertTrue(texts(HandOverPrint.care(sheet(COATED), PrintAsk.usual("", ""))).stream().anyMatch(text -> text.contains("look on the tin")));
    }

    /** Filled in May, so the first spring after it is March of the year after; settling is 28 days unless the crew says otherwise. */
    @Test
    void soilIsToppedUpAfterItsFirstWeeksAndEverySpring() throws Exception {
        JobSheet sheet = sheet("");
        LocalDate start = LocalDate.of(2027, 5, 1);
        CarePlan care = CarePlan.of(sheet);
        var yearly = care.tasks().stream().filter(task -> task.id().equals("top-up")).findFirst().orElseThrow();
        assertEquals(LocalDate.of(2028, 3, 1), yearly.date(start));
        assertEquals("every year", yearly.often());
        var first = care.tasks().stream().filter(task -> task.id().startsWith("top-up-first")).toList();
        int filled = sheet.weekends().tasks().stream().filter(task -> task.work().id().equals("A.fill")).findFirst().orElseThrow().lastDay();
        assertTrue(first.stream().anyMatch(task -> task.first() >= filled + 28), first.toString());
        assertEquals("bed B", care.tasks().stream().filter(task -> task.id().equals("seal")).findFirst().orElseThrow().where());
    }

    /** A board whose first piece was sawn so much short. */
    private static String tallied(SawBoard board, String as, double shortMm) {
        SawBoard.Cut first = board.cuts().get(0);
        return "{\"board\":\"#" + board.number() + "\",\"stock\":\"" + board.stock() + "\",\"" + as + "\":[\"" + first.mark() + "\"],\"lost\":50,\"sawn\":[{\"piece\":\""
                + first.mark() + "\",\"length\":" + (first.lengthMm() - shortMm) + "}]}";
    }

    @Test
    void asBuiltCountsWhatWasTalliedAgainstThePlanBeforeIt() throws Exception {
        JobSheet plain = sheet("");
        List<SawBoard> boards = plain.cutting().get(0).saw().boards();
        int pieces = boards.stream().mapToInt(one -> one.cuts().size()).sum();
        String tallied = tallied(boards.get(0), "spoiled", 0) + "," + tallied(boards.get(1), "cut", 0) + "," + tallied(boards.get(2), "cut", 5);
        JobSheet sheet = sheet(",\"handOver\":{\"tenders\":[{\"bed\":\"A\",\"who\":\"Class 4\"}]},\"tally\":{\"done\":[{\"task\":\"A.set-out\",\"day\":1}],\"boards\":[" + tallied + "]}");
        AsBuilt built = AsBuilt.of(sheet);
        assertEquals(pieces, built.timber().get(0).pieces(), "the plan is that before the piece was spoiled");
        assertEquals(1, built.timber().get(0).cut(), "the third was sawn 5 mm short");
        assertEquals(1, built.timber().get(0).spoiled());
        assertEquals(150, built.timber().get(0).lostMm());
        assertEquals(boards.size(), built.timber().get(0).boards());
        assertEquals(OptionalInt.of(1), built.beds().get(0).last());
        assertEquals(0, plain.slip().total().compareTo(built.money().total()), "planned money is that of the plan");
        assertTrue(texts(HandOverPrint.asBuilt(sheet, PrintAsk.usual("", ""), true)).contains("Class 4"));
        assertTrue(texts(HandOverPrint.asBuilt(sheet, PrintAsk.usual("", ""), true)).stream().anyMatch(text -> text.contains("as it is drawn in this revision")), "what planned means");
    }

    /** Photos stand below the words of their snag, in the order of the list, on as many strips as they need; one that is gone is counted. */
    @Test
    void aSnagShowsThePhotosThatAreAtHand() throws Exception {
        var image = new java.awt.image.BufferedImage(400, 300, java.awt.image.BufferedImage.TYPE_INT_RGB);
        var file = new java.io.ByteArrayOutputStream();
        javax.imageio.ImageIO.write(image, "jpeg", file);
        String a = "a".repeat(64);
        String gone = "b".repeat(64);
        JobSheet sheet = sheet(",\"handOver\":{\"snags\":[{\"bed\":\"A\",\"text\":\"Rim splinters\",\"photos\":[\"" + a + "\",\"" + gone + "\"]},{\"text\":\"Gate drags\",\"photos\":["
                + ("\"" + a + "\",").repeat(5) + "\"" + a + "\"]},{\"text\":\"Tap drips\",\"photos\":[\"" + gone + "\"]}]}");
        PrintAsk ask = PrintAsk.usual("", "").showing(new PhotosAtHand(Set.of(a), id -> Optional.of(file.toByteArray())));
        List<Page> pages = HandOverPrint.snags(sheet, ask);
        List<String> texts = texts(pages);
        assertTrue(texts.contains("1 of 2 shown") && texts.contains("6") && texts.contains("0 of 1 shown"), texts.toString());
        List<Shape.Picture> pictures = new ArrayList<>();
        for (Page page : pages) {
            for (Shape shape : page.shapes()) {
                if (!(shape instanceof Shape.Picture picture)) continue;
                pictures.add(picture);
                assertTrue(picture.x() > 0 && picture.x() + picture.widthMm() < page.widthMm() && picture.y() > 0 && picture.y() + picture.heightMm() < page.heightMm(), picture.toString());
                assertEquals(4.0 / 3, picture.widthMm() / picture.heightMm(), 0.01, "as wide for its height as it was taken");
            }
        }
        assertEquals(7, pictures.size());
        assertTrue(pages.stream().anyMatch(page -> page.shapes().stream().filter(shape -> shape instanceof Shape.Picture).count() >= 6 && texts(List.of(page)).contains("Gate drags")), "with their words on one sheet");
        assertEquals("photo of: Rim splinters", pictures.get(0).words());
        Shape.Text words = (Shape.Text) pages.get(0).shapes().stream().filter(shape -> shape instanceof Shape.Text text && text.text().equals("Rim splinters")).findFirst().orElseThrow();
        Shape.Text next = (Shape.Text) pages.get(0).shapes().stream().filter(shape -> shape instanceof Shape.Text text && text.text().equals("Gate drags")).findFirst().orElseThrow();
        assertTrue(words.at().y() < pictures.get(0).y() && pictures.get(0).y() + pictures.get(0).heightMm() < next.at().y() - next.sizeMm() * TextBox.ASCENT, "between its words and the next snag");
        assertFalse(ask.toString().equals(PrintAsk.usual("", "").toString()), "prints with other photos are told apart");
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        Prints.write("snag-list", sheet, ask, "pdf", 1, pdf);
        assertEquals(Set.of(), PdfUaTest.broken(pdf.toByteArray()));
    }

    @Test
    void theSetForAClientHoldsItsSheetsAndNoMoney() throws Exception {
        JobSheet sheet = sheet(COATED + ",\"handOver\":{\"snags\":[{\"bed\":\"A\",\"text\":\"Rim splinters at corner 2\",\"found\":\"2027-06-02\"}]}");
        List<String> texts = texts(Prints.pages(Prints.HAND_OVER, sheet, PrintAsk.usual("", "")));
        for (String title : List.of("Client's plan", "Bed register", "As built", "Care", "Snag list", "Base and liner")) assertTrue(texts.contains(title), title);
        assertTrue(texts.contains("Rim splinters at corner 2"));
        String total = sheet.slip().total().toPlainString();
        assertFalse(texts.stream().anyMatch(text -> text.contains("GBP") || text.contains(total)), "no money");
        assertTrue(texts(Prints.pages("as-built", sheet, PrintAsk.usual("", ""))).stream().anyMatch(text -> text.contains(total)), "whoever bought sees it");
    }
}
