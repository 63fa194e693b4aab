package lapyard.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lapyard.answers.GardenDesk;
import lapyard.answers.GivenDocument;
import lapyard.answers.Refused;
import lapyard.exchange.XlsxReader;
import lapyard.job.JobSheet;
import lapyard.json.DocumentText;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Finding;
import lapyard.prints.PhotosAtHand;
import lapyard.rest.GardenFile;
import lapyard.store.Photos;
import lapyard.words.Wording;

/** A garden file or standard input, named {@code -}. */
final class Input {
    private static final Pattern WHOLE = Pattern.compile("\\s*\\{\\s*\"lapyard\"\\s*:\\s*\"garden\"");

    private Input() {}

    /** Reads what a file or a line of it holds. */
    interface Reading<T> {
        T read() throws UnusableInput;
    }

    /**
     * What was read.
     *
     * @param where the file, and the place in it
     * @throws UnusableInput with the first thing that is wrong with it, in a line
     */
    static <T> T usable(String where, Reading<T> reading) throws UnusableInput {
        try {
            return reading.read();
        } catch (Refused refused) {
            throw new UnusableInput(where + ": " + line(refused.findings().get(0), refused.words()));
        } catch (IllegalArgumentException e) {
            throw new UnusableInput(where, e, Wording.METRIC);
        }
    }

    /** @return the text, UTF-8 */
    static String text(String file) throws UnusableInput {
        byte[] bytes = bytes(file, DocumentText.MOST_BYTES);
        return usable(file, () -> DocumentText.decode(bytes));
    }

    /** @return CSV as it is, or the first sheet of a workbook as CSV */
    static String table(String file) throws UnusableInput {
        byte[] bytes = bytes(file, DocumentText.MOST_BYTES);
        return usable(file, () -> XlsxReader.isWorkbook(bytes) ? XlsxReader.firstSheetAsCsv(bytes) : DocumentText.decode(bytes));
    }

    private static byte[] bytes(String file, int most) throws UnusableInput {
        try {
            if (file.equals("-")) return System.in.readNBytes(most + 1);
            Path path = Path.of(file);
            if (Files.isDirectory(path)) throw new UnusableInput(file + " is a folder. Name a garden file in it.");
            if (!Files.exists(path)) throw new UnusableInput(file + " is not there. Check the name, or give - for standard input.");
            if (Files.size(path) > most) DocumentText.refuseTooLarge(Files.size(path));
            return Files.readAllBytes(path);
        } catch (IOException | java.nio.file.InvalidPathException e) {
            throw new UnusableInput(file + " cannot be read: " + UnusableInput.why(e) + ".");
        } catch (CannotAnswer tooLarge) {
            throw new UnusableInput(file, tooLarge, Wording.METRIC);
        }
    }

    /**
     * The job sheet of a garden.
     *
     * @throws Refused where the garden holds a STOP
     */
    static JobSheet sheet(String file) throws UnusableInput {
        return garden(file).sheet();
    }

    /** A garden and the photos that its file carries; none where it is a document alone. */
    record Given(JobSheet sheet, PhotosAtHand photos) {}

    /**
     * A garden from its document, or from the file in which a server gives a garden out with its whole history: the newest revision.
     *
     * @throws Refused where the garden holds a STOP
     */
    static Given garden(String file) throws UnusableInput {
        byte[] bytes = bytes(file, GardenFile.MOST_BYTES);
        try {
            if (WHOLE.matcher(new String(bytes, 0, Math.min(bytes.length, 100), StandardCharsets.UTF_8)).lookingAt()) return whole(new String(bytes, StandardCharsets.UTF_8));
            String text = DocumentText.decode(bytes);
            return new Given(sheet(GivenDocument.of(text, parsed(file, text))), PhotosAtHand.NONE);
        } catch (Refused stop) {
            throw stop;
        } catch (IllegalArgumentException e) {
            throw new UnusableInput(file, e, Wording.METRIC);
        }
    }

    private static Given whole(String text) {
        GardenFile.Newest newest = GardenFile.newest(text);
        Map<String, byte[]> photos = newest.photos().stream().collect(Collectors.toMap(Photos.Kept::id, Photos.Kept::bytes, (one, same) -> one));
        return new Given(sheet(GivenDocument.of(newest.document())), new PhotosAtHand(photos.keySet(), id -> Optional.ofNullable(photos.get(id))));
    }

    private static JobSheet sheet(GivenDocument document) {
        return new GardenDesk().prepare(document).sheet();
    }

    /** @param text of that file */
    static JsonNode parsed(String file, String text) throws UnusableInput {
        return usable(file, () -> DocumentText.parse(text));
    }

    /** One line of a finding: its weight, its place as {@code accepted} names it, what is wrong and the ways out. */
    static String line(Finding finding, Wording words) {
        String weight = Wording.weight(finding.weight());
        return PrintedCommand.line(Wording.capital(weight) + " (" + finding.place().words() + "): "
                + words.paragraph(finding));
    }
}
