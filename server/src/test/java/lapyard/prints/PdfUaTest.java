package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/**
 * Files keep every rule of ISO 14289-1:2014 (PDF/UA-1) that a machine can check, as veraPDF 1.30 checks them. It is of the PDF
 * Association and took no part in writing them. Whether the words of a figure say what is drawn is for people to judge.
 */
class PdfUaTest {
    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    /** The rules that a file breaks, each once; empty where it keeps all. */
    static Set<String> broken(byte[] pdf) throws Exception {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            Set<String> broken = new TreeSet<>();
            for (TestAssertion one : validator.validate(parser).getTestAssertions()) broken.add(one.getRuleId().getClause() + ": " + one.getMessage());
            return broken;
        }
    }

    static byte[] pdf(String name, JobSheet sheet) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Prints.write(name, sheet, PrintAsk.usual("revision 1", "2026-03-01"), "pdf", 1, bytes);
        return bytes.toByteArray();
    }

    /** The sets, and the kinds of sheets that stand in neither; those that the garden has not enough for are left out. */
    static List<String> files(JobSheet sheet) {
        List<String> names = new ArrayList<>(List.of(Prints.SET, Prints.HAND_OVER));
        PrintAsk ask = PrintAsk.usual("revision 1", "2026-03-01");
        for (Print print : Prints.ALL) if (!print.inSet().test(sheet, ask)) names.add(print.name());
        return names;
    }

    static List<String> filesOfOneBed() throws IOException {
        return files(Gardens.sample("three-entries"));
    }

    @ParameterizedTest
    @MethodSource("filesOfOneBed")
    void everyFileOfOneBedKeepsTheStandard(String name) throws Exception {
        byte[] pdf;
        try {
            pdf = pdf(name, Gardens.sample("three-entries"));
        } catch (CannotPrint notEnough) {
            return;
        }
        assertEquals(Set.of(), broken(pdf));
    }

    /** What the other tests rest on: a file that lost its tags or its claim is noticed. */
    @Test
    void aFileWithoutTagsOrClaimBreaksIt() throws Exception {
        byte[] whole = pdf("slip", Gardens.sample("three-entries"));
        for (COSName lost : List.of(COSName.STRUCT_TREE_ROOT, COSName.METADATA, COSName.LANG)) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (PDDocument pdf = Loader.loadPDF(whole)) {
                pdf.getDocumentCatalog().getCOSObject().removeItem(lost);
                pdf.save(bytes);
            }
            assertTrue(!broken(bytes.toByteArray()).isEmpty(), lost::getName);
        }
    }
}
