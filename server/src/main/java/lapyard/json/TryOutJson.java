package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import lapyard.job.TryOut;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.WayKind;
import lapyard.words.Wording;

/** Changes laid over a copy of a garden document, and two gardens side by side. */
public final class TryOutJson {
    private static final int MOST_CHANGES = 1_000;

    private TryOutJson() {}

    /** A garden as it stands and its copy with the changes, both as text. */
    public record Asked(String before, String after) {}

    /**
     * {@code {"garden":{...},"changes":[{"bed":"M","set":{"courses":2,"section":"75x200","at":[0,0]}},{"drop":"N"},{"add":{...}}]}};
     * a field set to null goes back to its default. {@code "instead":{...}} in place of changes is the whole other garden.
     *
     * @throws CannotAnswer for a change that cannot be read or names no bed, with its place
     */
    public static Asked read(String text) {
        AskReader asked = AskReader.of("try-out", DocumentText.parse(text), "garden", "changes", "instead");
        JsonNode garden = asked.node().get("garden");
        if (garden == null || !garden.isObject()) throw AskReader.shape("garden", "a garden document in curly brackets", garden, WayKind.CURLY_BRACKETS);
        if (asked.has("instead")) {
            JsonNode instead = asked.node().get("instead");
            if (!instead.isObject()) throw AskReader.shape("instead", "a garden document in curly brackets", instead, WayKind.CURLY_BRACKETS);
            if (asked.has("changes")) throw new CannotAnswer(AskReader.fault(FindingKind.FIELDS_CLASH, "changes").with("other", Fact.name("instead")).way(WayKind.TAKE_ONE_OUT));
            return new Asked(garden.toString(), instead.toString());
        }
        ObjectNode copy = garden.deepCopy();
        AskReader.atMost("changes", asked.list("changes").size(), MOST_CHANGES);
        asked.entries("changes").forEach(change -> change(copy, change));
        return new Asked(garden.toString(), copy.toString());
    }

    private static void change(ObjectNode garden, AskReader entry) {
        JsonNode change = entry.known("bed", "set", "drop", "add").node();
        String at = entry.at();
        ArrayNode beds = garden.get("beds") instanceof ArrayNode list ? list : garden.putArray("beds");
        if (change.has("add")) {
            if (change.size() != 1 || !change.get("add").isObject()) throw AskReader.shape(at + ".add", "one bed, with nothing beside it", change.get("add"), WayKind.CURLY_BRACKETS);
            beds.add(change.get("add").deepCopy());
            return;
        }
        boolean drop = change.has("drop");
        if (drop ? change.size() != 1 : !change.has("bed") || !change.has("set"))
            throw AskReader.shape(at, "a change that drops a bed, adds one, or names a bed and what to set", change, WayKind.WRITE_LIKE, Fact.name("{\"bed\": \"M\", \"set\": {\"courses\": 2}}"));
        int place = place(beds, entry.text(drop ? "drop" : "bed"), at);
        if (drop) {
            beds.remove(place);
            return;
        }
        JsonNode set = change.get("set");
        if (!set.isObject()) throw AskReader.shape(at + ".set", "fields of the bed in curly brackets", set, WayKind.CURLY_BRACKETS);
        ObjectNode bed = (ObjectNode) beds.get(place);
        set.fields().forEachRemaining(field -> {
            if (field.getValue().isNull()) bed.remove(field.getKey());
            else bed.set(field.getKey(), field.getValue().deepCopy());
        });
    }

    private static int place(ArrayNode beds, String id, String at) {
        for (int i = 0; i < beds.size(); i++) if (beds.get(i).isObject() && beds.get(i).path("id").asText("").equals(id)) return i;
        throw new CannotAnswer(AskReader.fault(FindingKind.FIELD_NO_SUCH, at).with("what", Fact.name("bed")).with("value", Fact.name(FieldFaults.cut(id))).way(WayKind.BED_BY_CODE));
    }

    public static ObjectNode write(TryOut tried, String after) {
        JsonNode garden = DocumentText.parse(after);
        ObjectNode json = Wire.of(tried, Wording.of(garden.path("units").asText().equals("imperial")));
        json.set("garden", garden);
        return json;
    }
}
