package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import lapyard.job.JobSheet;
import lapyard.job.Rest;
import lapyard.plan.Tally;

/** The wire form of what was done and of what is left. Lengths in millimetres. */
final class TallyJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private TallyJson() {}

    static ObjectNode of(JobSheet sheet) {
        Tally tally = sheet.garden().people().tally();
        ObjectNode json = NODES.objectNode();
        json.put("day", tally.day());
        ArrayNode done = json.putArray("done");
        tally.done().forEach(task -> done.addObject().put("task", task.task()).put("day", task.day()));
        ArrayNode bought = json.putArray("bought");
        tally.bought().forEach(thing -> bought.addObject().put("item", thing.item()).put("pack", thing.pack())
                .put("count", thing.count()).put("arrived", thing.arrived()));
        ArrayNode sections = json.putArray("sections");
        if (tally.boards().isEmpty()) return json;
        for (Rest rest : Rest.of(sheet).sections()) {
            ObjectNode one = sections.addObject();
            one.put("section", rest.section());
            one.put("cut", rest.cut());
            one.put("wanted", rest.wanted());
            one.set("needed", JobSheetJson.number(rest.neededMm(), 3));
            one.set("there", JobSheetJson.number(rest.thereMm(), 3));
            one.put("fit", rest.fit());
            ArrayNode lacking = one.putArray("lacking");
            rest.lacking().forEach(piece -> {
                ObjectNode length = lacking.addObject();
                length.set("length", JobSheetJson.number(piece.lengthMm(), 3));
                length.put("count", piece.count());
            });
            ObjectNode buy = one.putObject("buy");
            rest.buy().forEach(buy::put);
            JobSheetJson.money(one, "extra", rest.extra());
            one.set("result", CuttingJson.write(rest.plan()));
        }
        return json;
    }
}
