package lapyard.history;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import lapyard.plan.Bed;

/** Lists whose members carry a code, told apart by it whatever their order. */
final class Members {
    /** Top-level lists and what one member is called. */
    static final Map<String, String> WORDS = Map.of("beds", "bed", "types", "type", "paths", "path", "rack", "board");

    private Members() {}

    /** True for an absent list, and for one whose members all have different codes, given or counted. */
    static boolean areCoded(JsonNode list) {
        if (list == null || list.isMissingNode()) return true;
        if (!list.isArray()) return false;
        Set<String> codes = new HashSet<>();
        for (JsonNode member : list) {
            if (!member.isObject() || member.has("id") && !member.get("id").isTextual()) return false;
            if (member.has("id") && !codes.add(member.get("id").asText())) return false;
        }
        return true;
    }

    /** By code, in order; a member without one takes the first free of A, B, C... as it does in the garden. */
    static Map<String, JsonNode> byCode(JsonNode list) {
        Map<String, JsonNode> members = new LinkedHashMap<>();
        if (list == null) return members;
        Set<String> given = new HashSet<>();
        for (JsonNode member : list) given.add(member.path("id").asText(""));
        Iterator<String> free = Bed.freeLetters(given);
        for (JsonNode member : list) {
            String code = member.path("id").asText("");
            members.put(code.isEmpty() ? free.next() : code, member);
        }
        return members;
    }
}
