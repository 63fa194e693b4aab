package lapyard.history;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Two changes of one garden put together: what only one side changed is taken, what both changed alike is kept once.
 * Beds, types, paths and boards are told apart by their codes; every other member of the document is one piece.
 */
public sealed interface Merge {
    /** Both changes stand in it. */
    record Both(ObjectNode document) implements Merge {}

    /** Both changed the same, each in another way; nothing was chosen. */
    record Clash(List<Side> sides) implements Merge {
        public Clash {
            sides = List.copyOf(sides);
        }
    }

    /**
     * @param where  such as {@code bed C}
     * @param mine   empty where it was taken out
     * @param theirs as {@code mine}
     */
    record Side(String where, Optional<JsonNode> mine, Optional<JsonNode> theirs) {}

    /** @param base the text that both changes were made from */
    static Merge of(ObjectNode base, ObjectNode mine, ObjectNode theirs) {
        List<Side> clashes = new ArrayList<>();
        ObjectNode both = JsonNodeFactory.instance.objectNode();
        Set<String> names = new LinkedHashSet<>();
        for (ObjectNode each : List.of(theirs, mine, base)) each.fieldNames().forEachRemaining(names::add);
        for (String name : names) {
            JsonNode[] three = {base.get(name), mine.get(name), theirs.get(name)};
            String word = Members.WORDS.get(name);
            boolean coded = word != null
                    && Members.areCoded(three[0])
                    && Members.areCoded(three[1])
                    && Members.areCoded(three[2]);
            JsonNode value = coded ? members(word, three, clashes) : chosen(name, three[0], three[1], three[2], clashes);
            if (value != null) both.set(name, value);
        }
        return clashes.isEmpty() ? new Both(both) : new Clash(clashes);
    }

    private static JsonNode members(String word, JsonNode[] three, List<Side> clashes) {
        if (three[1] == null && three[2] == null) return null;
        Map<String, JsonNode> base = Members.byCode(three[0]);
        Map<String, JsonNode> mine = Members.byCode(three[1]);
        Map<String, JsonNode> theirs = Members.byCode(three[2]);
        boolean mineFirst = turned(base, mine) && !turned(base, theirs);
        Set<String> codes = new LinkedHashSet<>((mineFirst ? mine : theirs).keySet());
        codes.addAll((mineFirst ? theirs : mine).keySet());
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (String code : codes) {
            JsonNode member = chosen(word + " " + code, base.get(code), mine.get(code), theirs.get(code), clashes);
            if (member != null) list.add(member);
        }
        return list;
    }

    /** Whether those that both have stand in another order. */
    private static boolean turned(Map<String, JsonNode> base, Map<String, JsonNode> side) {
        List<String> was = new ArrayList<>(base.keySet());
        List<String> now = new ArrayList<>(side.keySet());
        was.retainAll(side.keySet());
        now.retainAll(base.keySet());
        return !was.equals(now);
    }

    private static JsonNode chosen(String where, JsonNode base, JsonNode mine, JsonNode theirs, List<Side> clashes) {
        if (Objects.equals(mine, theirs) || Objects.equals(mine, base)) return theirs;
        if (!Objects.equals(theirs, base))
            clashes.add(new Side(where, Optional.ofNullable(mine), Optional.ofNullable(theirs)));
        return mine;
    }
}
