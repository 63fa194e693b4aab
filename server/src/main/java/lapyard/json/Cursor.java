package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import lapyard.geometry.Point;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/**
 * One object of the document while it is read. It remembers which fields were asked for, so that the others
 * can be refused by name, and which values came from a default.
 */
final class Cursor extends FieldFaults {
    /** What a sum of binary numbers is off, as in 1981.2000000000003: taken as the number that was meant. */
    private static final double NOISE = 1e-9;

    private final JsonNode node;
    private final FieldTable table;
    private final String pointer;
    private final Set<String> askedHere;
    private final Set<String> known;

    /** @param table the fields that the object may have */
    Cursor(JsonNode node, FieldTable table, String pointer, String place, Notes notes) {
        this(node, table, pointer, place, notes, new LinkedHashSet<>());
        if (!node.isObject() && !node.isMissingNode()) shape("", "an object in curly brackets", node, WayKind.CURLY_BRACKETS);
    }

    private Cursor(JsonNode node, FieldTable table, String pointer, String place, Notes notes, Set<String> known) {
        super(place, notes);
        this.table = table;
        this.pointer = pointer;
        this.askedHere = notes.askedOf(table);
        this.known = known;
        this.node = node.isObject() ? node : MissingNode.getInstance();
    }

    /** The same object, findings under another name, for example the bed's own code once that is known. */
    Cursor named(String newPlace) {
        return new Cursor(node, table, pointer, newPlace, notes, known);
    }

    /** The same place in the document, other fields: a type's with a bed's exceptions laid over them. */
    Cursor over(JsonNode merged) {
        return new Cursor(merged, table, pointer, place, notes, known);
    }

    /** The same fields, with what older documents call {@code old} under its name of today; both with different values are a STOP. */
    Cursor renamed(String old, String field) {
        ask(old);
        if (!has(old)) return this;
        if (has(field) && !raw(old).equals(raw(field))) {
            add(fault(FindingKind.FIELD_RENAMED, field).with("value", Fact.name(shown(raw(field)))).with("old", Fact.name(old))
                    .with("other", Fact.name(shown(raw(old)))).way(WayKind.KEEP_NEW_NAME, Fact.name(field), Fact.name(old)));
        }
        ObjectNode today = ((ObjectNode) node).deepCopy();
        today.set(field, has(field) ? raw(field) : today.get(old));
        today.remove(old);
        return over(today);
    }

    JsonNode node() {
        return node;
    }

    boolean has(String field) {
        ask(field);
        JsonNode value = node.get(field);
        return value != null && !value.isNull();
    }

    JsonNode raw(String field) {
        ask(field);
        JsonNode value = node.get(field);
        return value == null || value.isNull() ? MissingNode.getInstance() : value;
    }

    /** As above; where there is none its default is noted. */
    private JsonNode given(String field) {
        JsonNode value = raw(field);
        if (value.isMissingNode()) defaulted(field);
        return value;
    }

    Cursor object(String field) {
        return new Cursor(raw(field), table.inner(field), pointer + "/" + field, inner(field), notes);
    }

    /** The objects of a list; {@code what} names one of them in findings, as in {@code bed 3}. */
    List<Cursor> objects(String field, String what) {
        List<Cursor> found = new ArrayList<>();
        int i = 0;
        for (JsonNode element : list(field)) {
            String inList = place.isEmpty() ? what + " " + (i + 1) : place + ", " + what + " " + (i + 1);
            found.add(new Cursor(element, table.inner(field), pointer + "/" + field + "/" + i++, inList, notes));
        }
        return found;
    }

    /** The object of this field, read to its end: what the reader does not ask for is refused by name. */
    <T> T read(String field, Function<Cursor, T> reader) {
        return object(field).whole(reader);
    }

    /** As above where the field is given. */
    <T> Optional<T> readIfAny(String field, Function<Cursor, T> reader) {
        return has(field) ? Optional.of(read(field, reader)) : Optional.empty();
    }

    /** Each object of a list as above. */
    <T> List<T> each(String field, String what, Function<Cursor, T> reader) {
        return objects(field, what).stream().map(one -> one.whole(reader)).collect(Collectors.toCollection(ArrayList::new));
    }

