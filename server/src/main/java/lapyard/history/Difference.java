package lapyard.history;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/** What changed between two texts of one garden, a line each: {@code bed C} {@code moved 200 right}. */
public record Difference(Predicate<String> isLength, DoubleFunction<String> written, List<Line> lines) {
    private static final int LONGEST_TOLD = 80;
    /** Members of one list, each with what changed in it. */
    private static final int MOST_TOLD = 4;
    private static final Map<String, String> PLACES = Map.of("ground", "yard");
    private static final BigDecimal FULL_TURN = BigDecimal.valueOf(360);
    private static final BigDecimal HALF_TURN = BigDecimal.valueOf(180);

    /** @param where the place, such as {@code bed C} or {@code garden} */
    public record Line(String where, String text) {}

    /**
     * In the order of the later text; empty where both say the same.
     *
     * @param isLength whether the field of that path, {@code /beds/fill/mulch}, is one in millimetres
     * @param inFeet how a garden in feet and inches writes millimetres; all others write them as they stand in the text
     */
    public static List<Line> between(ObjectNode before, ObjectNode after, Predicate<String> isLength, DoubleFunction<String> inFeet) {
        boolean imperial = after.path("units").asText().equals("imperial");
        Difference difference = new Difference(isLength, imperial ? inFeet : null, new ArrayList<>());
        for (String name : names(before, after)) {
            JsonNode old = before.get(name);
            JsonNode now = after.get(name);
            String word = Members.WORDS.get(name);
            if (Objects.equals(old, now)) continue;
            if (word != null && Members.areCoded(old) && Members.areCoded(now)) difference.members(word, "/" + name, old, now);
            else if (isObject(old) && isObject(now)) difference.object(PLACES.getOrDefault(name, name), "/" + name, old, now);
            else difference.value("garden", "", name, old, now);
        }
        return List.copyOf(difference.lines);
    }

