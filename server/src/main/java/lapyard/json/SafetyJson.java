package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import lapyard.job.JobSheet;

/** Where boards come from, and what is said beside the work that can hurt someone. */
final class SafetyJson {
    private SafetyJson() {}

    static void into(ObjectNode json, JobSheet sheet) {
        ArrayNode provenance = json.putArray("provenance");
        sheet.provenance().forEach(one -> {
            ObjectNode board = provenance.addObject();
            board.put("board", one.board().id());
            board.put("section", one.board().section());
            board.put("origin", one.board().origin());
            board.put("coated", one.board().coated());
            board.put("treatment", one.board().treatment().name().toLowerCase(Locale.ROOT));
            board.put("checkedBy", one.board().checkedBy());
            board.put("allowed", one.allowed());
            board.put("why", one.why());
            ArrayNode beds = board.putArray("beds");
            one.beds().forEach(beds::add);
        });
        ArrayNode cautions = json.putArray("cautions");
        sheet.cautions().forEach(one -> {
            ObjectNode caution = cautions.addObject();
            caution.put("sheet", one.sheet());
            caution.put("text", one.text());
        });
    }
}