    /** Each object of a list with its code, by which findings name it; without one it is {@code letter} and its number. */
    <T> List<T> coded(String field, String what, String letter, String one, BiFunction<Cursor, String, Optional<T>> reader) {
        List<T> all = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (Cursor each : objects(field, what)) {
            String id = each.ownCode(letter + (all.size() + 1), taken, one);
            each.named(what + " " + id).whole(named -> reader.apply(named, id)).ifPresent(all::add);
        }
        return all;
    }

    <T> T whole(Function<Cursor, T> reader) {
        T read = reader.apply(this);
        refuseUnknown();
        return read;
    }

    /**
     * A record as the object of this field changes it. A part of the record that the schema has under its name, without the
     * unit, is read as its type says, with the part of {@code usual} where it is not given; the others and lists stay as in
     * {@code usual}, and a group of parts that the schema does not name is read from the same object. Where a part is {@code wanted}, true or
     * false may stand in place of the object.
     */
    <T extends Record> T like(String field, T usual) {
        if (!raw(field).isBoolean() || !table.inner(field).has("wanted")) return read(field, cursor -> cursor.like(usual));
        boolean wanted = flag(field, true);
        return RecordParts.with(usual, (name, part) -> name.equals("wanted") ? wanted : part);
    }

    /** As above, of this object. */
    <T extends Record> T like(T usual) {
        return RecordParts.with(usual, (field, part) -> {
            if (!table.has(field)) return part instanceof Record group ? like(group) : part;
            if (part instanceof Double number) return number(field, number);
            if (part instanceof Integer count) return count(field, count);
            if (part instanceof Boolean flag) return flag(field, flag);
            if (part instanceof String text) return text(field, text);
            return part instanceof Enum<?> word ? choice(field, word) : part;
        });
    }

    List<JsonNode> list(String field) {
        int most = table.field(field).entries();
        JsonNode value = raw(field);
        List<JsonNode> elements = new ArrayList<>();
        if (value.isMissingNode()) return elements;
        if (!value.isArray()) {
            shape(field, "a list in square brackets", value, WayKind.SQUARE_BRACKETS);
        } else if (value.size() > most) {
            add(fault(FindingKind.FIELD_MANY, field).with("entries", Fact.count(value.size(), "entries"))
                    .with("most", Fact.count(most, "entries")).by(Fact.count(value.size() - most, "entries")).way(WayKind.SPLIT_GARDEN));
        } else {
            value.forEach(elements::add);
        }
        return elements;
    }

    /** A number within the field's bounds; {@code usual} where it is not given. */
    double number(String field, double usual) {
        return number(field, usual, table.field(field));
    }

    /** As above, with the default that the schema names; a field without one is asked for only where it {@link #has} a value. */
    double number(String field) {
        return number(field, has(field) ? table.field(field).usual().asDouble(table.field(field).least()) : usual(field).doubleValue());
    }

    /** As above, of something that is counted or measured in this unit. */
    double number(String field, double usual, String unit) {
        return number(field, usual, table.field(field).withUnit(unit));
    }

    private double number(String field, double usual, FieldTable.Field bounds) {
        JsonNode value = given(field);
        if (value.isMissingNode()) return usual;
        return checked(field, value, usual, bounds);
    }

    OptionalDouble numberIfAny(String field) {
        return has(field) ? OptionalDouble.of(number(field)) : OptionalDouble.empty();
    }

    int count(String field, int usual) {
        return (int) number(field, usual);
    }

    int count(String field) {
        return (int) number(field);
    }

    /** A count of what there are {@code most} of. */
    int count(String field, int usual, int most) {
        return (int) number(field, usual, table.field(field).withMost(most));
    }

    /** A length that has no default: its absence is a STOP. */
    double neededLength(String field) {
        FieldTable.Field bounds = table.field(field);
        JsonNode value = raw(field);
        if (value.isMissingNode()) {
            add(fault(FindingKind.FIELD_MISSING, field).way(WayKind.GIVE_MM, Fact.name(field)));
            return bounds.least();
        }
        return checked(field, value, bounds.least(), bounds);
    }

