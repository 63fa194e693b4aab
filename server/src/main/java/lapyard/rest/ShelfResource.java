package lapyard.rest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import lapyard.answers.Answer;
import lapyard.answers.AnswerService;
import lapyard.answers.GivenDocument;
import lapyard.answers.Refused;
import lapyard.json.ShelfPiece;
import lapyard.plan.FindingList;
import lapyard.plan.GardenState;
import lapyard.rest.QueryParameters.With;
import lapyard.store.ShelfItem;
import lapyard.store.ShelfItems;
import lapyard.store.Stored;

/** What is kept once for all gardens: price lists, bed types, crews, terms of quotes, access standards. */
@Path("api/shelf")
@Produces(MediaType.APPLICATION_JSON)
public record ShelfResource(Shelf shelf, AnswerService answers) {
    private static final int PAGE = 100;
    /** Each takes two job sheets. */
    private static final int EFFECTS = 5;

    private ShelfItems items() {
        return shelf.store().shelf();
    }

    @GET
    public Response list() {
        return Response.ok(Json.text(Json.object("pieces", items().list().stream().map(item -> {
            Map<String, Object> told = head(item);
            told.put("gardens", item.gardens());
            return told;
        }).toList()))).build();
    }

    private static Map<String, Object> head(ShelfItem item) {
        return Json.object("id", item.id(), "kind", item.kind(), "name", item.name(), "revision", item.revision(), "saved", item.saved(), "deleted", item.deleted() ? true : null);
    }

    /** {@code {"kind", "name", "content"}}: refused where no garden could have that content. */
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    public Response add(Body body) {
        ObjectNode asked = Documents.object(body.text());
        ShelfPiece.Kind kind = kind(asked.path("kind").asText());
        ObjectNode content = checked(kind, asked);
        ShelfItem item = kept(() -> items().add(Ids.next(), kind.code(), name(asked), Documents.text(content)));
        return answer(Response.status(201).header(HttpHeaders.LOCATION, "/api/shelf/" + item.id()), item);
    }

    private static <T> T kept(Supplier<T> keeping) {
        try {
            return keeping.get();
        } catch (IllegalArgumentException full) {
            throw new ProblemException(409, full.getMessage());
        }
    }

    @GET
    @Path("{piece}")
    public Response get(@PathParam("piece") String id, @QueryParam("revision") String revision) {
        return answer(Response.ok(), found(items(), id, revision));
    }

    /** A new revision; every earlier one stays, and gardens keep what they have. */
    @PUT
    @Path("{piece}")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response put(@PathParam("piece") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch, Body body) {
        ShelfItem there = found(items(), id, null);
        long expected = Tags.expected(ifMatch, new Stored(there.id(), there.name(), there.revision(), there.saved(), false, ""));
        ObjectNode asked = Documents.object(body.text());
        ObjectNode content = checked(kind(there.kind()), asked);
        return answer(Response.ok(), kept(() -> items().save(id, expected, name(asked), Documents.text(content))).orElseThrow(() -> new ProblemException(
                412, "the piece is at revision " + found(items(), id, null).revision() + "; nothing was overwritten, get it and make your change again")));
    }

    /** Off the shelf; a new revision brings it back. */
    @DELETE
    @Path("{piece}")
    public Response remove(@PathParam("piece") String id) {
        found(items(), id, null);
        items().remove(id);
        return Response.noContent().build();
    }

    /** Which gardens have it, and what its newest revision would do to the order of each; nothing is changed. */
    @GET
    @Path("{piece}/gardens")
    public Response gardens(@PathParam("piece") String id, @QueryParam("effect") String effect, @QueryParam("after") String after) {
        boolean withEffect = QueryParameters.flag("effect", effect);
        Optional<String> behind = QueryParameters.word("after", after);
        ShelfItem item = found(items(), id, null);
        int page = withEffect ? EFFECTS : PAGE;
        List<ShelfItems.Use> uses = items().uses(id, behind.orElse(""), page + 1);
        return Response.ok(Json.text(Json.object("id", id, "name", item.name(), "revision", item.revision(),
                "gardens", uses.stream().limit(page).map(use -> use(item, use, withEffect && use.uses() < item.revision())).toList(),
                "next", uses.size() > page ? "/api/shelf/" + id + "/gardens?after=" + uses.get(page - 1).garden() + (withEffect ? "&effect=true" : "") : null))).build();
    }

    /** A garden that could not have the newest revision says why: the others are told of all the same. */
    private Map<String, Object> use(ShelfItem item, ShelfItems.Use use, boolean withEffect) {
        Map<String, Object> told = Json.object("id", use.garden(), "name", use.name(), "state", use.state().code(), "uses", use.uses(), "keeps", keeps(kind(item.kind()), use.state()));
        try {
            if (withEffect) told.put("variation", effect(item, use.garden()));
        } catch (Refused refused) {
            told.put("refused", refused.words().paragraph(FindingList.stops(refused.findings()).get(0)));
        }
        return told;
    }

    private Json.Raw effect(ShelfItem item, String garden) {
        Stored stored = shelf.standing(garden);
        ObjectNode before = Documents.object(stored.document());
        ObjectNode after = taken(before, item, true);
        Answer variation = answers.variation(GivenDocument.of(stored.document(), before, garden), GivenDocument.of(Documents.text(after), after));
        return new Json.Raw(Documents.object(new String(variation.bytes(), StandardCharsets.UTF_8)).toString());
    }

