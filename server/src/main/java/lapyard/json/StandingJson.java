package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import lapyard.standing.Standing;
import lapyard.standing.Verdict;
import lapyard.words.Wording;

/** Whether a bed would stand, as it is sent out. */
final class StandingJson {
    private StandingJson() {}

    static ObjectNode of(Standing standing, Wording words) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("caution", Standing.CAUTION);
        ArrayNode refused = json.putArray("notDesigned");
        standing.notDesigned().forEach(why -> refused.add(words.text(why)));
        ArrayNode verdicts = json.putArray("verdicts");
        for (Verdict verdict : standing.verdicts()) {
            ObjectNode one = verdicts.addObject();
            one.put("about", verdict.about());
            one.put("outcome", verdict.outcome().name().toLowerCase(Locale.ROOT));
            one.put("text", words.text(verdict.finding()));
            ArrayNode ways = one.putArray("ways");
            words.ways(verdict.finding()).forEach(ways::add);
        }
        json.set("quantities", JobSheetJson.quantities(standing.quantities()));
        return json;
    }
}