    private JsonNode usual(String field) {
        JsonNode usual = table.field(field).usual();
        if (usual.isMissingNode()) throw new IllegalStateException("the schema has no default of " + table.path(field));
        return usual;
    }

    private double checked(String field, JsonNode value, double usual, FieldTable.Field bounds) {
        String unit = bounds.unit();
        double least = bounds.least();
        double most = bounds.most();
        if (!value.isNumber()) {
            shape(field, "a number" + (unit.isEmpty() ? "" : " of " + unit), value, WayKind.WITHOUT_QUOTES);
            return usual;
        }
        BigDecimal exact = value.decimalValue();
        double number = exact.doubleValue();
        if (!(number >= least - NOISE && number <= most + NOISE)) {
            boolean low = number < least;
            add(fault(low ? FindingKind.FIELD_LOW : FindingKind.FIELD_HIGH, field).with("value", figure(exact, unit))
                    .with(low ? "least" : "most", figure(BigDecimal.valueOf(low ? least : most), unit))
                    .by(unit.equals("mm") ? Fact.mm(low ? least - number : number - most) : new Fact.Plain(low ? least - number : number - most, unit))
                    .way(WayKind.GIVE_BETWEEN, figure(BigDecimal.valueOf(least), unit), figure(BigDecimal.valueOf(most), unit)));
            return usual;
        }
        BigDecimal rounded = BigDecimal.valueOf(number).setScale(bounds.decimals(), RoundingMode.HALF_UP);
        if (Math.abs(rounded.doubleValue() - number) > NOISE) {
            add(fault(FindingKind.FIELD_FINE, field).with("value", figure(exact, unit))
                    .with("step", Fact.name(plain(bounds.step()) + (unit.isEmpty() ? "" : " " + unit))).way(WayKind.WRITE_NUMBER, Fact.name(plain(rounded))));
        }
        // what else is wrong is looked for with what was meant
        return rounded.doubleValue();
    }

    /** Money; empty where it is not given. */
    Optional<BigDecimal> price(String field) {
        JsonNode value = raw(field);
        if (value.isMissingNode()) return Optional.empty();
        BigDecimal number = BigDecimal.valueOf(checked(field, value, 0, table.field(field)));
        return Optional.of(value.isNumber() && value.decimalValue().compareTo(number) == 0 ? value.decimalValue() : number);
    }

    /** A text no longer than the field's; without one the schema's default, or nothing. */
    String text(String field) {
        return text(field, table.field(field).usual().asText(""));
    }

    String text(String field, String usual) {
        int longest = table.field(field).longest();
        JsonNode value = given(field);
        if (value.isMissingNode()) return usual;
        if (!value.isTextual()) {
            shape(field, "text in quotes", value, WayKind.IN_QUOTES);
            return usual;
        }
        String text = value.textValue();
        if (text.length() > longest) {
            Fact over = Fact.count(text.length() - longest, "characters");
            add(fault(FindingKind.FIELD_LONG, field).with("length", Fact.count(text.length(), "characters"))
                    .with("most", Fact.count(longest, "characters")).by(over).way(WayKind.SHORTEN_BY, over));
            return usual;
        }
        return text;
    }

    /** A short code that can stand in marks and file names. */
    String code(String field, String usual) {
        String code = text(field, usual);
        if (!code.isEmpty() && !code.matches("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]*")) {
            add(fault(FindingKind.FIELD_CODE, field).with("value", Fact.name(BrokenRule.cut(code))).way(WayKind.CODE_LETTERS));
            return usual;
        }
        return code;
    }

    boolean flag(String field) {
        return flag(field, usual(field).booleanValue());
    }

    boolean flag(String field, boolean usual) {
        JsonNode value = given(field);
        if (value.isMissingNode()) return usual;
        if (!value.isBoolean()) {
            shape(field, "true or false", value, WayKind.TRUE_OR_FALSE);
            return usual;
        }
        return value.booleanValue();
    }

    /** One word of a fixed choice. */
    String choice(String field) {
        return choice(field, usual(field).textValue());
    }