    private static Set<String> names(JsonNode before, JsonNode after) {
        Set<String> names = new LinkedHashSet<>();
        after.fieldNames().forEachRemaining(names::add);
        before.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private static boolean isObject(JsonNode node) {
        return node != null && node.isObject();
    }

    private void members(String word, String path, JsonNode before, JsonNode after) {
        Map<String, JsonNode> now = Members.byCode(after);
        boolean told = list(path, before, after, code -> word + " " + code, (code, what) -> say(word + " " + code, what + (what.equals("added") ? described(now.get(code)) : "")));
        if (!told) say("garden", word.equals("board") ? "rack in another order" : word + "s in another order");
    }

    /** What was added to a list, changed in it or taken out, by code; false where that is nothing, so that only the order differs. */
    private boolean list(String path, JsonNode before, JsonNode after, UnaryOperator<String> where, BiConsumer<String, String> say) {
        Map<String, JsonNode> old = Members.byCode(before);
        Map<String, JsonNode> now = Members.byCode(after);
        int told = lines.size();
        now.forEach((code, member) -> {
            if (!old.containsKey(code)) say.accept(code, "added");
            else if (!old.get(code).equals(member)) object(where.apply(code), path, old.get(code), member);
        });
        old.keySet().stream().filter(code -> !now.containsKey(code)).forEach(code -> say.accept(code, "taken out"));
        return lines.size() > told;
    }

    private String described(JsonNode member) {
        StringBuilder text = new StringBuilder();
        if (member.has("width") && member.has("depth"))
            text.append(", ").append(length(member.get("width"))).append(" x ").append(length(member.get("depth")));
        else if (member.has("length")) text.append(", ").append(length(member.get("length"))).append(" long");
        if (member.has("type")) text.append(", type ").append(told(member.get("type")));
        if (isPoint(member.get("at")))
            text.append(", at ").append(length(member.get("at").get(0))).append(", ").append(length(member.get("at").get(1)));
        return text.toString();
    }

    private void object(String where, String path, JsonNode before, JsonNode after) {
        for (String name : names(before, after)) {
            JsonNode old = before.get(name);
            JsonNode now = after.get(name);
            if (Objects.equals(old, now)) continue;
            if (name.equals("at") && isPoint(now) && (old == null || isPoint(old))) say(where, moved(old, now));
            else if (name.equals("turn") && isNumber(now) && (old == null || isNumber(old))) say(where, turned(old, now));
            else if (isObject(old) && isObject(now)) object(where + ", " + name, path + "/" + name, old, now);
            else if (isPoints(old) && isPoints(now) && old.size() == now.size()) corners(where + ", " + name, old, now);
            else if (coded(old) && coded(now)) inner(where, path, name, old, now);
            else value(where, path, name, old, now);
        }
    }

    /** Lists within an object whose members carry codes of their own, such as sections of the catalogue. */
    private void inner(String where, String path, String name, JsonNode before, JsonNode after) {
        boolean told = list(path + "/" + name, before, after, code -> where + ", " + name + " " + code, (code, what) -> say(where + ", " + name, code + " " + what));
        if (!told) say(where + ", " + name, "in another order");
    }

    private static boolean coded(JsonNode list) {
        return list != null
                && list.isArray()
                && !list.isEmpty()
                && Members.areCoded(list)
                && list.findValues("id").size() >= list.size();
    }

    private void corners(String where, JsonNode before, JsonNode after) {
        int moved = 0;
        for (int i = 0; i < after.size(); i++) if (!before.get(i).equals(after.get(i))) moved++;
        if (moved > MOST_TOLD) {
            say(where, moved + " of " + after.size() + " corners moved");
            return;
        }
        for (int i = 0; i < after.size(); i++)
            if (!before.get(i).equals(after.get(i)))
                say(where, "corner " + (i + 1) + " " + moved(before.get(i), after.get(i)));
    }

    /** Lists without codes and of one size, by place in them. */
    private void places(String where, String path, JsonNode before, JsonNode after) {
        List<Integer> changed = IntStream.range(0, after.size()).filter(i -> !before.get(i).equals(after.get(i))).boxed().toList();
        if (changed.size() > MOST_TOLD) say(where, changed.size() + " of " + after.size() + " changed");
        else changed.forEach(i -> object(where + " " + (i + 1), path, before.get(i), after.get(i)));
    }

    private void value(String where, String path, String name, JsonNode before, JsonNode after) {
        if (isObjects(before) && isObjects(after) && before.size() == after.size()) {
            places(where + ", " + name, path + "/" + name, before, after);
            return;
        }
        Function<JsonNode, String> told = value -> isLength.test(path + "/" + name) ? length(value) : told(value);
        if (after == null) say(where, name + " left out, was " + told.apply(before));
        else if (before == null) say(where, name + " " + told.apply(after) + ", was not given");
        else if (told.apply(before).equals(told.apply(after))) say(where, name + " changed");
        else say(where, name + " " + told.apply(after) + ", was " + told.apply(before));
    }

    private void say(String where, String text) {
        lines.add(new Line(where, text));
    }

    /** x runs to the right, y away from the house. */
    private String moved(JsonNode before, JsonNode after) {
        List<String> parts = new ArrayList<>();
        part(parts, before, after, 0, " right", " left");
        part(parts, before, after, 1, " away from the house", " towards the house");
        return parts.isEmpty() ? "written in another way" : "moved " + String.join(" and ", parts);
    }

    private void part(List<String> parts, JsonNode before, JsonNode after, int axis, String up, String down) {
        BigDecimal was = before == null ? BigDecimal.ZERO : before.get(axis).decimalValue();
        BigDecimal by = after.get(axis).decimalValue().subtract(was);
        if (by.signum() != 0) parts.add(length(by.abs()) + (by.signum() > 0 ? up : down));
    }

    /** The shorter way round. */
    private static String turned(JsonNode before, JsonNode after) {
        BigDecimal was = before == null ? BigDecimal.ZERO : before.decimalValue();
        BigDecimal by = after.decimalValue().subtract(was).remainder(FULL_TURN);
        if (by.compareTo(HALF_TURN) > 0) by = by.subtract(FULL_TURN);
        if (by.compareTo(HALF_TURN.negate()) <= 0) by = by.add(FULL_TURN);
        if (by.signum() == 0) return "turn " + plain(after.decimalValue()) + ", was " + plain(was);
        return "turned " + plain(by.abs()) + "\u00b0 " + (by.signum() > 0 ? "counter-clockwise" : "clockwise");
    }

    private static boolean isNumber(JsonNode node) {
        return node != null && node.isNumber();
    }

    private static boolean isPoint(JsonNode node) {
        return node != null && node.isArray() && node.size() == 2 && isNumber(node.get(0)) && isNumber(node.get(1));
    }

    private static boolean isPoints(JsonNode node) {
        if (node == null || !node.isArray() || node.isEmpty()) return false;
        for (JsonNode each : node) if (!isPoint(each)) return false;
        return true;
    }

    private static boolean isObjects(JsonNode node) {
        if (node == null || !node.isArray() || node.isEmpty()) return false;
        for (JsonNode each : node) if (!each.isObject()) return false;
        return true;
    }

    private String length(JsonNode value) {
        return value.isNumber() ? length(value.decimalValue()) : told(value);
    }

    private String length(BigDecimal mm) {
        return written == null || Math.abs(mm.scale()) > 30 ? plain(mm) : written.apply(mm.doubleValue());
    }

    private static String plain(BigDecimal number) {
        if (number.signum() == 0) return "0";
        // what was written with an absurd exponent stays as it was written
        return Math.abs(number.scale()) > 30 ? number.toString() : number.stripTrailingZeros().toPlainString();
    }

    private static String told(JsonNode value) {
        if (value.isNumber()) return plain(value.decimalValue());
        if (value.isTextual()) return shortened('"' + value.asText() + '"');
        if (isPoints(value)) return value.size() + " corners";
        if (isObjects(value) || value.isArray() && value.size() > 3) return value.size() + " of them";
        return shortened(value.toString());
    }

    private static String shortened(String text) {
        return text.codePointCount(0, text.length()) <= LONGEST_TOLD
                ? text
                : text.substring(0, text.offsetByCodePoints(0, LONGEST_TOLD)) + "...";
    }
}
