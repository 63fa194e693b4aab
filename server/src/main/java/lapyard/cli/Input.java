package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import lapyard.answers.GardenDesk;
import lapyard.answers.GivenDocument;
import lapyard.answers.Refused;
import lapyard.exchange.XlsxReader;
import lapyard.job.JobSheet;
import lapyard.json.DocumentText;
import lapyard.json.UnreadableDocument;
import lapyard.plan.Finding;
import lapyard.words.Wording;

/** A garden file or standard input, named {@code -}. */
final class Input {
    private Input() {}

    /** @return the text, UTF-8 */
    static String text(String file) throws UnusableInput {
        try {
            return DocumentText.decode(bytes(file));
        } catch (UnreadableDocument e) {
            throw new UnusableInput(file + ": " + e.getMessage());
        }
    }

    /** @return CSV as it is, or the first sheet of a workbook as CSV */
    static String table(String file) throws UnusableInput {
        byte[] bytes = bytes(file);
        try {
            return XlsxReader.isWorkbook(bytes) ? XlsxReader.firstSheetAsCsv(bytes) : DocumentText.decode(bytes);
        } catch (UnreadableDocument | IllegalArgumentException e) {
            throw new UnusableInput(file + ": " + e.getMessage());
        }
    }

    private static byte[] bytes(String file) throws UnusableInput {
        try {
            if (file.equals("-")) return System.in.readNBytes(DocumentText.MOST_BYTES + 1);
            Path path = Path.of(file);
            if (Files.isDirectory(path)) throw new UnusableInput(file + " is a folder. Name a garden file in it.");
            if (!Files.exists(path)) throw new UnusableInput(file + " is not there. Check the name, or give - for standard input.");
            DocumentText.refuseTooLarge(Files.size(path));
            return Files.readAllBytes(path);
        } catch (IOException | java.nio.file.InvalidPathException e) {
            throw new UnusableInput(file + " cannot be read: " + e.getMessage());
        } catch (UnreadableDocument e) {
            throw new UnusableInput(file + ": " + e.getMessage());
        }
    }

    /**
     * The job sheet of a garden.
     *
     * @throws Refused where the garden holds a STOP
     */
    static JobSheet sheet(String file) throws UnusableInput {
        String text = text(file);
        return new GardenDesk().prepare(GivenDocument.of(text, parsed(file, text))).sheet();
    }

    /** @param text of that file */
    static JsonNode parsed(String file, String text) throws UnusableInput {
        try {
            return DocumentText.parse(text);
        } catch (UnreadableDocument e) {
            throw new UnusableInput(file + ": " + e.getMessage());
        }
    }

    /** One line of a finding: its weight, its place as {@code accepted} names it, what is wrong and the ways out. */
    static String line(Finding finding, Wording words) {
        String weight = Wording.weight(finding.weight());
        return PrintedCommand.line(weight.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + weight.substring(1) + " (" + finding.place().words() + "): "
                + words.paragraph(finding));
    }
}