    String choice(String field, String usual) {
        List<String> words = table.field(field).words();
        String word = text(field, usual);
        if (!words.contains(word)) {
            add(fault(FindingKind.FIELD_CHOICE, field).with("value", Fact.name(BrokenRule.cut(word))).way(WayKind.USE_WORD, new Fact.Choice(words)));
            return usual;
        }
        return word;
    }

    /** A constant by its word. */
    <E extends Enum<E>> E choice(String field, Enum<E> usual) {
        return Enum.valueOf(usual.getDeclaringClass(), constant(choice(field, word(usual))));
    }

    private static String word(Enum<?> constant) {
        return constant.name().replace('_', '-').toLowerCase(Locale.ROOT);
    }

    static String constant(String word) {
        return word.replace('-', '_').toUpperCase(Locale.ROOT);
    }

    /** The texts of a list that are {@code fit}; of every other {@code unfit} tells. */
    List<String> words(String field, Predicate<String> fit, Consumer<JsonNode> unfit) {
        List<String> words = new ArrayList<>();
        for (JsonNode one : list(field)) {
            if (one.isTextual() && fit.test(one.textValue())) words.add(one.textValue());
            else unfit.accept(one);
        }
        return words;
    }

    Point point(String field) {
        return point(field, new Point(0, 0));
    }

    Point point(String field, Point usual) {
        JsonNode value = given(field);
        if (value.isMissingNode()) return usual;
        return pointIn(field, value, table.field(field));
    }

    List<Point> points(String field) {
        List<Point> points = new ArrayList<>();
        for (JsonNode element : list(field)) points.add(pointIn(field + ", corner " + (points.size() + 1), element, table.field(field)));
        return points;
    }

    private Point pointIn(String field, JsonNode value, FieldTable.Field bounds) {
        if (!value.isArray() || value.size() != 2) {
            shape(field, "a place as [x, y]", value, WayKind.TWO_NUMBERS);
            return new Point(0, 0);
        }
        return new Point(
                checked(field + ", x", value.get(0), 0, bounds),
                checked(field + ", y", value.get(1), 0, bounds));
    }

    /** Call when everything was asked for: what is left over is refused by name. */
    void refuseUnknown() {
        for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!known.contains(name)) notes.add(unknown(inner(BrokenRule.cut(name)), name, known));
        }
    }

    static Finding unknown(String where, String name, Set<String> known) {
        Finding unknown = Finding.of(FindingKind.FIELD_UNKNOWN, Place.field(where)).with("name", Fact.name(BrokenRule.cut(name)));
        return nearest(name, known).map(near -> unknown.way(WayKind.DID_YOU_MEAN, Fact.name(near))).orElseGet(() -> unknown.way(WayKind.TAKE_OUT));
    }

    /** The known field that is spelt most like this one, if it is at most a third of its letters off; of two alike the first in order. */
    private static Optional<String> nearest(String name, Set<String> known) {
        ToIntFunction<String> off = one -> lettersOff(name.toLowerCase(Locale.ROOT), one.toLowerCase(Locale.ROOT));
        return known.stream().sorted().filter(one -> off.applyAsInt(one) <= Math.max(1, name.length() / 3)).min(Comparator.comparingInt(off));
    }

    /** Fewest letters to add, drop or change between two words (Levenshtein, 1966). */
    static int lettersOff(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j < row.length; j++) row[j] = j;
        for (int i = 1; i <= one.length(); i++) {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int above = row[j];
                int change = corner + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(above, row[j - 1]) + 1);
                corner = above;
            }
        }
        return row[other.length()];
    }

    /** The code of one of several of a kind; {@code taken} are those before it. */
    String ownCode(String usual, Set<String> taken, String what) {
        String id = code("id", usual);
        if (!taken.add(id)) twice("id", what + " code", Fact.name(id), WayKind.ANOTHER_CODE);
        return id;
    }

    void defaulted(String field) {
        notes.defaulted.add(pointer + "/" + field);
    }

    private void ask(String field) {
        known.add(field);
        askedHere.add(field);
    }
}
