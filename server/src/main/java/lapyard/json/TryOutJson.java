package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Set;
import lapyard.job.TryOut;
import lapyard.json.Wire.To;
import lapyard.words.Wording;

/** Changes laid over a copy of a garden document, and two gardens side by side. */
public final class TryOutJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);
    private static final Set<String> ASK = Set.of("garden", "changes", "instead");
    private static final Set<String> CHANGE = Set.of("bed", "set", "drop", "add");
    private static final int MOST_CHANGES = 1_000;

    private TryOutJson() {}

    /** A garden as it stands and its copy with the changes, both as text. */
    public record Asked(String before, String after) {}

    /**
     * {@code {"garden":{...},"changes":[{"bed":"M","set":{"courses":2,"section":"75x200","at":[0,0]}},{"drop":"N"},{"add":{...}}]}};
     * a field set to null goes back to its default. {@code "instead":{...}} in place of changes is the whole other garden.
     *
     * @throws IllegalArgumentException for a change that cannot be read or names no bed, naming its place
     */
    public static Asked read(String text) throws UnreadableDocument {
        JsonNode asked = DocumentText.parse(text);
        CuttingJson.known("the try-out", asked, ASK);
        JsonNode garden = asked.get("garden");
        CuttingJson.require(garden != null && garden.isObject(), "garden must be a garden document, was " + CuttingJson.shown(garden));
        if (asked.has("instead")) {
            JsonNode instead = asked.get("instead");
            CuttingJson.require(instead.isObject() && !asked.has("changes"), "give changes, or a whole garden instead, not both");
            return new Asked(garden.toString(), instead.toString());
        }
        ObjectNode copy = garden.deepCopy();
        var changes = CuttingJson.entries(asked, "changes");
        CuttingJson.require(changes.size() <= MOST_CHANGES, "changes has " + changes.size() + " entries, at most " + MOST_CHANGES + " are taken");
        for (CuttingJson.Entry change : changes) change(copy, change);
        return new Asked(garden.toString(), copy.toString());
    }

    private static void change(ObjectNode garden, CuttingJson.Entry entry) {
        JsonNode change = entry.node();
        String at = entry.at();
        CuttingJson.known(at, change, CHANGE);
        ArrayNode beds = garden.get("beds") instanceof ArrayNode list ? list : garden.putArray("beds");
        if (change.has("add")) {
            CuttingJson.require(change.size() == 1 && change.get("add").isObject(), at + ".add must be one bed, was " + CuttingJson.shown(change.get("add")));
            beds.add(change.get("add").deepCopy());
            return;
        }
        boolean drop = change.has("drop");
        CuttingJson.require(drop ? change.size() == 1 : change.has("bed") && change.has("set"),
                at + " must drop a bed, add one, or name a bed and what to set");
        int place = place(beds, CuttingJson.text(change, at, drop ? "drop" : "bed"), at);
        if (drop) {
            beds.remove(place);
            return;
        }
        JsonNode set = change.get("set");
        CuttingJson.require(set.isObject(), at + ".set must be fields of the bed, was " + CuttingJson.shown(set));
        ObjectNode bed = (ObjectNode) beds.get(place);
        set.fields().forEachRemaining(field -> {
            if (field.getValue().isNull()) bed.remove(field.getKey());
            else bed.set(field.getKey(), field.getValue().deepCopy());
        });
    }

    private static int place(ArrayNode beds, String id, String at) {
        for (int i = 0; i < beds.size(); i++) if (beds.get(i).isObject() && beds.get(i).path("id").asText("").equals(id)) return i;
        throw new IllegalArgumentException(at + ": there is no bed \"" + id + "\"; name a bed by its id");
    }

    public static ObjectNode write(TryOut tried, String after) throws UnreadableDocument {
        ObjectNode json = NODES.objectNode();
        json.set("before", figures(tried.before()));
        json.set("after", figures(tried.after()));
        json.set("moved", Wire.list(tried.moved()));
        JsonNode garden = DocumentText.parse(after);
        Wording words = Wording.of(garden.path("units").asText().equals("imperial"));
        json.set("touched", FindingsJson.of(tried.touched(), words));
        json.set("gone", FindingsJson.of(tried.gone(), words));
        json.set("come", FindingsJson.of(tried.come(), words));
        json.set("garden", garden);
        return json;
    }

    private record Figures(BigDecimal money, boolean atLeast, int beds, int boards, @To(1) double mass, @To(3) double soil,
            @To(1) double hours, int endDay, String end, int snags) {}

    private static ObjectNode figures(TryOut.Figures figures) {
        return Wire.of(new Figures(figures.money(), figures.atLeast(), figures.beds(), figures.boards(), figures.massKg(),
                figures.soilM3(), figures.hours(), figures.endDay(), figures.end(), figures.snags()));
    }
}
