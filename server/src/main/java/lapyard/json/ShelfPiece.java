package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A part of a garden document that is kept once for all gardens. A garden that takes one holds its content and, under
 * {@code shelf}, which revision of what it is: so a garden stands by itself, and a revision of it never changes.
 */
public final class ShelfPiece {
    /** What a garden says under {@code shelf}. */
    static final String FIELD = "shelf";

    /** Dates, which are a garden's own. */
    private static final List<String> DAYS_OF_A_PERSON = List.of("away", "comes");

    private ShelfPiece() {}

    /** What can be kept, with what of it stays a garden's own. */
    public enum Kind {
        CATALOGUE(Set.of()),
        TYPE(Set.of()),
        CREW(Set.of("start", "holidays", "wet")),
        QUOTE(Set.of("number", "client", "validUntil")),
        ACCESS(Set.of());

        final Set<String> own;

        Kind(Set<String> own) {
            this.own = own;
        }

        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Kind> of(String code) {
            return Stream.of(values()).filter(kind -> kind.code().equals(code)).findFirst();
        }
    }

    /**
     * What of a garden can be put on the shelf.
     *
     * @param type id of the bed type, where that is the kind
     * @return empty where the garden says nothing of it
     */
    public static Optional<ObjectNode> from(ObjectNode garden, Kind kind, String type) {
        JsonNode found = switch (kind) {
            case CATALOGUE, CREW, QUOTE -> garden.path(kind.code());
            case ACCESS -> garden.path("ground").path("access");
            case TYPE -> typeOf(garden, type);
        };
        if (!(found instanceof ObjectNode there) || there.isEmpty()) return Optional.empty();
        ObjectNode content = there.deepCopy().remove(kind.own);
        if (kind == Kind.CREW) for (JsonNode person : content.path("people")) if (person instanceof ObjectNode one) one.remove(DAYS_OF_A_PERSON);
        return Optional.of(content);
    }

    /** The days of a garden's own on which its people come or are away, by their names. */
    private static void days(JsonNode from, ObjectNode crew) {
        for (JsonNode there : from.path("people")) {
            for (JsonNode person : crew.path("people")) {
                if (person instanceof ObjectNode one && !one.path("name").isMissingNode() && one.path("name").equals(there.path("name")))
                    DAYS_OF_A_PERSON.stream().filter(there::has).forEach(field -> one.set(field, there.get(field)));
            }
        }
    }

    private static JsonNode typeOf(ObjectNode garden, String type) {
        for (JsonNode one : garden.path("types")) if (one.path("id").asText().equals(type)) return one;
        return garden.path("types").path(-1);
    }

    /**
     * A garden with that content.
     *
     * @param mark whether it says where the content comes from; else it is a copy that nobody is told of
     */
    public static ObjectNode into(ObjectNode garden, Kind kind, String id, long revision, String name, ObjectNode content, boolean mark) {
        ObjectNode with = garden.deepCopy();
        switch (kind) {
            case CATALOGUE -> with.set("catalogue", content);
            case CREW, QUOTE -> {
                ObjectNode whole = content.deepCopy();
                kind.own.stream().filter(with.path(kind.code())::has).forEach(field -> whole.set(field, with.get(kind.code()).get(field)));
                days(with.path(kind.code()), whole);
                with.set(kind.code(), whole);
            }
            case ACCESS -> with.withObject("/ground").set("access", content);
            case TYPE -> {
                ArrayNode types = with.withArray("types");
                int place = 0;
                while (place < types.size() && !types.get(place).path("id").equals(content.path("id"))) place++;
                if (place < types.size()) types.set(place, content);
                else types.add(content);
            }
        }
        mark(with, kind, id, revision, name, mark);
        return with;
    }

    /** One mark a piece, and one a kind where a garden has one of it. */
    private static void mark(ObjectNode garden, Kind kind, String id, long revision, String name, boolean mark) {
        ArrayNode kept = DocumentText.MAPPER.createArrayNode();
        for (JsonNode one : garden.path(FIELD)) {
            boolean replaced = one.path("id").asText().equals(id) || kind != Kind.TYPE && one.path("kind").asText().equals(kind.code());
            if (!replaced) kept.add(one);
        }
        if (mark) kept.addObject().put("kind", kind.code()).put("id", id).put("revision", revision).put("name", name);
        if (kept.isEmpty()) garden.remove(FIELD);
        else garden.set(FIELD, kept);
    }

    /** Whether the garden's own text of it is that content still. */
    public static boolean stands(ObjectNode garden, Kind kind, ObjectNode content) {
        return from(garden, kind, content.path("id").asText()).filter(content::equals).isPresent();
    }

    /** Reads what a garden says of the shelf: nothing of it is reckoned with. */
    static void check(Cursor garden) {
        garden.each(FIELD, "piece of the shelf", piece -> {
            piece.choice("kind");
            if (piece.text("id").isEmpty()) piece.needed("{\"kind\": \"catalogue\", \"id\": \"k3f9\", \"revision\": 2}", "\"id\"");
            piece.count("revision");
            return piece.text("name");
        });
    }
}
