package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import lapyard.job.TryOut;
import lapyard.plan.CannotAnswer;
import lapyard.plan.WayKind;
import lapyard.words.Wording;
import lapyard.working.BrokenRule;

/** Changes laid over a copy of a garden document, and two gardens side by side. */
public final class TryOutJson {
    private static final int MOST_CHANGES = 1_000;

    private TryOutJson() {}

    /** A garden as it stands and its copy with the changes, both as text. */
    public record Both(String before, String after) {}

    /**
     * {@code {"garden":{...},"changes":[{"bed":"M","set":{"courses":2,"section":"75x200","at":[0,0]}},{"drop":"N"},{"add":{...}}]}};
     * a field set to null goes back to its default. {@code "instead":{...}} in place of changes is the whole other garden.
     *
     * @throws CannotAnswer for a change that cannot be read or names no bed, with its place
     */
    public static Both read(String text) {
        return Asked.read("try-out", DocumentText.parse(text), ask -> {
            if (!ask.has("garden")) ask.missing("garden", "a garden document in curly brackets");
            ObjectNode garden = Asked.object(ask, "garden");
            if (ask.has("instead") && ask.has("changes")) ask.clash("changes", "instead");
            ObjectNode after = ask.has("instead") ? Asked.object(ask, "instead") : garden.deepCopy();
            if (!ask.has("instead")) {
                BrokenRule.atMost("changes", "changes", ask.raw("changes").size(), MOST_CHANGES, "entries");
                Asked.each(ask, "changes", "change", change -> change(after, change));
            }
            return new Both(garden.toString(), after.toString());
        });
    }

    private static boolean change(ObjectNode garden, Cursor change) {
        ArrayNode beds = garden.get("beds") instanceof ArrayNode list ? list : garden.putArray("beds");
        boolean drop = change.has("drop");
        boolean add = change.has("add");
        boolean set = change.has("bed") && change.has("set");
        if ((drop || add) && change.node().size() != 1 || !drop && !add && !set) {
            change.misshapen("", "a change that drops a bed, adds one, or names a bed and what to set", change.node(), "{\"bed\": \"M\", \"set\": {\"courses\": 2}}");
        } else if (add) {
            beds.add(Asked.object(change, "add").deepCopy());
        } else {
            String id = change.text(drop ? "drop" : "bed");
            int place = place(beds, id);
            ObjectNode fields = Asked.object(change, "set");
            if (place < 0) {
                change.add(change.noSuch(drop ? "drop" : "bed", "bed", id, List.of()).way(WayKind.BED_BY_CODE));
            } else if (drop) {
                beds.remove(place);
            } else {
                ObjectNode bed = (ObjectNode) beds.get(place);
                fields.fields().forEachRemaining(field -> {
                    if (field.getValue().isNull()) bed.remove(field.getKey());
                    else bed.set(field.getKey(), field.getValue().deepCopy());
                });
            }
        }
        return true;
    }

    private static int place(ArrayNode beds, String id) {
        for (int i = 0; i < beds.size(); i++) if (beds.get(i).isObject() && beds.get(i).path("id").asText("").equals(id)) return i;
        return -1;
    }

    public static ObjectNode write(TryOut tried, String after) {
        JsonNode garden = DocumentText.parse(after);
        ObjectNode json = Wire.of(tried, Wording.of(garden.path("units").asText().equals("imperial")));
        json.set("garden", garden);
        return json;
    }
}
