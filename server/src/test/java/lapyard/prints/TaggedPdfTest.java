package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.drawing.PdfTags;
import lapyard.drawing.PdfTags.Element;
import lapyard.drawing.PdfTags.Marked;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The tags of sets of sheets, read back by PDFBox, which took no part in writing them. The clauses are those of ISO 14289-1:2014
 * (PDF/UA-1) and of ISO 32000-1:2008 (PDF 1.7), from memory.
 */
class TaggedPdfTest {
    private interface Check {
        void of(PDDocument pdf, PdfTags tags, Element whole) throws IOException;
    }

    private static void check(JobSheet sheet, String name, Check check) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Prints.write(name, sheet, PrintAsk.usual("revision 1", "2026-03-01"), "pdf", 1, bytes);
        try (PDDocument pdf = Loader.loadPDF(bytes.toByteArray())) {
            PdfTags tags = PdfTags.of(pdf);
            check.of(pdf, tags, tags.whole());
        }
    }

    /** ISO 14289-1, 7.1: all that is painted is tagged or an artifact; ISO 32000-1, 14.7.4: both ways between mark and element agree. */
    @ParameterizedTest
    @ValueSource(strings = {"three-entries", "village-hall", "lock-keepers-yard", "school-courtyard"})
    void allThatIsPaintedBelongsToAnElementOrIsAnArtifact(String sample) throws IOException {
        check(Gardens.sample(sample), Prints.SET, (pdf, tags, whole) -> {
            assertEquals("Document", whole.type());
            List<String> heads = whole.all("TR").stream().filter(row -> row.kids().get(0).type().equals("TH")).map(row -> unspaced(row.words())).toList();
            assertEquals(pdf.getNumberOfPages(), whole.kids().size());
            for (PDPage page : pdf.getPages()) {
                PdfTags.Painted painted = tags.painted(page);
                assertEquals(List.of(), painted.astray);
                for (Marked marked : painted.marked) {
                    assertEquals(marked.tag().equals("Artifact"), marked.number() < 0, marked::toString);
                    if (marked.number() < 0) {
                        // 7.8: a running head or foot says that it is one; nothing else of an artifact is text, but what is read already
                        boolean running = marked.artifact().equals("Pagination") && List.of("Header", "Footer").contains(marked.subtype());
                        boolean repeated = marked.artifact().isEmpty() && heads.stream().anyMatch(head -> unspaced(marked.words().toString()).replace(head, "").isEmpty());
                        assertTrue(marked.words().toString().isBlank() || running || repeated, marked::toString);
                        continue;
                    }
                    COSDictionary owner = tags.owner(page, marked.number());
                    assertSame(owner, tags.byParentTree(page, marked.number()), marked::toString);
                    assertSame(page.getCOSObject(), owner.getCOSDictionary(COSName.PG));
                }
                assertTrue(painted.marked.stream().anyMatch(one -> one.subtype().equals("Footer") && one.words().toString().contains(" of " + pdf.getNumberOfPages())));
            }
        });
    }

    /** ISO 14289-1, 7.1 and 7.2 for the file, 7.4.2 for headings, 7.3 for figures (their box: ISO 32000-1, 14.8.5.4.3). */
    @ParameterizedTest
    @ValueSource(strings = {"three-entries", "village-hall", "lock-keepers-yard"})
    void headingsFiguresAndTablesAreWhatAReaderExpects(String sample) throws IOException {
        check(Gardens.sample(sample), Prints.SET, (pdf, tags, whole) -> {
            assertTrue(pdf.getDocumentCatalog().getMarkInfo().isMarked());
            assertEquals("en-GB", pdf.getDocumentCatalog().getLanguage());
            assertTrue(pdf.getDocumentCatalog().getViewerPreferences().displayDocTitle());
            assertFalse(pdf.getDocumentInformation().getTitle().isBlank());
            assertEquals("H1", whole.all().filter(one -> one.type().startsWith("H")).findFirst().orElseThrow().type());
            for (Element section : whole.kids()) assertFalse(section.all("H1").isEmpty(), section::words);
            for (Element heading : whole.all().filter(one -> one.type().matches("H[12]")).toList()) assertFalse(heading.words().isEmpty());
            assertFalse(whole.all("Figure").isEmpty());
            for (Element figure : whole.all("Figure")) {
                assertFalse(figure.alternative().isBlank());
                COSArray box = figure.made().getCOSDictionary(COSName.A).getCOSArray(COSName.BBOX);
                PDRectangle paper = new PDPage(figure.made().getCOSDictionary(COSName.PG)).getMediaBox();
                PDRectangle taken = new PDRectangle(box);
                assertTrue(taken.getLowerLeftX() >= 0 && taken.getLowerLeftY() >= 0 && taken.getUpperRightX() <= paper.getUpperRightX() + 0.01 && taken.getUpperRightY() <= paper.getUpperRightY() + 0.01, figure::alternative);
                assertTrue(taken.getWidth() > 0 || taken.getHeight() > 0, figure::alternative);
            }
            for (Element table : whole.all("Table")) regular(table);
        });
    }

    /** ISO 14289-1, 7.5: regular, with heads that say of what they are one; ISO 32000-1, 14.8.4.3.4: only rows in a table, only cells in a row. */
    private static void regular(Element table) {
        Element head = table.kids().get(0);
        for (Element row : table.kids()) {
            assertEquals("TR", row.type());
            assertEquals(head.kids().size(), row.kids().size(), table::words);
            for (Element cell : row.kids()) {
                assertEquals(row == head ? "TH" : "TD", cell.type(), table::words);
                if (row == head) assertEquals("Column", cell.made().getCOSDictionary(COSName.A).getNameAsString("Scope"));
            }
        }
    }

    /** Thirty beds that take a weekend each have a line a weekend in place of a table. */
    @Test
    void theLinesOfALongJobAreATable() throws IOException {
        String beds = IntStream.range(0, 30).mapToObj(i -> "{\"id\":\"K%d\",\"width\":%d,\"depth\":900,\"courses\":3,\"stage\":%d,\"at\":[%d,%d]}"
                .formatted(i, 2000 + 50 * i, i + 1, 4200 * (i % 6), 2700 * (i / 6))).collect(Collectors.joining(","));
        check(Gardens.sheet("{\"beds\":[" + beds + "]}"), "job", (pdf, tags, whole) -> {
            assertTrue(whole.words().contains("weekend by weekend"), whole::words);
            assertFalse(whole.all("Table").isEmpty());
            for (Element table : whole.all("Table")) regular(table);
        });
    }

    /** ISO 14289-1, 7.18.5 and 7.18.3: a link stands in a Link element, both know of each other, and keys follow the structure. */
    @Test
    void theContentsAreATableOfLinks() throws IOException {
        check(Gardens.sample("village-hall"), Prints.SET, (pdf, tags, whole) -> {
            PDPage page = pdf.getPage(0);
            List<Element> links = whole.kids().get(0).all("Link");
            List<PDAnnotation> annotations = page.getAnnotations();
            assertEquals(annotations.size(), links.size());
            assertEquals("S", page.getCOSObject().getNameAsString("Tabs"));
            for (int i = 0; i < links.size(); i++) {
                assertEquals(annotations.get(i).getContents(), links.get(i).words());
                COSArray kids = links.get(i).made().getCOSArray(COSName.K);
                COSDictionary reference = (COSDictionary) kids.getObject(kids.size() - 1);
                assertEquals("OBJR", reference.getNameAsString(COSName.TYPE));
                assertSame(annotations.get(i).getCOSObject(), reference.getDictionaryObject(COSName.OBJ));
                var parents = (org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue)
                        pdf.getDocumentCatalog().getStructureTreeRoot().getParentTree().getValue(annotations.get(i).getStructParent());
                assertSame(links.get(i).made(), parents.getCOSObject());
            }
            assertTrue(whole.kids().get(0).all("TD").stream().anyMatch(cell -> cell.words().equals("Garden plan")));
        });
    }

    @Test
    void theCellsOfTheSlipAreTheOrder() throws IOException {
        JobSheet sheet = Gardens.sample("village-hall");
        check(sheet, "slip", (pdf, tags, whole) -> {
            List<List<String>> read = rows(whole);
            List<List<String>> ordered = new ArrayList<>();
            for (Slip.Order order : sheet.slip().orders()) {
                for (Slip.Part part : order.lines()) {
                    for (SlipLine.PackCount pack : part.packs()) ordered.add(List.of(String.valueOf(pack.count()), pack.words(false)));
                }
            }
            assertTrue(ordered.size() > 5);
            assertEquals(ordered, read.stream().map(row -> row.subList(0, 2)).filter(row -> row.get(0).matches("[1-9][0-9]*")).toList());
        });
    }

    @Test
    void theCellsOfACourseCardAreItsTimbers() throws IOException {
        JobSheet sheet = Gardens.sample("three-entries");
        check(sheet, "course-cards", (pdf, tags, whole) -> {
            List<String> read = rows(whole).stream().map(row -> row.get(0) + " " + row.get(1)).toList();
            BedWork work = sheet.beds().get(0).work();
            for (Piece piece : work.frame().courses().get(0).pieces()) {
                assertTrue(read.contains(piece.wall() + piece.part() + " " + Math.round(piece.lengthMm())), () -> piece + " in " + read);
            }
            assertTrue(whole.all("H2").stream().anyMatch(heading -> heading.words().startsWith("Course")));
        });
    }

    @Test
    void eachLabelIsReadByItself() throws IOException {
        JobSheet sheet = Gardens.sample("three-entries");
        check(sheet, "labels", (pdf, tags, whole) -> {
            List<String> read = whole.all("P").stream().map(label -> unspaced(label.words())).toList();
            for (BedWork work : sheet.beds().stream().map(JobSheet.BedSheet::work).toList()) {
                for (Piece piece : work.pieces()) {
                    String label = unspaced(piece.mark() + Math.round(piece.lengthMm()) + "bed" + work.bed().id() + ",course" + piece.course() + ",wall" + piece.wall() + piece.part() + "board");
                    assertEquals(1, read.stream().filter(words -> words.startsWith(label) && words.lastIndexOf("board") == label.length() - 5).count(), () -> label + " in " + read);
                }
            }
        });
    }

    private static String unspaced(String words) {
        return words.replace(" ", "");
    }

    /** The texts of all cells below the heads of tables. */
    private static List<List<String>> rows(Element whole) {
        return whole.all("TR").stream()
                .filter(row -> row.kids().stream().allMatch(cell -> cell.type().equals("TD")))
                .map(row -> row.kids().stream().map(Element::words).toList())
                .toList();
    }
}
