package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Give;
import lapyard.plan.Giving;
import lapyard.plan.LayoutWishes;
import lapyard.plan.LayoutWishes.Merit;
import lapyard.plan.WayKind;
import lapyard.plan.Wish;

/** What a garden lets a search change: sizes that give, and a yard to be laid out. */
final class AskingReader {
    private static final double MOST_MM = 1_000;

    private AskingReader() {}

    /** What a bed, a type or the garden says, {@code usual} where it says nothing. */
    static Give give(Cursor cursor, Give usual) {
        if (cursor.raw("give").isBoolean()) {
            if (cursor.flag("give", false)) {
                cursor.misshapen("give", "how much each side may change", cursor.raw("give"), "{\"width\": [-50, 0], \"depth\": [-50, 0]}");
            }
            return Give.NOTHING;
        }
        Give read = cursor.read("give", give -> sides(give, usual));
        return cursor.has("give") ? read : usual;
    }

    private static Give sides(Cursor give, Give usual) {
        double[] width = range(give, "width", usual.widthLeastMm(), usual.widthMostMm());
        double[] depth = range(give, "depth", usual.depthLeastMm(), usual.depthMostMm());
        return new Give(width[0], width[1], depth[0], depth[1], give.number("step", usual.stepMm()));
    }

    private static double[] range(Cursor give, String field, double least, double most) {
        List<JsonNode> ends = give.list(field);
        if (!give.has(field)) return new double[] {least, most};
        boolean numbers = ends.size() == 2 && ends.get(0).isNumber() && ends.get(1).isNumber();
        if (numbers) {
            double from = ends.get(0).doubleValue();
            double to = ends.get(1).doubleValue();
            if (from <= 0 && to >= 0 && from >= -MOST_MM && to <= MOST_MM) return new double[] {from, to};
        }
        give.misshapen(field, "two lengths in mm, from -1000 to 0 and from 0 to 1000", give.raw(field), "[-50, 25]");
        return new double[] {least, most};
    }

    /**
     * @param beds  of the garden
     * @param gives what each bed says itself or takes from its type, by its id; the others take the garden's
     */
    static Giving giving(Cursor garden, List<Bed> beds, Map<String, Give> gives) {
        return garden.read("give", give -> {
            Give all = sides(give, Give.NOTHING);
            Set<String> ids = ids(beds);
            Map<String, Give> byBed = new HashMap<>();
            for (String id : ids) if (!gives.getOrDefault(id, all).nothing()) byBed.put(id, gives.getOrDefault(id, all));
            List<List<String>> alike = new ArrayList<>();
            for (JsonNode list : give.list("alike")) {
                List<String> named = named(give, "alike", list, ids);
                if (!named.isEmpty()) alike.add(named);
            }
            return new Giving(byBed, alike, give.flag("inLine"), give.flag("equalGaps"));
        });
    }

    private static Set<String> ids(List<Bed> beds) {
        return beds.stream().map(Bed::id).collect(Collectors.toSet());
    }

    private static List<String> named(Cursor cursor, String field, JsonNode list, Set<String> there) {
        if (!list.isArray()) cursor.misshapen(field, "lists of bed codes", list, "[[\"C\", \"D\"]]");
        List<String> named = new ArrayList<>();
        for (JsonNode id : list.isArray() ? list : MissingNode.getInstance()) {
            if (there.contains(id.asText())) named.add(id.asText());
            else cursor.add(cursor.noSuch(field, "bed", id.asText(), List.of()).way(WayKind.BED_BY_CODE));
        }
        return named;
    }

    static LayoutWishes wishes(Cursor garden, List<Bed> beds, Map<String, Bed> types) {
        return garden.read("layOut", asked -> {
            List<Wish> wanted = asked.each("beds", "wish", one -> wish(one, types)).stream().flatMap(Optional::stream).toList();
            Set<String> pinned = new HashSet<>(named(asked, "pinned", DocumentText.MAPPER.createArrayNode().addAll(asked.list("pinned")), ids(beds)));
            List<Merit> ranking = new ArrayList<>();
            List<String> merits = Arrays.stream(Merit.values()).map(Merit::word).toList();
            asked.words("rank", word -> Merit.of(word).filter(merit -> !ranking.contains(merit) && ranking.add(merit)).isPresent(), other -> asked.misshapen(
                    "rank", "different words of " + String.join(", ", merits), other, "[\"" + String.join("\", \"", merits) + "\"]"));
            return new LayoutWishes(wanted, pinned, asked.number("path"), asked.number("margin"), ranking.isEmpty() ? LayoutWishes.NONE.ranking() : ranking);
        });
    }

    private static Optional<Wish> wish(Cursor one, Map<String, Bed> types) {
        String type = one.text("type");
        int least = one.count("least");
        int most = one.count("most", Wish.AS_MANY_AS_FIT);
        if (!types.containsKey(type)) {
            one.add(one.noSuch("type", "type", type, types.keySet().stream().sorted().toList()).way(WayKind.ADD_TO, Fact.name("\"types\"")));
        } else if (most < least) {
            one.against("least", Fact.count(least, "beds"), "most", Fact.count(most, "beds"));
        } else {
            return Optional.of(new Wish(types.get(type), least, most));
        }
        return Optional.empty();
    }
}
