package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/** Tells what is wrong with the fields of one object of the document: each fault with its figures and its ways out. */
abstract class FieldFaults {
    /** Longer than anything in a garden: such a figure is shown as it is written, not as a length. */
    private static final BigDecimal NO_LENGTH = BigDecimal.valueOf(10_000_000);

    /** Findings of one document that are told at once; more would let a hostile document fill the memory. */
    private static final int MOST_FINDINGS = 2000;

    /** Ends the reading of a document with more findings than are told. */
    static final class Full extends RuntimeException {}

    /** What is gathered while one document is read. */
    static final class Notes {
        private final String whole;
        final List<Finding> findings = new ArrayList<>();
        final List<String> defaulted = new ArrayList<>();
        private final Map<FieldTable, Set<String>> asked = new LinkedHashMap<>();

        Notes() {
            this("garden");
        }

        /** @param whole what findings call all of it */
        Notes(String whole) {
            this.whole = whole;
        }

        void add(Finding finding) {
            if (findings.size() >= MOST_FINDINGS) throw new Full();
            findings.add(finding);
        }

        /** Every field that was asked for, by its path in the schema: the test of the schema reads it. */
        Set<String> asked() {
            Set<String> all = new LinkedHashSet<>();
            asked.forEach((table, fields) -> fields.forEach(field -> all.add(table.path(field))));
            return all;
        }

        Set<String> askedOf(FieldTable table) {
            return asked.computeIfAbsent(table, key -> new LinkedHashSet<>());
        }

        boolean stopped() {
            return !FindingList.stops(findings).isEmpty();
        }
    }

    final Notes notes;
    final String place;

    /** @param place what findings call the object; empty for the garden itself */
    FieldFaults(String place, Notes notes) {
        this.place = place;
        this.notes = notes;
    }

    /** A STOP at this field, still without its figures and ways out; sentences call the field {@code name}. */
    Finding fault(FindingKind kind, String field) {
        return Finding.of(kind, Place.field(inner(field))).with("name", Fact.name(field.isEmpty() ? inner(field) : field));
    }

    void shape(String field, String wanted, JsonNode has, WayKind way) {
        add(fault(FindingKind.FIELD_SHAPE, field).with("wanted", Fact.name(wanted)).with("has", Fact.name(shown(has))).way(way));
    }

    /** A value that is not what the field takes, with an example of what it takes. */
    void misshapen(String field, String wanted, JsonNode has, String example) {
        add(fault(FindingKind.FIELD_SHAPE, field).with("wanted", Fact.name(wanted)).with("has", Fact.name(shown(has)))
                .way(WayKind.WRITE_LIKE, Fact.name(example)));
    }

    /** A field that has no default is missing; {@code example} is the field as it could be written. */
    void missing(String field, String example) {
        add(fault(FindingKind.FIELD_MISSING, field).way(WayKind.GIVE_LIKE, Fact.name(example)));
    }

    /** Fields that this object cannot do without; {@code example} is the object as it could be written. */
    void needed(String example, String... fields) {
        add(fault(FindingKind.FIELDS_NEEDED, "").with("wanted", Fact.names(List.of(fields))).way(WayKind.WRITE_LIKE, Fact.name(example)));
    }

    /** Two fields that exclude each other. */
    void clash(String one, String other) {
        add(fault(FindingKind.FIELDS_CLASH, one).with("other", Fact.name(other)).way(WayKind.TAKE_ONE_OUT));
    }

    /** A code or key that may stand once stands again; {@code what} is what it names, in the singular. */
    void twice(String field, String what, Fact value, WayKind way) {
        add(fault(FindingKind.FIELD_TWICE, field).with("what", Fact.name(what)).with("value", value).way(way));
    }

    /** A name that points at nothing; {@code there} are those that would. */
    Finding noSuch(String field, String what, String name, Collection<String> there) {
        Finding none = fault(FindingKind.FIELD_NO_SUCH, field).with("what", Fact.name(what)).with("value", Fact.name(BrokenRule.cut(name)));
        return there.isEmpty() ? none : none.way(WayKind.USE_WORD, new Fact.Choice(List.copyOf(there)));
    }

    /** Fewer entries than the field needs, with their noun in the plural. */
    void few(String field, int there, int least, String noun) {
        add(fault(FindingKind.FIELD_FEW, field).with("entries", Fact.count(there, noun)).with("least", Fact.count(least, noun))
                .by(Fact.count(least - there, noun)).way(WayKind.GIVE_AT_LEAST, Fact.count(least, noun)));
    }

    /** A value that does not go with that of another field. */
    void against(String field, Fact value, String other, Fact limit) {
        add(fault(FindingKind.FIELDS_DISAGREE, field).with("value", value).with("other", Fact.name(other)).with("limit", limit)
                .way(WayKind.CORRECT_ONE));
    }

    /** A number as a figure; lengths that a rule can show are lengths, all else is written as the document has it. */
    static Fact figure(BigDecimal number, String unit) {
        boolean length = unit.equals("mm") && number.stripTrailingZeros().scale() <= 1 && number.abs().compareTo(NO_LENGTH) < 0;
        return length ? Fact.mm(number.doubleValue()) : Fact.name(plain(number) + (unit.isEmpty() ? "" : " " + unit));
    }

    void add(Finding finding) {
        notes.add(finding);
    }

    String inner(String field) {
        if (field.isEmpty()) return place.isEmpty() ? notes.whole : place;
        return place.isEmpty() ? field : place + ", " + field;
    }

    static String plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        if (Math.abs(stripped.scale()) > 15 || stripped.precision() > 20) return String.format(Locale.ROOT, "%.3g", number);
        return stripped.toPlainString();
    }

    static String shown(JsonNode value) {
        return switch (value.getNodeType()) {
            case OBJECT -> "an object";
            case ARRAY -> "a list of " + value.size();
            case STRING -> "the text \"" + BrokenRule.cut(value.textValue()) + "\"";
            case NUMBER -> "the number " + plain(value.decimalValue());
            case BOOLEAN -> value.asText();
            default -> "nothing";
        };
    }
}