    /** A quote that was given, and all that follows it, keeps its prices. */
    private static boolean keeps(ShelfPiece.Kind kind, GardenState state) {
        return state != GardenState.PENCILLED && (kind == ShelfPiece.Kind.CATALOGUE || kind == ShelfPiece.Kind.CREW || kind == ShelfPiece.Kind.QUOTE);
    }

    private static ObjectNode taken(ObjectNode garden, ShelfItem item, boolean mark) {
        return ShelfPiece.into(garden, kind(item.kind()), item.id(), item.revision(), item.name(), Documents.object(item.content()), mark);
    }

    /** @param revision null for the newest */
    private static ShelfItem found(ShelfItems items, String id, String revision) {
        Optional<ShelfItem> item = revision == null
                ? items.find(id)
                : items.revision(id, QueryParameters.number("revision", revision, 1, Integer.MAX_VALUE).getAsInt());
        return item.orElseThrow(() -> new ProblemException(404, "the shelf has no such piece"));
    }

    private static ShelfPiece.Kind kind(String code) {
        return ShelfPiece.Kind.of(code).orElseThrow(() -> new ProblemException(400, "kind should be catalogue, type, crew, quote or access"));
    }

    private static String name(ObjectNode asked) {
        String name = asked.path("name").asText("").strip();
        if (name.isEmpty()) throw new ProblemException(400, "name should say what the piece is called");
        return name;
    }

    /** Its content, which an empty garden could have; 422 where it could not. */
    private ObjectNode checked(ShelfPiece.Kind kind, ObjectNode asked) {
        if (!(asked.path("content") instanceof ObjectNode content) || content.isEmpty())
            throw new ProblemException(400, "content should be what a garden says under " + (kind == ShelfPiece.Kind.ACCESS ? "ground, access" : kind.code()));
        ObjectNode garden = ShelfPiece.into(JsonNodeFactory.instance.objectNode(), kind, "x", 1, "", content, false);
        if (kind == ShelfPiece.Kind.ACCESS) garden.withObject("/ground").putArray("outline").add(point(0, 0)).add(point(9000, 0)).add(point(9000, 9000));
        shelf.checked(GivenDocument.of(Documents.text(garden), garden));
        return ShelfPiece.from(garden, kind, content.path("id").asText()).orElse(content);
    }

    private static JsonNode point(int x, int y) {
        return JsonNodeFactory.instance.arrayNode().add(x).add(y);
    }

    private static Response answer(Response.ResponseBuilder response, ShelfItem item) {
        Map<String, Object> told = head(item);
        told.put("content", new Json.Raw(item.content()));
        return response.header(HttpHeaders.ETAG, Tags.quoted(Long.toString(item.revision()))).type(MediaType.APPLICATION_JSON).entity(Json.text(told)).build();
    }

    /** What one garden has of the shelf, and how it takes more. */
    @Path("api/gardens/{id}/shelf")
    @Produces(MediaType.APPLICATION_JSON)
    public record OfGarden(Shelf shelf) {
        private ShelfItems items() {
            return shelf.store().shelf();
        }

        /** Takes a piece into a garden: {@code {"piece", "revision", "copy", "anyway"}}, all but the first may be left out. */
        @POST
        @Consumes(MediaType.APPLICATION_JSON)
        public Response take(@PathParam("id") String id, @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch, Body body) {
            ObjectNode asked = Documents.object(body.text());
            Stored current = shelf.standing(id);
            long expected = Tags.expected(ifMatch, current);
            if (current.revision() != expected) throw shelf.stale(current, expected);
            ShelfItem item = found(items(), asked.path("piece").asText(), asked.has("revision") ? asked.get("revision").asText() : null);
            ObjectNode before = Documents.object(current.document());
            GardenState state = GardenState.of(before.path("state").asText()).orElse(GardenState.PENCILLED);
            if (keeps(kind(item.kind()), state) && !asked.path("anyway").asBoolean())
                throw new ProblemException(409, "the garden is " + state.code() + " and keeps its prices: send \"anyway\": true, or set it back to pencilled");
            ObjectNode after = taken(before, item, !asked.path("copy").asBoolean());
            return shelf.save(id, expected, Documents.text(after), after, With.NOTHING);
        }

        /** What a garden has of the shelf: whether it is as it was taken, and which revision is the newest. */
        @GET
        public Response uses(@PathParam("id") String id) {
            ObjectNode garden = Documents.object(shelf.standing(id).document());
            List<Map<String, Object>> pieces = new ArrayList<>();
            for (JsonNode mark : garden.path("shelf")) {
                String piece = mark.path("id").asText();
                long revision = mark.path("revision").asLong();
                Optional<ShelfItem> newest = items().find(piece).filter(item -> !item.deleted());
                Optional<Boolean> changed = items().revision(piece, revision)
                        .map(item -> !ShelfPiece.stands(garden, kind(item.kind()), Documents.object(item.content())));
                pieces.add(Json.object("kind", mark.path("kind").asText(), "id", piece, "name", newest.map(ShelfItem::name).orElse(mark.path("name").asText()),
                        "revision", revision, "newest", newest.map(ShelfItem::revision), "changed", changed));
            }
            return Response.ok(Json.text(Json.object("pieces", pieces))).build();
        }
    }
}
