package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Give;
import lapyard.plan.Giving;
import lapyard.plan.LayoutWishes;
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
        Cursor give = cursor.object("give");
        Give read = sides(give, usual);
        give.refuseUnknown();
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
        Cursor give = garden.object("give");
        Give all = sides(give, Give.NOTHING);
        Set<String> ids = new HashSet<>();
        Map<String, Give> byBed = new HashMap<>();
        for (Bed bed : beds) {
            ids.add(bed.id());
            Give own = gives.getOrDefault(bed.id(), all);
            if (!own.nothing()) byBed.put(bed.id(), own);
        }
        List<List<String>> alike = new ArrayList<>();
        for (JsonNode list : give.list("alike")) {
            List<String> named = ids(give, "alike", list, ids);
            if (!named.isEmpty()) alike.add(named);
        }
        boolean inLine = give.flag("inLine");
        boolean equalGaps = give.flag("equalGaps");
        give.refuseUnknown();
        return new Giving(byBed, alike, inLine, equalGaps);
    }

    private static List<String> ids(Cursor cursor, String field, JsonNode list, Set<String> there) {
        List<String> named = new ArrayList<>();
        if (!list.isArray()) {
            cursor.misshapen(field, "lists of bed codes", list, "[[\"C\", \"D\"]]");
            return named;
        }
        for (JsonNode id : list) {
            if (there.contains(id.asText())) {
                named.add(id.asText());
            } else {
                cursor.add(cursor.noSuch(field, "bed", id.asText(), List.of()).way(WayKind.BED_BY_CODE));
            }
        }
        return named;
    }

    static LayoutWishes wishes(Cursor garden, List<Bed> beds, Map<String, Bed> types) {
        Cursor asked = garden.object("layOut");
        List<Wish> wanted = new ArrayList<>();
        for (Cursor one : asked.objects("beds", "wish")) {
            String type = one.text("type");
            int least = one.count("least");
            int most = one.count("most", Wish.AS_MANY_AS_FIT);
            one.refuseUnknown();
            if (!types.containsKey(type)) {
                one.add(one.noSuch("type", "type", type, types.keySet().stream().sorted().toList()).way(WayKind.ADD_TO, Fact.name("\"types\"")));
            } else if (most < least) {
                one.against("least", Fact.count(least, "beds"), "most", Fact.count(most, "beds"));
            } else {
                wanted.add(new Wish(types.get(type), least, most));
            }
        }
        Set<String> there = new HashSet<>();
        beds.forEach(bed -> there.add(bed.id()));
        Set<String> pinned = new HashSet<>();
        for (JsonNode id : asked.list("pinned")) {
            if (there.contains(id.asText())) {
                pinned.add(id.asText());
            } else {
                asked.add(asked.noSuch("pinned", "bed", id.asText(), List.of()).way(WayKind.BED_BY_CODE));
            }
        }
        List<String> ranking = new ArrayList<>();
        for (JsonNode word : asked.list("rank")) {
            if (LayoutWishes.COUNTS.contains(word.asText()) && !ranking.contains(word.asText())) {
                ranking.add(word.asText());
            } else {
                asked.misshapen("rank", "different words of " + String.join(", ", LayoutWishes.COUNTS), word, "[\"" + String.join("\", \"", LayoutWishes.COUNTS) + "\"]");
            }
        }
        LayoutWishes read = new LayoutWishes(wanted, pinned, asked.number("path"), asked.number("margin"),
                ranking.isEmpty() ? LayoutWishes.NONE.ranking() : ranking);
        asked.refuseUnknown();
        return read;
    }
}
