package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import lapyard.diagrams.Stamp;
import lapyard.drawing.Shape;
import lapyard.job.Gardens;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import java.io.OutputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.regex.Pattern;
import lapyard.diagrams.BenchOptions;
import lapyard.diagrams.SetSheets;
import lapyard.drawing.Page;
import lapyard.drawing.PdfWriter;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.plan.Told;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The sheets of a garden, alone and as the set. */
class PrintsTest {
    private static final PrintAsk ASK = PrintAsk.usual("revision 7", "2026-03-01");

    private static List<String> texts(List<Page> pages) throws IOException {
        try (PDDocument document = Loader.loadPDF(PdfWriter.write(pages))) {
            List<String> texts = new ArrayList<>();
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                texts.add(stripper.getText(document));
            }
            return texts;
        }
    }

    @Test
    void theSetHoldsEveryKindAndNumbersEveryPage() throws Exception {
        JobSheet sheet = Gardens.sample("village-hall");
        List<Page> set = Prints.pages(Prints.SET, sheet, ASK);
        List<String> texts = texts(set);
        for (int i = 0; i < texts.size(); i++) {
            String text = texts.get(i);
            assertTrue(text.contains("page " + (i + 1) + " of " + set.size()), text);
            assertTrue(text.contains("revision 7") && text.contains("2026-03-01"), text);
        }
        int alone = 0;
        for (Print print : Prints.ALL) {
            if (!print.inSet().test(sheet, ASK)) continue;
            try {
                alone += print.pages().apply(sheet, ASK).size();
                assertTrue(texts.get(0).contains(print.title()) || texts.get(1).contains(print.title()), print.title() + " in " + texts.get(0));
            } catch (CannotPrint leftOut) {
                assertTrue(String.join("", texts).contains("Not in this set"), print.title());
            }
        }
        int front = set.size() - alone;
        assertTrue(front >= 1 && front <= 3, set.size() + " pages, " + alone + " of the kinds");
    }

    /** All five by name are wider than the sheet: it ended in "Friday 5 March…". */
    @Test
    void weekendOfFiveDaysTellsItsFirstAndItsLast() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"name\":\"Five days\",\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}],"
                + "\"crew\":{\"start\":\"2027-03-01\",\"days\":[\"mon\",\"tue\",\"wed\",\"thu\",\"fri\"],\"hours\":1}}");
        String first = texts(Prints.pages("weekends", sheet, ASK)).get(0);
        assertTrue(first.contains("Monday 1 March 2027 to Friday 5 March 2027"), first);
    }

    /** The contents send the reader to the page where each kind begins. */
    @Test
    void theContentsNameThePageOnWhichEachKindBegins() throws Exception {
        JobSheet sheet = Gardens.sample("three-entries");
        List<String> texts = texts(Prints.pages(Prints.SET, sheet, ASK));
        int plan = 1 + texts.indexOf(texts.stream().filter(text -> text.contains("Garden plan") && text.contains("Document type")).findFirst().orElseThrow());
        String contents = String.join("\n", texts.subList(0, plan - 1));
        assertTrue(contents.contains("Garden plan " + plan), contents);
    }

    @Test
    void whatAGardenHasNotIsNamedWithItsReason() throws Exception {
        List<Page> set = SetSheets.front(
                "all sheets", Optional.empty(), List.of(new SetSheets.Part("Garden plan", 1, "A3")),
                List.of(new SetSheets.LeftOut("Setting-out", "no baseline is given: name its two ends")), List.of(), BenchOptions.usual("Back yard", false));
        String contents = set.get(0).shapes().stream()
                .filter(Shape.Text.class::isInstance)
                .map(shape -> ((Shape.Text) shape).text())
                .collect(Collectors.joining(" "));
        assertTrue(contents.contains("Not in this set") && contents.contains("no baseline is given"), contents);
    }

    /** The set says what the job sheet says, once; what a garden has nothing to do with is not among it. */
    @Test
    void cautionsOfTheSetAreThoseOfTheJobSheet() throws Exception {
        JobSheet sheet = Gardens.sample("lock-keepers-yard");
        String front = String.join("\n", texts(Prints.pages(Prints.SET, sheet, ASK)).subList(0, 2)).replaceAll("\\s+", " ");
        assertTrue(sheet.cautions().size() > 5);
        sheet.cautions().forEach(one -> assertTrue(front.contains(one.text()), one.text() + " in " + front));
        assertTrue(front.contains("Wet concrete burns"), front);
    }

    /** Unknown is said as such: the board is not used for food, and the sheet says why. */
    @Test
    void whereBoardsComeFromIsASheet() throws Exception {
        String garden = "{\"beds\":[{\"id\":\"F\",\"width\":2400,\"depth\":1200,\"courses\":1,\"food\":true}],"
                + "\"rack\":[{\"id\":\"K1\",\"section\":\"100x200\",\"length\":2500},"
                + "{\"id\":\"K2\",\"section\":\"100x200\",\"length\":2500,\"origin\":\"barn floor\",\"treatment\":\"none\",\"checkedBy\":\"joiner\"}]}";
        JobSheet sheet = Gardens.sheet(garden);
        String text = String.join("\n", texts(Prints.pages("provenance", sheet, ASK)));
        for (String words : List.of("K1", "unknown", "not food", "barn floor", "joiner", "anywhere")) assertTrue(text.contains(words), words + " in " + text);
        assertTrue(text.contains("K2: barn floor"), text);
        assertTrue(!text.contains("K1: "), text);
        String refused = Told.refusal(assertThrows(CannotPrint.class, () -> Prints.pages("provenance", Gardens.sample("three-entries"), ASK)));
        assertTrue(refused.contains("Rack your boards"), refused);
    }

    @Test
    void aScaleAtWhichThePlanDoesNotFitIsRefused() throws Exception {
        JobSheet sheet = Gardens.sample("village-hall");
        String why = Told.refusal(assertThrows(IllegalArgumentException.class, () -> Prints.pages(Prints.SET, sheet, new PrintAsk(
                Optional.empty(), false, new PrintAsk.OfPlan(OptionalInt.of(1), List.of(), false), PrintAsk.OfSaw.USUAL, Optional.empty(), Stamp.NONE, PhotosAtHand.NONE))));
        assertTrue(why.contains("1:"), why);
    }

    @Test
    void staleSetsSaySoOnTheirFirstPage() throws Exception {
        PrintAsk stale = new PrintAsk(
                Optional.empty(), false, PrintAsk.OfPlan.USUAL, PrintAsk.OfSaw.USUAL, Optional.empty(),
                new Stamp("revision 3", "", Optional.of("made from revision 3; the garden is at revision 4.")), PhotosAtHand.NONE);
        String first = texts(Prints.pages(Prints.SET, Gardens.sample("three-entries"), stale)).get(0);
        assertTrue(first.contains("STALE") && first.contains("the garden is at revision 4"), first);
    }

    @Test
    void theSameGardenGivesTheSameBytes() throws Exception {
        for (String format : List.of("pdf", "svg", "png")) {
            assertArrayEquals(written(Prints.SET, format, prepared()), written(Prints.SET, format, prepared()), format);
        }
    }

    /** Made anew, not from what another test has searched for. */
    private static JobSheet prepared() throws Exception {
        return Job.prepare(Gardens.garden(Gardens.text("three-entries")));
    }

    private static byte[] written(String name, String format, JobSheet sheet) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Prints.write(name, sheet, ASK, format, 1, out);
        return out.toByteArray();
    }

    /** The file of the set has the same words on the same pages as the pages one by one, and its contents lead to them. */
    @Test
    void theSetAsAFileIsItsPages() throws Exception {
        JobSheet sheet = Gardens.sample("three-entries");
        List<Page> pages = Prints.pages(Prints.SET, sheet, ASK);
        try (PDDocument set = Loader.loadPDF(written(Prints.SET, "pdf", sheet))) {
            assertEquals(pages.size(), set.getNumberOfPages());
            assertEquals(String.join("", texts(pages)), new PDFTextStripper().getText(set));
            List<String> kinds = new ArrayList<>();
            for (PDOutlineItem kind : set.getDocumentCatalog().getDocumentOutline().children()) {
                kinds.add(kind.getTitle());
                int page = set.getPages().indexOf(kind.findDestinationPage(set));
                for (PDOutlineItem below : kind.children()) {
                    assertTrue(set.getPages().indexOf(below.findDestinationPage(set)) >= page, below.getTitle());
                }
            }
            assertEquals("Contents", kinds.get(0));
            assertTrue(kinds.containsAll(List.of("Garden plan", "Saw Day", "Slip")), kinds.toString());
            for (PDAnnotation link : set.getPage(0).getAnnotations()) {
                int page = ((PDPageDestination) ((PDAnnotationLink) link).getDestination()).retrievePageNumber();
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page + 1);
                stripper.setEndPage(page + 1);
                assertTrue(stripper.getText(set).contains("page " + (page + 1) + " of"), link.getContents());
                assertEquals(kinds.get(1 + set.getPage(0).getAnnotations().indexOf(link)), link.getContents());
            }
        }
    }

    @Test
    void unknownSheetsAreRefusedByName() throws Exception {
        JobSheet sheet = Gardens.sample("three-entries");
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Prints.pages("wall-paper", sheet, ASK)).getMessage().contains("wall-paper"));
        assertFalse(Prints.known("wall-paper"));
        List<Page> pages = Prints.pages("saw-day", sheet, ASK);
        String none = Told.refusal(assertThrows(
                IllegalArgumentException.class,
                () -> Prints.write("saw-day", sheet, ASK, "svg", pages.size() + 1, OutputStream.nullOutputStream())));
        assertTrue(none.contains("1 to " + pages.size()), none);
    }

    /** 60 beds of one type, each 6 x 2300 and 6 x 1100 in three courses: 60 x 20.4 m, worked by hand. */
    @Test
    void theRegisterListsEveryBedOnceAndSumsTheTypes() throws Exception {
        JobSheet sheet = Gardens.sample("allotment-field");
        String text = String.join("\n", texts(Prints.pages("bed-register", sheet, ASK)));
        for (JobSheet.BedSheet bed : sheet.beds()) {
            assertTrue(text.lines().anyMatch(line -> line.startsWith(bed.work().bed().id() + " ")), bed.work().bed().id());
        }
        double timber = sheet.beds().stream()
                .flatMap(bed -> bed.quantities().stream())
                .filter(quantity -> quantity.key().toString().equals("timber.length"))
                .mapToDouble(quantity -> quantity.value())
                .sum();
        double listed = text.substring(text.indexOf("\nTypes")).lines()
                .flatMap(line -> Pattern.compile("([0-9.]+) m(?= )").matcher(line).results())
                .mapToDouble(found -> Double.parseDouble(found.group(1)))
                .sum();
        double single = sheet.beds().stream().filter(bed -> bed.work().bed().type().isEmpty())
                .flatMap(bed -> bed.quantities().stream())
                .filter(quantity -> quantity.key().toString().equals("timber.length"))
                .mapToDouble(quantity -> quantity.value())
                .sum();
        assertEquals(timber - single, listed, 0.5);
    }

    @Test
    void layersAreNamedAndAnUnknownOneIsRefusedNamingAll() throws Exception {
        JobSheet sheet = Gardens.sample("village-hall");
        String bare = texts(Prints.pages("plan", sheet, ASK.showing(List.of("beds")))).get(0);
        String usual = texts(Prints.pages("plan", sheet, ASK)).get(0);
        assertTrue(usual.contains("grass") && usual.contains("gate 1000") && usual.contains("Cross, 1200") && usual.contains("level reading"), usual);
        assertFalse(bare.contains("grass") || bare.contains("gate 1000") || bare.contains("Cross, 1200") || bare.contains("level reading"), bare);
        assertTrue(bare.contains("Show bed"), bare);
        assertFalse(usual.contains("stage in which"), usual);
        assertTrue(texts(Prints.pages("plan", sheet, ASK.showing(List.of("beds", "stages")))).get(0).contains("stage in which"));
        String why = Told.refusal(assertThrows(IllegalArgumentException.class, () -> Prints.pages("plan", sheet, ASK.showing(List.of("lawn")))));
        assertTrue(why.contains("lawn") && why.contains("keep-clear"), why);
    }
}
