package lapyard.answers;


import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import lapyard.json.JobSheetPart;
import lapyard.json.SheetAsk;

/** What a prepared garden writes, as text. */
final class Forms {
    private Forms() {}

    static String jobSheet(PreparedGarden sheet) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        sheet.jobSheet(SheetAsk.WHOLE, out);
        return out.toString(StandardCharsets.UTF_8);
    }

    static String part(PreparedGarden sheet, String part) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        sheet.part(JobSheetPart.of(part), out);
        return out.toString(StandardCharsets.UTF_8);
    }

    static String slipCsv(PreparedGarden sheet, String supplier) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        sheet.file(FileAsk.of("slip.csv", Optional.of(supplier)), out);
        return out.toString(StandardCharsets.UTF_8);
    }
}
