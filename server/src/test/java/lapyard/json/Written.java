package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import lapyard.job.JobSheet;

/** Job sheets as they are written, read again. */
final class Written {
    private Written() {}

    static JsonNode whole(JobSheet sheet) throws IOException {
        return part(sheet, SheetAsk.WHOLE);
    }

    static JsonNode part(JobSheet sheet, SheetAsk ask) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JobSheetJson.write(sheet, ask, out);
        return new JsonMapper().readTree(out.toByteArray());
    }
}
